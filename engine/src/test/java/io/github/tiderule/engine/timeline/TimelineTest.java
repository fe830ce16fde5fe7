package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.rules.parameter.Parameters;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What must hold of the estimator whatever the season; seasons are drawn from seeds 1, 2, 3 … */
class TimelineTest {

  /** Values a twelfth apart. */
  private static final double TWELFTH = 1.085;

  private static final Timeline TIMELINE = Timeline.of(Parameters.load());
  private static final double HOUR = 1 / 24.0;
  private static final double[] SHARES = {0.05, 0.25, 0.5, 0.75, 0.95};

  private static double median(Evidence evidence) {
    return TIMELINE.estimate(evidence).ovulation().quantile(0.5);
  }

  @Tag("long")
  @Test
  void halvingTheGridMovesNoQuantileByAnHour() {
    Timeline finer = TIMELINE.withStep(0.125);
    for (int seed = 1; seed <= Nightly.of(8, 80); seed++) {
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
  @Tag("long")
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

  @Tag("long")
  @Test
  void wholeDaysMoveEverythingByThemselvesAndNothingElse() {
    for (int seed = 1; seed <= 30; seed++) {
      InventedEvidence season = InventedEvidence.of(seed);
      Estimate here = TIMELINE.estimate(season.evidence());
      Estimate later = TIMELINE.estimate(season.later(29));
      for (double share : SHARES) {
        assertThat(
            "seed " + seed,
            later.ovulation().quantile(share),
            closeTo(here.ovulation().quantile(share) + 29, 1e-6));
      }
      // what is cut off at an end, at most a ten-millionth, can begin a place further on
      assertThat("seed " + seed, later.plateau(), closeTo(here.plateau(), 2e-7));
      assertThat("seed " + seed, later.noOvulation(), closeTo(here.noOvulation(), 2e-7));
    }
  }

  /**
   * A higher latest value, as long as it looks neither like an error nor like the end of a rest,
   * puts ovulation earlier or leaves it: where the values before it may be a rest, a steeper last
   * step says that the surge has only now begun. Where the speed of the rise is free, a steeper
   * last step also argues for a faster riser that began later; two hours is the most that this was
   * seen to win by, three are granted.
   */
  @Tag("long")
  @Test
  void raisingTheLatestValueNeverMovesOvulationLater() {
    double hair = 3 * HOUR;
    int steps = 0;
    int seasons = Nightly.of(30, 120);
    for (int seed = 1; seed <= seasons; seed++) {
      InventedEvidence season = InventedEvidence.of(seed);
      int latest = season.values.size() - 1;
      if (latest < 0 || season.values.get(latest).day() < season.lastDay()) {
        continue;
      }
      String id = season.values.get(latest).id();
      double before = Double.POSITIVE_INFINITY;
      for (double factor : new double[] {0.8, 1, 1.2, 1.45, 1.75}) {
        double value = season.values.get(latest).ngPerMl() * factor;
        Estimate estimate = TIMELINE.estimate(season.withValue(latest, value));
        if (odd(estimate, id) < 0.1 && estimate.plateau() < 0.1) {
          double now = estimate.ovulation().quantile(0.5);
          assertThat("seed " + seed + ", factor " + factor, now - before, lessThan(hair));
          before = now;
          steps++;
        }
      }
    }
    assertThat(steps, greaterThan(seasons * 10 / 3));
  }

  /**
   * One more value that fits, the one least likely to be an error among values a twelfth apart,
   * narrows the 90 % interval, or widens it by less than four hours or a twentieth: it can also
   * make a course likelier that leaves more open.
   */
  @Tag("long")
  @Test
  void aConsistentValueHardlyEverWidens() {
    double hair = 4 * HOUR;
    int narrower = 0;
    int seasons = 0;
    for (int seed = 1; seed <= Nightly.of(5, 40); seed++) {
      InventedEvidence season = InventedEvidence.of(seed);
      if (season.values.isEmpty()) {
        continue;
      }
      double day = season.lastDay() + 1;
      // a third apart first, then a twelfth apart around the one that fits best
      double best = fitting(season, day, 0.3, 40, Math.pow(TWELFTH, 4));
      double near = Math.pow(TWELFTH, 3);
      Estimate fits =
          TIMELINE.estimate(
              season.plus("next", day, fitting(season, day, best / near, best * near, TWELFTH)));
      double before = width(TIMELINE.estimate(season.evidence()));
      double widening = width(fits) - before;
      assertThat("seed " + seed, widening, lessThan(Math.max(hair, before / 20)));
      narrower += widening < 0 ? 1 : 0;
      seasons++;
    }
    assertThat(narrower, greaterThan(seasons * 8 / 10));
  }

  /** The value, of those so many times apart, that is least likely to be an error. */
  private static double fitting(
      InventedEvidence season, double day, double from, double to, double apart) {
    double best = from;
    double least = Double.POSITIVE_INFINITY;
    for (double value = from; value < to; value *= apart) {
      double odd = odd(TIMELINE.estimate(season.plus("next", day, value)), "next");
      if (odd < least) {
        least = odd;
        best = value;
      }
    }
    return best;
  }

  private static double width(Estimate estimate) {
    return estimate.ovulation().quantile(0.95) - estimate.ovulation().quantile(0.05);
  }

  private static double odd(Estimate estimate, String id) {
    return estimate.influences().stream()
        .filter(pull -> pull.observation().equals(id))
        .mapToDouble(Estimate.Pull::odd)
        .findFirst()
        .orElseThrow();
  }
}
