package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

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

  private static double width(Evidence evidence) {
    Density ovulation = TIMELINE.estimate(evidence).ovulation();
    return ovulation.quantile(0.95) - ovulation.quantile(0.05);
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

  /**
   * A further number that lies where the estimate expects it widens the interval by no more than
   * eight hours (6.6 are the most seen): it can still make another course likelier.
   */
  @Test
  void aConsistentValueDoesNotWidenTheInterval() {
    int tried = 0;
    for (int seed = 1; seed <= 120; seed++) {
      InventedEvidence season = InventedEvidence.of(seed);
      if (season.values.size() < 2) {
        continue;
      }
      Evidence.Value latest = season.values.get(season.values.size() - 1);
      double day = latest.day() + 1;
      Density ovulation = TIMELINE.estimate(season.evidence()).ovulation();
      double expected =
          expected(TIMELINE.reading(season.evidence(), latest.series(), ovulation), day, ovulation);
      tried++;
      assertThat(
          "seed " + seed,
          width(season.withAnother(day, expected)),
          lessThanOrEqualTo(width(season.evidence()) + 8 * HOUR));
    }
    assertThat(tried, greaterThan(60));
  }

  /** The median of a coming value. */
  private static double expected(CurveReading reading, double day, Density ovulation) {
    double low = Math.log(0.1);
    double high = Math.log(100);
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      double below = 0;
      for (int k = 0; k < ovulation.size(); k++) {
        below +=
            ovulation.value(k)
                * ovulation.step()
                * reading.probability(day - ovulation.at(k), Double.NEGATIVE_INFINITY, middle);
      }
      if (below < 0.5) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return Math.exp(low);
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
