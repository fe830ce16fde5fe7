package io.github.tiderule.engine.testing;

import io.github.tiderule.engine.season.Clock;
import io.github.tiderule.engine.season.Read;
import io.github.tiderule.engine.season.Season;
import io.github.tiderule.rules.conclusion.TestDue;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.conclusion.reading.Level;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** When a test can be drawn and when its result is there. */
final class DrawTimes {

  private final Season season;
  private final Clock clock;
  private final List<Level> levels;

  /** A draw as near to the last one as this is the same draw. */
  private final Duration sameDraw;

  DrawTimes(Read read) {
    season = read.season();
    clock = season.clock();
    levels = read.levels();
    sameDraw = hours(season.tools().value("planning.same-draw-hours"));
  }

  /**
   * A test that could be made.
   *
   * @param result when its result is there
   */
  record Draw(TestKind kind, Instant at, Instant result) {}

  /** When the trade has a test done: some hours after the last draw, or after now. */
  Instant due(TestDue test) {
    Instant from = test.observations().isEmpty() ? season.asOf() : lastDraw().orElse(season.asOf());
    return from.plus(hours(test.hoursAfter()));
  }

  /** The draw of a test that is due: at the usual clock hour, or now when it is overdue. */
  Draw of(TestDue test) {
    Instant due = due(test);
    Instant now = season.asOf();
    if (!due.isAfter(now) && canDrawNow()) {
      return draw(test.kind(), nextHalfHour(now));
    }
    // a little before the due time, so that the usual clock hour of that day will do
    Instant earliest =
        due.isAfter(now)
            ? due.minus(hours(season.tools().value("planning.draw-early-hours")))
            : now;
    return draw(
        test.kind(), clock.next(earliest.isBefore(now) ? now : earliest, usualHour(), opensOn()));
  }

  /** Every draw of a kind in the days ahead: now, and at the usual clock hour of each day. */
  List<Draw> ahead(TestKind kind) {
    Instant now = season.asOf();
    List<Draw> draws = new ArrayList<>();
    boolean fresh = lastDraw().map(at -> at.plus(sameDraw).isBefore(now)).orElse(true);
    if (canDrawNow() && fresh) {
      draws.add(draw(kind, nextHalfHour(now)));
    }
    Instant end = now.plus(hours(24 * season.tools().value("planning.ahead-days")));
    Instant at = clock.next(now, usualHour(), opensOn());
    while (!at.isAfter(end)) {
      if (draws.isEmpty() || at.isAfter(draws.get(0).at().plus(sameDraw))) {
        draws.add(draw(kind, at));
      }
      at = clock.next(at.plusSeconds(60), usualHour(), opensOn());
    }
    return draws;
  }

  private Draw draw(TestKind kind, Instant at) {
    Double said = season.laboratory().turnaroundHours();
    double hours =
        kind != TestKind.PROGESTERONE
            ? season.tools().value("planning.bedside-hours")
            : said == null ? season.tools().value("planning.turnaround-hours") : said;
    return new Draw(kind, at, at.plus(hours(hours)));
  }

  private List<DayOfWeek> opensOn() {
    return season.laboratory().opensOn();
  }

  private boolean canDrawNow() {
    LocalDate today = season.asOf().atZone(clock.zone()).toLocalDate();
    LocalTime hour = season.asOf().atZone(clock.zone()).toLocalTime();
    return !hour.isBefore(Clock.hour(season.tools().value("planning.first-draw-hour")))
        && hour.isBefore(Clock.hour(season.tools().value("planning.last-draw-hour")))
        && (opensOn().isEmpty() || opensOn().contains(today.getDayOfWeek()));
  }

  private LocalTime usualHour() {
    return lastDraw()
        .map(at -> at.atZone(clock.zone()).toLocalTime().truncatedTo(ChronoUnit.MINUTES))
        .orElse(Clock.hour(season.tools().value("planning.draw-hour")));
  }

  private Optional<Instant> lastDraw() {
    return levels.stream().map(Level::at).max(Comparator.naturalOrder());
  }

  private static Duration hours(double hours) {
    return Duration.ofSeconds(Math.round(hours * 3600));
  }

  private static Instant nextHalfHour(Instant at) {
    long halfHour = 1800;
    return Instant.ofEpochSecond((at.getEpochSecond() + halfHour - 1) / halfHour * halfHour);
  }
}
