package io.github.tiderule.engine.timeline;

/** The χ² distribution with a whole number of degrees of freedom. */
final class ChiSquare {

  /** So many standard deviations beyond the mean the probability is below any that is told. */
  private static final double FAR = 40;

  private ChiSquare() {}

  /** Probability of a value above one: the finite series for whole degrees of freedom. */
  static double above(int degrees, double x) {
    if (!(x > 0)) {
      return 1;
    }
    if (x > degrees + FAR * Math.sqrt(2.0 * degrees)) {
      return 0;
    }
    boolean odd = degrees % 2 == 1;
    double sum = odd ? 2 * Normal.quickCdf(-Math.sqrt(x)) : 0;
    double part = odd ? Math.sqrt(2 * x / Math.PI) * Math.exp(-x / 2) : Math.exp(-x / 2);
    for (int k = odd ? 3 : 2; k <= degrees; k += 2) {
      sum += part;
      part *= x / k;
    }
    return Math.min(1, sum);
  }
}
