package io.github.tiderule.cases.plans;

import io.github.tiderule.rules.fact.semen.Availability;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import java.time.LocalTime;
import java.util.List;

/**
 * A row of the table: the semen, the route and how many doses.
 *
 * <p>Natural mating and fresh semen are at hand, and each is acted on the day. Chilled semen is
 * ordered by 14:00 and arrives 22 hours later; both doses are ordered with the first. For frozen
 * semen the clinic is told by 18:00 on the day before the first dose.
 */
public enum Row {
  NATURAL(Semen.NATURAL, Route.NATURAL, 3),
  FRESH_TWO(Semen.FRESH, Route.VAGINAL, 2),
  CHILLED_ONE(Semen.CHILLED, Route.TRANSCERVICAL, 1),
  CHILLED_TWO(Semen.CHILLED, Route.TRANSCERVICAL, 2),
  FROZEN_ONE(Semen.FROZEN, Route.TRANSCERVICAL, 1),
  FROZEN_TWO(Semen.FROZEN, Route.TRANSCERVICAL, 2);

  private static final Dose GOOD =
      Dose.unknown().totalSperm(5e8).progressivelyMotilePercent(75).normalPercent(80);
  private static final OrderTerms COURIER =
      OrderTerms.unknown().cutOff(LocalTime.of(14, 0)).transitHours(22);

  private final Semen semen;
  private final Route route;
  private final int most;

  Row(Semen semen, Route route, int most) {
    this.semen = semen;
    this.route = route;
    this.most = most;
  }

  public Semen semen() {
    return semen;
  }

  /** Most doses or matings. */
  int most() {
    return most;
  }

  boolean intoUterus() {
    return route == Route.TRANSCERVICAL;
  }

  /** Whether each dose is decided on its own day. */
  boolean actedOnTheDay() {
    return semen == Semen.NATURAL || semen == Semen.FRESH;
  }

  /** Least hours between two doses. */
  double spacingHours() {
    return semen == Semen.NATURAL ? 48 : 24;
  }

  /**
   * What the engine is told.
   *
   * @param left doses left; of no matter for natural mating, which is not counted
   * @param clinic windows the clinic still has; empty for any time
   */
  public SemenPlan told(int left, List<Availability> clinic) {
    SemenPlan plan = SemenPlan.of(semen).route(route).available(clinic);
    if (semen == Semen.NATURAL) {
      return plan;
    }
    SemenPlan counted = plan.doses(left).dose(GOOD);
    return semen == Semen.CHILLED ? counted.order(COURIER) : counted;
  }

  /** What is aimed at of the knowing plan's share, in every world. */
  double target() {
    return switch (this) {
      case NATURAL, FRESH_TWO, CHILLED_TWO -> 0.98;
      case CHILLED_ONE, FROZEN_TWO -> 0.95;
      case FROZEN_ONE -> 0.88;
    };
  }

  public String words() {
    return switch (this) {
      case NATURAL -> "natural, up to 3 matings";
      case FRESH_TWO -> "fresh, 2 doses";
      case CHILLED_ONE -> "chilled, 1 dose";
      case CHILLED_TWO -> "chilled, 2 doses";
      case FROZEN_ONE -> "frozen, 1 dose";
      case FROZEN_TWO -> "frozen, 2 doses";
    };
  }
}
