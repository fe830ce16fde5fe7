package io.github.tiderule.cases.plans;

import io.github.tiderule.cases.cohort.Calendar;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.days.Slots;
import io.github.tiderule.rules.conclusion.TestKind;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.semen.Availability;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/**
 * Somebody who does what the engine says, through one season.
 *
 * <p>She asks on the evening of the noted first blood, after every result, and when the plan can
 * wait no longer. A test is drawn when advised and known {@value #TURNAROUND_HOURS} hours later.
 * She commits when the last moment for the plan has come and the engine says book or breed; if it
 * says something else, she lets that moment pass and goes on.
 */
final class Keeper {

  private static final double TURNAROUND_HOURS = 8;
  private static final double TURNAROUND = TURNAROUND_HOURS / 24;
  private static final double FIRST_ASKED = 20 / 24.0;
  private static final Parameters PARAMETERS = Parameters.load();
  private static final int LAST_DAY = 45;
  private static final int MOST_QUESTIONS = 200;

  /** A dose is prepared for so long before it is given. */
  private static final double AT_HAND = 2 / 24.0;

  /** The clinic is told by 18:00 and works from 8 to 12 and from 14 to 20. */
  private static final double TOLD_BY = 18 / 24.0;

  private static final double[][] CLINIC = {{8 / 24.0, 12 / 24.0}, {14 / 24.0, 20 / 24.0}};
  private static final double MOMENT = 1 / 1440.0;

  private final Tiderule engine;
  private final Row row;
  private final Blood blood;
  private final List<Observation> known = new ArrayList<>();
  private final List<Pending> pending = new ArrayList<>();
  private final List<Given> doses = new ArrayList<>();
  private double now;
  private int tests;
  private int alsoLh;

  private record Pending(double day, Observation observation) {}

  private Keeper(Tiderule engine, Row row, Blood blood) {
    this.engine = engine;
    this.row = row;
    this.blood = blood;
    now = blood.bitch().noticedAfter() + FIRST_ASKED;
  }

  /** How she breeds a season. */
  static Given.Season breed(Tiderule engine, Row row, Blood blood) {
    Keeper keeper = new Keeper(engine, row, blood);
    for (int i = 0; i < MOST_QUESTIONS && keeper.goesOn(); i++) {
      keeper.ask();
    }
    return new Given.Season(keeper.doses, keeper.tests, keeper.alsoLh);
  }

  private boolean goesOn() {
    boolean committed = !doses.isEmpty() && !row.actedOnTheDay();
    return !committed && doses.size() < row.most() && now <= LAST_DAY;
  }

  private void ask() {
    learn();
    Advice advice = engine.advise(cycle());
    Plan plan = advice.breeding().plan();
    double last = plan == null ? Double.POSITIVE_INFINITY : lastMoment(plan);
    if (plan != null && last <= now + MOMENT && ready(advice)) {
      commit(plan);
      return;
    }
    if (advice.action().now() == Action.Now.PASSED) {
      now = LAST_DAY + 1;
      return;
    }
    NextTest test = advice.testing().next();
    double drawn = test == null ? Double.POSITIVE_INFINITY : day(test.at());
    boolean waiting = !pending.isEmpty();
    double next = last > now + MOMENT ? last : Double.POSITIVE_INFINITY;
    if (test != null && !waiting && drawn <= next) {
      now = Math.max(now, drawn);
      tests++;
      pending.add(new Pending(now + TURNAROUND, blood.test(test.kind(), now)));
      for (TestKind also : test.also()) {
        pending.add(new Pending(now + TURNAROUND, blood.test(also, now)));
        alsoLh++;
      }
    }
    now = Math.min(Math.min(next, arrival()), now + 1);
  }

  private static boolean ready(Advice advice) {
    Action.Now what = advice.action().now();
    return what == Action.Now.BOOK || what == Action.Now.BREED;
  }

  private double arrival() {
    return pending.stream().mapToDouble(Pending::day).min().orElse(Double.POSITIVE_INFINITY);
  }

  private void learn() {
    pending.removeIf(one -> one.day() <= now + MOMENT && known.add(one.observation()));
  }

  /** When the plan can wait no longer. */
  private double lastMoment(Plan plan) {
    double first = day(plan.at().get(0));
    return switch (row.semen()) {
      case NATURAL, FRESH -> first - AT_HAND;
      case CHILLED -> {
        OffsetDateTime orderBy = plan.orderBy();
        yield orderBy == null ? first - 1 : day(orderBy);
      }
      case FROZEN -> Math.floor(first) - 1 + TOLD_BY;
    };
  }

  private void commit(Plan plan) {
    int count = row.actedOnTheDay() ? 1 : plan.at().size();
    for (OffsetDateTime at : plan.at().subList(0, count)) {
      doses.add(new Given(day(at), ageHours(at.toInstant())));
    }
    double first = day(plan.at().get(0));
    if (row.actedOnTheDay()) {
      known.add(
          new BreedingDone(
              "m" + doses.size(),
              plan.at().get(0).toInstant(),
              row.semen(),
              row.semen() == Semen.NATURAL ? Route.NATURAL : Route.VAGINAL));
      now = first + AT_HAND;
    }
  }

  private double ageHours(Instant at) {
    return new Slots(PARAMETERS, told(), Calendar.instant(now), Calendar.ZONE)
        .until(at.atZone(Calendar.ZONE).toLocalDate()).stream()
            .filter(slot -> !at.isBefore(slot.from()) && !at.isAfter(slot.to()))
            .findFirst()
            .orElseThrow(() -> new IllegalStateException("no window at " + at))
            .ageHours();
  }

  private SemenPlan told() {
    return row.told(row.most() - doses.size(), row.semen() == Semen.FROZEN ? clinic() : List.of());
  }

  /** The windows the clinic can still be told of. */
  private List<Availability> clinic() {
    double today = Math.floor(now + MOMENT);
    double first = now <= today + TOLD_BY + MOMENT ? today + 1 : today + 2;
    List<Availability> windows = new ArrayList<>();
    // a file takes a hundred windows, fifty days ahead
    double last = Math.min(LAST_DAY + 10, first + 100.0 / CLINIC.length - 1);
    for (double day = first; day <= last; day++) {
      for (double[] hours : CLINIC) {
        windows.add(
            new Availability(Calendar.instant(day + hours[0]), Calendar.instant(day + hours[1])));
      }
    }
    return windows;
  }

  private CycleRecord cycle() {
    return CycleRecord.on(Calendar.instant(now), Calendar.ZONE)
        .firstBlood(FirstBlood.seen(Calendar.FIRST_DAY.plusDays(blood.bitch().noticedAfter())))
        .addAll(known)
        .semen(told())
        .laboratory(LaboratoryHours.unknown().turnaroundHours(TURNAROUND_HOURS))
        .build();
  }

  private static double day(OffsetDateTime at) {
    return Calendar.day(at.toInstant());
  }
}
