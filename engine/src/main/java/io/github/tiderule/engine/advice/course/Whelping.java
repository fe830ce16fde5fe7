package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * When she would whelp if she conceives; from ovulation, never from a mating.
 *
 * @param notes what moved it beside that, in words without full stops
 */
public record Whelping(
    OffsetDateTime median,
    OffsetDateTime p05,
    OffsetDateTime p95,
    List<DayProbability> byDay,
    CountedFrom countedFrom,
    List<Sentence> notes) {

  public Whelping {
    byDay = List.copyOf(byDay);
    notes = List.copyOf(notes);
  }

  /** Counted from ovulation, and nothing else moved it. */
  public Whelping(
      OffsetDateTime median, OffsetDateTime p05, OffsetDateTime p95, List<DayProbability> byDay) {
    this(median, p05, p95, byDay, CountedFrom.OVULATION, List.of());
  }
}
