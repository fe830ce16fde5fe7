package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.Listing;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An ejaculate before anything was added to it.
 *
 * @param fractions the tubes it was caught in, at most 12
 * @param concentrationMillionPerMl million sperm per mL of the tubes that bear sperm, 0–5000, if
 *     counted
 * @param progressivelyMotilePercent 0–100, if looked at
 * @param normalPercent 0–100, if counted
 * @param temperatureC degrees Celsius, 0–45, if measured
 */
public record Ejaculate(
    @Nullable Instant collectedAt,
    List<EjaculateFraction> fractions,
    @Nullable Double concentrationMillionPerMl,
    @Nullable Double progressivelyMotilePercent,
    @Nullable Double normalPercent,
    @Nullable Double temperatureC) {

  public Ejaculate {
    fractions = Listing.of(fractions);
  }

  /** What was caught in some tubes, at most 12. */
  public static Ejaculate of(EjaculateFraction... tubes) {
    return new Ejaculate(null, Arrays.asList(tubes), null, null, null, null);
  }

  /** With the moment of collection. */
  public Ejaculate collectedAt(Instant moment) {
    return new Ejaculate(
        moment,
        fractions,
        concentrationMillionPerMl,
        progressivelyMotilePercent,
        normalPercent,
        temperatureC);
  }

  /**
   * With the count.
   *
   * @param density million sperm per mL of the tubes that bear sperm, 0–5000
   */
  public Ejaculate concentrationMillionPerMl(double density) {
    return new Ejaculate(
        collectedAt, fractions, density, progressivelyMotilePercent, normalPercent, temperatureC);
  }

  /**
   * With the share that swims forward.
   *
   * @param percent 0–100
   */
  public Ejaculate progressivelyMotilePercent(double percent) {
    return new Ejaculate(
        collectedAt, fractions, concentrationMillionPerMl, percent, normalPercent, temperatureC);
  }

  /**
   * With the share of normal forms.
   *
   * @param percent 0–100
   */
  public Ejaculate normalPercent(double percent) {
    return new Ejaculate(
        collectedAt,
        fractions,
        concentrationMillionPerMl,
        progressivelyMotilePercent,
        percent,
        temperatureC);
  }

  /**
   * With its temperature.
   *
   * @param celsius degrees Celsius, 0–45
   */
  public Ejaculate temperatureC(double celsius) {
    return new Ejaculate(
        collectedAt,
        fractions,
        concentrationMillionPerMl,
        progressivelyMotilePercent,
        normalPercent,
        celsius);
  }
}
