package io.github.tiderule.engine.whelping;

import io.github.tiderule.rules.parameter.Parameters;

/**
 * Progesterone in the last days before whelping. A number counts as the class it was published in,
 * and no more closely: the course of these days is too uneven between bitches for that.
 */
public final class LateProgesterone {

  private static final double[] DAYS = {0, 1, 2, 4};

  private final double withinDay;
  private final double withinTwoDays;
  private final double high;
  private final double[] logs;
  private final double sd;
  private final double late;
  private final double lateLog;
  private final double lateSd;

  private LateProgesterone(Parameters parameters) {
    withinDay = parameters.value("whelping.progesterone.within-a-day");
    withinTwoDays = parameters.value("whelping.progesterone.within-two-days");
    high = parameters.value("whelping.progesterone.high");
    logs =
        new double[] {
          Math.log(parameters.value("whelping.progesterone.at-whelping")),
          Math.log(parameters.value("whelping.progesterone.day-before")),
          Math.log(parameters.value("whelping.progesterone.two-days-before")),
          Math.log(parameters.value("whelping.progesterone.four-days-before"))
        };
    sd = parameters.value("whelping.progesterone.log-sd");
    late = parameters.value("whelping.progesterone.late-fall");
    lateLog = Math.log(parameters.value("whelping.progesterone.late-level"));
    lateSd = parameters.value("whelping.progesterone.late-log-sd");
  }

  /** The model with the given numbers. */
  public static LateProgesterone of(Parameters parameters) {
    return new LateProgesterone(parameters);
  }

  /**
   * Probability, so many days before whelping, of a result in the same class, or within the same
   * limits or band.
   *
   * @param days before whelping; negative counts as 0
   * @param low ng/mL on the radioimmunoassay scale; 0 for none
   * @param high equal to {@code low} for a number; may be infinite
   */
  public double likelihood(double days, double low, double high) {
    double mean = mean(Math.max(0, days));
    boolean number = low == high;
    double from = number ? lowerEdge(low) : low;
    double to = number ? upperEdge(low) : high;
    return (1 - late) * between(from, to, mean, sd) + late * between(from, to, lateLog, lateSd);
  }

  /** Numbers of 2.7 and more are known to be no less than that, or no less than 5. */
  private double lowerEdge(double value) {
    return value >= high ? high : value >= withinTwoDays ? withinTwoDays : 0;
  }

  /** Numbers below 2.7 are known to be less than that, or less than 1. */
  private double upperEdge(double value) {
    return value < withinDay
        ? withinDay
        : value < withinTwoDays ? withinTwoDays : Double.POSITIVE_INFINITY;
  }

  private static double between(double low, double high, double mean, double sd) {
    double above = low > 0 ? Bell.below(Math.log(low), mean, sd) : 0;
    double below = Double.isInfinite(high) ? 1 : Bell.below(Math.log(high), mean, sd);
    return below - above;
  }

  private double mean(double days) {
    int i = 0;
    while (i < DAYS.length - 1 && days >= DAYS[i + 1]) {
      i++;
    }
    if (i == DAYS.length - 1) {
      return logs[i];
    }
    double share = (days - DAYS[i]) / (DAYS[i + 1] - DAYS[i]);
    return logs[i] + share * (logs[i + 1] - logs[i]);
  }
}
