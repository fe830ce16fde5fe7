package io.github.tiderule.engine.whelping;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.RuleBase;
import org.junit.jupiter.api.Test;

class LateProgesteroneTest {

  private static final LateProgesterone MODEL = LateProgesterone.of(RuleBase.load().parameters());

  /** Share that whelps within some hours, drawn evenly over the last two and a half days. */
  private static double within(double hours, double low, double high) {
    double near = 0;
    double all = 0;
    for (int i = 0; i < 2500; i++) {
      double days = (i + 0.5) / 1000;
      double chance = MODEL.likelihood(days, low, high);
      all += chance;
      near += days * 24 < hours ? chance : 0;
    }
    return near / all;
  }

  @Test
  void thePublishedSharesComeOut() {
    double much = Double.POSITIVE_INFINITY;
    assertThat(within(48, 0, 2.7), is(closeTo(0.95, 0.03)));
    assertThat(within(24, 0, 1), is(closeTo(0.91, 0.05)));
    assertThat(within(12, 2.7, much), is(closeTo(0.10, 0.04)));
    assertThat(within(12, 5, much), is(closeTo(0.05, 0.02)));
  }

  @Test
  void aNumberCountsAsItsClass() {
    assertThat(MODEL.likelihood(1, 3, 3), is(MODEL.likelihood(1, 4.9, 4.9)));
    assertThat(MODEL.likelihood(1, 2.6, 2.6), is(MODEL.likelihood(1, 1.1, 1.1)));
    assertThat(MODEL.likelihood(1, 2.6, 2.6), is(greaterThan(MODEL.likelihood(1, 0.9, 0.9))));
    assertThat(MODEL.likelihood(-1, 2, 2), is(MODEL.likelihood(0, 2, 2)));
  }

  @Test
  void levelsAtWhelpingAndTheDayBeforeAreThePublishedOnes() {
    // half of those whose progesterone falls lie below the level of the day
    assertThat(MODEL.likelihood(0, 0, 1.1), is(closeTo(0.75 * 0.5 + 0.25 * 0.016, 0.005)));
    assertThat(MODEL.likelihood(1, 0, 3.3), is(closeTo(0.75 * 0.5 + 0.25 * 0.374, 0.005)));
  }
}
