package io.github.tiderule.benchmark;

import java.util.Collection;

/** Medians. */
final class Medians {

  private Medians() {}

  /**
   * The middle value; of two in the middle their mean.
   *
   * @throws IllegalArgumentException if there is none
   */
  static double of(Collection<Double> values) {
    if (values.isEmpty()) {
      throw new IllegalArgumentException("nothing was measured");
    }
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
