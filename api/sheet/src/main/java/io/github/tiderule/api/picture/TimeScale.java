package io.github.tiderule.api.picture;

import io.github.tiderule.api.report.text.BestDays;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.rules.fact.observation.Observation;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Times from left to right, in even hours, from a local midnight to a local midnight. The day on
 * which clocks change is as long as it is.
 *
 * @param first the first day
 * @param end the day after the last
 * @param left where the first day begins
 * @param right where the last day ends
 */
record TimeScale(ZoneId zone, LocalDate first, LocalDate end, double left, double right) {

  /** What is seen longer after ovulation belongs to a pregnancy and is not drawn. */
  private static final int AFTERWARDS_DAYS = 14;

  private static final int LEAST_DAYS = 8;
  private static final int DAYS_BACK = 45;
  private static final int DAYS_AHEAD = 30;
  private static final int STILL_NEAR = 10;

  /** The days worth drawing: what is known, what is believed, what is planned, and now. */
  static TimeScale of(CurveInput input, double left, double right) {
    ZoneId zone = input.cycle().zone();
    Instant now = input.cycle().asOf();
    List<Instant> worth = worth(input);
    // long after a season it is the season that is drawn, not the weeks since
    Instant latest = worth.stream().max(Comparator.naturalOrder()).orElse(now);
    Instant from = (latest.isBefore(now) ? latest : now).minus(Duration.ofDays(DAYS_BACK));
    Instant to = now.plus(Duration.ofDays(DAYS_AHEAD));
    List<Instant> shown =
        new ArrayList<>(
            worth.stream().filter(at -> !at.isBefore(from) && !at.isAfter(to)).sorted().toList());
    boolean near =
        shown.isEmpty()
            || !now.isAfter(shown.get(shown.size() - 1).plus(Duration.ofDays(STILL_NEAR)));
    if (near) {
      shown.add(now);
    }
    shown.sort(null);
    LocalDate first = shown.get(0).atZone(zone).toLocalDate();
    LocalDate end = shown.get(shown.size() - 1).atZone(zone).toLocalDate().plusDays(1);
    while (first.plusDays(LEAST_DAYS).isAfter(end)) {
      first = first.minusDays(1);
      end = first.plusDays(LEAST_DAYS).isAfter(end) ? end.plusDays(1) : end;
    }
    return new TimeScale(zone, first, end, left, right);
  }

  private static List<Instant> worth(CurveInput input) {
    List<Instant> worth = new ArrayList<>();
    Advice advice = input.advice();
    Instant end =
        advice.timing().ovulation() == null
            ? Instant.MAX
            : advice.timing().ovulation().p95().toInstant().plus(Duration.ofDays(AFTERWARDS_DAYS));
    for (Observation observation : input.cycle().observations()) {
      boolean ofSeason = FindingWords.drawn(observation) && !observation.at().isAfter(end);
      if (ofSeason && !input.held(observation.id())) {
        worth.add(observation.at());
      }
    }
    Quantiles peak = advice.timing().lhPeak();
    if (peak != null) {
      worth.add(peak.p05().toInstant());
    }
    Ovulation ovulation = advice.timing().ovulation();
    if (ovulation != null) {
      worth.add(ovulation.p95().toInstant());
    }
    Plan plan = advice.breeding().plan();
    if (plan != null) {
      plan.at().stream().map(OffsetDateTime::toInstant).forEach(worth::add);
    }
    BestDays.of(advice, BestDays.MOST).forEach(day -> worth.add(day.from().toInstant()));
    NextTest test = advice.testing().next();
    if (test != null && !test.at().toInstant().isAfter(end)) {
      worth.add(test.at().toInstant());
    }
    return worth;
  }

  Instant from() {
    return first.atStartOfDay(zone).toInstant();
  }

  Instant to() {
    return end.atStartOfDay(zone).toInstant();
  }

  boolean holds(Instant at) {
    return !at.isBefore(from()) && !at.isAfter(to());
  }

  /** Where a time lies; outside of the days shown, outside of the picture's middle. */
  double x(Instant at) {
    double all = Duration.between(from(), to()).toSeconds();
    return left + (right - left) * Duration.between(from(), at).toSeconds() / all;
  }

  /** The same, moved to the nearer end where it lies outside. */
  double within(Instant at) {
    return Math.min(Math.max(x(at), left), right);
  }

  /** Where a local day begins. */
  double x(LocalDate day) {
    return x(day.atStartOfDay(zone).toInstant());
  }

  List<LocalDate> days() {
    return first.datesUntil(end).toList();
  }
}
