package io.github.tiderule.engine.whelping;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** The normal density and its distribution function. */
final class Bell {

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  private Bell() {}

  static double density(double x, double mean, double sd) {
    return STANDARD.density((x - mean) / sd) / sd;
  }

  /** Probability of lying below x. */
  static double below(double x, double mean, double sd) {
    return STANDARD.cumulativeProbability((x - mean) / sd);
  }
}
