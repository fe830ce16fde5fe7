package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.parameter.Parameters;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What is foreseen of a test against what the estimator makes of its result. */
class ForesightTest {

  private static final Timeline TIMELINE = Timeline.of(Parameters.load());
  private static final double[] EDGES = {0.6, 0.9, 1.2, 1.6, 2.5, 4, 6, 9, 13, 20};

  private static double quantile(double[] days, double[] chance, double share) {
    double sum = 0;
    for (int i = 0; i < days.length; i++) {
      if (sum + chance[i] >= share) {
        double part = (share - sum) / chance[i];
        // each place stands for the half step on either side of it
        return days[i] + (part - 0.5) * (days[1] - days[0]);
      }
      sum += chance[i];
    }
    return days[days.length - 1];
  }

  /** Adding a value to the season moves the estimate to where foresight said it would. */
  @Tag("long")
  @Test
  void knowsWhereAValueWouldMoveTheEstimate() {
    int tried = 0;
    for (int seed = 1; seed <= 40; seed++) {
      Evidence evidence = InventedEvidence.of(seed).evidence();
      if (evidence.values().isEmpty() || !evidence.intervals().isEmpty()) {
        continue;
      }
      Evidence.Value last = evidence.values().get(evidence.values().size() - 1);
      Series series = last.series();
      double day = last.day() + 1;
      Estimate now = TIMELINE.estimate(evidence);
      ComingValue coming = TIMELINE.foresight(evidence, now).value(series, day);
      for (double factor : new double[] {0.9, 1.4, 2}) {
        double value = last.ngPerMl() * factor;
        Estimate after =
            TIMELINE.estimate(
                evidence.with(new Evidence.Value("next", day, value, series, false, false)));
        double[] chance = coming.after(value);
        String where = "seed " + seed + ", value " + value;
        double median = quantile(coming.ovulations(), chance, 0.5);
        assertThat(where, median, closeTo(after.ovulation().quantile(0.5), 0.2));
        double width =
            quantile(coming.ovulations(), chance, 0.95)
                - quantile(coming.ovulations(), chance, 0.05);
        double truth = after.ovulation().quantile(0.95) - after.ovulation().quantile(0.05);
        assertThat(where, width / truth, closeTo(1, 0.15));
        tried++;
      }
    }
    assertThat(tried, greaterThan(20));
  }

  /** How likely a low value is rests on smears and scans too, as what it would say does. */
  @Test
  void aValueIsForeseenFromEverythingThatIsKnown() {
    int tried = 0;
    for (int seed = 1; seed <= 40; seed++) {
      Evidence evidence = InventedEvidence.of(seed).evidence();
      if (evidence.smears().isEmpty() && evidence.scans().isEmpty()) {
        continue;
      }
      Estimate now = TIMELINE.estimate(evidence);
      Series series = Series.of("A", Method.RIA);
      double day = now.ovulation().quantile(0.5);
      ComingValue coming = TIMELINE.foresight(evidence, now).value(series, day);
      Outlook outlook = coming.between(EDGES);
      double[] before = coming.before();
      double sum = 0;
      for (int c = 0; c < EDGES.length; c++) {
        for (int i = 0; i < before.length; i++) {
          sum += before[i] * outlook.chance(c, coming.ovulations()[i]);
        }
        assertThat("seed " + seed + ", " + EDGES[c], coming.below(EDGES[c]), closeTo(sum, 1e-6));
      }
      tried++;
    }
    assertThat(tried, greaterThan(10));
  }

  /** Left out and told again, a value gives back the estimate it was part of. */
  @Tag("long")
  @Test
  void givesBackTheEstimateWithAKnownValue() {
    for (int seed = 1; seed <= 30; seed++) {
      Evidence evidence = InventedEvidence.of(seed).evidence();
      if (evidence.values().size() < 2) {
        continue;
      }
      Evidence.Value last = evidence.values().get(evidence.values().size() - 1);
      Estimate now = TIMELINE.estimate(evidence);
      ComingValue again = TIMELINE.foresight(evidence, now).again(last.id());
      double median = quantile(again.ovulations(), again.after(last.ngPerMl()), 0.5);
      assertThat("seed " + seed, median, closeTo(now.ovulation().quantile(0.5), 0.25));
    }
  }

  @Tag("long")
  @Test
  void everyResultHasItsChanceAndTheyAreWhole() {
    for (int seed = 1; seed <= 20; seed++) {
      Evidence evidence = InventedEvidence.of(seed).evidence();
      Estimate now = TIMELINE.estimate(evidence);
      Foresight foresight = TIMELINE.foresight(evidence, now);
      double day = now.ovulation().quantile(0.5) - 1;
      Series series = Series.of("A", Method.RIA);
      for (Outlook outlook :
          new Outlook[] {
            foresight.value(series, day).between(EDGES),
            foresight.valueWithLh(series, day).betweenWithLh(EDGES),
            foresight.lh(day),
            foresight.smear(day)
          }) {
        for (double ovulation = day - 12; ovulation < day + 12; ovulation += 0.7) {
          double sum = 0;
          for (int r = 0; r < outlook.results(); r++) {
            double chance = outlook.chance(r, ovulation);
            assertThat(chance, greaterThan(-1e-9));
            sum += chance;
          }
          assertThat("seed " + seed, sum, closeTo(1, 1e-5));
        }
      }
    }
  }

  /** Blood tested for both tells of each alone what a test of it alone tells. */
  @Test
  void bothTestsOnOneBloodAreEachAsTheyAreAlone() {
    for (int seed = 1; seed <= 12; seed++) {
      Evidence evidence = InventedEvidence.of(seed).evidence();
      Estimate now = TIMELINE.estimate(evidence);
      Foresight foresight = TIMELINE.foresight(evidence, now);
      double day = now.peak().quantile(0.5);
      ComingValue coming = foresight.valueWithLh(Series.of("A", Method.RIA), day);
      Outlook both = coming.betweenWithLh(EDGES);
      Outlook value = coming.between(EDGES);
      Outlook lh = foresight.lh(day);
      int values = EDGES.length + 1;
      for (double share : new double[] {0.1, 0.3, 0.5, 0.7, 0.9}) {
        double ovulation = now.ovulation().quantile(share);
        double positive = 0;
        for (int r = 0; r < values; r++) {
          assertThat(
              both.chance(r, ovulation) + both.chance(values + r, ovulation),
              closeTo(value.chance(r, ovulation), 1e-9));
          positive += both.chance(values + r, ovulation);
        }
        // the one looks at peaks two steps apart where the other looks at every one
        assertThat("seed " + seed, positive, closeTo(lh.chance(0, ovulation), 0.05));
      }
    }
  }

  /** A test before the surge is likelier positive the nearer ovulation is to two days later. */
  @Test
  void aPositiveLhTestPointsToOvulationTwoDaysLater() {
    Evidence evidence = InventedEvidence.of(3).evidence();
    Estimate now = TIMELINE.estimate(evidence);
    double day = now.peak().quantile(0.5);
    Outlook outlook = TIMELINE.foresight(evidence, now).lh(day);
    assertThat(outlook.chance(0, day + 2), greaterThan(outlook.chance(0, day + 4.5)));
    assertThat(outlook.chance(0, day + 2), greaterThan(0.5));
    assertThat(outlook.chance(0, day - 1.5), lessThan(0.3));
  }

  /** A value a day before ovulation is lower than one two days after it. */
  @Test
  void laterOvulationMakesForLowerValues() {
    Evidence evidence = InventedEvidence.of(5).evidence();
    Estimate now = TIMELINE.estimate(evidence);
    Series series = Series.of("A", Method.RIA);
    double day = now.ovulation().quantile(0.5);
    Outlook outlook = TIMELINE.foresight(evidence, now).value(series, day).between(4);
    double early = outlook.chance(0, now.ovulation().quantile(0.1));
    double late = outlook.chance(0, now.ovulation().quantile(0.9));
    assertThat(early, lessThan(late));
  }

  @Tag("long")
  @Test
  void aQuantileIsWhereItsShareLies() {
    for (int seed = 1; seed <= 10; seed++) {
      Evidence evidence = InventedEvidence.of(seed).evidence();
      Estimate now = TIMELINE.estimate(evidence);
      for (double ahead = -8; ahead <= 6; ahead += 3.5) {
        double day = now.peak().quantile(0.5) + ahead;
        ComingValue value =
            TIMELINE.foresight(evidence, now).value(Series.of("A", Method.CLIA), day);
        for (double share : new double[] {0.05, 0.5, 0.95}) {
          String where = "seed " + seed + ", day " + day + ", share " + share;
          assertThat(where, value.below(value.quantile(share)), closeTo(share, 1e-3));
        }
      }
    }
  }
}
