package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** A density on a lattice beside the distribution it was taken from. */
class DensityTest {

  private static final NormalDistribution NORMAL = NormalDistribution.of(10, 1.5);

  private static Density normal(double mean, double sd, double step, double weight) {
    Lattice lattice = Lattice.covering(mean - 7 * sd, mean + 7 * sd, step);
    double[] weights = new double[lattice.count()];
    for (int i = 0; i < weights.length; i++) {
      double z = (lattice.at(i) - mean) / sd;
      weights[i] = weight * Math.exp(-z * z / 2);
    }
    return Density.of(lattice, weights);
  }

  @Test
  void itIsTheNormalItWasTakenFrom() {
    Density density = normal(10, 1.5, 0.25, 3);
    for (double day = 5; day <= 15; day += 0.17) {
      assertThat("day " + day, density.cdf(day), closeTo(NORMAL.cumulativeProbability(day), 2e-5));
    }
    for (double share = 0.02; share < 1; share += 0.07) {
      double quantile = NORMAL.inverseCumulativeProbability(share);
      assertThat("share " + share, density.quantile(share), closeTo(quantile, 2e-4));
    }
    for (int i = 0; i < density.size(); i++) {
      assertThat(density.value(i), closeTo(NORMAL.density(density.at(i)), 1e-6));
    }
    assertThat(density.step(), is(0.25));
    assertThat(density.at(1) - density.at(0), closeTo(0.25, 1e-12));
  }

  @Test
  void outsideNothingIsLeft() {
    Density density = normal(10, 1.5, 0.25, 1);
    assertThat(density.cdf(-5), is(0.0));
    assertThat(density.cdf(density.at(0)), is(0.0));
    assertThat(density.cdf(density.at(density.size() - 1)), is(1.0));
    assertThat(density.cdf(40), is(1.0));
  }

  /**
   * One weight between two nothings, half a day apart: by the trapezoid with end corrections each
   * cell holds 1/2 + 1/24 of it, since the slopes at its ends are 1/2 and 0.
   */
  @Test
  void aTriangle() {
    Density density = Density.ofWeights(4, 0.5, new double[] {0, 1, 0});
    assertThat(density.quantile(0.5), closeTo(2.5, 1e-9));
    assertThat(density.cdf(2.5), closeTo(0.5, 1e-12));
    assertThat(density.value(1), closeTo(1 / (0.5 * 2 * (1 / 2.0 + 1 / 24.0)), 1e-12));
    assertThat(density.cdf(2.25) + density.cdf(2.75), closeTo(1, 1e-9));
  }

  @Test
  void itNeverFalls() {
    Density density = Density.ofWeights(0, 1, new double[] {0, 5, 0, 0, 0, 7, 1, 0});
    double before = 0;
    for (double day = -1; day < 9; day += 0.05) {
      double now = density.cdf(day);
      assertThat("day " + day, now >= before && now <= 1, is(true));
      before = now;
    }
    for (double share = 0.01; share < 1; share += 0.01) {
      assertThat(density.cdf(density.quantile(share)), closeTo(share, 1e-6));
    }
  }

  @Test
  void weightsOfNothingAreRefused() {
    Lattice lattice = new Lattice(0, 3, 1);
    assertThrows(IllegalArgumentException.class, () -> Density.of(lattice, new double[3]));
    double[] unknown = {0, Double.NaN, 0};
    assertThrows(IllegalArgumentException.class, () -> Density.of(lattice, unknown));
  }

  @Test
  void afterANormalLagItIsWiderAndLater() {
    Density later = normal(10, 1.5, 0.25, 1).after(6.1, 0.8);
    NormalDistribution sum = NormalDistribution.of(16.1, Math.hypot(1.5, 0.8));
    for (double share : new double[] {0.05, 0.25, 0.5, 0.75, 0.95}) {
      assertThat(later.quantile(share), closeTo(sum.inverseCumulativeProbability(share), 1e-3));
    }
    Density earlier = normal(10, 1.5, 0.25, 1).after(-2.6, 0.5);
    assertThat(earlier.quantile(0.5), closeTo(7.4, 1e-3));
  }
}
