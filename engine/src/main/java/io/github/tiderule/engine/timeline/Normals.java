package io.github.tiderule.engine.timeline;

import java.util.Arrays;

/**
 * A mixture of normals on the log of a progesterone number: how the number is foreseen for one LH
 * peak. Parts are added, then it is settled, then asked. Not safe for use by several threads until
 * it is settled.
 */
final class Normals {

  /** Parts of a mixture smaller than this are left out. */
  private static final double LEAST = 1e-5;

  /** Logs of the weights until it is settled, then the weights. */
  private double[] weight = new double[32];

  private double[] mean = new double[32];
  private double[] sd = new double[32];
  private int count;
  private double most = Double.NEGATIVE_INFINITY;
  private double middle;
  private double oddSd;

  /** Adds a part, with the log of its weight. */
  void add(double logWeight, double mean, double sd) {
    if (count == weight.length) {
      weight = Arrays.copyOf(weight, 2 * count);
      this.mean = Arrays.copyOf(this.mean, 2 * count);
      this.sd = Arrays.copyOf(this.sd, 2 * count);
    }
    weight[count] = logWeight;
    this.mean[count] = mean;
    this.sd[count++] = sd;
    most = Math.max(most, logWeight);
  }

  /**
   * Log of the sum of all weights; from then on they sum to 1, and those that matter to nothing are
   * gone.
   *
   * @param spread log standard deviation an odd value has on top
   */
  double settle(double spread) {
    double sum = 0;
    for (int i = 0; i < count; i++) {
      weight[i] = Math.exp(weight[i] - most);
      sum += weight[i];
    }
    int kept = 0;
    double keeps = 0;
    double second = 0;
    for (int i = 0; i < count; i++) {
      double part = weight[i] / sum;
      middle += part * mean[i];
      second += part * (mean[i] * mean[i] + sd[i] * sd[i]);
      if (part > LEAST) {
        keeps += part;
        weight[kept] = part;
        mean[kept] = mean[i];
        sd[kept++] = sd[i];
      }
    }
    count = kept;
    for (int i = 0; i < count; i++) {
      weight[i] /= keeps;
    }
    oddSd = Math.sqrt(second - middle * middle + spread * spread);
    return most + Math.log(sum);
  }

  /**
   * Probability of a number below one.
   *
   * @param log of that one
   * @param odd probability that the number is grossly wrong
   */
  double below(double log, double odd) {
    double sum = 0;
    for (int k = 0; k < count; k++) {
      sum += weight[k] * Normal.quickCdf((log - mean[k]) / sd[k]);
    }
    return (1 - odd) * sum + odd * Normal.quickCdf((log - middle) / oddSd);
  }

  /**
   * Density of the log of the number.
   *
   * @param log of the number
   * @param odd probability that it is grossly wrong
   */
  double density(double log, double odd) {
    double sum = 0;
    for (int k = 0; k < count; k++) {
      sum += weight[k] * Normal.density((log - mean[k]) / sd[k]) / sd[k];
    }
    return (1 - odd) * sum + odd * Normal.density((log - middle) / oddSd) / oddSd;
  }
}
