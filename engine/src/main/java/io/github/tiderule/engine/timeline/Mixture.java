package io.github.tiderule.engine.timeline;

import java.util.Arrays;

/**
 * A running sum of likelihoods given by their logs, kept from under- and overflow.
 *
 * <p>Beside the likelihood itself it sums, for every observation, the part in which it is grossly
 * wrong and the likelihood of the others without it.
 */
final class Mixture {

  /** Terms this far below the largest, in logs, change nothing that can be seen. */
  private static final double HOPELESS = 60;

  /** Terms this far below it add nothing to a share that is told. */
  private static final double TRACE = 12;

  private static final double LARGE = 1000;

  private double peak = Double.NEGATIVE_INFINITY;
  private double sum;
  private double fit;
  private final double[] odd;
  private final double[] peakWithout;
  private final double[] sumWithout;

  Mixture(int observations) {
    odd = new double[observations];
    peakWithout = new double[observations];
    sumWithout = new double[observations];
    clear();
  }

  void clear() {
    peak = Double.NEGATIVE_INFINITY;
    sum = 0;
    fit = 0;
    Arrays.fill(odd, 0);
    Arrays.fill(peakWithout, Double.NEGATIVE_INFINITY);
    Arrays.fill(sumWithout, 0);
  }

  /** Whether a term would be more than a trace of the sum. */
  boolean wouldSee(double log) {
    return log > peak - TRACE;
  }

  /**
   * Adds a term.
   *
   * @param oddShare the part of it in which observation j is odd
   * @param tail probability of numbers that fit the term worse
   */
  void add(double log, double[] oddShare, double tail) {
    double part;
    if (log > peak) {
      double scale = Math.exp(peak - log);
      sum *= scale;
      fit *= scale;
      for (int j = 0; j < odd.length; j++) {
        odd[j] *= scale;
      }
      peak = log;
      part = 1;
    } else {
      part = Math.exp(log - peak);
    }
    sum += part;
    fit += part * tail;
    for (int j = 0; j < odd.length; j++) {
      odd[j] += part * oddShare[j];
    }
  }

  /** Adds the same term without observation i, {@code factor·e^log}. */
  void addWithout(int i, double log, double factor) {
    if (factor > LARGE) {
      addWithout(i, log + Math.log(factor), 1);
    } else if (log > peakWithout[i]) {
      sumWithout[i] = sumWithout[i] * Math.exp(peakWithout[i] - log) + factor;
      peakWithout[i] = log;
    } else if (log > peakWithout[i] - HOPELESS) {
      sumWithout[i] += factor * Math.exp(log - peakWithout[i]);
    }
  }

  double log() {
    return peak + Math.log(sum);
  }

  /** Share of the sum in which observation j is odd. */
  double oddShare(int j) {
    return odd[j] / sum;
  }

  /** Mean over the sum of how likely numbers are that fit worse. */
  double fit() {
    return fit / sum;
  }

  double logWithout(int i) {
    return peakWithout[i] + Math.log(Math.max(sumWithout[i], Double.MIN_NORMAL));
  }
}
