package io.github.tiderule.cases.cohort;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Ovulation;
import java.time.OffsetDateTime;

/** What the engine said of one season. */
record Answer(Season season, Advice advice) {

  /**
   * The engine's word on ovulation.
   *
   * @throws IllegalStateException if it said nothing
   */
  Ovulation ovulation() {
    Ovulation ovulation = advice.timing().ovulation();
    if (ovulation == null) {
      throw new IllegalStateException("no ovulation for bitch " + season.bitch().number());
    }
    return ovulation;
  }

  /** Days by which the median is later than the truth. */
  double error() {
    return day(ovulation().median()) - season.bitch().ovulation();
  }

  boolean withinHalf() {
    return within(ovulation().p25(), ovulation().p75());
  }

  boolean withinNineTenths() {
    return within(ovulation().p05(), ovulation().p95());
  }

  /** Width of the 90 % interval, days. */
  double width() {
    return day(ovulation().p95()) - day(ovulation().p05());
  }

  private boolean within(OffsetDateTime from, OffsetDateTime to) {
    double truth = season.bitch().ovulation();
    return truth >= day(from) && truth <= day(to);
  }

  private static double day(OffsetDateTime at) {
    return Calendar.day(at.toInstant());
  }
}
