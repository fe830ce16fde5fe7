package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/**
 * One LH test.
 *
 * @param positive whether it shows the surge
 */
public record LhTest(String id, Instant at, boolean positive) implements Observation {

  /** A test that shows the surge. */
  public static LhTest positive(Instant at) {
    return new LhTest(UNNAMED, at, true);
  }

  /** A test that does not show the surge. */
  public static LhTest negative(Instant at) {
    return new LhTest(UNNAMED, at, false);
  }

  @Override
  public LhTest withId(String id) {
    return new LhTest(id, at, positive);
  }
}
