package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.Arrays;
import java.util.stream.LongStream;
import org.hamcrest.Matcher;
import org.junit.jupiter.api.Test;

/**
 * Whatever the season: nothing told of it is no number, no part of a number to come gets lost, and
 * what is cut off for speed changes nothing that is told.
 */
class NothingLostTest {

  private static final Timeline TIMELINE = Timeline.of(Parameters.load());

  /** As the package page states it: half an hour, or one part in a hundred of the interval. */
  private static final double HOURS = 0.5;

  private static final double SHARE_OF_WIDTH = 0.01;

  /** The first of those that are tried by night. */
  private static LongStream seasons() {
    return LongStream.rangeClosed(1, Nightly.of(10, 400)).parallel();
  }

  @Test
  void whatIsCutOffChangesNothing() {
    seasons()
        .forEach(
            seed -> {
              Evidence evidence = VariedEvidence.of(seed);
              Estimate told = TIMELINE.estimate(evidence);
              Estimate whole = TIMELINE.whole().estimate(evidence);
              String where = "seed " + seed;
              same(where, told.ovulation().quantile(0.5), whole.ovulation().quantile(0.5), whole);
              same(where, width(told), width(whole), whole);
              for (int i = 0; i < told.influences().size(); i++) {
                sameInfluence(where, told.influences().get(i), whole.influences().get(i), whole);
              }
            });
  }

  private static void sameInfluence(
      String where, Estimate.Pull told, Estimate.Pull whole, Estimate estimate) {
    double days = allowed(width(estimate) - whole.widthChange());
    String of = where + ", " + told.observation();
    assertThat(of, told.medianShift(), closeTo(whole.medianShift(), days));
    assertThat(of, told.widthChange(), closeTo(whole.widthChange(), 2 * days));
    assertThat(of, told.odd(), closeTo(whole.odd(), 1e-3));
    assertThat(of, told.odd(), isShare());
  }

  private static void same(String where, double told, double whole, Estimate estimate) {
    assertThat(where, told, closeTo(whole, allowed(width(estimate))));
  }

  private static double allowed(double width) {
    return Math.max(HOURS / 24, SHARE_OF_WIDTH * width);
  }

  private static double width(Estimate estimate) {
    return estimate.ovulation().quantile(0.95) - estimate.ovulation().quantile(0.05);
  }

  private static Matcher<Double> isShare() {
    return allOf(greaterThanOrEqualTo(0.0), lessThanOrEqualTo(1 + 1e-12));
  }

  @Test
  void noPartOfANumberToComeGetsLost() {
    seasons()
        .forEach(
            seed -> {
              Evidence evidence = VariedEvidence.of(seed);
              Estimate known = TIMELINE.estimate(evidence);
              Foresight foresight = TIMELINE.foresight(evidence, known);
              Series series = Series.of("A", Method.ECLIA);
              whole("seed " + seed, foresight.value(series, evidence.now() + 1));
              evidence.values().stream()
                  .map(Evidence.Value::id)
                  .limit(2)
                  .forEach(id -> whole("seed " + seed + " " + id, foresight.again(id)));
            });
  }

  /** All of its probability is there at every level, before it is known and after. */
  private static void whole(String where, ComingValue value) {
    double before = 0;
    for (double level : new double[] {1e-3, 0.3, 1, 3, 8, 20, 1e3}) {
      double below = value.below(level);
      assertThat(where, below, allOf(greaterThanOrEqualTo(before), isShare()));
      assertThat(where, sum(value.after(level)), closeTo(1, 1e-9));
      before = below;
    }
    assertThat(where, value.below(1e6), closeTo(1, 1e-4));
    assertThat(where, value.below(1e-6), lessThan(1e-2));
    Outlook outlook = value.between(1, 3, 8);
    double sum = 0;
    for (int result = 0; result < outlook.results(); result++) {
      double chance = outlook.chance(result, value.ovulations()[value.ovulations().length / 2]);
      assertThat(where, chance, isShare());
      sum += chance;
    }
    assertThat(where, sum, closeTo(1, 1e-6));
  }

  private static double sum(double[] shares) {
    assertThat(Arrays.stream(shares).allMatch(share -> share >= 0), is(true));
    return Arrays.stream(shares).sum();
  }
}
