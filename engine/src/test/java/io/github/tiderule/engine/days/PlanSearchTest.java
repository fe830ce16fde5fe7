package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.rules.fact.Route;
import io.github.tiderule.rules.fact.Semen;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The search against trying everything, and what eggs must do. */
class PlanSearchTest {

  private static final Parameters PARAMETERS = Parameters.load();
  private static final EggModel EGGS = new EggModel(PARAMETERS);
  private static final double NEAR_TIE = 0.005;
  private static final double COMBINE = PARAMETERS.value("planning.combine-share");

  /** Ovulation about day 10 with a spread, told in eighths of a day. */
  private static double[] days() {
    double[] days = new double[81];
    Arrays.setAll(days, i -> 5 + i / 8.0);
    return days;
  }

  private static double[] chances(double mean, double sd) {
    double[] days = days();
    double[] chance = new double[days.length];
    double sum = 0;
    for (int i = 0; i < chance.length; i++) {
      chance[i] = Math.exp(-0.5 * Math.pow((days[i] - mean) / sd, 2));
      sum += chance[i];
    }
    for (int i = 0; i < chance.length; i++) {
      chance[i] /= sum;
    }
    return chance;
  }

  private static EggShares shares(double[] hours, Semen semen, double mean, double sd) {
    List<EggShares.TimedDose> doses = new ArrayList<>();
    for (double hour : hours) {
      doses.add(new EggShares.TimedDose(hour / 24, EGGS.meeting(semen, Route.TRANSCERVICAL, 24)));
    }
    return EggShares.over(days(), chances(mean, sd), doses, List.of());
  }

  private static double everything(
      EggShares shares, double[] hours, double spacing, int from, double[] misses, int left) {
    double most = shares.mean(misses);
    for (int s = from; left > 0 && s < hours.length; s++) {
      double[] more = shares.vector();
      shares.and(misses, s, more);
      int next = s + 1;
      while (next < hours.length && hours[next] - hours[s] < spacing) {
        next++;
      }
      most = Math.max(most, everything(shares, hours, spacing, next, more, left - 1));
    }
    return most;
  }

  @Test
  void findsWhatTryingEverythingFinds() {
    Random random = new Random(1);
    for (int seed = 0; seed < 24; seed++) {
      int count = 4 + random.nextInt(8);
      double[] hours = new double[count];
      boolean[] allowed = new boolean[count];
      Arrays.fill(allowed, true);
      double hour = 24 * (8 + 2 * random.nextDouble());
      for (int s = 0; s < count; s++) {
        hours[s] = hour;
        hour += 7 + random.nextInt(18);
      }
      Semen semen = List.of(Semen.FRESH, Semen.CHILLED, Semen.FROZEN).get(seed % 3);
      EggShares shares = shares(hours, semen, 10, 0.4 + random.nextDouble());
      for (int doses = 1; doses <= 4; doses++) {
        PlanSearch search = new PlanSearch(shares, hours, allowed, 24, NEAR_TIE, COMBINE);
        double most = everything(shares, hours, 24, 0, shares.start(), doses);
        double found = search.best(doses).stream().mapToDouble(ScoredPlan::mean).max().orElse(0);
        assertThat("seed " + seed + ", " + doses, found, closeTo(most, 0.002));
        ScoredPlan chosen = search.best(doses).get(0);
        assertThat(chosen.mean(), greaterThanOrEqualTo(most - NEAR_TIE - 0.002));
        for (int i = 1; i < chosen.slots().size(); i++) {
          double apart = hours[chosen.slots().get(i)] - hours[chosen.slots().get(i - 1)];
          assertThat(apart, greaterThanOrEqualTo(24.0));
        }
      }
    }
  }

  @Test
  void moreDosesThanSlotsGivesWhatThereIs() {
    double[] hours = {288, 300};
    PlanSearch search =
        new PlanSearch(
            shares(hours, Semen.FROZEN, 10, 0.5),
            hours,
            new boolean[] {true, true},
            24,
            NEAR_TIE,
            COMBINE);
    assertThat(search.best(4).get(0).slots(), hasSize(1));
    PlanSearch nothing =
        new PlanSearch(
            shares(hours, Semen.FROZEN, 10, 0.5),
            hours,
            new boolean[] {false, false},
            24,
            NEAR_TIE,
            COMBINE);
    assertThat(nothing.best(2), hasSize(0));
    assertThat(nothing.options(List.of(), 2), hasSize(0));
  }

  @Test
  void settledDosesAreKept() {
    double[] hours = {240, 264, 288, 312};
    boolean[] allowed = {true, true, true, true};
    PlanSearch search =
        new PlanSearch(shares(hours, Semen.CHILLED, 10, 1), hours, allowed, 24, NEAR_TIE, COMBINE);
    for (List<Integer> option : search.options(List.of(1), 2)) {
      assertThat(option.get(0), equalTo(1));
      assertThat(option, hasSize(2));
      assertThat(option.get(1), greaterThan(1));
    }
    assertThat(search.options(List.of(1), 1), hasSize(0));
  }

  /** Within half of what one ovulation of the lattice weighs. */
  @Test
  void aTenthOfTheOvulationsDoesNoBetterThanTheTenthPercentile() {
    double[] hours = {288};
    EggShares shares = shares(hours, Semen.CHILLED, 10, 1);
    double[] misses = shares.vector();
    shares.and(shares.start(), 0, misses);
    double p10 = shares.p10(misses);
    double[] share = shares.byOvulation(misses);
    double half = Arrays.stream(shares.chances()).max().orElseThrow() / 2;
    double below = 0;
    double upTo = 0;
    for (int i = 0; i < share.length; i++) {
      below += share[i] < p10 ? shares.chances()[i] : 0;
      upTo += share[i] <= p10 ? shares.chances()[i] : 0;
    }
    assertThat(below, lessThan(0.1 + half));
    assertThat(upTo, greaterThanOrEqualTo(0.1 - half));
  }

  /** Midnights of two zones lie at other places of the lattice; the percentile must not care. */
  @Test
  void theTenthPercentileDoesNotHangOnWhereTheLatticeLies() {
    for (double day = 9; day <= 15; day += 0.25) {
      double here = p10(day, 10);
      for (double off = 0.05; off < 0.25; off += 0.05) {
        assertThat("day " + day, p10(day + off, 10 + off), closeTo(here, 0.01));
      }
    }
  }

  private static double p10(double day, double ovulation) {
    EggShares shares = shares(new double[] {24 * day}, Semen.CHILLED, ovulation, 1);
    double[] misses = shares.vector();
    shares.and(shares.start(), 0, misses);
    return shares.p10(misses);
  }

  @Test
  void chilledSemenMeetsFewerEggsTheOlderItIs() {
    for (double day = 0; day <= 4; day += 0.5) {
      double before = 1;
      for (double age : new double[] {24, 36, 48, 72, 96, 120}) {
        double share = EGGS.meeting(Semen.CHILLED, Route.TRANSCERVICAL, age).share(day);
        assertThat("day " + day + ", age " + age, share, lessThan(before));
        before = share;
      }
    }
    // after five days in the box next to nothing is alive, even on the best of days
    assertThat(EGGS.meeting(Semen.CHILLED, Route.TRANSCERVICAL, 144).share(3), lessThan(0.05));
  }
}
