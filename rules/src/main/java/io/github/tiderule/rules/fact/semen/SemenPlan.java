package io.github.tiderule.rules.fact.semen;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The semen there is, and what limits its use.
 *
 * @param doses how many doses there are; absent means natural mating as often as useful
 * @param hoursBetween least time between two doses, in hours, if limited
 * @param chilledAgeHours age of chilled semen when it is used, in hours, if known
 * @param available spans in which a breeding can take place; empty means any time
 * @param travelHours hours of travel to where she is bred, if known
 */
public record SemenPlan(
    Semen semen,
    Route route,
    @Nullable Integer doses,
    @Nullable Double hoursBetween,
    @Nullable Double chilledAgeHours,
    @Nullable Dose dose,
    List<Availability> available,
    @Nullable OrderTerms order,
    @Nullable Double travelHours) {

  /** A plan without a journey. */
  public SemenPlan(
      Semen semen,
      Route route,
      @Nullable Integer doses,
      @Nullable Double hoursBetween,
      @Nullable Double chilledAgeHours,
      @Nullable Dose dose,
      List<Availability> available,
      @Nullable OrderTerms order) {
    this(semen, route, doses, hoursBetween, chilledAgeHours, dose, available, order, null);
  }

  public SemenPlan {
    available = List.copyOf(available);
  }

  /** What holds when nobody said anything: natural mating, as often as useful. */
  public static SemenPlan naturalUnlimited() {
    return new SemenPlan(Semen.NATURAL, Route.NATURAL, null, null, null, null, List.of(), null);
  }
}
