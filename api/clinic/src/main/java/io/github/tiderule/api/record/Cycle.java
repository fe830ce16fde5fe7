package io.github.tiderule.api.record;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A season of a female in the record.
 *
 * @param female her key
 * @param document what a cycle file says of the season beside the female and the observations, on
 *     one line
 * @param asOf the moment it is looked at, for a season that is over; absent for one going on
 * @param seenAt the moment for which the whole of it was last found to be a good cycle file
 * @param version counts the changes of the document, from 1
 * @param entries how many entries were made of its observations
 */
public record Cycle(
    String key,
    String female,
    String document,
    @Nullable Instant asOf,
    Instant seenAt,
    int version,
    int entries,
    Instant createdAt,
    Instant changedAt) {

  /** The moment to look at it from, if the present moment is {@code now}. */
  public Instant moment(Instant now) {
    return asOf == null ? now : asOf;
  }
}
