package io.github.tiderule.rules.semen;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;

/**
 * The usable sperm in hand: total × share progressively motile × share normal (thomas-2013), all of
 * it together.
 *
 * @param least number of sperm, not negative
 * @param most number of sperm; the same as {@code least} where they were counted
 * @param doses into how many doses it is to be divided, at least 1
 */
public record UsableSperm(Semen semen, Route route, double least, double most, int doses) {

  /** Whether they were counted rather than judged from the look. */
  public boolean counted() {
    return least == most;
  }

  /** Whether there are none at all. */
  public boolean none() {
    return !(most > 0);
  }

  /** Whether it is to be more than one dose. */
  public boolean divided() {
    return doses > 1;
  }

  /** The least that one of the doses holds. */
  public double leastPerDose() {
    return least / doses;
  }

  /** The most that one of the doses holds. */
  public double mostPerDose() {
    return most / doses;
  }
}
