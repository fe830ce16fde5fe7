package io.github.tiderule.rules.fact;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What became of a season.
 *
 * @param pregnant whether she was pregnant, if known; never false where there is a whelping or a
 *     litter
 * @param whelpedOn the day of the first pup, not before first blood, if she has whelped
 * @param litterSize pups born, alive or dead, 0–30, if counted
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

  /** With whether she was pregnant. */
  public Outcome pregnant(boolean was) {
    return new Outcome(was, whelpedOn, litterSize, pupsBornAlive);
  }

  /** With the day of the first pup, not before first blood. */
  public Outcome whelpedOn(LocalDate day) {
    return new Outcome(pregnant, day, litterSize, pupsBornAlive);
  }

  /**
   * With the litter.
   *
   * @param pups born, alive or dead, 0–30
   */
  public Outcome litterSize(int pups) {
    return new Outcome(pregnant, whelpedOn, pups, pupsBornAlive);
  }

  /**
   * With the pups born alive.
   *
   * @param pups 0–30, not more than the litter
   */
  public Outcome pupsBornAlive(int pups) {
    return new Outcome(pregnant, whelpedOn, litterSize, pups);
  }
}
