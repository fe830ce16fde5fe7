package io.github.tiderule.engine.timeline;

/**
 * How likely a progesterone value is, some days after ovulation: log-normal about the population
 * curve read the mean lag after the LH peak, shifted to where her own values lie.
 *
 * <p>A short form of the full model for looking ahead: level, rate, scale and error in one spread.
 */
public final class CurveReading {

  private final PopulationCurve curve;
  private final double lag;
  private final double shift;
  private final double sd;

  CurveReading(PopulationCurve curve, double lag, double shift, double sd) {
    this.curve = curve;
    this.lag = lag;
    this.shift = shift;
    this.sd = sd;
  }

  /**
   * Probability that a value drawn some days after ovulation lies between two logs of ng/mL.
   *
   * @param daysAfterOvulation negative before it
   */
  public double probability(double daysAfterOvulation, double logLow, double logHigh) {
    double mean = curve.logMean(daysAfterOvulation + lag) + shift;
    return Normal.cdf((logHigh - mean) / sd) - Normal.cdf((logLow - mean) / sd);
  }
}
