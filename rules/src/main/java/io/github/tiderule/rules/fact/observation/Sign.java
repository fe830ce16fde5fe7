package io.github.tiderule.rules.fact.observation;

import java.time.Instant;

/**
 * One sign, seen or looked for and not seen.
 *
 * @param present whether the sign was there
 */
public record Sign(String id, Instant at, SignKind sign, boolean present) implements Observation {

  /** A sign that was there. */
  public static Sign seen(SignKind sign, Instant at) {
    return new Sign(UNNAMED, at, sign, true);
  }

  /** A sign that was looked for and not there. */
  public static Sign notSeen(SignKind sign, Instant at) {
    return new Sign(UNNAMED, at, sign, false);
  }

  @Override
  public Sign withId(String id) {
    return new Sign(id, at, sign, present);
  }
}
