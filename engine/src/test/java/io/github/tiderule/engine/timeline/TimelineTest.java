package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.rules.parameter.Parameters;
import org.junit.jupiter.api.Test;

/** What must hold of the estimator whatever the season; seasons are drawn from seeds 1, 2, 3 … */
class TimelineTest {

  private static final Timeline TIMELINE = Timeline.of(Parameters.load());
  private static final double HOUR = 1 / 24.0;
  private static final double[] SHARES = {0.05, 0.25, 0.5, 0.75, 0.95};

  private static double median(Evidence evidence) {
    return TIMELINE.estimate(evidence).ovulation().quantile(0.5);
  }

  @Test
  void halvingTheGridMovesNoQuantileByAnHour() {
    Timeline finer = TIMELINE.withStep(0.125);
    for (int seed = 1; seed <= 80; seed++) {
      Evidence evidence = InventedEvidence.of(seed).evidence();
      Estimate coarse = TIMELINE.estimate(evidence);
      Estimate fine = finer.estimate(evidence);
      for (double share : SHARES) {
        String where = "seed " + seed + ", share " + share;
        assertThat(
            where,
            fine.ovulation().quantile(share),
            closeTo(coarse.ovulation().quantile(share), HOUR));
        assertThat(
            where, fine.peak().quantile(share), closeTo(coarse.peak().quantile(share), HOUR));
      }
    }
  }

  @Test
  void theSameEvidenceGivesTheSameBits() {
    for (int seed = 1; seed <= 20; seed++) {
      Estimate once = TIMELINE.estimate(InventedEvidence.of(seed).evidence());
      Estimate again = TIMELINE.estimate(InventedEvidence.of(seed).evidence());
      for (int i = 0; i < once.ovulation().size(); i++) {
        assertThat(again.ovulation().value(i), equalTo(once.ovulation().value(i)));
      }
      assertThat(again.influences(), equalTo(once.influences()));
    }
  }

  @Test
  void oneGrosslyWrongValueDoesNotCarryTheDateAndIsNamed() {
    InventedEvidence season = InventedEvidence.of(7);
    Evidence right = season.evidence();
    int wrong = season.values.size() - 3;
    Evidence slip = season.withValue(wrong, season.values.get(wrong).ngPerMl() * 3.18 * 3);
    Estimate estimate = TIMELINE.estimate(slip);
    assertThat(estimate.ovulation().quantile(0.5), closeTo(median(right), 0.75));
    String id = season.values.get(wrong).id();
    for (Estimate.Pull pull : estimate.influences()) {
      if (pull.observation().equals(id)) {
        assertThat(pull.odd(), greaterThan(0.9));
      } else {
        assertThat(pull.odd(), lessThan(0.1));
      }
    }
  }

  /** What an observation is said to do is what leaving it out does. */
  @Test
  void influenceIsTheDifferenceOfLeavingOut() {
    for (int seed = 1; seed <= 30; seed++) {
      Evidence evidence = InventedEvidence.of(seed).evidence();
      double with = median(evidence);
      for (Estimate.Pull pull : TIMELINE.estimate(evidence).influences()) {
        double without = median(evidence.without(pull.observation()));
        assertThat(
            "seed " + seed + ", " + pull.observation(),
            pull.medianShift(),
            closeTo(with - without, 2 * HOUR));
      }
    }
  }
}
