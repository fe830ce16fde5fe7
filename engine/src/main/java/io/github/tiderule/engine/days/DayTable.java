package io.github.tiderule.engine.days;

import io.github.tiderule.engine.timeline.Density;
import io.github.tiderule.engine.timeline.TimeAxis;
import io.github.tiderule.rules.fact.CandidateDay;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/** The slots ahead with the egg share of a single dose in each, and the days they make up. */
public final class DayTable {

  private final TimeAxis axis;
  private final List<Slot> slots;
  private final EggShares shares;
  private final List<CandidateDay> days;
  private final Map<LocalDate, Integer> bestSlot;
  private final List<EggShares.TimedDose> doses;
  private final List<EggShares.TimedDose> earlier;
  private final SemenPlan plan;

  private DayTable(
      TimeAxis axis,
      List<Slot> slots,
      EggShares shares,
      List<CandidateDay> days,
      Map<LocalDate, Integer> bestSlot,
      List<EggShares.TimedDose> doses,
      List<EggShares.TimedDose> earlier,
      SemenPlan plan) {
    this.axis = axis;
    this.slots = slots;
    this.shares = shares;
    this.days = days;
    this.bestSlot = bestSlot;
    this.doses = doses;
    this.earlier = earlier;
    this.plan = plan;
  }

  /**
   * The table of a season.
   *
   * @param slots at least one, unless a breeding is done already
   * @param given breedings already done
   */
  public static DayTable of(
      EggModel eggs,
      Density ovulation,
      TimeAxis axis,
      List<Slot> slots,
      SemenPlan plan,
      List<BreedingDone> given,
      double usualAgeHours) {
    List<EggShares.TimedDose> doses = new ArrayList<>();
    for (Slot slot : slots) {
      doses.add(
          new EggShares.TimedDose(
              axis.day(slot.middle()), eggs.meeting(plan.semen(), plan.route(), slot.ageHours())));
    }
    List<EggShares.TimedDose> earlier = new ArrayList<>();
    for (BreedingDone breeding : given) {
      earlier.add(
          new EggShares.TimedDose(
              axis.day(breeding.at()),
              eggs.meeting(breeding.semen(), breeding.route(), usualAgeHours)));
    }
    EggShares shares = EggShares.of(ovulation, doses, earlier);
    EggShares alone =
        earlier.isEmpty() || slots.isEmpty() ? shares : EggShares.of(ovulation, doses, List.of());
    double[] mean = new double[slots.size()];
    Map<LocalDate, Integer> bestSlot = new LinkedHashMap<>();
    for (int s = 0; s < mean.length; s++) {
      mean[s] = alone.meanWith(alone.start(), s);
      Integer best = bestSlot.get(slots.get(s).day());
      if (best == null || mean[s] > mean[best]) {
        bestSlot.put(slots.get(s).day(), s);
      }
    }
    double median = ovulation.quantile(0.5);
    List<CandidateDay> days = new ArrayList<>();
    for (Map.Entry<LocalDate, Integer> entry : bestSlot.entrySet()) {
      Slot slot = slots.get(entry.getValue());
      double middle = axis.day(slot.middle());
      double[] misses = alone.vector();
      alone.and(alone.start(), entry.getValue(), misses);
      days.add(
          new CandidateDay(
              entry.getKey(),
              slot.from(),
              slot.to(),
              mean[entry.getValue()],
              alone.p10(misses),
              middle - median,
              ovulation.cdf(middle),
              closed(eggs, ovulation, middle),
              plan.semen() == Semen.CHILLED ? slot.ageHours() : 0));
    }
    return new DayTable(axis, slots, shares, days, bestSlot, doses, earlier, plan);
  }

  private static double closed(EggModel eggs, Density ovulation, double middle) {
    double sum = 0;
    for (int i = 0; i < ovulation.size(); i++) {
      if (ovulation.value(i) > 1e-4) {
        sum +=
            ovulation.value(i)
                * ovulation.step()
                * eggs.probabilityClosed(middle - ovulation.at(i));
      }
    }
    return Math.min(sum, 1);
  }

  /** The days, in order. */
  public List<CandidateDay> days() {
    return days;
  }

  /** The slots, in time order. */
  public List<Slot> slots() {
    return slots;
  }

  /** The shares of all slots, beside the breedings already done. */
  EggShares shares() {
    return shares;
  }

  /** Expected egg share of the breedings already done, 0 when there are none. */
  public double alreadyMet() {
    return shares.mean(shares.start());
  }

  /** Tenth percentile of that over where ovulation may lie. */
  public double alreadyMetP10() {
    return shares.p10(shares.start());
  }

  /**
   * A search over slots of days that are not forbidden and not too soon after a breeding already
   * done.
   */
  PlanSearch search(Parameters parameters, Set<LocalDate> forbidden, double spacingHours) {
    return search(shares, parameters, forbidden, spacingHours);
  }

  /** The same over other ovulations than the estimate's. */
  PlanSearch search(
      double[] ovulations,
      double[] chance,
      Parameters parameters,
      Set<LocalDate> forbidden,
      double spacingHours) {
    return search(
        EggShares.over(ovulations, chance, doses, earlier), parameters, forbidden, spacingHours);
  }

  private PlanSearch search(
      EggShares over, Parameters parameters, Set<LocalDate> forbidden, double spacingHours) {
    double last =
        earlier.stream().mapToDouble(dose -> 24 * dose.day()).max().orElse(-Double.MAX_VALUE);
    double[] hours = new double[slots.size()];
    boolean[] allowed = new boolean[slots.size()];
    for (int s = 0; s < hours.length; s++) {
      hours[s] = axis.day(slots.get(s).middle()) * 24;
      allowed[s] = !forbidden.contains(slots.get(s).day()) && hours[s] - last >= spacingHours;
    }
    return new PlanSearch(
        over,
        hours,
        allowed,
        spacingHours,
        parameters.value("planning.near-tie"),
        parameters.value("planning.combine-share"),
        Practice.of(parameters, plan));
  }

  /** The slot that stands for a day. */
  public Slot slotOf(LocalDate day) {
    return slots.get(Objects.requireNonNull(bestSlot.get(day)));
  }
}
