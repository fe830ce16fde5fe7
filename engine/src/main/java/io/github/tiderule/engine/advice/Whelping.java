package io.github.tiderule.engine.advice;

import java.time.OffsetDateTime;
import java.util.List;

/** When she would whelp if she conceives; from ovulation, never from a mating. */
public record Whelping(
    OffsetDateTime median, OffsetDateTime p05, OffsetDateTime p95, List<DayProbability> byDay) {

  public Whelping {
    byDay = List.copyOf(byDay);
  }
}
