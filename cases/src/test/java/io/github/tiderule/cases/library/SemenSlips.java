package io.github.tiderule.cases.library;

import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.semen.Arrival;
import io.github.tiderule.rules.semen.Certificate;
import io.github.tiderule.rules.semen.Ejaculate;
import io.github.tiderule.rules.semen.EjaculateFraction;
import io.github.tiderule.rules.semen.Fraction;
import io.github.tiderule.rules.semen.Insemination;
import io.github.tiderule.rules.semen.Wanted;
import java.time.Instant;
import java.time.LocalDate;
import java.util.stream.Stream;

/** What can be wrong with the semen she is bred with, and with that in hand. */
final class SemenSlips {

  private static final Instant AT = Instant.parse("2027-01-08T07:00:00Z");

  private SemenSlips() {}

  private static SemenPlan chilled() {
    return SemenPlan.of(Semen.CHILLED);
  }

  static Stream<Slip> semen() {
    return Stream.of(
        Slip.plan("'doses': -3", "doses", "negative-value", chilled().doses(-3)),
        Slip.plan("'doses': 5", "doses", "out-of-range", chilled().doses(5)),
        Slip.plan(
            "'hoursBetween': 241", "hoursBetween", "out-of-range", chilled().hoursBetween(241)),
        Slip.plan(
            "'chilledAgeHours': -1",
            "chilledAgeHours",
            "negative-value",
            chilled().chilledAgeHours(-1)),
        Slip.plan("'travelHours': 300", "travelHours", "out-of-range", chilled().travelHours(300)),
        Slip.plan(
            "'dose': {'progressivelyMotilePercent': 250}",
            "dose.progressivelyMotilePercent",
            "out-of-range",
            chilled().dose(Dose.unknown().progressivelyMotilePercent(250))),
        Slip.plan(
            "'dose': {'totalSperm': 1.0E12}",
            "dose.totalSperm",
            "out-of-range",
            chilled().dose(Dose.unknown().totalSperm(1e12))),
        Slip.plan(
            "'available': [{'from': '2027-01-20T08:00:00Z', 'to': '2027-01-14T08:00:00Z'}]",
            "available[0].from",
            "wrong-order",
            chilled()
                .available(
                    Instant.parse("2027-01-20T08:00:00Z"), Instant.parse("2027-01-14T08:00:00Z"))),
        Slip.plan(
            "'order': {'transitHours': 500}",
            "order.transitHours",
            "out-of-range",
            chilled().order(OrderTerms.unknown().transitHours(500))),
        Slip.plan(
            "'order': {'holidays': ['1999-01-06']}",
            "order.holidays[0]",
            "implausible-date",
            chilled().order(OrderTerms.unknown().holidays(LocalDate.of(1999, 1, 6)))),
        Slip.of(
            "'laboratory': {'turnaroundHours': 337}",
            "/laboratory/turnaroundHours",
            "out-of-range",
            cycle -> cycle.laboratory(LaboratoryHours.unknown().turnaroundHours(337)),
            "laboratory.turnaroundHours"));
  }

  private static Insemination of(Ejaculate ejaculate) {
    return Insemination.unknown().ejaculate(ejaculate);
  }

  private static Insemination of(Arrival arrival) {
    return Insemination.unknown().arrival(arrival);
  }

  static Stream<Slip> insemination() {
    return Stream.of(
        Slip.inHand(
            "'ejaculate': {'fractions': [{'fraction': 'sperm-rich', 'volumeMl': 0}]}",
            "ejaculate.fractions[0].volumeMl",
            "out-of-range",
            of(Ejaculate.of(EjaculateFraction.of(Fraction.SPERM_RICH).volumeMl(0)))),
        Slip.inHand(
            "'ejaculate': {'fractions': [], 'normalPercent': 101}",
            "ejaculate.normalPercent",
            "out-of-range",
            of(Ejaculate.of().normalPercent(101))),
        Slip.inHand(
            "'ejaculate': {'fractions': [], 'temperatureC': 46}",
            "ejaculate.temperatureC",
            "out-of-range",
            of(Ejaculate.of().temperatureC(46))),
        Slip.inHand(
            "'certificate': {'units': 0}",
            "certificate.units",
            "out-of-range",
            Insemination.unknown().certificate(Certificate.of(0))),
        Slip.inHand(
            "'certificate': {'units': 2, 'spermPerUnitMillion': 20001}",
            "certificate.spermPerUnitMillion",
            "out-of-range",
            Insemination.unknown().certificate(Certificate.of(2).spermPerUnitMillion(20_001))),
        Slip.inHand(
            "'arrival': {'temperatureC': -31}",
            "arrival.temperatureC",
            "out-of-range",
            of(Arrival.unknown().temperatureC(-31))),
        Slip.inHand(
            "'arrival': {'collectedAt': '2027-01-08T07:00:00Z',"
                + " 'arrivedAt': '2027-01-08T06:00:00Z'}",
            "arrival.arrivedAt",
            "wrong-order",
            of(Arrival.unknown().collectedAt(AT).arrivedAt(AT.minusSeconds(3600)))),
        Slip.inHand(
            "'at': '2027-01-08T06:00:00Z', 'arrival': {'collectedAt': '2027-01-08T07:00:00Z'}",
            "at",
            "wrong-order",
            of(Arrival.unknown().collectedAt(AT)).at(AT.minusSeconds(3600))),
        Slip.inHand(
            "'wanted': {'doses': 0}",
            "wanted.doses",
            "out-of-range",
            Insemination.unknown().wanted(Wanted.nothing().doses(0))),
        Slip.inHand(
            "'wanted': {'concentrationMillionPerMl': 0}",
            "wanted.concentrationMillionPerMl",
            "out-of-range",
            Insemination.unknown().wanted(Wanted.nothing().concentrationMillionPerMl(0))),
        Slip.inHand(
            "'extenderTemperatureC': 98",
            "extenderTemperatureC",
            "out-of-range",
            Insemination.unknown().extenderTemperatureC(98)));
  }
}
