package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.fact.Named;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.sentence.Part;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.Instant;
import java.util.List;

/**
 * A progesterone result that is taken as evidence, in ng/mL on its own method's scale.
 *
 * @param observation the observation's id
 * @param at when it was drawn
 * @param kind number, limit or band
 * @param low the number itself, or the lower edge (0 for a result below a limit)
 * @param high the number itself, or the upper edge (infinite for a result above a limit)
 * @param referenceFactor reading of this method for 1 ng/mL by radioimmunoassay, positive
 * @param series laboratory and method
 */
public record Level(
    String observation,
    Instant at,
    LevelKind kind,
    double low,
    double high,
    double referenceFactor,
    Series series)
    implements Conclusion, Named {

  /** A number. */
  public static Level value(
      String observation, Instant at, double ngPerMl, double referenceFactor, Series series) {
    return new Level(observation, at, LevelKind.VALUE, ngPerMl, ngPerMl, referenceFactor, series);
  }

  /** Somewhere below a limit. */
  public static Level below(
      String observation, Instant at, double limit, double referenceFactor, Series series) {
    return new Level(observation, at, LevelKind.BELOW, 0, limit, referenceFactor, series);
  }

  /** Somewhere above a limit. */
  public static Level above(
      String observation, Instant at, double limit, double referenceFactor, Series series) {
    return new Level(
        observation, at, LevelKind.ABOVE, limit, Double.POSITIVE_INFINITY, referenceFactor, series);
  }

  /** Somewhere within a kit's band. */
  public static Level band(
      String observation,
      Instant at,
      double low,
      double high,
      double referenceFactor,
      Series series) {
    return new Level(observation, at, LevelKind.BAND, low, high, referenceFactor, series);
  }

  /** The lower edge on the radioimmunoassay scale, ng/mL. */
  public double referenceLow() {
    return low / referenceFactor;
  }

  /** The upper edge on the radioimmunoassay scale, ng/mL; equals the lower one for a number. */
  public double referenceHigh() {
    return high / referenceFactor;
  }

  /**
   * The lower edge on the scale on which low progesterone of pregnancy is judged, ng/mL:
   * chemiluminescence, by which healthy pregnancies were published (hinderer-2021), as it is, and
   * other methods carried over to radioimmunoassay.
   */
  public double lutealLow() {
    return series.method() == Method.CLIA ? low : referenceLow();
  }

  /** The upper edge on the scale of {@link #lutealLow}, ng/mL. */
  public double lutealHigh() {
    return series.method() == Method.CLIA ? high : referenceHigh();
  }

  @Override
  public List<String> observations() {
    return List.of(observation);
  }

  @Override
  public String named() {
    return observation;
  }

  @Override
  public Sentence words() {
    return switch (kind) {
      case VALUE -> taken("{} is taken as {}, {}", low);
      case BELOW -> taken("{} is taken as below {}, {}", high);
      case ABOVE -> taken("{} is taken as above {}, {}", low);
      case BAND ->
          Double.isInfinite(high)
              ? taken("{} is taken as band from {}, {}", low)
              : Sentence.of(
                  "{} is taken as band {} to {}, {}",
                  Part.key(observation),
                  Part.both(low),
                  Part.both(high),
                  series);
    };
  }

  private Sentence taken(String template, double ngPerMl) {
    return Sentence.of(template, Part.key(observation), Part.both(ngPerMl), series);
  }
}
