package io.github.tiderule.cases.cohort;

import java.util.SplittableRandom;

/** Random draws that are the same for the same seed on every machine. */
public final class Draws {

  private final SplittableRandom random;

  private Draws(SplittableRandom random) {
    this.random = random;
  }

  /** Draws of their own for one of many things made from one seed. */
  public static Draws of(long seed, long number) {
    return new Draws(new SplittableRandom(seed * 0x9E3779B97F4A7C15L + number));
  }

  public double uniform(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  public boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  /** An index, by weights that sum to 1. */
  public int pick(double... weights) {
    double left = random.nextDouble();
    for (int i = 0; i < weights.length - 1; i++) {
      left -= weights[i];
      if (left < 0) {
        return i;
      }
    }
    return weights.length - 1;
  }

  public double normal(double mean, double sd) {
    double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - random.nextDouble()));
    return mean + sd * radius * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
  }

  public double logNormal(double median, double logSd) {
    return median * StrictMath.exp(normal(0, logSd));
  }

  /**
   * Gamma, by the method of Marsaglia and Tsang.
   *
   * @param shape at least 1
   */
  double gamma(double shape, double scale) {
    double d = shape - 1 / 3.0;
    double c = 1 / StrictMath.sqrt(9 * d);
    while (true) {
      double z = normal(0, 1);
      double v = 1 + c * z;
      if (v > 0) {
        double cube = v * v * v;
        double u = 1 - random.nextDouble();
        if (StrictMath.log(u) < z * z / 2 + d - d * cube + d * StrictMath.log(cube)) {
          return d * cube * scale;
        }
      }
    }
  }

  public double gammaWith(double mean, double sd) {
    return gamma(mean * mean / (sd * sd), sd * sd / mean);
  }

  /** Beta with both parameters at least 1. */
  public double beta(double a, double b) {
    double x = gamma(a, 1);
    return x / (x + gamma(b, 1));
  }

  /** Student's t with five degrees of freedom: heavy tails, standard deviation 1.29. */
  public double t5() {
    return normal(0, 1) / StrictMath.sqrt(gamma(2.5, 2) / 5);
  }
}
