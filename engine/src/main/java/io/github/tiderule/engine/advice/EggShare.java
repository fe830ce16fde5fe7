package io.github.tiderule.engine.advice;

/**
 * Share of her eggs met by live sperm while they can be fertilised.
 *
 * @param mean expected share
 * @param p10 its tenth percentile over where ovulation may lie
 */
public record EggShare(double mean, double p10) {

  /**
   * What is met one time in ten, as it is printed beside the mean: never above it. Where few but
   * bad chances pull the mean down, the tenth percentile lies above it, which nobody could read.
   */
  public double unlucky() {
    return Math.min(p10, mean);
  }
}
