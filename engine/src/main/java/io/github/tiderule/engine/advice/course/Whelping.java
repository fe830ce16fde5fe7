package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * When she would whelp if she conceives; from ovulation, never from a mating.
 *
 * @param countedFrom {@code ovulation}, or {@code dioestrus} once the smear was seen to shift
 * @param notes what moved it beside that, in words without full stops
 */
public record Whelping(
    OffsetDateTime median,
    OffsetDateTime p05,
    OffsetDateTime p95,
    List<DayProbability> byDay,
    String countedFrom,
    List<Sentence> notes) {

  public Whelping {
    byDay = List.copyOf(byDay);
    notes = List.copyOf(notes);
  }

  /** Counted from ovulation, and nothing else moved it. */
  public Whelping(
      OffsetDateTime median, OffsetDateTime p05, OffsetDateTime p95, List<DayProbability> byDay) {
    this(median, p05, p95, byDay, "ovulation", List.of());
  }
}
