package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Plans and their alternatives beside every set there is, tried one by one. */
class PlannerTest {

  private final Planner planner = new Planner(PlainSeason.PARAMETERS);

  private static PlainSeason season(Semen semen, Route route, double sd) {
    PlainSeason season = new PlainSeason(semen, route, 10.5, sd);
    for (int day = 11; day <= 16; day++) {
      season.slot(day, 10, 0).slot(day, 17, 0);
    }
    return season;
  }

  private static SemenPlan plan(
      Semen semen, @Nullable Integer doses, @Nullable Double hoursBetween) {
    return new SemenPlan(
        semen, Route.TRANSCERVICAL, doses, hoursBetween, null, null, List.of(), null);
  }

  @Test
  void dosesKeepTheirDistance() {
    assertThat(planner.spacing(plan(Semen.FROZEN, 2, 30.0)), is(30.0));
    double slack = PlainSeason.PARAMETERS.value("planning.hours-slack");
    assertThat(
        planner.spacing(plan(Semen.FROZEN, 2, null)),
        closeTo(PlainSeason.PARAMETERS.value("planning.hours-between") - slack, 1e-12));
    assertThat(
        planner.spacing(SemenPlan.naturalUnlimited()),
        closeTo(PlainSeason.PARAMETERS.value("planning.natural-hours-between") - slack, 1e-12));
  }

  @Test
  void breedingsDoneUseDosesOfTheirOwnSemenUp() {
    BreedingDone frozen =
        new BreedingDone("a", PlainSeason.ANCHOR, Semen.FROZEN, Route.TRANSCERVICAL);
    BreedingDone natural = new BreedingDone("b", PlainSeason.ANCHOR, Semen.NATURAL, Route.NATURAL);
    assertThat(planner.dosesLeft(plan(Semen.FROZEN, 3, null), List.of()), is(3));
    assertThat(planner.dosesLeft(plan(Semen.FROZEN, 3, null), List.of(frozen, natural)), is(2));
    assertThat(planner.dosesLeft(plan(Semen.FROZEN, 1, null), List.of(frozen, frozen)), is(0));
    int most = (int) PlainSeason.PARAMETERS.value("planning.most-matings");
    assertThat(planner.dosesLeft(SemenPlan.naturalUnlimited(), List.of(natural)), is(most - 1));
  }

  @Test
  void thePlanIsAsGoodAsAnyAndItsAlternativesAreWhatTheySay() {
    PlainSeason season = season(Semen.FROZEN, Route.TRANSCERVICAL, 0.8);
    DayTable table = season.table();
    SemenPlan plan = plan(Semen.FROZEN, 2, null);
    PlanSearch search = planner.search(table, plan, Set.of());
    Planner.Choice choice = planner.choose(table, search, plan, 2).orElseThrow();
    double most = season.sets(2, 22).stream().mapToDouble(season::mean).max().orElseThrow();
    double nearTie = PlainSeason.PARAMETERS.value("planning.near-tie");
    assertThat(choice.best().slots(), hasSize(2));
    assertThat(choice.best().mean(), closeTo(season.mean(choice.best().slots()), 1e-9));
    assertThat(choice.best().mean() >= most - nearTie - 1e-6, is(true));

    List<LocalDate> days = Planner.days(table, choice.best());
    assertThat(
        days, equalTo(choice.best().slots().stream().map(s -> season.slots.get(s).day()).toList()));
    Planner.Choice.Other onOtherDays =
        choice.others().stream()
            .filter(other -> other.note().toString().startsWith("next best on other days"))
            .findFirst()
            .orElseThrow();
    assertThat(Planner.days(table, onOtherDays.plan()).equals(days), is(false));
    double nextMost =
        season.sets(2, 22).stream()
            .filter(set -> !Planner.days(table, set).equals(days))
            .mapToDouble(season::mean)
            .max()
            .orElseThrow();
    assertThat(onOtherDays.plan().mean() >= nextMost - nearTie - 1e-6, is(true));

    Planner.Choice.Other less = choice.others().get(choice.others().size() - 1);
    assertThat(less.plan().slots(), hasSize(1));
    double single = season.sets(1, 22).stream().mapToDouble(season::mean).max().orElseThrow();
    assertThat(less.plan().mean(), closeTo(single, 1e-9));
    assertThat(
        less.note().toString(),
        equalTo(
            "one dose less, at a cost of "
                + Math.round(100 * (choice.best().mean() - single))
                + " in 100 eggs"));
  }

  @Test
  void withoutANumberOfDosesOnlyThoseWorthGivingAreGiven() {
    PlainSeason season = season(Semen.NATURAL, Route.NATURAL, 1.6);
    DayTable table = season.table();
    SemenPlan unlimited = SemenPlan.naturalUnlimited();
    PlanSearch search = planner.search(table, unlimited, Set.of());
    double worth = PlainSeason.PARAMETERS.value("planning.worth-another");
    int doses = 1;
    while (doses < 3
        && search.best(doses + 1).get(0).mean() - search.best(doses).get(0).mean() >= worth) {
      doses++;
    }
    Planner.Choice choice = planner.choose(table, search, unlimited, 3).orElseThrow();
    assertThat(choice.best(), equalTo(search.best(doses).get(0)));
    assertThat(
        planner.choose(table, search, unlimited, 1).orElseThrow().best().slots(), hasSize(1));
    assertThat(planner.choose(table, search, unlimited, 0), equalTo(Optional.empty()));
    assertThat(search.worthwhile(3, 2.0), equalTo(Optional.of(search.best(1).get(0))));
    assertThat(search.worthwhile(2, -1.0), equalTo(Optional.of(search.best(2).get(0))));
  }

  @Test
  void whereNothingIsAllowedNothingIsPlanned() {
    PlainSeason season = season(Semen.FROZEN, Route.TRANSCERVICAL, 0.8);
    DayTable table = season.table();
    Set<LocalDate> all = Set.copyOf(season.slots.stream().map(Slot::day).distinct().toList());
    PlanSearch search = planner.search(table, plan(Semen.FROZEN, 2, null), all);
    assertThat(
        planner.choose(table, search, plan(Semen.FROZEN, 2, null), 2), equalTo(Optional.empty()));
  }

  /**
   * The safest of the sets kept, if it beats the chosen one's tenth percentile by enough, is named
   * with both.
   */
  @Test
  void theSafestIsNamedWhereItIsSaferByEnough() {
    double by = PlainSeason.PARAMETERS.value("planning.safer-by");
    int safer = 0;
    for (double sd = 0.4; sd <= 2; sd += 0.1) {
      PlainSeason season = season(Semen.FROZEN, Route.TRANSCERVICAL, sd);
      DayTable table = season.table();
      SemenPlan plan = plan(Semen.FROZEN, 1, null);
      PlanSearch search = planner.search(table, plan, Set.of());
      Planner.Choice choice = planner.choose(table, search, plan, 1).orElseThrow();
      double p10 = search.best(1).stream().mapToDouble(ScoredPlan::p10).max().orElseThrow();
      List<String> notes = new ArrayList<>();
      choice.others().forEach(other -> notes.add(other.note().toString()));
      boolean expected = p10 > choice.best().p10() + by;
      String words =
          "safest if ovulation lies at an edge: 1 time in 10 fewer than "
              + Math.round(100 * p10)
              + " instead of "
              + Math.round(100 * choice.best().p10());
      assertThat(
          "spread " + sd + ": " + notes,
          notes.stream().anyMatch(note -> note.endsWith(words)),
          is(expected));
      assertThat(notes.size() <= 3, is(true));
      Optional<ScoredPlan> next =
          search.best(1).stream()
              .filter(one -> !Planner.days(table, one).equals(Planner.days(table, choice.best())))
              .findFirst();
      List<ScoredPlan> named = choice.others().stream().map(Planner.Choice.Other::plan).toList();
      assertThat("no two alike", named.stream().distinct().toList(), equalTo(named));
      next.ifPresent(one -> assertThat(named.contains(one), is(true)));
      if (expected) {
        ScoredPlan safest = named.get(named.size() - 1);
        assertThat(safest.p10(), is(p10));
        assertThat(
            notes.get(notes.size() - 1).startsWith("next best"),
            is(next.equals(Optional.of(safest))));
      }
      safer += expected ? 1 : 0;
      if (!notes.isEmpty()) {
        assertThat(notes.get(0), startsWith("next best on other days"));
      }
    }
    assertThat(safer, greaterThan(0));
  }

  /** With two windows the next best and the safest are one, if the best is not the safest. */
  @Test
  void theNextBestThatIsTheSafestIsNamedOnce() {
    double by = PlainSeason.PARAMETERS.value("planning.safer-by");
    int once = 0;
    for (int place = 0; place < 150; place++) {
      double mean = 8 + 0.08 * (place % 50);
      double sd = List.of(0.8, 1.3, 1.8).get(place / 50);
      PlainSeason season =
          new PlainSeason(Semen.CHILLED, Route.TRANSCERVICAL, mean, sd)
              .slot(12, 10, 0)
              .slot(14, 10, 0);
      DayTable table = season.table();
      SemenPlan plan = plan(Semen.FROZEN, 1, null);
      PlanSearch search = planner.search(table, plan, Set.of());
      Planner.Choice choice = planner.choose(table, search, plan, 1).orElseThrow();
      assertThat(choice.others(), hasSize(1));
      Planner.Choice.Other other = choice.others().get(0);
      boolean safer = other.plan().p10() > choice.best().p10() + by;
      assertThat(
          other.note().toString(),
          safer
              ? startsWith("next best on other days, and safest if ovulation lies at an edge")
              : equalTo("next best on other days"));
      once += safer ? 1 : 0;
    }
    assertThat(once, greaterThan(0));
  }
}
