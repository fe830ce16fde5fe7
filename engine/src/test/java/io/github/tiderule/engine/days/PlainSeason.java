package io.github.tiderule.engine.days;

import io.github.tiderule.engine.advice.CommitmentKind;
import io.github.tiderule.engine.timeline.Density;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

/**
 * A season with ovulation about noon of 11 March, give or take a day, and windows of four hours in
 * UTC; with egg shares reckoned in the plainest way from the table of meetings alone.
 */
final class PlainSeason {

  static final Parameters PARAMETERS = Parameters.load();
  static final Instant ANCHOR = Instant.parse("2027-03-01T00:00:00Z");
  static final TimeAxis AXIS = TimeAxis.from(ANCHOR);
  static final LocalDate FIRST = LocalDate.of(2027, 3, 1);

  /** Ovulations of less weight than this are left out. */
  private static final double LEAST = 1e-5;

  final EggModel eggs = new EggModel(PARAMETERS);
  final Density ovulation;
  final List<Slot> slots = new ArrayList<>();
  final Semen semen;
  final Route route;

  PlainSeason(Semen semen, Route route, double mean, double sd) {
    this.semen = semen;
    this.route = route;
    double[] weights = new double[161];
    for (int i = 0; i < weights.length; i++) {
      double z = (i * 0.125 - mean) / sd;
      weights[i] = Math.exp(-z * z / 2);
    }
    ovulation = Density.ofWeights(0, 0.125, weights);
  }

  /** Adds a window about an hour of a day of March, to be decided so many hours before. */
  PlainSeason slot(int day, double hour, double ahead) {
    Instant middle = ANCHOR.plus(Duration.ofMinutes(Math.round(((day - 1) * 24 + hour) * 60)));
    Instant by = middle.minus(Duration.ofMinutes(Math.round(ahead * 60)));
    slots.add(
        new Slot(
            middle.atZone(ZoneOffset.UTC).toLocalDate(),
            middle.minus(Duration.ofHours(2)),
            middle.plus(Duration.ofHours(2)),
            middle,
            24,
            ahead == 0 ? List.of() : List.of(new Deadline(CommitmentKind.BOOK, by))));
    return this;
  }

  SemenPlan plan(Integer doses) {
    return new SemenPlan(semen, route, doses, null, null, null, List.of(), null);
  }

  DayTable table(BreedingDone... given) {
    return DayTable.of(eggs, ovulation, AXIS, slots, plan(2), List.of(given), 24);
  }

  /** Days on the axis of the ovulations that are kept. */
  double[] days() {
    List<Double> days = new ArrayList<>();
    for (int i = 0; i < ovulation.size(); i++) {
      if (ovulation.value(i) * ovulation.step() >= LEAST) {
        days.add(ovulation.at(i));
      }
    }
    return days.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Their chances. */
  double[] chances() {
    List<Double> chances = new ArrayList<>();
    double sum = 0;
    for (int i = 0; i < ovulation.size(); i++) {
      double one = ovulation.value(i) * ovulation.step();
      if (one >= LEAST) {
        chances.add(one);
        sum += one;
      }
    }
    double all = sum;
    return chances.stream().mapToDouble(one -> one / all).toArray();
  }

  double middle(int slot) {
    return AXIS.day(slots.get(slot).middle());
  }

  /** Share of eggs that doses in some slots meet when she ovulates at a time. */
  double share(double ovulated, List<Integer> set) {
    Meeting meeting = eggs.meeting(semen, route, 24);
    double met = 0;
    for (int egg = 0; egg < meeting.eggs(); egg++) {
      double missed = 1;
      for (int slot : set) {
        missed *= 1 - meeting.met(egg, middle(slot) - ovulated);
      }
      met += meeting.weight(egg) * (1 - missed);
    }
    return met;
  }

  /** Expected share of eggs. */
  double mean(List<Integer> set) {
    double[] days = days();
    double[] chances = chances();
    double sum = 0;
    for (int i = 0; i < days.length; i++) {
      sum += chances[i] * share(days[i], set);
    }
    return sum;
  }

  /** Every set of so many slots that lie far enough apart, in order. */
  List<List<Integer>> sets(int doses, double spacingHours) {
    List<List<Integer>> sets = new ArrayList<>();
    grow(sets, List.of(), doses, spacingHours);
    return sets;
  }

  private void grow(List<List<Integer>> sets, List<Integer> set, int left, double spacing) {
    if (left == 0) {
      sets.add(set);
      return;
    }
    int from = set.isEmpty() ? 0 : set.get(set.size() - 1) + 1;
    for (int s = from; s < slots.size(); s++) {
      boolean far =
          set.isEmpty() || 24 * (middle(s) - middle(set.get(set.size() - 1))) >= spacing - 1e-9;
      if (far) {
        List<Integer> more = new ArrayList<>(set);
        more.add(s);
        grow(sets, List.copyOf(more), left - 1, spacing);
      }
    }
  }
}
