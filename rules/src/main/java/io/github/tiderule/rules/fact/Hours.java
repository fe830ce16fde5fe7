package io.github.tiderule.rules.fact;

import java.time.Duration;
import java.time.Instant;

/** Elapsed time in hours, the unit rules think in. */
public final class Hours {

  private Hours() {}

  /** Elapsed hours from {@code start} to {@code end}; negative when the end is earlier. */
  public static double between(Instant start, Instant end) {
    return Duration.between(start, end).toSeconds() / 3600.0;
  }

  /** How far apart two instants lie on the clock, whatever the day: 0 to 12 hours. */
  public static double apartOnTheClock(Instant one, Instant other) {
    double hours = Math.abs(between(one, other)) % 24;
    return Math.min(hours, 24 - hours);
  }
}
