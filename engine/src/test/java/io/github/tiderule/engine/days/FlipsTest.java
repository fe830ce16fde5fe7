package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.engine.timeline.ComingValue;
import io.github.tiderule.engine.timeline.Estimate;
import io.github.tiderule.engine.timeline.Evidence;
import io.github.tiderule.engine.timeline.Timeline;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Where a value changes the days, beside trying values one after the other. */
class FlipsTest {

  private static final double SPACING = 22;
  private static final Series RIA = Series.of("A", Method.RIA);

  private final Timeline timeline = Timeline.of(PlainSeason.PARAMETERS);
  private final double worth = PlainSeason.PARAMETERS.value("planning.flip-share");
  private final Evidence evidence =
      new Evidence(
          new FirstBlood(LocalDate.of(2027, 3, 1), Certainty.SEEN),
          0.5,
          8.4,
          List.of(),
          List.of(
              new Evidence.Value("a", 6.35, 0.6, RIA, false, false),
              new Evidence.Value("b", 8.35, 1.1, RIA, false, false)),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of());
  private final Estimate known = timeline.estimate(evidence);
  private final ComingValue value = timeline.foresight(evidence, known).value(RIA, 10.35);

  private PlainSeason season(double ahead) {
    PlainSeason season = new PlainSeason(Semen.FROZEN, Route.TRANSCERVICAL, 11, 1);
    for (int day = 12; day <= 19; day++) {
      season.slot(day, 10, ahead).slot(day, 17, ahead);
    }
    return season;
  }

  private DayTable table(PlainSeason season) {
    return DayTable.of(
        season.eggs,
        known.ovulation(),
        PlainSeason.AXIS,
        season.slots,
        season.plan(2),
        List.of(),
        24);
  }

  /** Share of a set at each ovulation there may be. */
  private double[] shares(PlainSeason season, List<Integer> set) {
    return Arrays.stream(value.ovulations()).map(day -> season.share(day, set)).toArray();
  }

  private static double expected(double[] chance, double[] shares) {
    double sum = 0;
    for (int i = 0; i < chance.length; i++) {
      sum += chance[i] * shares[i];
    }
    return sum;
  }

  private boolean changes(
      DayTable table, List<Integer> best, Map<List<Integer>, double[]> sets, double[] chance) {
    double stays = expected(chance, Objects.requireNonNull(sets.get(best)));
    double most = stays;
    List<Integer> other = best;
    for (Map.Entry<List<Integer>, double[]> set : sets.entrySet()) {
      double one = expected(chance, set.getValue());
      if (one > most + 1e-12) {
        most = one;
        other = set.getKey();
      }
    }
    return !Planner.days(table, other).equals(Planner.days(table, best)) && most - stays >= worth;
  }

  private int compare(int doses, double ahead, Instant knownAt) {
    PlainSeason season = season(ahead);
    DayTable table = table(season);
    PlanSearch search = table.search(PlainSeason.PARAMETERS, Set.of(), SPACING);
    ScoredPlan best = search.best(doses).get(0);
    Flips flips =
        Flips.of(table, PlainSeason.PARAMETERS, Set.of(), SPACING, best, List.of(), knownAt, value);
    Map<List<Integer>, double[]> sets = new LinkedHashMap<>();
    sets.put(best.slots(), shares(season, best.slots()));
    for (List<Integer> set : season.sets(doses, SPACING)) {
      if (set.stream().noneMatch(s -> season.slots.get(s).decideBy().isBefore(knownAt))) {
        sets.put(set, shares(season, set));
      }
    }
    double start = flips.middle();
    List<Flips.Flip> found = flips.from(start, 0.02);
    double low = value.quantile(0.02);
    double high = value.quantile(0.98);
    for (boolean above : new boolean[] {true, false}) {
      double end = above ? high : low;
      double kept = start;
      double first = Double.NaN;
      for (int step = 1; step <= 384 && Double.isNaN(first); step++) {
        double next = Math.exp(Math.log(start) + (Math.log(end) - Math.log(start)) * step / 384);
        if (changes(table, best.slots(), sets, value.after(next))) {
          first = Math.sqrt(kept * next);
        }
        kept = next;
      }
      boolean up = above;
      List<Flips.Flip> here = found.stream().filter(flip -> flip.above() == up).toList();
      String where = doses + " doses, " + ahead + " h, above " + above + ": " + found;
      if (!Double.isNaN(first)) {
        assertThat(where + ", first " + first, here.size(), is(1));
        assertThat(where, here.get(0).ngPerMl() / first, closeTo(1, 0.02));
        assertThat(where, sets.containsKey(here.get(0).slots()), is(true));
        double beyond = here.get(0).ngPerMl() * (above ? 1.01 : 0.99);
        double[] chance = value.after(beyond);
        double most =
            sets.values().stream().mapToDouble(s -> expected(chance, s)).max().orElseThrow();
        assertThat(
            where, expected(chance, shares(season, here.get(0).slots())), closeTo(most, 2e-3));
      } else {
        assertThat(where, here.size(), is(0));
      }
    }
    return found.size();
  }

  @Test
  void theMiddleIsTheMedianOfWhatIsForeseen() {
    PlainSeason season = season(0);
    DayTable table = table(season);
    PlanSearch search = table.search(PlainSeason.PARAMETERS, Set.of(), SPACING);
    Flips flips =
        Flips.of(
            table,
            PlainSeason.PARAMETERS,
            Set.of(),
            SPACING,
            search.best(1).get(0),
            List.of(),
            PlainSeason.AXIS.instant(10.4),
            value);
    assertThat(flips.middle() / value.quantile(0.5), closeTo(1, 0.02));
  }

  @Test
  void theDaysChangeWhereTryingValuesSaysThatTheyDo() {
    int found = 0;
    found += compare(1, 0, PlainSeason.AXIS.instant(10.7));
    found += compare(2, 17, PlainSeason.AXIS.instant(10.7));
    found += compare(2, 17, PlainSeason.AXIS.instant(12.5));
    // days that can no longer be chosen are not changed to
    found += compare(2, 17, PlainSeason.AXIS.instant(13.85));
    assertThat(found, greaterThan(2));
  }

  /** Doses that are settled stay; with all of them settled nothing can change. */
  @Test
  void settledDosesAreInEverySet() {
    PlainSeason season = season(17);
    DayTable table = table(season);
    PlanSearch search = table.search(PlainSeason.PARAMETERS, Set.of(), SPACING);
    ScoredPlan best = search.best(2).get(0);
    List<Integer> settled = best.slots().subList(0, 1);
    Flips some = flips(table, best, settled);
    for (Flips.Flip flip : some.from(some.middle(), 0.02)) {
      assertThat(flip.slots().subList(0, 1), equalTo(settled));
    }
    Flips none = flips(table, best, best.slots());
    assertThat(none.from(none.middle(), 0.02), equalTo(List.of()));
  }

  private Flips flips(DayTable table, ScoredPlan best, List<Integer> settled) {
    return Flips.of(
        table,
        PlainSeason.PARAMETERS,
        Set.of(),
        SPACING,
        best,
        settled,
        PlainSeason.AXIS.instant(11),
        value);
  }

  /** However far beyond the days would change. */
  @Test
  void valuesThatAreHardlyLikelyAreLeftAlone() {
    PlainSeason season = season(0);
    DayTable table = table(season);
    PlanSearch search = table.search(PlainSeason.PARAMETERS, Set.of(), SPACING);
    Flips flips = flips(table, search.best(1).get(0), List.of());
    assertThat(flips.from(flips.middle(), 0.02).size(), greaterThan(0));
    assertThat(flips.from(flips.middle(), 0.499), equalTo(List.of()));
    for (double chance : new double[] {0.02, 0.1, 0.2, 0.3}) {
      for (Flips.Flip flip : flips.from(flips.middle(), chance)) {
        double below = value.below(flip.ngPerMl());
        assertThat(below > chance - 0.02 && below < 1 - chance + 0.02, is(true));
      }
    }
  }
}
