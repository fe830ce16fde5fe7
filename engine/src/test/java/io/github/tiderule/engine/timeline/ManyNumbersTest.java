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

/**
 * A file may hold hundreds of progesterone numbers. Of more than {@link GaussianTerm#FEW} not every
 * two are tried for being odd together: what that may cost is bounded here, and what it saves.
 */
class ManyNumbersTest {

  private static final Parameters PARAMETERS = Parameters.load();
  private static final Model MODEL = new Model(PARAMETERS);
  private static final Timeline TIMELINE = Timeline.of(PARAMETERS);
  private static final double PEAK = 8;

  /** Of a share of oddness; both as the package page states them. */
  private static final double SHARE = 0.01;

  /** Of a log likelihood, as far as it changes in half a day. */
  private static final double LOG = 0.02;

  @Test
  void sayWhatTryingEveryTwoSays() {
    Random random = new Random(11);
    for (int odd = 0; odd <= 2; odd++) {
      for (int count : new int[] {22, 36}) {
        Evidence evidence = season(count, odd, random);
        ProgesteroneData data = ProgesteroneData.of(MODEL, evidence);
        double[][] all = new double[2][];
        for (double peak = PEAK - 1; peak <= PEAK + 1; peak += 0.5) {
          double[] some = logs(new GaussianTerm(MODEL, data), data, peak);
          double[] every = logs(new GaussianTerm(MODEL, data, count), data, peak);
          for (int i = 0; i < count; i++) {
            String where = count + " numbers, " + odd + " odd, peak " + peak + ", number " + i;
            assertThat(where, some[count + 1 + i], closeTo(every[count + 1 + i], SHARE));
          }
          if (all[0] != null) {
            for (int i = 0; i <= count; i++) {
              String where = count + " numbers, " + odd + " odd, peak " + peak + ", without " + i;
              assertThat(where, some[i] - all[0][i], closeTo(every[i] - all[1][i], LOG));
            }
          }
          all[0] = some;
          all[1] = every;
        }
      }
    }
  }

  /** Log likelihood with all, then without each, then how odd each looks. */
  private static double[] logs(GaussianTerm term, ProgesteroneData data, double peak) {
    int n = data.count();
    for (int i = 0; i < n; i++) {
      double days = data.day(i) - peak;
      double base = MODEL.curve.baseShare(days);
      term.place(i, MODEL.curve.logMean(days), MODEL.baselineSd * base, MODEL.riseSd * (1 - base));
    }
    Mixture sum = new Mixture(n);
    term.addTo(new Mixture[] {sum}, new double[] {0}, data.readings());
    double[] logs = new double[2 * n + 1];
    logs[n] = sum.log();
    for (int i = 0; i < n; i++) {
      logs[i] = sum.logWithout(i);
      logs[n + 1 + i] = sum.oddShare(i);
    }
    return logs;
  }

  /** Numbers on the common course with some scatter, the last but some of them off by far. */
  private static Evidence season(int count, int odd, Random random) {
    Series series = Series.of("A", Method.CLIA);
    List<Evidence.Value> values =
        IntStream.range(0, count)
            .mapToObj(
                i -> {
                  double day = 16.0 * i / count;
                  double log = MODEL.curve.logMean(day - PEAK) + 0.12 * random.nextGaussian();
                  boolean off = i == count / 2 + 3 ? odd > 1 : i == count / 2 && odd > 0;
                  double number = Math.exp(log + (off ? 1.15 : 0));
                  return new Evidence.Value("p" + i, day, number, series, false, false);
                })
            .toList();
    return new Evidence(
        Evidence.NOTHING.firstBlood(),
        0.0,
        16,
        List.of(),
        values,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  @Test
  void costGrowsNoFasterThanTheSquareOfTheirNumber() {
    int numbers = Nightly.of(24, 40);
    cost(numbers);
    double few = cost(numbers);
    double more = cost(2 * numbers);
    double most = cost(4 * numbers);
    // twice as many: hardly four times the cost, and half as much again for a busy machine
    assertThat(more / few, lessThan(6.0));
    assertThat(most / more, lessThan(6.0));
  }

  /** Processor time of a season with so many numbers, ns. */
  private static double cost(int count) {
    Evidence evidence = season(count, 1, new Random(5));
    long from = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    TIMELINE.estimate(evidence);
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - from;
  }
}
