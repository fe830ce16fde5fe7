package io.github.tiderule.engine.insemination;

import io.github.tiderule.engine.advice.SemenTemperature;
import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import io.github.tiderule.rules.sentence.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * What must be at what temperature: everything that touches semen is at the semen's own, within a
 * tolerance (common practice); shift of the extender = semen − extender, in degrees Celsius.
 */
public final class TemperatureMatch {

  private TemperatureMatch() {}

  /**
   * The match for some semen.
   *
   * @param semenC its temperature, if measured
   * @param extenderC the extender's, if measured
   */
  public static SemenTemperature of(
      Semen semen, @Nullable Double semenC, @Nullable Double extenderC, Parameters parameters) {
    if (semen == Semen.FROZEN) {
      return new SemenTemperature(
          null,
          null,
          null,
          null,
          Sentence.of(
              "Bath, time and what is added: by the freezing centre's sheet alone. What the thawed"
                  + " semen touches is at the temperature the sheet says."));
    }
    double tolerance = parameters.value("care.temperature.tolerance");
    if (semenC == null && semen == Semen.CHILLED) {
      return new SemenTemperature(
          null,
          null,
          null,
          null,
          Sentence.of(
              "Measure the semen's temperature. Whatever is added or touches it is at that, within"
                  + " about {:tenths} °C.",
              tolerance));
    }
    double own = semenC == null ? parameters.value("insemination.body-heat") : semenC;
    @Nullable Double shift =
        semenC == null || extenderC == null ? null : Digits.significant(semenC - extenderC, 12);
    String template =
        semenC == null
            ? "The semen's temperature was not measured; straight from the male it is about body heat,"
                + " {:tenths} °C. Tubes, syringe, slide and extender: {:tenths} to {:tenths} °C."
            : "The semen is at {:tenths} °C. Tubes, syringe, slide and extender: {:tenths} to"
                + " {:tenths} °C.";
    Sentence touches = Sentence.of(template, own, own - tolerance, own + tolerance);
    return new SemenTemperature(
        semenC, own - tolerance, own + tolerance, shift, and(touches, shift, tolerance));
  }

  /** The same with what is to be done about the extender. */
  private static Sentence and(Sentence touches, @Nullable Double shift, double tolerance) {
    if (shift == null) {
      return touches;
    }
    if (Math.abs(shift) <= tolerance) {
      return Sentence.of("{} The extender is within that.", touches);
    }
    return Sentence.of(
        shift > 0
            ? "{} Warm the extender by {:tenths} °C first, then add it slowly."
            : "{} Cool the extender by {:tenths} °C first, then add it slowly.",
        touches,
        Math.abs(shift));
  }
}
