package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
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
        PlanSearch search =
            new PlanSearch(shares, hours, allowed, 24, NEAR_TIE, COMBINE, Practice.NONE);
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
            COMBINE,
            Practice.NONE);
    assertThat(search.best(4).get(0).slots(), hasSize(1));
    PlanSearch nothing =
        new PlanSearch(
            shares(hours, Semen.FROZEN, 10, 0.5),
            hours,
            new boolean[] {false, false},
            24,
            NEAR_TIE,
            COMBINE,
            Practice.NONE);
    assertThat(nothing.best(2), hasSize(0));
    assertThat(nothing.options(List.of(), 2), hasSize(0));
  }

  @Test
  void settledDosesAreKept() {
    double[] hours = {240, 264, 288, 312};
    boolean[] allowed = {true, true, true, true};
    PlanSearch search =
        new PlanSearch(
            shares(hours, Semen.CHILLED, 10, 1),
            hours,
            allowed,
            24,
            NEAR_TIE,
            COMBINE,
            Practice.NONE);
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

  /** Shares of a dose of its own for every hour, by ovulations of the same chance. */
  private static PlanSearch search(
      double[] hours, boolean[] allowed, double spacing, double nearTie, double worth) {
    return new PlanSearch(
        shares(hours, Semen.FROZEN, 10, 0.8),
        hours,
        allowed,
        spacing,
        nearTie,
        worth,
        Practice.NONE);
  }

  private static boolean[] all(int count) {
    boolean[] all = new boolean[count];
    Arrays.fill(all, true);
    return all;
  }

  private static double[] everyHalfDay(int count) {
    double[] hours = new double[count];
    Arrays.setAll(hours, s -> 264 + 12 * s);
    return hours;
  }

  /** Every set of one or two slots that lie far enough apart. */
  private static List<List<Integer>> upToTwo(double[] hours, double spacing) {
    List<List<Integer>> sets = new ArrayList<>();
    for (int a = 0; a < hours.length; a++) {
      sets.add(List.of(a));
      for (int b = a + 1; b < hours.length; b++) {
        if (hours[b] - hours[a] >= spacing) {
          sets.add(List.of(a, b));
        }
      }
    }
    return sets;
  }

  /** From every slot on the first one that may follow, and so on. */
  private static List<List<Integer>> closest(double[] hours, double spacing, int doses) {
    List<List<Integer>> sets = new ArrayList<>();
    for (int a = 0; a < hours.length; a++) {
      List<Integer> set = new ArrayList<>(List.of(a));
      for (int b = a + 1; b < hours.length && set.size() < doses; b++) {
        if (hours[b] - hours[set.get(set.size() - 1)] >= spacing) {
          set.add(b);
        }
      }
      sets.add(set);
    }
    return sets;
  }

  @Test
  void optionsAreThoseThatAResultCouldMakeTheBest() {
    double[] hours = everyHalfDay(7);
    PlanSearch search = search(hours, all(7), 24, NEAR_TIE, 0);
    List<List<Integer>> two = upToTwo(hours, 24);
    assertThat(
        search.options(List.of(), 1),
        containsInAnyOrder(two.stream().filter(set -> set.size() == 1).toArray()));
    assertThat(search.options(List.of(), 2), containsInAnyOrder(two.toArray()));
    List<List<Integer>> three = new ArrayList<>(two);
    closest(hours, 24, 3).stream().filter(set -> set.size() == 3).forEach(three::add);
    assertThat(search.options(List.of(), 3), containsInAnyOrder(three.toArray()));
    List<List<Integer>> four = new ArrayList<>();
    two.stream().filter(set -> set.size() == 1).forEach(four::add);
    closest(hours, 24, 4).stream().filter(set -> set.size() > 2).forEach(four::add);
    assertThat(search.options(List.of(), 4), containsInAnyOrder(four.toArray()));
    // with one settled, one or two more
    List<List<Integer>> after = new ArrayList<>();
    for (List<Integer> set : two) {
      if (hours[set.get(0)] - hours[1] >= 24) {
        List<Integer> whole = new ArrayList<>(List.of(1));
        whole.addAll(set);
        after.add(whole);
      }
    }
    assertThat(search.options(List.of(1), 3), containsInAnyOrder(after.toArray()));
  }

  @Test
  void dosesJustFarEnoughApartGoTogether() {
    double[] hours = {276, 300};
    assertThat(
        search(hours, all(2), 24, NEAR_TIE, 0).best(2).get(0).slots(), equalTo(List.of(0, 1)));
    assertThat(search(hours, all(2), 24.01, NEAR_TIE, 0).best(2).get(0).slots(), hasSize(1));
  }

  /** A slot that alone adds too little beside the best that is allowed is not combined. */
  @Test
  void slotsThatAddLittleAreLeftOut() {
    double[] hours = everyHalfDay(12);
    List<EggShares.TimedDose> doses = new ArrayList<>();
    for (double hour : hours) {
      doses.add(
          new EggShares.TimedDose(hour / 24, EGGS.meeting(Semen.FROZEN, Route.TRANSCERVICAL, 0)));
    }
    EggShares shares = EggShares.over(days(), chances(10, 0.8), doses, List.of(doses.get(5)));
    double base = shares.mean(shares.start());
    boolean[] allowed = all(12);
    for (int forbidden = 11; forbidden >= 0; forbidden -= 3) {
      allowed[forbidden] = false;
      double most = 0;
      for (int s = 0; s < 12; s++) {
        double gain = shares.meanWith(shares.start(), s) - base;
        most = allowed[s] ? Math.max(most, gain) : most;
      }
      List<List<Integer>> expected = new ArrayList<>();
      for (int s = 0; s < 12; s++) {
        if (allowed[s] && shares.meanWith(shares.start(), s) - base >= 0.6 * most) {
          expected.add(List.of(s));
        }
      }
      PlanSearch search = new PlanSearch(shares, hours, allowed, 24, NEAR_TIE, 0.6, Practice.NONE);
      assertThat(search.options(List.of(), 1), equalTo(expected));
      assertThat(search.best(1), hasSize(expected.size()));
    }
  }

  /** A dose that adds nothing is none: here a week before she ovulates. */
  @Test
  void aSlotThatMeetsNothingIsNoCandidate() {
    double[] hours = {24 * -20, 288};
    assertThat(
        search(hours, all(2), 24, NEAR_TIE, 0).options(List.of(), 1), equalTo(List.of(List.of(1))));
  }

  /**
   * Single doses go by what they meet. Of several, those within a near tie of the best go by their
   * tenth percentile in steps of 0.005, then by what each dose meets alone; the rest by their mean.
   */
  @Test
  void nearTiesGoByWhatIsSafe() {
    double[] hours = everyHalfDay(9);
    EggShares shares = shares(hours, Semen.FROZEN, 10, 0.8);
    int moved = 0;
    for (double nearTie : new double[] {0, 0.01, 0.04, 0.1}) {
      PlanSearch search = search(hours, all(9), 24, nearTie, 0);
      List<ScoredPlan> single = search.best(1);
      for (int i = 1; i < single.size(); i++) {
        assertThat(single.get(i).mean(), lessThan(single.get(i - 1).mean() + 1e-9));
      }
      List<ScoredPlan> pairs = search.best(2);
      double most = pairs.stream().mapToDouble(ScoredPlan::mean).max().orElseThrow();
      long near = pairs.stream().filter(plan -> plan.mean() >= most - nearTie - 1e-9).count();
      for (int i = 1; i < pairs.size(); i++) {
        ScoredPlan first = pairs.get(i - 1);
        ScoredPlan second = pairs.get(i);
        if (i < near) {
          double safer = Math.rint(first.p10() / 0.005) - Math.rint(second.p10() / 0.005);
          assertThat(safer, greaterThanOrEqualTo(0.0));
          if (safer == 0) {
            assertThat(alone(shares, first), greaterThanOrEqualTo(alone(shares, second) - 1e-12));
          }
          moved += first.mean() < second.mean() - 1e-6 ? 1 : 0;
        } else {
          assertThat(second.mean(), lessThan(first.mean() + 1e-9));
        }
      }
    }
    assertThat(moved, greaterThan(0));
  }

  private static double alone(EggShares shares, ScoredPlan plan) {
    return plan.slots().stream().mapToDouble(slot -> shares.meanWith(shares.start(), slot)).sum();
  }

  /** More than ten of them, so that order by number and by digits differ. */
  @Test
  void equalSharesGoToTheEarlierSet() {
    double[] same = new double[13];
    Arrays.fill(same, 300);
    double[] hours = new double[13];
    Arrays.setAll(hours, s -> 300 + s);
    PlanSearch search =
        new PlanSearch(
            shares(same, Semen.FROZEN, 10, 0.8), hours, all(13), 1, NEAR_TIE, 0, Practice.NONE);
    List<List<Integer>> single = search.best(1).stream().map(ScoredPlan::slots).toList();
    for (int s = 0; s < 13; s++) {
      assertThat(single.get(s), equalTo(List.of(s)));
    }
    assertThat(search.best(2).get(0).slots(), equalTo(List.of(0, 1)));
    assertThat(search.best(2).get(12).slots(), equalTo(List.of(1, 2)));
  }

  /**
   * Two ovulations, one of them with a tenth of the chance: half of it lies at its own share, the
   * rest evenly between the two, so a tenth lies below a tenth of the way.
   */
  @Test
  void theTenthPercentileOfTwoOvulations() {
    Meeting meeting = EGGS.meeting(Semen.FROZEN, Route.TRANSCERVICAL, 0);
    List<EggShares.TimedDose> dose = List.of(new EggShares.TimedDose(13, meeting));
    double[][] orders = {{5, 10}, {10, 5}};
    for (double[] days : orders) {
      double[] chance = days[0] == 5 ? new double[] {0.1, 0.9} : new double[] {0.9, 0.1};
      EggShares shares = EggShares.over(days, chance, dose, List.of());
      double[] misses = shares.vector();
      shares.and(shares.start(), 0, misses);
      double little = meeting.share(8);
      double much = meeting.share(3);
      assertThat(little + 0.3, lessThan(much));
      assertThat(shares.p10(misses), closeTo(little + 0.1 * (much - little), 1e-5));
    }
  }

  /** Sets that meet nearly the same are told apart by practice, others are not. */
  @Test
  void practiceDecidesBetweenNearEqualSets() {
    double[] hours = {240, 264, 288, 312, 336, 360};
    EggShares shares = shares(hours, Semen.FROZEN, 10, 0.8);
    PlanSearch free = new PlanSearch(shares, hours, all(6), 24, 0, 0, Practice.NONE);
    Practice close = new Practice(1, 0, 24, -100, 100);
    PlanSearch bound = new PlanSearch(shares, hours, all(6), 24, 0, 0, close);
    PlanSearch narrow =
        new PlanSearch(shares, hours, all(6), 24, 0, 0, new Practice(0, 0, 24, -100, 100));
    List<Integer> chosen = bound.best(2).get(0).slots();
    assertThat(hours[chosen.get(1)] - hours[chosen.get(0)], is(24.0));
    assertThat(narrow.best(2).get(0), is(free.best(2).get(0)));
    Practice early = new Practice(1, 0, 1000, 0, 1.2);
    PlanSearch single = new PlanSearch(shares, hours, all(6), 24, 0, 0, early);
    assertThat(hours[single.best(1).get(0).slots().get(0)], lessThanOrEqualTo(11.2 * 24));
    assertThat(hours[free.best(1).get(0).slots().get(0)], greaterThan(12.0 * 24));
  }
}
