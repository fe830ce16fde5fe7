package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** The table of days beside sums over all ovulations, and the distribution they are drawn from. */
class DayTableTest {

  private static final double MEAN = 10.5;
  private static final NormalDistribution OVULATION = NormalDistribution.of(MEAN, 1);

  private static PlainSeason season() {
    return new PlainSeason(Semen.CHILLED, Route.VAGINAL, MEAN, 1)
        .slot(12, 10, 0)
        .slot(12, 17, 0)
        .slot(13, 10, 0)
        .slot(13, 17, 0)
        .slot(15, 10, 0)
        .slot(17, 10, 0);
  }

  @Test
  void aDayIsItsBestWindow() {
    PlainSeason season = season();
    DayTable table = season.table();
    List<CandidateDay> days = table.days();
    assertThat(days.size(), is(4));
    int[][] slots = {{0, 1}, {2, 3}, {4}, {5}};
    for (int d = 0; d < days.size(); d++) {
      CandidateDay day = days.get(d);
      double most = 0;
      int best = -1;
      for (int slot : slots[d]) {
        double share = season.mean(List.of(slot));
        if (share > most) {
          most = share;
          best = slot;
        }
      }
      Slot slot = season.slots.get(best);
      assertThat(day.day(), equalTo(slot.day()));
      assertThat(table.slotOf(day.day()), equalTo(slot));
      assertThat(day.from(), equalTo(slot.from()));
      assertThat(day.to(), equalTo(slot.to()));
      assertThat(day.share(), closeTo(most, 1e-9));
      assertThat(day.daysAfterOvulation(), closeTo(season.middle(best) - MEAN, 1e-3));
      assertThat(
          day.probabilityOvulated(),
          closeTo(OVULATION.cumulativeProbability(season.middle(best)), 1e-3));
      assertThat(day.chilledAgeHours(), is(24.0));
    }
    assertThat(table.slots(), equalTo(season.slots));
    assertThat(table.alreadyMet(), is(0.0));
    assertThat(table.alreadyMetP10(), closeTo(0, 1e-5));
  }

  /** The cervix closes at a normal time after ovulation, so the sum of both is normal too. */
  @Test
  void theCervixClosesByTheSumOfTwoNormals() {
    PlainSeason season = season();
    double after = PlainSeason.PARAMETERS.value("eggs.closed-after");
    double spread = PlainSeason.PARAMETERS.value("eggs.closed-sd");
    NormalDistribution closed = NormalDistribution.of(MEAN + after, Math.hypot(1, spread));
    List<CandidateDay> days = season.table().days();
    double[] middles = {season.middle(4), season.middle(5)};
    for (int d = 2; d < 4; d++) {
      assertThat(
          days.get(d).probabilityClosed(),
          closeTo(closed.cumulativeProbability(middles[d - 2]), 2e-3));
    }
  }

  /** A tenth of the ovulations leave a smaller share: sorted, weighed and looked up. */
  @Test
  void theTenthPercentileIsWhereATenthLies() {
    PlainSeason season = season();
    double[] days = season.days();
    double[] chances = season.chances();
    for (CandidateDay day : season.table().days()) {
      int slot = season.slots.indexOf(season.table().slotOf(day.day()));
      double below = 0;
      double upTo = 0;
      for (int i = 0; i < days.length; i++) {
        double share = season.share(days[i], List.of(slot));
        below += share < day.shareP10() - 0.02 ? chances[i] : 0;
        upTo += share <= day.shareP10() + 0.02 ? chances[i] : 0;
      }
      assertThat(day + "", below <= 0.1 + 1e-9, is(true));
      assertThat(day + "", upTo >= 0.1 - 1e-9, is(true));
    }
  }

  @Test
  void breedingsDoneCountTowardsTheEggsAndKeepTheirDistance() {
    PlainSeason season = season();
    BreedingDone done =
        new BreedingDone("b", season.slots.get(1).middle(), Semen.CHILLED, Route.VAGINAL);
    DayTable table = season.table(done);
    assertThat(table.alreadyMet(), closeTo(season.mean(List.of(1)), 1e-9));
    assertThat(table.alreadyMetP10() > 0, is(true));
    assertThat(table.alreadyMetP10() < table.alreadyMet(), is(true));
    // a day's own share is that of one dose alone
    assertThat(table.days().get(1).share(), closeTo(season.table().days().get(1).share(), 1e-12));
    PlanSearch search = table.search(PlainSeason.PARAMETERS, Set.of(LocalDate.of(2027, 3, 15)), 22);
    // 17:00 + 22 h is 15:00 of the next day, and the 15th is forbidden
    assertThat(
        search.best(1).stream().map(plan -> plan.slots().get(0)).sorted().toList(),
        equalTo(List.of(3, 5)));
    double both = season.mean(List.of(1, 3));
    assertThat(search.best(1).get(0).slots(), equalTo(List.of(3)));
    assertThat(search.best(1).get(0).mean(), closeTo(both, 1e-9));
  }

  @Test
  void otherOvulationsGiveOtherShares() {
    PlainSeason season = season();
    double[] two = {9, 12};
    double[] chance = {0.25, 0.75};
    PlanSearch search = season.table().search(two, chance, PlainSeason.PARAMETERS, Set.of(), 22);
    for (ScoredPlan plan : search.best(2)) {
      double mean = 0.25 * season.share(9, plan.slots()) + 0.75 * season.share(12, plan.slots());
      assertThat(plan.mean(), closeTo(mean, 1e-9));
    }
  }

  @Test
  void freshSemenHasNoAge() {
    PlainSeason season = new PlainSeason(Semen.FRESH, Route.VAGINAL, MEAN, 1).slot(12, 10, 0);
    assertThat(season.table().days().get(0).chilledAgeHours(), is(0.0));
  }

  @Test
  void aBreedingDoneJustLongEnoughBeforeIsNoHindrance() {
    PlainSeason season = new PlainSeason(Semen.FRESH, Route.VAGINAL, MEAN, 1).slot(12, 12, 0);
    BreedingDone done =
        new BreedingDone(
            "b", season.slots.get(0).middle().minusSeconds(86400), Semen.FRESH, Route.VAGINAL);
    DayTable table = season.table(done);
    assertThat(table.search(PlainSeason.PARAMETERS, Set.of(), 24).best(1).size(), is(1));
    assertThat(table.search(PlainSeason.PARAMETERS, Set.of(), 24.1).best(1).size(), is(0));
  }
}
