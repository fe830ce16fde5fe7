package io.github.tiderule.cases.stud;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.cases.InventedSeason;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.StudPlan;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** One stud and several females, the real engine: who is given which service. */
class SharedStudTest {

  private static final Tiderule ENGINE = Tiderule.create();

  /** Egg share that a service must add (parameters, planning.worth-another). */
  private static final double WORTH = ENGINE.rules().parameters().value("planning.worth-another");

  /** A season whose values place ovulation about a day; asked on the evening of day 12. */
  private static CycleRecord ovulating(double day) {
    double[] before = {-4, -2, -1, 0};
    double[] ngPerMl = {0.9, 2.3, 3.4, 5.5};
    InventedSeason season = new InventedSeason();
    for (int i = 0; i < before.length; i++) {
      if (day + before[i] < 12) {
        season.progesterone(day + before[i], ngPerMl[i]);
      }
    }
    return season.asOf(12.25);
  }

  private static List<Instant> services(double... days) {
    List<Instant> services = new ArrayList<>();
    for (double day : days) {
      services.add(InventedSeason.day(day));
    }
    return services;
  }

  private static SortedMap<String, CycleRecord> two() {
    return new TreeMap<>(Map.of("alder", ovulating(11), "beech", ovulating(12)));
  }

  /** One ovulates a day before the other; three services a day apart from two days after hers. */
  @Test
  void theOneWithLessSlackGoesFirst() {
    StudPlan plan = ENGINE.shareStud(two(), services(13, 14, 15));
    assertThat(plan.services().get(0).female(), equalTo("alder"));
    assertThat(plan.services().get(1).female(), equalTo("beech"));
    assertThat(plan.parts().get(0).female(), equalTo("alder"));
    assertThat(
        plan.parts().get(0).lostByWaiting(), greaterThan(plan.parts().get(1).lostByWaiting()));
    assertThat(plan.leftOut(), is(empty()));
  }

  /** The division found is as good as the best of all, each female's part worked out alone. */
  @Test
  void noDivisionIsBetter() {
    List<Instant> services = services(12.5, 13.5, 14.5, 16);
    SortedMap<String, CycleRecord> females = two();
    females.put("cedar", ovulating(13.5));
    StudPlan found = ENGINE.shareStud(females, services);
    double best = 0;
    Map<String, Double> known = new TreeMap<>();
    int divisions = (int) Math.pow(females.size(), services.size());
    for (int division = 0; division < divisions; division++) {
      List<List<Instant>> parts = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
      int left = division;
      for (Instant service : services) {
        parts.get(left % females.size()).add(service);
        left /= females.size();
      }
      double sum = 0;
      int place = 0;
      for (Map.Entry<String, CycleRecord> female : females.entrySet()) {
        List<Instant> part = parts.get(place++);
        sum +=
            known.computeIfAbsent(
                female.getKey() + part,
                key ->
                    part.isEmpty()
                        ? 0.0
                        : worth(ENGINE.shareStud(Map.of("f", female.getValue()), part)));
      }
      best = Math.max(best, sum);
    }
    assertThat(worth(found), closeTo(best, 1e-6));
  }

  private static double worth(StudPlan plan) {
    return plan.total() - WORTH * plan.services().stream().filter(s -> s.female() != null).count();
  }

  @Test
  void oneFemaleAloneHasWhatIsBestForHer() {
    StudPlan plan = ENGINE.shareStud(Map.of("alder", ovulating(11)), services(12.5, 17));
    assertThat(plan.services().get(0).female(), equalTo("alder"));
    assertThat(plan.parts(), hasSize(1));
    assertThat(plan.parts().get(0).share(), greaterThan(0.8));
  }

  /** The order of the map and of the question does not matter; nor does asking again. */
  @Test
  void sameQuestionSameAnswer() {
    StudPlan once = ENGINE.shareStud(two(), services(13, 14, 15));
    StudPlan again =
        ENGINE.shareStud(
            new java.util.LinkedHashMap<>(new TreeMap<>(two()).descendingMap()),
            services(13, 14, 15));
    assertThat(again, equalTo(once));
  }

  @Test
  void aFemaleWhoseSeasonIsOverIsLeftOutOrGetsNothing() {
    CycleRecord over = ovulating(11).asOf(InventedSeason.day(30));
    StudPlan plan = ENGINE.shareStud(Map.of("alder", over), services(31, 32));
    assertThat(plan.services().stream().allMatch(s -> s.female() == null), is(true));
    assertThat(plan.total(), closeTo(0, 0.02));
  }

  @Test
  void refusesWhatNoServiceCanBe() {
    Map<String, CycleRecord> females = two();
    assertThrows(IllegalArgumentException.class, () -> ENGINE.shareStud(females, services(11, 13)));
    assertThrows(IllegalArgumentException.class, () -> ENGINE.shareStud(females, services(14, 13)));
    CycleRecord frozen =
        ovulating(11)
            .with(
                new SemenPlan(
                    Semen.FROZEN, Route.TRANSCERVICAL, 1, null, null, null, List.of(), null));
    assertThrows(
        IllegalArgumentException.class,
        () -> ENGINE.shareStud(Map.of("alder", frozen), services(13)));
  }
}
