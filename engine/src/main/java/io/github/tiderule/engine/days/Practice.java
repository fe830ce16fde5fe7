package io.github.tiderule.engine.days;

import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.parameter.Parameters;

/**
 * What the trade does, where egg shares hardly tell sets of doses apart: how far one dose follows
 * another, and when after ovulation a frozen dose is given that has none beside it.
 *
 * @param margin sets that lie this close to the best in egg share are told apart by this
 * @param closest least hours from one dose to the next
 * @param farthest most hours from one dose to the next
 * @param singleFrom earliest days after the median ovulation for a dose on its own
 * @param singleTo latest
 */
record Practice(
    double margin, double closest, double farthest, double singleFrom, double singleTo) {

  /** Nothing of it. */
  static final Practice NONE =
      new Practice(0, 0, Double.MAX_VALUE, -Double.MAX_VALUE, Double.MAX_VALUE);

  /** A middle of a window may lie aside of the hour that is meant by so much. */
  private static final double SLACK_HOURS = 0.5;

  static Practice of(Parameters parameters, SemenPlan plan) {
    boolean frozen = plan.semen() == Semen.FROZEN;
    boolean lives = plan.semen() == Semen.NATURAL || plan.semen() == Semen.FRESH;
    double every = parameters.value("planning.natural-hours-between");
    double halfDay = parameters.value("planning.half-day");
    double usual =
        lives
            ? every + halfDay
            : parameters.value(frozen ? "planning.frozen-farthest" : "planning.chilled-farthest");
    Double asked = plan.hoursBetween();
    return new Practice(
        parameters.value("planning.practice-margin"),
        lives && asked == null ? every - halfDay : 0,
        asked == null ? usual : Math.max(asked, usual),
        frozen ? parameters.value("planning.frozen-single-from") : NONE.singleFrom,
        frozen ? parameters.value("planning.frozen-single-to") : NONE.singleTo);
  }

  /**
   * In how many ways a set of doses is not what the trade does.
   *
   * @param hours when they are given, in time order
   * @param ovulation hours of the median ovulation on the same axis
   */
  int faults(double[] hours, double ovulation) {
    if (hours.length == 1) {
      double after = (hours[0] - ovulation) / 24;
      return after < singleFrom || after > singleTo ? 1 : 0;
    }
    int faults = 0;
    for (int i = 1; i < hours.length; i++) {
      double apart = hours[i] - hours[i - 1];
      faults += apart < closest - SLACK_HOURS || apart > farthest + SLACK_HOURS ? 1 : 0;
    }
    return faults;
  }
}
