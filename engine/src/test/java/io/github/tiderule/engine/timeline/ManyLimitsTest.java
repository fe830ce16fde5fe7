package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.parameter.Parameters;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A file may hold hundreds of results below a limit; they cost no more than in proportion. */
class ManyLimitsTest {

  private static final Timeline TIMELINE = Timeline.of(Parameters.load());
  private static final int NUMBERS = 3;

  @Test
  void allButEachIsAllButOneForEach() {
    Random random = new Random(7);
    for (int k = 1; k <= 9; k++) {
      IntervalProbability limits = drawn(random, k);
      double[] each = new double[k];
      for (int freed = -1; freed < NUMBERS; freed++) {
        limits.free(freed, -1, 0.4, 0, 0);
        limits.allButEach(each);
        for (int q = 0; q < k; q++) {
          assertThat(k + " limits, without " + q, each[q], closeTo(limits.allBut(q), 1e-14));
        }
      }
    }
  }

  private static IntervalProbability drawn(Random random, int k) {
    IntervalProbability limits = new IntervalProbability(NUMBERS, k, 0.02);
    for (int q = 0; q < k; q++) {
      double low = random.nextGaussian();
      limits.expect(q, low, low + 1 + random.nextDouble());
    }
    double[][] inverse = new double[NUMBERS][NUMBERS];
    for (int i = 0; i < NUMBERS; i++) {
      inverse[i][i] = 2 + random.nextDouble();
    }
    double[] noise = IntStream.range(0, k).mapToDouble(q -> 0.05 + random.nextDouble()).toArray();
    ProgesteroneData.Reading reading =
        new ProgesteroneData.Reading(
            0, new Assay[0], new double[0][0], 0, new double[k][NUMBERS + k], noise, new double[0]);
    limits.given(
        reading,
        inverse,
        normals(random, NUMBERS),
        normals(random, NUMBERS + k),
        normals(random, NUMBERS + k));
    return limits;
  }

  private static double[] normals(Random random, int count) {
    return random.doubles(count, -0.6, 0.6).toArray();
  }

  @Test
  void costGrowsWithTheirNumberAndNoFaster() {
    int limits = Nightly.of(40, 60);
    cost(limits);
    double few = Math.min(cost(limits), cost(limits));
    double many = cost(4 * limits);
    // four times as many: four times the cost, and as much again for a busy machine
    assertThat(many / few, lessThan(8.0));
  }

  /** Processor time of a season with so many results below a limit, ns. */
  private static double cost(int limits) {
    Series series = Series.of("A", Method.CLIA);
    List<Evidence.Interval> below =
        IntStream.range(0, limits)
            .mapToObj(
                i ->
                    new Evidence.Interval(
                        "p" + i, 12.0 * i / limits, 0, 1, series, false, false, false))
            .toList();
    Evidence evidence =
        new Evidence(
            Evidence.NOTHING.firstBlood(),
            0.0,
            12,
            List.of(),
            List.of(),
            below,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of());
    long from = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    TIMELINE.estimate(evidence);
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - from;
  }
}
