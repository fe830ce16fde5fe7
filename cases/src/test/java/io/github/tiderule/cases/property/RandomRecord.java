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
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.Route;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenColour;
import io.github.tiderule.rules.fact.semen.SemenPlan;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.kennel.HealthTest;
import io.github.tiderule.rules.kennel.HealthTestKind;
import io.github.tiderule.rules.kennel.HealthTestResult;
import io.github.tiderule.rules.kennel.Stud;
import io.github.tiderule.rules.kennel.Whose;
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
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Random;

/**
 * A season for a seed as a careless program might build it: everything that can be said is said or
 * not, mostly within its limits, at times at their very edge, and in half of the seasons also
 * beyond.
 */
final class RandomRecord {

  private static final LocalDate BLOOD = LocalDate.of(2027, 2, 1);
  private static final List<String> ZONES =
      List.of("UTC", "Europe/Vienna", "Pacific/Apia", "America/St_Johns");

  private final Random random;
  private final boolean careless;
  private final LocalDate today;
  private final CycleBuilder cycle;

  private RandomRecord(long seed) {
    random = new Random(seed);
    random.nextInt();
    careless = random.nextBoolean();
    today = BLOOD.plusDays(random.nextInt(90));
    cycle = CycleRecord.on(at(today), ZoneId.of(one(ZONES)));
  }

  /** The season of a seed, not yet built; the same seed gives the same season. */
  static CycleBuilder of(long seed) {
    RandomRecord one = new RandomRecord(seed);
    one.fill();
    return one.cycle;
  }

  private <E> E one(List<E> all) {
    return all.get(random.nextInt(all.size()));
  }

  private <E extends Enum<E>> E one(Class<E> type) {
    return one(List.of(type.getEnumConstants()));
  }

  private boolean often() {
    return random.nextInt(10) < 7;
  }

  private boolean slips() {
    return careless && random.nextInt(60) == 0;
  }

  /** A number within its limits, often at one of them; seldom beyond. */
  private double number(double least, double most) {
    if (slips()) {
      return one(List.of(Double.NaN, Double.NEGATIVE_INFINITY, 1e300, least - 1, most + 1));
    }
    return switch (random.nextInt(8)) {
      case 0 -> least;
      case 1 -> most;
      default -> least + (most - least) * Math.pow(random.nextDouble(), 3);
    };
  }

  private int whole(int least, int most) {
    return slips()
        ? one(List.of(least - 1, most + 1, Integer.MIN_VALUE))
        : least + random.nextInt(most - least + 1);
  }

  private String text() {
    return slips() ? one(List.of("", "\u202E", "x".repeat(500))) : one(List.of("A", "B", "Öa 1"));
  }

  private LocalDate past(int back) {
    return slips() ? one(List.of(LocalDate.MIN, LocalDate.MAX)) : today.minusDays(random.nextInt(back));
  }

  private Instant at(LocalDate day) {
    return day.atTime(random.nextInt(24), random.nextInt(60)).atZone(ZoneId.of("UTC")).toInstant();
  }

  private Instant moment() {
    return slips()
        ? one(List.of(Instant.MIN, Instant.MAX, Instant.EPOCH))
        : at(today.minusDays(random.nextInt(40)).plusDays(random.nextInt(3)));
  }

  /** A moment some seconds after another, if there is one. */
  private static Instant after(Instant at, double seconds) {
    boolean usual = Math.abs(at.getEpochSecond()) < 1e10 && Math.abs(seconds) < 1e10;
    return usual ? at.plusSeconds((long) seconds) : at;
  }

  private void fill() {
    cycle.firstBlood(
        switch (random.nextInt(4)) {
          case 0 -> FirstBlood.unknown();
          case 1 -> FirstBlood.estimated(BLOOD);
          default -> FirstBlood.seen(BLOOD);
        });
    cycle.female(female());
    if (often()) {
      cycle.add(
          EarlierCycle.from(BLOOD.minusDays(200)).ovulatedOn(BLOOD.minusDays(whole(110, 200))));
    }
    if (random.nextInt(6) == 0) {
      cycle.add(new Treatment(one(TreatmentKind.class), past(300)));
    }
    for (int i = random.nextInt(12); i > 0; i--) {
      Observation seen = observation();
      cycle.add(slips() ? seen.withId("same") : seen);
    }
    if (often()) {
      cycle.semen(plan());
    }
    if (random.nextInt(3) == 0) {
      cycle.insemination(insemination());
    }
    if (random.nextInt(4) == 0) {
      cycle.outcome(outcome());
    }
    if (random.nextInt(3) == 0) {
      cycle.background(background());
    }
    cycle.laboratory(
        LaboratoryHours.unknown().turnaroundHours(number(0, 336)).opensOn(one(DayOfWeek.class)));
  }

  private Female female() {
    return Female.unknown()
        .name(text())
        .breed(text())
        .bodyMassKg(number(0.5, 150))
        .bornOn(past(4000))
        .littersWhelped(whole(0, 40))
        .caesareans(whole(0, 40))
        .missedPregnancies(whole(0, 40));
  }

  private Observation observation() {
    return switch (random.nextInt(14)) {
      case 0 -> ProgesteroneBand.between(number(0, 5), number(6, 10_000), one(Unit.class), moment());
      case 1 -> ProgesteroneBand.above(number(0, 10_000), one(Unit.class), moment());
      case 2 -> random.nextBoolean() ? LhTest.positive(moment()) : LhTest.negative(moment());
      case 3 -> Smear.at(moment()).cornifiedPercent(number(0, 100));
      case 4 -> Smear.at(moment()).neutrophils(one(Neutrophils.class));
      case 5 -> Vaginoscopy.of(one(Folds.class), moment());
      case 6 -> Sign.seen(one(SignKind.class), moment());
      case 7 -> OvaryScan.of(one(OvaryFinding.class), moment());
      case 8 -> BreedingDone.of(one(Semen.class), moment()).route(one(Route.class));
      case 9 -> scan();
      case 10 -> Radiograph.at(moment()).fetuses(whole(0, 30));
      case 11 -> BodyTemperature.of(number(30, 44), moment());
      default -> value();
    };
  }

  private Observation scan() {
    PregnancyScan scan = PregnancyScan.of(one(ScanFinding.class), moment());
    return random.nextBoolean()
        ? scan.fetuses(scan.shown() ? whole(0, 30) : 0)
        : scan.shown() ? scan.biparietalMm(number(1, 120)) : scan;
  }

  private Progesterone value() {
    Progesterone.Result result =
        switch (random.nextInt(6)) {
          case 0 -> Progesterone.withoutUnit(number(0, 10_000));
          case 1 -> Progesterone.below(number(0.1, 10_000), one(Unit.class));
          case 2 -> Progesterone.above(number(0, 10_000), one(Unit.class));
          default -> Progesterone.of(number(0, 100), one(Unit.class));
        };
    Instant drawn = moment();
    Progesterone value = result.drawn(drawn).method(one(Method.class)).laboratory(text());
    return random.nextInt(3) > 0
        ? value
        : value
            .reportedAt(after(drawn, number(0, 9999)))
            .specimen(one(Specimen.class))
            .tube(one(Tube.class))
            .handling(one(Handling.class), one(Handling.class))
            .asReported(text());
  }

  private SemenPlan plan() {
    SemenPlan plan = SemenPlan.of(one(Semen.class));
    plan = random.nextInt(4) == 0 ? plan.route(one(Route.class)) : plan;
    plan = often() ? plan.doses(whole(1, 4)) : plan;
    plan = often() ? plan : plan.hoursBetween(number(0, 240)).chilledAgeHours(number(0, 240));
    plan = often() ? plan : plan.dose(dose()).travelHours(number(0, 240));
    Instant from = moment();
    plan = often() ? plan : plan.available(from, after(from, number(1, 1e6)));
    return often()
        ? plan
        : plan.order(
            OrderTerms.unknown()
                .cutOff(LocalTime.of(random.nextInt(24), 0))
                .transitHours(number(0, 240))
                .noDeliveryOn(one(DayOfWeek.class), DayOfWeek.SUNDAY)
                .holidays(past(5))
                .collectionOn(one(DayOfWeek.class)));
  }

  private Dose dose() {
    return Dose.unknown()
        .totalSperm(number(0, 1e11))
        .progressivelyMotilePercent(number(0, 100))
        .normalPercent(number(0, 100));
  }

  private Insemination insemination() {
    Insemination one = Insemination.unknown().wanted(wanted());
    one = often() ? one.extenderTemperatureC(number(0, 45)) : one;
    return switch (random.nextInt(4)) {
      case 0 -> one;
      case 1 ->
          one.ejaculate(
              Ejaculate.of(
                      EjaculateFraction.of(one(Fraction.class))
                          .volumeMl(number(0.001, 200))
                          .appearance(one(SemenColour.class)))
                  .concentrationMillionPerMl(number(0, 5000))
                  .progressivelyMotilePercent(number(0, 100))
                  .normalPercent(number(0, 100))
                  .temperatureC(number(0, 45)));
      case 2 ->
          one.certificate(
              Certificate.of(whole(1, 200))
                  .unit(one(FrozenUnit.class))
                  .spermPerUnitMillion(number(0, 20_000))
                  .volumeMlPerUnit(number(0.001, 200))
                  .progressivelyMotilePercent(number(0, 100))
                  .normalPercent(number(0, 100)));
      default ->
          one.arrival(
              Arrival.unknown()
                  .temperatureC(number(-30, 60))
                  .volumeMl(number(0.001, 200))
                  .concentrationMillionPerMl(number(0, 5000))
                  .totalSpermMillion(number(0, 20_000))
                  .progressivelyMotilePercent(number(0, 100))
                  .normalPercent(number(0, 100)));
    };
  }

  private Wanted wanted() {
    return often()
        ? Wanted.nothing()
        : Wanted.nothing()
            .volumeMl(number(0.001, 200))
            .concentrationMillionPerMl(number(0.001, 5000))
            .doses(whole(1, 4));
  }

  private Outcome outcome() {
    return random.nextBoolean()
        ? Outcome.unknown().pregnant(false)
        : Outcome.unknown().pregnant(true).whelpedOn(past(5)).litterSize(30).pupsBornAlive(whole(0, 30));
  }

  private Background background() {
    return Background.unknown()
        .lastWhelpedOn(past(900))
        .tests(
            HealthTest.of(Whose.FEMALE, one(HealthTestKind.class), past(400), HealthTestResult.POSITIVE),
            HealthTest.of(Whose.STUD, HealthTestKind.GENETIC, past(400), one(HealthTestResult.class))
                .condition(text()))
        .stud(Stud.unknown().name(text()).bodyMassKg(number(0.5, 150)).bornOn(past(4000)));
  }
}
