package io.github.tiderule.engine.timeline;

import java.util.Arrays;

/**
 * A smooth curve through points that never overshoots between them.
 *
 * <p>Piecewise cubic Hermite with Fritsch–Butland slopes: at an inner point the weighted harmonic
 * mean of the two neighbouring slopes, or 0 where they differ in sign; at an end the three-point
 * formula, limited so that the curve keeps its shape. Outside the points the end values hold.
 */
final class MonotoneCurve {

  private final double[] x;
  private final double[] y;
  private final double[] slope;

  private MonotoneCurve(double[] x, double[] y, double[] slope) {
    this.x = x;
    this.y = y;
    this.slope = slope;
  }

  /**
   * A curve through the given points.
   *
   * @param x strictly increasing, at least three
   * @param y as many as {@code x}
   * @throws IllegalArgumentException if the points do not make a curve
   */
  static MonotoneCurve of(double[] x, double[] y) {
    int n = x.length;
    if (n < 3 || y.length != n) {
      throw new IllegalArgumentException("a curve takes three points or more, not " + n);
    }
    double[] h = new double[n - 1];
    double[] d = new double[n - 1];
    for (int i = 0; i < n - 1; i++) {
      h[i] = x[i + 1] - x[i];
      if (!(h[i] > 0)) {
        throw new IllegalArgumentException("points out of order at " + x[i]);
      }
      d[i] = (y[i + 1] - y[i]) / h[i];
    }
    double[] slope = new double[n];
    for (int i = 1; i < n - 1; i++) {
      if (d[i - 1] * d[i] > 0) {
        double w1 = 2 * h[i] + h[i - 1];
        double w2 = h[i] + 2 * h[i - 1];
        slope[i] = (w1 + w2) / (w1 / d[i - 1] + w2 / d[i]);
      }
    }
    slope[0] = endSlope(h[0], h[1], d[0], d[1]);
    slope[n - 1] = endSlope(h[n - 2], h[n - 3], d[n - 2], d[n - 3]);
    return new MonotoneCurve(x.clone(), y.clone(), slope);
  }

  private static double endSlope(double h0, double h1, double d0, double d1) {
    double slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (slope * d0 <= 0) {
      return 0;
    }
    if (d0 * d1 <= 0 && Math.abs(slope) > 3 * Math.abs(d0)) {
      return 3 * d0;
    }
    return slope;
  }

  double at(double t) {
    int last = x.length - 1;
    if (!(t > x[0])) {
      return y[0];
    }
    if (t >= x[last]) {
      return y[last];
    }
    int found = Arrays.binarySearch(x, t);
    int i = found >= 0 ? found : -found - 2;
    double h = x[i + 1] - x[i];
    double s = (t - x[i]) / h;
    double s2 = s * s;
    double s3 = s2 * s;
    return y[i] * (2 * s3 - 3 * s2 + 1)
        + h * slope[i] * (s3 - 2 * s2 + s)
        + y[i + 1] * (3 * s2 - 2 * s3)
        + h * slope[i + 1] * (s3 - s2);
  }
}
