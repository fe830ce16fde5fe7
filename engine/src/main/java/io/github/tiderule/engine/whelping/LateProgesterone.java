package io.github.tiderule.engine.whelping;

import io.github.tiderule.rules.parameter.Parameters;

/** Progesterone in the last days before whelping. */
public final class LateProgesterone {

  private static final double[] DAYS = {0, 1, 2, 4};

  private final double[] logs;
  private final double sd;
  private final double late;
  private final double lateLog;
  private final double lateSd;

  private LateProgesterone(Parameters parameters) {
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
   * Likelihood of a result so many days before whelping: a density of the log for a number, a
   * probability for a limit or band.
   *
   * @param days before whelping; negative counts as 0
   * @param low ng/mL on the radioimmunoassay scale; 0 for none
   * @param high equal to {@code low} for a number; may be infinite
   */
  public double likelihood(double days, double low, double high) {
    double mean = mean(Math.max(0, days));
    if (low == high) {
      double log = Math.log(low);
      return (1 - late) * Bell.density(log, mean, sd) + late * Bell.density(log, lateLog, lateSd);
    }
    return (1 - late) * between(low, high, mean, sd) + late * between(low, high, lateLog, lateSd);
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
