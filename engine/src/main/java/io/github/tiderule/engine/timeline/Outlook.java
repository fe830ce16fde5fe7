package io.github.tiderule.engine.timeline;

import java.util.Arrays;

/**
 * How likely each possible result of a coming test is, by when she ovulates.
 *
 * <p>Known on a lattice of ovulations, straight lines between, and at its ends as at its last
 * place.
 */
public final class Outlook {

  private final Lattice ovulations;
  private final double[][] chance;

  /**
   * @param chance by result, then by ovulation; at each ovulation they sum to 1
   */
  Outlook(Lattice ovulations, double[][] chance) {
    this.ovulations = ovulations;
    this.chance = chance;
  }

  /** How many results are told apart. */
  public int results() {
    return chance.length;
  }

  /**
   * Probability of a result.
   *
   * @param ovulation days after the anchor
   */
  public double chance(int result, double ovulation) {
    return in(ovulations, chance[result], ovulation);
  }

  /** A value known on a lattice, at a time on it or off it. */
  static double in(Lattice lattice, double[] values, double time) {
    double place = time / lattice.step() - lattice.first();
    if (!(place > 0)) {
      return values[0];
    }
    int i = (int) place;
    if (i >= values.length - 1) {
      return values[values.length - 1];
    }
    return values[i] + (place - i) * (values[i + 1] - values[i]);
  }

  /**
   * By ovulation, the mean over LH peaks of something known for each peak.
   *
   * @param weight of each peak
   * @param value by result, then by peak
   */
  static Outlook over(Lattice peaks, double[] lag, double[] weight, double[][] value) {
    Lattice ovulations = new Lattice(peaks.first(), peaks.count() + lag.length - 1, peaks.step());
    double[] sum = new double[ovulations.count()];
    double[][] chance = new double[value.length][ovulations.count()];
    for (int i = 0; i < peaks.count(); i++) {
      for (int l = 0; l < lag.length; l++) {
        double part = weight[i] * lag[l];
        sum[i + l] += part;
        for (int v = 0; v < value.length; v++) {
          chance[v][i + l] += part * value[v][i];
        }
      }
    }
    int first = 0;
    while (first < sum.length - 1 && !(sum[first] >= Double.MIN_NORMAL)) {
      first++;
    }
    int last = sum.length - 1;
    while (last > first && !(sum[last] >= Double.MIN_NORMAL)) {
      last--;
    }
    for (double[] one : chance) {
      for (int j = first; j <= last; j++) {
        one[j] = sum[j] > 0 ? one[j] / sum[j] : 1.0 / chance.length;
      }
      Arrays.fill(one, 0, first, one[first]);
      Arrays.fill(one, last + 1, one.length, one[last]);
    }
    return new Outlook(ovulations, chance);
  }
}
