package io.github.tiderule.engine.timeline;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** The standard normal distribution. */
final class Normal {

  static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  private Normal() {}

  static double cdf(double z) {
    return STANDARD.cumulativeProbability(z);
  }

  static double density(double z) {
    return Math.exp(-z * z / 2 - LOG_ROOT_TWO_PI);
  }
}
