package io.github.tiderule.rules.semen;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An ejaculate before anything was added to it.
 *
 * @param fractions the tubes it was caught in, at least one
 * @param concentrationMillionPerMl million sperm per mL of the tubes that bear sperm, if counted
 * @param progressivelyMotilePercent 0–100, if looked at
 * @param normalPercent 0–100, if counted
 * @param temperatureC degrees Celsius, if measured
 */
public record Ejaculate(
    @Nullable Instant collectedAt,
    List<EjaculateFraction> fractions,
    @Nullable Double concentrationMillionPerMl,
    @Nullable Double progressivelyMotilePercent,
    @Nullable Double normalPercent,
    @Nullable Double temperatureC) {

  public Ejaculate {
    fractions = List.copyOf(fractions);
  }
}
