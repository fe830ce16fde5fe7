package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.engine.timeline.Estimate;
import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.engine.timeline.Outlook;
import io.github.tiderule.engine.timeline.Timeline;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What a test is worth, beside trying every plan after every result. */
class TestValueTest {

  private static final double SPACING = 22;

  private final Outlook outlook = lhOn(9.4);

  /** An LH test of a season of which first blood alone is known. */
  private static Outlook lhOn(double day) {
    Timeline timeline = Timeline.of(PlainSeason.PARAMETERS);
    Evidence evidence =
        new Evidence(
            new FirstBlood(LocalDate.of(2027, 3, 1), Certainty.SEEN),
            0.5,
            day,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of());
    Estimate known = timeline.estimate(evidence);
    return timeline.foresight(evidence, known).lh(day);
  }

  private static PlainSeason season() {
    PlainSeason season = new PlainSeason(Semen.FROZEN, Route.TRANSCERVICAL, 11.2, 1.6);
    for (int day = 12; day <= 16; day++) {
      season.slot(day, 10, 17).slot(day, 17, 24);
    }
    return season;
  }

  private static Instant at(double day) {
    return PlainSeason.AXIS.instant(day);
  }

  /** Expected share, by ovulation, of the set that is best after each result. */
  private double[] follow(PlainSeason season, List<List<Integer>> sets) {
    double[] days = season.days();
    double[] chances = season.chances();
    double[] total = new double[days.length];
    for (int r = 0; r < outlook.results(); r++) {
      double most = -1;
      double[] best = new double[days.length];
      for (List<Integer> set : sets) {
        double[] shares = new double[days.length];
        double sum = 0;
        for (int i = 0; i < days.length; i++) {
          shares[i] = chances[i] * outlook.chance(r, days[i]) * season.share(days[i], set);
          sum += shares[i];
        }
        if (sum > most) {
          most = sum;
          best = shares;
        }
      }
      for (int i = 0; i < days.length; i++) {
        total[i] += best[i];
      }
    }
    return total;
  }

  private static double sum(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum;
  }

  private static double shortfall(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += Math.max(0, other[i] - one[i]);
    }
    return sum;
  }

  /**
   * Sets of all or fewer doses that begin with the settled ones, and whose others can be decided at
   * or after a time.
   */
  private static List<List<Integer>> open(
      PlainSeason season, int doses, List<Integer> settled, Instant result) {
    List<List<Integer>> open = new ArrayList<>();
    for (int size = Math.min(settled.size() + 1, doses); size <= doses; size++) {
      for (List<Integer> set : season.sets(size, SPACING)) {
        boolean starts = set.subList(0, settled.size()).equals(settled);
        boolean late =
            set.stream()
                .skip(settled.size())
                .allMatch(slot -> !season.slots.get(slot).decideBy().isBefore(result));
        if (starts && late) {
          open.add(set);
        }
      }
    }
    return open;
  }

  private void compare(int doses, double resultDay) {
    PlainSeason season = season();
    DayTable table = season.table();
    PlanSearch search = table.search(PlainSeason.PARAMETERS, Set.of(), SPACING);
    ScoredPlan best = search.best(doses).get(0);
    TestValue value = TestValue.of(table, search, best);
    Instant result = at(resultDay);
    String where = doses + " doses, result on day " + resultDay;

    List<Integer> settled =
        best.slots().stream()
            .filter(slot -> season.slots.get(slot).decideBy().isBefore(result))
            .toList();
    double without = season.sets(doses, SPACING).stream().mapToDouble(season::mean).max().orElse(0);
    double[] act = follow(season, open(season, doses, settled, result));
    double[] wait = follow(season, open(season, doses, List.of(), result));
    TestValue.Outcome outcome = value.outcome(outlook, result);
    assertThat(where, outcome.settled(), equalTo(settled));
    assertThat(where, outcome.acting(), closeTo(sum(act), 1e-9));
    assertThat(where, outcome.waiting(), closeTo(sum(wait), 1e-9));
    assertThat(
        where, outcome.gain(), closeTo(Math.max(0, Math.max(sum(act), sum(wait)) - without), 1e-9));
    assertThat(where, outcome.actingLoses(), closeTo(shortfall(act, wait), 1e-9));
    assertThat(where, outcome.waitingLoses(), closeTo(shortfall(wait, act), 1e-9));
    assertThat(where, outcome.actRather(), is(sum(act) >= sum(wait) - 1e-6));
    List<List<Integer>> better =
        sum(act) >= sum(wait)
            ? open(season, doses, settled, result)
            : open(season, doses, List.of(), result);
    assertThat(
        where, outcome.canChange(), is(better.stream().anyMatch(set -> !set.equals(best.slots()))));

    double most = 0;
    for (List<List<Integer>> sets :
        List.of(open(season, doses, settled, result), open(season, doses, List.of(), result))) {
      double[] days = season.days();
      double[] chances = season.chances();
      double known = 0;
      for (int i = 0; i < days.length; i++) {
        double of = 0;
        for (List<Integer> set : sets) {
          of = Math.max(of, season.share(days[i], set));
        }
        known += chances[i] * of;
      }
      most = Math.max(most, known);
    }
    assertThat(where, value.most(result), closeTo(Math.max(0, most - without), 1e-9));
    assertThat(where, value.most(result), greaterThan(outcome.gain() - 1e-12));
  }

  @Test
  void oneDose() {
    for (double day : new double[] {9.6, 11.2, 12.4, 13.1, 17}) {
      compare(1, day);
    }
  }

  @Test
  void twoDoses() {
    for (double day : new double[] {9.6, 11.2, 12.4, 13.1, 13.8, 17}) {
      compare(2, day);
    }
  }

  @Test
  void actingIsRatherDoneWhereItIsNoWorse() {
    assertThat(outcome(0.5, 0.6).actRather(), is(false));
    assertThat(outcome(0.5, 0.5 + 1e-9).actRather(), is(true));
    assertThat(outcome(0.6, 0.5).actRather(), is(true));
  }

  private static TestValue.Outcome outcome(double acting, double waiting) {
    return new TestValue.Outcome(0, false, List.of(), acting, waiting, 0, 0);
  }
}
