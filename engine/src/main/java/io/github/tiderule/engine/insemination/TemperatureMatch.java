package io.github.tiderule.engine.insemination;

import io.github.tiderule.engine.advice.SemenTemperature;
import io.github.tiderule.rules.fact.Digits;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.parameter.Parameters;
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
          "Bath, time and what is added: by the freezing centre's sheet alone. What the thawed"
              + " semen touches is at the temperature the sheet says.");
    }
    double tolerance = parameters.value("care.temperature.tolerance");
    if (semenC == null && semen == Semen.CHILLED) {
      return new SemenTemperature(
          null,
          null,
          null,
          null,
          "Measure the semen's temperature. Whatever is added or touches it is at that, within"
              + " about "
              + Digits.plain(tolerance)
              + " °C.");
    }
    double own = semenC == null ? parameters.value("insemination.body-heat") : semenC;
    @Nullable Double shift =
        semenC == null || extenderC == null ? null : Digits.significant(semenC - extenderC, 12);
    String whose =
        semenC == null
            ? "The semen's temperature was not measured; straight from the male it is about body heat, "
            : "The semen is at ";
    return new SemenTemperature(
        semenC,
        own - tolerance,
        own + tolerance,
        shift,
        whose
            + Digits.plain(own)
            + " °C. Tubes, syringe, slide and extender: "
            + Digits.plain(own - tolerance)
            + " to "
            + Digits.plain(own + tolerance)
            + " °C."
            + shifted(shift, tolerance));
  }

  private static String shifted(@Nullable Double shift, double tolerance) {
    if (shift == null) {
      return "";
    }
    if (Math.abs(shift) <= tolerance) {
      return " The extender is within that.";
    }
    return (shift > 0 ? " Warm the extender by " : " Cool the extender by ")
        + Digits.plain(Math.abs(shift))
        + " °C first, then add it slowly.";
  }
}
