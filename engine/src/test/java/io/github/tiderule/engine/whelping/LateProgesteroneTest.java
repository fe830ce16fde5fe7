package io.github.tiderule.engine.whelping;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.fact.assay.Method;
import org.junit.jupiter.api.Test;

class LateProgesteroneTest {

  private static final LateProgesterone MODEL = LateProgesterone.of(RuleBase.load().parameters());
  private static final double MUCH = Double.POSITIVE_INFINITY;

  /** Sum of the probability of a level, drawn evenly over the last days up to some hours. */
  private static double sum(Method method, double hours, double low, double high) {
    double sum = 0;
    for (int i = 0; i < 4000 && (i + 0.5) * 24 / 1000 < hours; i++) {
      sum += MODEL.likelihood(method, (i + 0.5) / 1000, low, high);
    }
    return sum;
  }

  /** Share that whelps within some hours of a level below a limit. */
  private static double within(Method method, double hours, double limit) {
    return sum(method, hours, 0, limit) / sum(method, 96, 0, limit);
  }

  /** Share of those within half a day that still stand at a level or above. */
  private static double inSpite(Method method, double least) {
    return sum(method, 12, least, MUCH) / sum(method, 12, 0, MUCH);
  }

  @Test
  void thePublishedSharesByChemiluminescenceComeOut() {
    assertThat(within(Method.CLIA, 48, 2.7), is(closeTo(0.95, 0.02)));
    assertThat(within(Method.CLIA, 24, 1), is(closeTo(0.91, 0.03)));
    assertThat(inSpite(Method.CLIA, 2.7), is(closeTo(0.10, 0.03)));
    assertThat(inSpite(Method.CLIA, 5), is(closeTo(0.05, 0.02)));
  }

  @Test
  void thePublishedSharesByRadioimmunoassayComeOut() {
    assertThat(within(Method.RIA, 48, 2.7), is(closeTo(0.99, 0.01)));
    assertThat(within(Method.RIA, 24, 1), is(closeTo(1, 0.01)));
    assertThat(inSpite(Method.RIA, 2.7), is(closeTo(0.06, 0.02)));
    assertThat(inSpite(Method.RIA, 5), is(closeTo(0.02, 0.01)));
  }

  @Test
  void middleLevelsByDrySlideLieWithinThePublishedSpans() {
    // 0.4 to 9, 0.9 to 11 and 2.2 to 13.5 nmol/L; their middles on the logs
    assertThat(MODEL.level(Method.DRY_SLIDE, 0.25) * 3.18, is(closeTo(1.9, 0.2)));
    assertThat(MODEL.level(Method.DRY_SLIDE, 0.75) * 3.18, is(closeTo(3.15, 0.3)));
    assertThat(MODEL.level(Method.DRY_SLIDE, 1.25) * 3.18, is(closeTo(5.45, 0.4)));
  }

  @Test
  void aNumberCountsAsItsClassOnItsOwnScale() {
    assertThat(clia(3), is(clia(4.9)));
    assertThat(clia(2.6), is(clia(1.1)));
    assertThat(clia(2.6), is(greaterThan(clia(0.9))));
    assertThat(
        MODEL.likelihood(Method.DRY_SLIDE, 1, 1, 1),
        is(MODEL.likelihood(Method.DRY_SLIDE, 1, 2.5, 2.5)));
    assertThat(MODEL.likelihood(Method.CLIA, -1, 2, 2), is(MODEL.likelihood(Method.CLIA, 0, 2, 2)));
  }

  private static double clia(double number) {
    return MODEL.likelihood(Method.CLIA, 1, number, number);
  }
}
