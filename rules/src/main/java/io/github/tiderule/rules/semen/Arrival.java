package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.Digits;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Chilled semen as it arrived.
 *
 * @param temperatureC of the semen or its box on opening, degrees Celsius, may be below zero
 * @param volumeMl in millilitres, above 0, if measured
 * @param concentrationMillionPerMl million sperm per mL of what arrived, if counted
 * @param totalSpermMillion million sperm in the parcel as the sender's sheet says, if it does
 * @param progressivelyMotilePercent of a warmed drop, 0–100, if looked at
 * @param normalPercent 0–100, if counted
 */
public record Arrival(
    @Nullable Instant collectedAt,
    @Nullable Instant arrivedAt,
    @Nullable Double temperatureC,
    @Nullable Double volumeMl,
    @Nullable Double concentrationMillionPerMl,
    @Nullable Double totalSpermMillion,
    @Nullable Double progressivelyMotilePercent,
    @Nullable Double normalPercent) {

  /** Million sperm counted here: volume × concentration; absent unless both are known. */
  public @Nullable Double countedMillion() {
    return volumeMl == null || concentrationMillionPerMl == null
        ? null
        : Digits.significant(volumeMl * concentrationMillionPerMl, 12);
  }

  /**
   * Share of the sperm that the sender names and the count here lacks; negative where there are
   * more, absent unless both are known and the sender names some.
   */
  public @Nullable Double missingShare() {
    Double counted = countedMillion();
    return counted == null || totalSpermMillion == null || !(totalSpermMillion > 0)
        ? null
        : Digits.significant(1 - counted / totalSpermMillion, 12);
  }
}
