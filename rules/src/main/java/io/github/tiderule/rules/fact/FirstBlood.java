package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The first day of blood this season.
 *
 * @param on the day, not after the moment of the advice and at most 400 days before it; absent only
 *     when the certainty is unknown and nobody ventured a day
 */
public record FirstBlood(@Nullable LocalDate on, Certainty certainty) {

  /** A day on which it was seen to begin. */
  public static FirstBlood seen(LocalDate on) {
    return new FirstBlood(on, Certainty.SEEN);
  }

  /** A day that was worked out or remembered. */
  public static FirstBlood estimated(LocalDate on) {
    return new FirstBlood(on, Certainty.ESTIMATED);
  }

  /** Nobody knows, and nobody ventured a day. */
  public static FirstBlood unknown() {
    return new FirstBlood(null, Certainty.UNKNOWN);
  }
}
