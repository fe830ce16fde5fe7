package io.github.tiderule.engine.timeline;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * Days after an anchor that is a midnight in UTC, so that moving a whole season by whole days
 * changes no number on the axis.
 */
public record TimeAxis(Instant anchor) {

  private static final double SECONDS_PER_DAY = 86_400;

  /** The axis that starts on the UTC day of an instant. */
  public static TimeAxis from(Instant first) {
    return new TimeAxis(first.truncatedTo(ChronoUnit.DAYS));
  }

  /** Days from the anchor to an instant. */
  public double day(Instant at) {
    return Duration.between(anchor, at).toSeconds() / SECONDS_PER_DAY;
  }

  /** The instant so many days after the anchor, to the minute. */
  public Instant instant(double day) {
    return anchor.plus(Math.round(day * 1440), ChronoUnit.MINUTES);
  }
}
