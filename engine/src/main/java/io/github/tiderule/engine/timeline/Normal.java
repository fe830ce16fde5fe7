package io.github.tiderule.engine.timeline;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** The standard normal distribution. */
final class Normal {

  static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  private static final int REACH = 8;
  private static final int PER_UNIT = 256;
  private static final double[] TABLE = table();

  private Normal() {}

  static double cdf(double z) {
    return STANDARD.cumulativeProbability(z);
  }

  /** The distribution function from a table, with an error below 10⁻⁶. */
  static double quickCdf(double z) {
    double place = (z + REACH) * PER_UNIT;
    if (!(place > 0)) {
      return 0;
    }
    int i = (int) place;
    if (i >= TABLE.length - 1) {
      return 1;
    }
    return TABLE[i] + (place - i) * (TABLE[i + 1] - TABLE[i]);
  }

  private static double[] table() {
    double[] table = new double[2 * REACH * PER_UNIT + 1];
    for (int i = 0; i < table.length; i++) {
      table[i] = cdf(-REACH + i / (double) PER_UNIT);
    }
    return table;
  }

  static double density(double z) {
    return Math.exp(-z * z / 2 - LOG_ROOT_TWO_PI);
  }
}
