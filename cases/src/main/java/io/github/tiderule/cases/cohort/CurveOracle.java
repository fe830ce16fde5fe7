package io.github.tiderule.cases.cohort;

/**
 * The best anybody could do with progesterone alone: her whole true curve known without error and
 * by the hour, and the laws the females are drawn by known too. Only ovulation itself is unknown.
 *
 * <p>A curve shows when it passes each level, not at which level she ovulates. With a known curve
 * the density of ovulation at day s is in proportion to p(ln P(s))·p(ln r(s))·r(s)·p(s), where r is
 * the slope of ln P: the law of level and pace at ovulation, the Jacobian from these two to the
 * curve's speed and place, and the law of the day itself. What error is left, no reading of
 * progesterone can take away.
 */
public final class CurveOracle {

  private static final double STEP = 1 / 48.0;

  private CurveOracle() {}

  /** Median of ovulation given her curve and when she truly began to bleed, in days. */
  static double median(Bitch bitch) {
    double from = 3;
    int count = (int) Math.round(30 / STEP);
    double[] mass = new double[count];
    double total = 0;
    for (int i = 0; i < count; i++) {
      mass[i] = weight(bitch, from + i * STEP);
      total += mass[i];
    }
    double below = 0;
    for (int i = 0; i < count; i++) {
      if (below + mass[i] >= total / 2) {
        return from + (i - 0.5 + (total / 2 - below) / mass[i]) * STEP;
      }
      below += mass[i];
    }
    throw new IllegalStateException("no median for bitch " + bitch.number());
  }

  /** Density of ovulation given all that, up to a factor, at a day on the season's calendar. */
  public static double weight(Bitch bitch, double day) {
    ProgesteroneCourse course = bitch.progesterone();
    double slope = course.growthAt(day);
    double growth = Math.exp(slope);
    if (growth < Bitches.SLOWEST || growth > Bitches.FASTEST) {
      return 0;
    }
    double level = Math.log(course.climbAt(day) / Bitches.LEVEL) / Bitches.LEVEL_LOG_SD;
    double pace = Math.log(slope / Math.log(Bitches.GROWTH)) / Bitches.PACE_LOG_SD;
    double onset = Bitches.onsetDensity(day);
    return Math.exp(-0.5 * (level * level + pace * pace)) * slope * onset;
  }
}
