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
}
