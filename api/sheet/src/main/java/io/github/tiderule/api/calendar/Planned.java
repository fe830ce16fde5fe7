package io.github.tiderule.api.calendar;

import io.github.tiderule.engine.validation.Legibility;
import java.time.OffsetDateTime;

/**
 * One thing an advice puts on a date.
 *
 * @param from its start, in local time; for an estimate only the day counts
 * @param to its end, not before the start; for an estimate only the day counts, as the last one
 * @param summary what it is, in a few words
 * @param description what more there is to say of it
 */
public record Planned(
    EntryKind kind, OffsetDateTime from, OffsetDateTime to, String summary, String description) {

  public Planned {
    summary = safe(summary);
    description = safe(description);
  }

  /** A text without the characters that could make a calendar show something else. */
  static String safe(String text) {
    return text.codePoints()
        .filter(Legibility::isSafe)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  /** Whether a person would have to note it anew: another time, or another thing to do. */
  boolean differs(Planned other) {
    boolean sameTime =
        kind.isEstimate()
            ? from.toLocalDate().equals(other.from.toLocalDate())
                && to.toLocalDate().equals(other.to.toLocalDate())
            : from.isEqual(other.from) && to.isEqual(other.to);
    return !sameTime || !summary.equals(other.summary);
  }

  /** Whether it was over at a moment. */
  public boolean isPast(OffsetDateTime moment) {
    return !kind.isEstimate() && !to.isAfter(moment);
  }
}
