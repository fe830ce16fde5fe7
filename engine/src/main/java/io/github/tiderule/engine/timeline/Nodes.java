package io.github.tiderule.engine.timeline;

/**
 * Points and weights that stand for a standard normal variable: the trapezoid rule over equally
 * spaced points, which converges faster than any power of the spacing.
 *
 * @param z points, in standard deviations
 * @param weight weights that sum to 1
 */
record Nodes(double[] z, double[] weight) {

  /** So many points from {@code -reach} to {@code reach}. */
  static Nodes of(int count, double reach) {
    double[] z = new double[count];
    double[] weight = new double[count];
    double sum = 0;
    for (int i = 0; i < count; i++) {
      z[i] = -reach + 2 * reach * i / (count - 1);
      weight[i] = Normal.density(z[i]);
      sum += weight[i];
    }
    for (int i = 0; i < count; i++) {
      weight[i] /= sum;
    }
    return new Nodes(z, weight);
  }

  int count() {
    return z.length;
  }
}
