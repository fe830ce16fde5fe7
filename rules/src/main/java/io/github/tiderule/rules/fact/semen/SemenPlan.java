package io.github.tiderule.rules.fact.semen;

import io.github.tiderule.rules.fact.Listing;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The semen there is, and what limits its use.
 *
 * @param doses how many doses there are, 1–4; absent means natural mating as often as useful
 * @param hoursBetween least time between two doses, 0–240 hours, if limited
 * @param chilledAgeHours age of chilled semen when it is used, 0–240 hours, if known
 * @param available spans in which a breeding can take place, at most 100; empty means any time
 * @param travelHours travel to where she is bred, 0–240 hours, if known
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
    available = Listing.of(available);
  }

  /** Whether there is one dose and no more. */
  public boolean onlyDose() {
    return doses != null && doses == 1;
  }

  /** Semen by its usual route, with nothing said of doses or times. */
  public static SemenPlan of(Semen semen) {
    return new SemenPlan(
        semen, Route.usualFor(semen), null, null, null, null, List.of(), null, null);
  }

  /** What holds when nobody said anything: the semen in hand, or else natural mating. */
  public static SemenPlan usualFor(@Nullable Semen described) {
    return described == null ? naturalUnlimited() : of(described);
  }

  /** With one more span, of at most 100, in which a breeding can take place. */
  public SemenPlan available(Instant from, Instant to) {
    return new SemenPlan(
        semen,
        route,
        doses,
        hoursBetween,
        chilledAgeHours,
        dose,
        Listing.plus(available, new Availability(from, to)),
        order,
        travelHours);
  }

  /** With all spans, at most 100, in which a breeding can take place. */
  public SemenPlan available(List<Availability> spans) {
    return new SemenPlan(
        semen, route, doses, hoursBetween, chilledAgeHours, dose, spans, order, travelHours);
  }

  /** By another route than the usual one. */
  public SemenPlan route(Route other) {
    return new SemenPlan(
        semen, other, doses, hoursBetween, chilledAgeHours, dose, available, order, travelHours);
  }

  /**
   * With so many doses.
   *
   * @param count 1–4
   */
  public SemenPlan doses(int count) {
    return new SemenPlan(
        semen, route, count, hoursBetween, chilledAgeHours, dose, available, order, travelHours);
  }

  /**
   * With the least time between two doses.
   *
   * @param hours 0–240
   */
  public SemenPlan hoursBetween(double hours) {
    return new SemenPlan(
        semen, route, doses, hours, chilledAgeHours, dose, available, order, travelHours);
  }

  /**
   * With the age of chilled semen when it is used.
   *
   * @param hours 0–240
   */
  public SemenPlan chilledAgeHours(double hours) {
    return new SemenPlan(
        semen, route, doses, hoursBetween, hours, dose, available, order, travelHours);
  }

  /** With what one dose holds. */
  public SemenPlan dose(Dose one) {
    return new SemenPlan(
        semen, route, doses, hoursBetween, chilledAgeHours, one, available, order, travelHours);
  }

  /** With how it is ordered. */
  public SemenPlan order(OrderTerms terms) {
    return new SemenPlan(
        semen, route, doses, hoursBetween, chilledAgeHours, dose, available, terms, travelHours);
  }

  /**
   * With the journey to where she is bred.
   *
   * @param hours 0–240
   */
  public SemenPlan travelHours(double hours) {
    return new SemenPlan(
        semen, route, doses, hoursBetween, chilledAgeHours, dose, available, order, hours);
  }

  /** What holds when nobody said anything: natural mating, as often as useful. */
  public static SemenPlan naturalUnlimited() {
    return new SemenPlan(Semen.NATURAL, Route.NATURAL, null, null, null, null, List.of(), null);
  }
}
