package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * A quarter of a normal of 0 and 1, three quarters of one of 2 and 0.5: mean 1.5, mean square
 * 0.25·1 + 0.75·4.25 = 3.4375, so variance 1.1875; an odd number has 0.9² more.
 */
class NormalsTest {

  private static final NormalDistribution FIRST = NormalDistribution.of(0, 1);
  private static final NormalDistribution SECOND = NormalDistribution.of(2, 0.5);
  private static final NormalDistribution ODD =
      NormalDistribution.of(1.5, Math.sqrt(1.1875 + 0.81));

  private static void compare(Normals normals) {
    for (double log = -3; log <= 5; log += 0.37) {
      for (double odd : new double[] {0, 0.02, 0.5, 1}) {
        double below =
            0.25 * FIRST.cumulativeProbability(log) + 0.75 * SECOND.cumulativeProbability(log);
        double density = 0.25 * FIRST.density(log) + 0.75 * SECOND.density(log);
        String where = "log " + log + ", odd " + odd;
        assertThat(
            where,
            normals.below(log, odd),
            closeTo((1 - odd) * below + odd * ODD.cumulativeProbability(log), 1e-5));
        assertThat(
            where,
            normals.density(log, odd),
            closeTo((1 - odd) * density + odd * ODD.density(log), 1e-5));
      }
    }
  }

  @Test
  void itIsTheSumOfItsParts() {
    Normals normals = new Normals();
    normals.add(-300, 0, 1);
    normals.add(-300 + Math.log(3), 2, 0.5);
    assertThat(normals.settle(0.9), closeTo(-300 + Math.log(4), 1e-9));
    compare(normals);
  }

  /** More parts than it has room for at first, one of them next to nothing. */
  @Test
  void manyPartsAreKept() {
    Normals normals = new Normals();
    normals.add(-14, -40, 1);
    for (int i = 0; i < 75; i++) {
      normals.add(i % 3 == 0 ? 0 : Math.log(1.5), i % 3 == 0 ? 0 : 2, i % 3 == 0 ? 1 : 0.5);
    }
    assertThat(normals.settle(0.9), closeTo(Math.log(100 + Math.exp(-14)), 1e-9));
    compare(normals);
  }
}
