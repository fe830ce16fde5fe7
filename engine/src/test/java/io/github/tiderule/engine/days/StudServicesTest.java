package io.github.tiderule.engine.days;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.engine.advice.StudPlan;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The division of a stud's services beside every division there is. */
class StudServicesTest {

  private static final double WORTH = 0.03;
  private static final int[] DAYS = {11, 12, 13, 14};

  private static PlainSeason season(double mean, double sd) {
    PlainSeason season = new PlainSeason(Semen.NATURAL, Route.NATURAL, mean, sd);
    for (int day : DAYS) {
      season.slot(day, 10, 0);
    }
    return season;
  }

  private static List<Instant> services(PlainSeason season) {
    return season.slots.stream().map(slot -> slot.middle().plus(Duration.ofMinutes(20))).toList();
  }

  private static StudServices.Candidate candidate(
      String id, PlainSeason season, LocalDate... forbidden) {
    return new StudServices.Candidate(id, season.table(), Set.of(forbidden));
  }

  private static List<Integer> bits(int set) {
    List<Integer> bits = new ArrayList<>();
    for (int i = 0; i < DAYS.length; i++) {
      if ((set >> i & 1) == 1) {
        bits.add(i);
      }
    }
    return bits;
  }

  @Test
  void noDivisionIsBetter() {
    double[][] means = {{10.2, 11.9, 10.9}, {11, 11, 11}, {8, 14, 9.5}};
    for (double[] three : means) {
      List<PlainSeason> seasons = new ArrayList<>();
      List<StudServices.Candidate> candidates = new ArrayList<>();
      for (int f = 0; f < three.length; f++) {
        seasons.add(season(three[f], 0.5 + 0.2 * f));
        candidates.add(candidate("f" + f, seasons.get(f)));
      }
      double most = Double.NEGATIVE_INFINITY;
      for (int code = 0; code < 256; code++) {
        int[] sets = new int[4];
        for (int i = 0; i < 4; i++) {
          sets[(code >> (2 * i)) & 3] |= 1 << i;
        }
        double value = 0;
        for (int f = 0; f < 3; f++) {
          value += seasons.get(f).mean(bits(sets[f])) - WORTH * Integer.bitCount(sets[f]);
        }
        most = Math.max(most, value);
      }
      StudPlan plan = StudServices.divide(services(seasons.get(0)), candidates, WORTH);
      int given = 0;
      double total = 0;
      for (StudPlan.Part part : plan.parts()) {
        PlainSeason season = seasons.get(Integer.parseInt(part.female().substring(1)));
        List<Integer> set = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
          if (part.at().contains(plan.services().get(i).at())) {
            set.add(i);
            assertThat(plan.services().get(i).female(), equalTo(part.female()));
          }
          assertThat(part.alone().get(i), closeTo(season.mean(List.of(i)), 1e-9));
        }
        for (int i : set) {
          List<Integer> without = new ArrayList<>(set);
          without.remove(Integer.valueOf(i));
          assertThat(
              plan.services().get(i).adds(),
              closeTo(season.mean(set) - season.mean(without), 1e-9));
        }
        assertThat(part.share(), closeTo(season.mean(set), 1e-9));
        double best = Collections.max(part.alone());
        double later = Collections.max(part.alone().subList(1, 4));
        assertThat(part.lostByWaiting(), closeTo(best - later, 1e-9));
        given += set.size();
        total += part.share();
      }
      assertThat(plan.total(), closeTo(total, 1e-12));
      assertThat(total - WORTH * given, closeTo(most, 1e-8));
      for (StudPlan.Service service : plan.services()) {
        if (service.female() == null) {
          assertThat(service.adds(), is(0.0));
        }
      }
      for (int f = 1; f < plan.parts().size(); f++) {
        assertThat(
            plan.parts().get(f - 1).lostByWaiting() >= plan.parts().get(f).lostByWaiting(),
            is(true));
      }
    }
  }

  @Test
  void aServiceThatAddsTooLittleIsNotGiven() {
    PlainSeason season = season(11, 0.5);
    StudPlan plan = StudServices.divide(services(season), List.of(candidate("one", season)), 2);
    assertThat(plan.parts().get(0).at(), equalTo(List.of()));
    plan.services().forEach(service -> assertThat(service.female(), nullValue()));
    assertThat(plan.total(), is(0.0));
  }

  @Test
  void equalFemalesGoByTheirOrder() {
    PlainSeason season = season(10.5, 0.4);
    StudPlan plan =
        StudServices.divide(
            services(season).subList(1, 2),
            List.of(candidate("b", season), candidate("a", season)),
            WORTH);
    assertThat(plan.services().get(0).female(), equalTo("b"));
    // both lose the same by waiting, so the list goes by name
    assertThat(
        plan.parts().stream().map(StudPlan.Part::female).toList(), equalTo(List.of("a", "b")));
  }

  @Test
  void aServiceOutsideHerWindowsOrOnAForbiddenDayIsNoneOfHers() {
    PlainSeason season = season(10.5, 0.6);
    List<Instant> late =
        season.slots.stream().map(slot -> slot.middle().plus(Duration.ofMinutes(21))).toList();
    StudPlan plan = StudServices.divide(late, List.of(candidate("one", season)), WORTH);
    assertThat(plan.total(), is(0.0));
    List<Instant> early =
        season.slots.stream().map(slot -> slot.middle().minus(Duration.ofMinutes(20))).toList();
    LocalDate second = season.slots.get(1).day();
    StudPlan other = StudServices.divide(early, List.of(candidate("one", season, second)), 0.001);
    assertThat(other.parts().get(0).at().contains(early.get(1)), is(false));
    assertThat(other.parts().get(0).alone().get(2) > 0.1, is(true));
    assertThat(other.parts().get(0).alone().get(1), is(0.0));
  }

  @Test
  void tooManyOrDisorderedServicesAreRefused() {
    PlainSeason season = season(10.5, 0.6);
    List<StudServices.Candidate> one = List.of(candidate("one", season));
    List<Instant> thirteen = new ArrayList<>();
    for (int i = 0; i < 13; i++) {
      thirteen.add(PlainSeason.ANCHOR.plus(Duration.ofHours(i)));
    }
    assertThrows(IllegalArgumentException.class, () -> StudServices.divide(thirteen, one, WORTH));
    assertThat(StudServices.divide(thirteen.subList(0, 12), one, WORTH).services().size(), is(12));
    Instant at = PlainSeason.ANCHOR;
    assertThrows(
        IllegalArgumentException.class, () -> StudServices.divide(List.of(at, at), one, WORTH));
    assertThrows(
        IllegalArgumentException.class,
        () -> StudServices.divide(List.of(at, at.minusSeconds(1)), one, WORTH));
  }

  /** Where a service costs nothing, one that adds nothing is still not given. */
  @Test
  void ofEqualDivisionsTheOneWithFewerServicesIsTaken() {
    PlainSeason season = season(10.5, 0.6);
    List<Instant> services = new ArrayList<>(services(season));
    services.add(services.get(3).plus(Duration.ofDays(3)));
    StudPlan plan = StudServices.divide(services, List.of(candidate("one", season)), 0);
    assertThat(plan.parts().get(0).at(), equalTo(services.subList(0, 4)));
    assertThat(plan.services().get(4).female(), nullValue());
  }

  @Test
  void whoLosesMostByWaitingIsNamedFirst() {
    PlainSeason early = season(7, 0.4);
    PlainSeason late = season(11.5, 0.4);
    StudPlan plan =
        StudServices.divide(
            services(early), List.of(candidate("a", late), candidate("b", early)), WORTH);
    assertThat(
        plan.parts().stream().map(StudPlan.Part::female).toList(), equalTo(List.of("b", "a")));
    assertThat(plan.parts().get(0).lostByWaiting() > 0.02, is(true));
  }
}
