package io.github.tiderule.engine.days;

import io.github.tiderule.engine.advice.CommitmentKind;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A clock window in which she could be bred.
 *
 * @param day its local day
 * @param middle the time it stands for
 * @param ageHours age of chilled semen then
 * @param deadlines what must be done for it, and by when
 */
public record Slot(
    LocalDate day,
    Instant from,
    Instant to,
    Instant middle,
    double ageHours,
    List<Deadline> deadlines) {

  public Slot {
    deadlines = List.copyOf(deadlines);
  }

  /** The last safe time to do something for it, where that is needed. */
  public Optional<Instant> by(CommitmentKind kind) {
    return deadlines.stream()
        .filter(deadline -> deadline.kind() == kind)
        .map(Deadline::by)
        .findFirst();
  }

  /** The time after which it can no longer be chosen: its first deadline, or its middle. */
  public Instant decideBy() {
    return deadlines.stream().map(Deadline::by).min(Comparator.naturalOrder()).orElse(middle);
  }

  /** When the slot can be called off for the last time: a booking can be, an order cannot. */
  public Instant lastCall() {
    return deadlines.stream()
        .filter(deadline -> deadline.kind() != CommitmentKind.BOOK)
        .map(Deadline::by)
        .min(Comparator.naturalOrder())
        .orElse(middle);
  }
}
