package io.github.tiderule.cases.cohort;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/** Where a season's day 0 lies on the calendar: the day she truly began to bleed. */
public final class Calendar {

  public static final ZoneId ZONE = ZoneId.of("UTC");
  public static final LocalDate FIRST_DAY = LocalDate.of(2027, 2, 1);
  private static final Instant MIDNIGHT = FIRST_DAY.atStartOfDay(ZONE).toInstant();

  private Calendar() {}

  public static Instant instant(double day) {
    return MIDNIGHT.plusSeconds(Math.round(day * 1440) * 60);
  }

  public static double day(Instant at) {
    return Duration.between(MIDNIGHT, at).toSeconds() / 86_400.0;
  }
}
