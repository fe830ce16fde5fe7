package io.github.tiderule.engine.timeline;

/**
 * A probability density over days, known on a lattice.
 *
 * <p>Its distribution function is integrated from cubic interpolation of the density (trapezoid
 * with end corrections) and joined by cubics whose slopes are the density.
 */
public final class Density {

  private final Lattice lattice;
  private final double[] density;
  private final double[] cumulative;

  private Density(Lattice lattice, double[] density, double[] cumulative) {
    this.lattice = lattice;
    this.density = density;
    this.cumulative = cumulative;
  }

  /**
   * A density in proportion to weights on a lattice.
   *
   * @param weights not negative, of positive sum
   * @throws IllegalArgumentException if they are not
   */
  static Density of(Lattice lattice, double[] weights) {
    int n = weights.length;
    double step = lattice.step();
    double[] cumulative = new double[n];
    for (int i = 1; i < n; i++) {
      double before = i >= 2 ? weights[i - 2] : 0;
      double after = i + 1 < n ? weights[i + 1] : 0;
      // trapezoid less h²/12 of the change of slope, slopes by central differences
      double slopeLeft = (weights[i] - before) / 2;
      double slopeRight = (after - weights[i - 1]) / 2;
      double cell = (weights[i - 1] + weights[i]) / 2 - (slopeRight - slopeLeft) / 12;
      cumulative[i] = cumulative[i - 1] + Math.max(0, cell);
    }
    double total = cumulative[n - 1];
    if (!(total > 0)) {
      throw new IllegalArgumentException("weights without a positive sum");
    }
    double[] density = new double[n];
    for (int i = 0; i < n; i++) {
      density[i] = weights[i] / (total * step);
      cumulative[i] /= total;
    }
    return new Density(lattice, density, cumulative);
  }

  /**
   * A density in proportion to weights at times a step apart.
   *
   * @param first the first of the times, in steps after the anchor
   * @param step days, positive
   * @param weights not negative, of positive sum
   * @throws IllegalArgumentException if they are not
   */
  public static Density ofWeights(int first, double step, double[] weights) {
    return of(new Lattice(first, weights.length, step), weights);
  }

  /** Probability of lying before a time, in days after the anchor. */
  public double cdf(double day) {
    double place = day / lattice.step() - lattice.first();
    if (!(place > 0)) {
      return 0;
    }
    int i = (int) place;
    if (i >= cumulative.length - 1) {
      return 1;
    }
    return within(i, place - i);
  }

  private double within(int i, double part) {
    double h = lattice.step();
    double p2 = part * part;
    double p3 = p2 * part;
    double value =
        cumulative[i] * (2 * p3 - 3 * p2 + 1)
            + h * density[i] * (p3 - 2 * p2 + part)
            + cumulative[i + 1] * (3 * p2 - 2 * p3)
            + h * density[i + 1] * (p3 - p2);
    return Math.min(Math.max(value, cumulative[i]), cumulative[i + 1]);
  }

  /**
   * The time below which a share lies, in days after the anchor.
   *
   * @param share 0–1, exclusive
   */
  public double quantile(double share) {
    int low = 0;
    int high = cumulative.length - 1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (cumulative[middle] <= share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double left = 0;
    double right = 1;
    for (int i = 0; i < 40; i++) {
      double middle = (left + right) / 2;
      if (within(low, middle) <= share) {
        left = middle;
      } else {
        right = middle;
      }
    }
    return (lattice.first() + low + (left + right) / 2) * lattice.step();
  }

  /**
   * The density of something that follows this after a normal lag.
   *
   * @param mean days
   * @param sd days, at least the step of the lattice
   */
  public Density after(double mean, double sd) {
    double h = lattice.step();
    int reach = (int) Math.ceil(4.5 * sd / h);
    int shift = (int) Math.floor(mean / h);
    double[] kernel = new double[2 * reach + 1];
    for (int k = 0; k < kernel.length; k++) {
      kernel[k] = Normal.density(((k - reach + shift) * h - mean) / sd);
    }
    double[] sum = new double[density.length + kernel.length - 1];
    for (int i = 0; i < density.length; i++) {
      for (int k = 0; k < kernel.length; k++) {
        sum[i + k] += density[i] * kernel[k];
      }
    }
    return of(new Lattice(lattice.first() + shift - reach, sum.length, h), sum);
  }

  /** The times the density is known at. */
  Lattice lattice() {
    return lattice;
  }

  /** How many times the density is known at. */
  public int size() {
    return density.length;
  }

  /** The time at a place, in days after the anchor. */
  public double at(int place) {
    return lattice.at(place);
  }

  /** Density per day at a place. */
  public double value(int place) {
    return density[place];
  }

  /** Days between two times. */
  public double step() {
    return lattice.step();
  }
}
