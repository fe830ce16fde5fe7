package io.github.tiderule.engine.advice;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * One day she could be bred on.
 *
 * @param rank 1 for the best
 * @param from start of the day's better clock window
 * @param to end of that window
 * @param eggShare for a single dose in that window
 */
public record BreedingDay(
    int rank,
    LocalDate day,
    OffsetDateTime from,
    OffsetDateTime to,
    Verdict verdict,
    EggShare eggShare,
    List<Reason> reasons) {

  public BreedingDay {
    reasons = List.copyOf(reasons);
  }
}
