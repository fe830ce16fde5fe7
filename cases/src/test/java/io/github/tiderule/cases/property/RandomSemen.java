package io.github.tiderule.cases.property;

import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenColour;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.Certificate;
import io.github.tiderule.rules.semen.Ejaculate;
import io.github.tiderule.rules.semen.EjaculateFraction;
import io.github.tiderule.rules.semen.Fraction;
import io.github.tiderule.rules.semen.FrozenUnit;
import io.github.tiderule.rules.semen.Insemination;
import io.github.tiderule.rules.semen.Wanted;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalTime;

/** The semen of a season as a careless program might fill it in. */
record RandomSemen(CarelessHand hand) {

  SemenPlan plan() {
    SemenPlan plan = SemenPlan.of(hand.one(Semen.class));
    plan = hand.below(4) == 0 ? plan.route(hand.one(Route.class)) : plan;
    plan = hand.often() ? plan.doses(hand.whole(1, 4)) : plan;
    plan =
        hand.often()
            ? plan
            : plan.hoursBetween(hand.number(0, 240)).chilledAgeHours(hand.number(0, 240));
    plan = hand.often() ? plan : plan.dose(dose()).travelHours(hand.number(0, 240));
    Instant from = hand.moment();
    plan =
        hand.often() ? plan : plan.available(from, CarelessHand.after(from, hand.number(1, 1e6)));
    return hand.often()
        ? plan
        : plan.order(
            OrderTerms.unknown()
                .cutOff(LocalTime.of(hand.below(24), 0))
                .transitHours(hand.number(0, 240))
                .noDeliveryOn(hand.one(DayOfWeek.class), DayOfWeek.SUNDAY)
                .holidays(hand.past(5))
                .collectionOn(hand.one(DayOfWeek.class)));
  }

  private Dose dose() {
    return Dose.unknown()
        .totalSperm(hand.number(0, 1e11))
        .progressivelyMotilePercent(hand.number(0, 100))
        .normalPercent(hand.number(0, 100));
  }

  Insemination insemination() {
    Insemination one = Insemination.unknown().wanted(wanted());
    one = hand.often() ? one.extenderTemperatureC(hand.number(0, 45)) : one;
    return switch (hand.below(4)) {
      case 0 -> one;
      case 1 ->
          one.ejaculate(
              Ejaculate.of(
                      EjaculateFraction.of(hand.one(Fraction.class))
                          .volumeMl(hand.number(0.001, 200))
                          .appearance(hand.one(SemenColour.class)))
                  .concentrationMillionPerMl(hand.number(0, 5000))
                  .progressivelyMotilePercent(hand.number(0, 100))
                  .normalPercent(hand.number(0, 100))
                  .temperatureC(hand.number(0, 45)));
      case 2 ->
          one.certificate(
              Certificate.of(hand.whole(1, 200))
                  .unit(hand.one(FrozenUnit.class))
                  .spermPerUnitMillion(hand.number(0, 20_000))
                  .volumeMlPerUnit(hand.number(0.001, 200))
                  .progressivelyMotilePercent(hand.number(0, 100))
                  .normalPercent(hand.number(0, 100)));
      default ->
          one.arrival(
              Arrival.unknown()
                  .temperatureC(hand.number(-30, 60))
                  .volumeMl(hand.number(0.001, 200))
                  .concentrationMillionPerMl(hand.number(0, 5000))
                  .totalSpermMillion(hand.number(0, 20_000))
                  .progressivelyMotilePercent(hand.number(0, 100))
                  .normalPercent(hand.number(0, 100)));
    };
  }

  private Wanted wanted() {
    return hand.often()
        ? Wanted.nothing()
        : Wanted.nothing()
            .volumeMl(hand.number(0.001, 200))
            .concentrationMillionPerMl(hand.number(0.001, 5000))
            .doses(hand.whole(1, 4));
  }
}
