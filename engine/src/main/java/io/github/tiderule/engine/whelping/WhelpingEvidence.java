package io.github.tiderule.engine.whelping;

import io.github.tiderule.engine.timeline.Density;
import io.github.tiderule.engine.timeline.Turning;
import io.github.tiderule.rules.fact.assay.Method;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the day of whelping is reasoned from. Times are days after the anchor.
 *
 * @param turning where dioestrus begins; absent where no smear saw the shift
 * @param firstBreeding the earliest breeding on file, if any
 * @param bodyMassKg kilograms, if known
 * @param pups how many were counted, if they were
 * @param stillPregnant latest time at which she had not whelped; negative infinity for none
 * @param firstPup time by which she had whelped; infinity for none
 * @param asked when it is asked, no pup having come that anybody told of; negative infinity where
 *     that says nothing
 */
public record WhelpingEvidence(
    Density ovulation,
    @Nullable Turning turning,
    @Nullable Double firstBreeding,
    @Nullable Double bodyMassKg,
    @Nullable String breed,
    @Nullable Integer pups,
    List<Measured> measured,
    List<Temperature> temperatures,
    List<Drawn> progesterone,
    double stillPregnant,
    double firstPup,
    double asked) {

  public WhelpingEvidence {
    measured = List.copyOf(measured);
    temperatures = List.copyOf(temperatures);
    progesterone = List.copyOf(progesterone);
  }

  /** Only what is known of ovulation. */
  static WhelpingEvidence of(Density ovulation) {
    return new WhelpingEvidence(
        ovulation,
        null,
        null,
        null,
        null,
        null,
        List.of(),
        List.of(),
        List.of(),
        Double.NEGATIVE_INFINITY,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY);
  }

  /** What is measured of a fetus. */
  public enum Part {
    CAVITY,
    SKULL
  }

  /**
   * Fetal measurements of one scan.
   *
   * @param millimetres mean over the fetuses measured
   */
  public record Measured(double day, Part part, double millimetres) {}

  /** A temperature, in order of time. */
  public record Temperature(double day, double celsius) {}

  /**
   * A progesterone result, ng/mL, on the method's own scale where {@link LateProgesterone#hasOwn}
   * says so, and else on that of radioimmunoassay.
   *
   * @param low the number, or the lower edge
   * @param high the number, or the upper edge, perhaps infinite
   */
  public record Drawn(double day, Method method, double low, double high) {}
}
