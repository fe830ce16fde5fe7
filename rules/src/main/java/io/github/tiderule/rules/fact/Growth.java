package io.github.tiderule.rules.fact;

import java.time.Instant;

/** Growth at a steady pace, by which one value lets the next be expected. */
public final class Growth {

  private Growth() {}

  /**
   * How many times as much there is at {@code end} as at {@code start}.
   *
   * @param perDay how many times as much there is a day later, positive
   */
  public static double times(double perDay, Instant start, Instant end) {
    return Math.pow(perDay, Hours.between(start, end) / 24);
  }
}
