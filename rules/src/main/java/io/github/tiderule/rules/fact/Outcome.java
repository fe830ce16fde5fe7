package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What became of a season.
 *
 * @param pregnant whether she was pregnant, if known
 * @param whelpedOn the day of the first pup, if she has whelped
 * @param litterSize pups born, alive or dead, if counted
 * @param pupsBornAlive pups born alive, not more than the litter, if counted
 */
public record Outcome(
    @Nullable Boolean pregnant,
    @Nullable LocalDate whelpedOn,
    @Nullable Integer litterSize,
    @Nullable Integer pupsBornAlive) {

  /** Nothing is known yet. */
  public static Outcome unknown() {
    return new Outcome(null, null, null, null);
  }
}
