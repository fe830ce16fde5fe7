package io.github.tiderule.cases.property;

import io.github.tiderule.engine.CycleBuilder;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.kennel.HealthTest;
import io.github.tiderule.rules.kennel.HealthTestKind;
import io.github.tiderule.rules.kennel.HealthTestResult;
import io.github.tiderule.rules.kennel.Stud;
import io.github.tiderule.rules.kennel.Whose;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

/**
 * A season for a seed as a careless program might build it: everything that can be said is said or
 * not.
 */
final class RandomRecord {

  private static final LocalDate BLOOD = LocalDate.of(2027, 2, 1);
  private static final List<String> ZONES =
      List.of("UTC", "Europe/Vienna", "Pacific/Apia", "America/St_Johns");

  private final CarelessHand hand;
  private final CycleBuilder cycle;

  private RandomRecord(long seed) {
    hand = new CarelessHand(seed, BLOOD);
    cycle = CycleRecord.on(hand.at(hand.today()), ZoneId.of(hand.one(ZONES)));
  }

  /** The season of a seed, not yet built; the same seed gives the same season. */
  static CycleBuilder of(long seed) {
    RandomRecord one = new RandomRecord(seed);
    one.fill();
    return one.cycle;
  }

  private void fill() {
    RandomSemen semen = new RandomSemen(hand);
    cycle.firstBlood(
        switch (hand.below(4)) {
          case 0 -> FirstBlood.unknown();
          case 1 -> FirstBlood.estimated(BLOOD);
          default -> FirstBlood.seen(BLOOD);
        });
    cycle.female(female());
    if (hand.often()) {
      cycle.add(
          EarlierCycle.from(BLOOD.minusDays(200))
              .ovulatedOn(BLOOD.minusDays(hand.whole(110, 200))));
    }
    if (hand.below(6) == 0) {
      cycle.add(new Treatment(hand.one(TreatmentKind.class), hand.past(300)));
    }
    for (int i = hand.below(12); i > 0; i--) {
      Observation seen = observation();
      cycle.add(hand.slips() ? seen.withId("same") : seen);
    }
    if (hand.often()) {
      cycle.semen(semen.plan());
    }
    if (hand.below(3) == 0) {
      cycle.insemination(semen.insemination());
    }
    if (hand.below(4) == 0) {
      cycle.outcome(outcome());
    }
    if (hand.below(3) == 0) {
      cycle.background(background());
    }
    cycle.laboratory(
        LaboratoryHours.unknown()
            .turnaroundHours(hand.number(0, 336))
            .opensOn(hand.one(DayOfWeek.class)));
  }

  private Female female() {
    return Female.unknown()
        .name(hand.text())
        .breed(hand.text())
        .bodyMassKg(hand.number(0.5, 150))
        .bornOn(hand.past(4000))
        .littersWhelped(hand.whole(0, 40))
        .caesareans(hand.whole(0, 40))
        .missedPregnancies(hand.whole(0, 40));
  }

  private Observation observation() {
    return switch (hand.below(14)) {
      case 0 ->
          ProgesteroneBand.between(
              hand.number(0, 5), hand.number(6, 10_000), hand.one(Unit.class), hand.moment());
      case 1 -> ProgesteroneBand.above(hand.number(0, 10_000), hand.one(Unit.class), hand.moment());
      case 2 ->
          hand.below(2) == 0 ? LhTest.positive(hand.moment()) : LhTest.negative(hand.moment());
      case 3 -> Smear.at(hand.moment()).cornifiedPercent(hand.number(0, 100));
      case 4 -> Smear.at(hand.moment()).neutrophils(hand.one(Neutrophils.class));
      case 5 -> Vaginoscopy.of(hand.one(Folds.class), hand.moment());
      case 6 -> Sign.seen(hand.one(SignKind.class), hand.moment());
      case 7 -> OvaryScan.of(hand.one(OvaryFinding.class), hand.moment());
      case 8 -> BreedingDone.of(hand.one(Semen.class), hand.moment()).route(hand.one(Route.class));
      case 9 -> scan();
      case 10 -> Radiograph.at(hand.moment()).fetuses(hand.whole(0, 30));
      case 11 -> BodyTemperature.of(hand.number(30, 44), hand.moment());
      default -> value();
    };
  }

  private Observation scan() {
    PregnancyScan scan = PregnancyScan.of(hand.one(ScanFinding.class), hand.moment());
    return hand.below(2) == 0
        ? scan.fetuses(scan.shown() ? hand.whole(0, 30) : 0)
        : scan.shown() ? scan.biparietalMm(hand.number(1, 120)) : scan;
  }

  private Progesterone value() {
    Progesterone.Result result =
        switch (hand.below(6)) {
          case 0 -> Progesterone.withoutUnit(hand.number(0, 10_000));
          case 1 -> Progesterone.below(hand.number(0.1, 10_000), hand.one(Unit.class));
          case 2 -> Progesterone.above(hand.number(0, 10_000), hand.one(Unit.class));
          default -> Progesterone.of(hand.number(0, 100), hand.one(Unit.class));
        };
    Instant drawn = hand.moment();
    Progesterone value = result.drawn(drawn).method(hand.one(Method.class)).laboratory(hand.text());
    return hand.below(3) > 0
        ? value
        : value
            .reportedAt(CarelessHand.after(drawn, hand.number(0, 9999)))
            .specimen(hand.one(Specimen.class))
            .tube(hand.one(Tube.class))
            .handling(hand.one(Handling.class), hand.one(Handling.class))
            .asReported(hand.text());
  }

  private Outcome outcome() {
    return hand.below(2) == 0
        ? Outcome.unknown().pregnant(false)
        : Outcome.unknown()
            .pregnant(true)
            .whelpedOn(hand.past(5))
            .litterSize(30)
            .pupsBornAlive(hand.whole(0, 30));
  }

  private Background background() {
    return Background.unknown()
        .lastWhelpedOn(hand.past(900))
        .tests(
            HealthTest.of(
                Whose.FEMALE,
                hand.one(HealthTestKind.class),
                hand.past(400),
                HealthTestResult.POSITIVE),
            HealthTest.of(
                    Whose.STUD,
                    HealthTestKind.GENETIC,
                    hand.past(400),
                    hand.one(HealthTestResult.class))
                .condition(hand.text()))
        .stud(
            Stud.unknown()
                .name(hand.text())
                .bodyMassKg(hand.number(0.5, 150))
                .bornOn(hand.past(4000)));
  }
}
