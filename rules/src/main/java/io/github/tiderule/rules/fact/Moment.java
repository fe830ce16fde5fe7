package io.github.tiderule.rules.fact;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;

/** The time the advice is for, and the zone its days are counted in. */
public record Moment(Instant asOf, ZoneId zone) {

  /** The local day of an instant. */
  public LocalDate dayOf(Instant at) {
    return at.atZone(zone).toLocalDate();
  }

  /** Hours from {@code at} until now; negative for the future. */
  public double hoursSince(Instant at) {
    return Hours.between(at, asOf);
  }

  /** Whole local days from {@code day} until today; negative for the future. */
  public long daysSince(LocalDate day) {
    return ChronoUnit.DAYS.between(day, dayOf(asOf));
  }

  /** The local day some days ago, to the nearest whole day. */
  public LocalDate daysAgo(double days) {
    return dayOf(asOf).minusDays(Math.round(days));
  }
}
