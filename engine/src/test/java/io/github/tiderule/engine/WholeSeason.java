package io.github.tiderule.engine;

import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.EarlierKind;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentForm;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.TreatmentPurpose;
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
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.RefusalReason;
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

/** An invented season in which everything is said that can be said. */
final class WholeSeason {

  static final Instant AS_OF = Instant.parse("2027-03-12T17:30:00Z");

  private WholeSeason() {}

  private static LocalDate day(String day) {
    return LocalDate.parse(day);
  }

  /** A moment of March 2027. */
  static Instant march(int day, int hour) {
    return day("2027-03-01").plusDays(day - 1).atTime(hour, 0).atZone(ZoneId.of("UTC")).toInstant();
  }

  static CycleBuilder builder() {
    return CycleRecord.on(AS_OF, ZoneId.of("Europe/Vienna"))
        .female(female())
        .add(
            EarlierCycle.from(day("2026-06-01"))
                .ovulatedOn(day("2026-06-13"))
                .dioestrusOn(day("2026-06-21"))
                .whelpedOn(day("2026-08-15"))
                .litterSize(6)
                .pregnant(true)
                .kind(EarlierKind.SILENT))
        .add(
            new Treatment(TreatmentKind.OTHER, day("2026-11-02"))
                .form(TreatmentForm.IMPLANT)
                .purpose(TreatmentPurpose.SUPPRESSION)
                .removedOn(day("2026-12-20")))
        .firstBlood(FirstBlood.seen(day("2027-03-01")))
        .add(value())
        .add(ProgesteroneBand.between(3, 10, Unit.NG_PER_ML, march(9, 7)))
        .add(LhTest.positive(march(9, 9)))
        .add(Smear.at(march(10, 8)).cornifiedPercent(90).neutrophils(Neutrophils.NONE))
        .add(Vaginoscopy.of(Folds.SHRINKING, march(10, 9)))
        .add(Sign.seen(SignKind.REFUSES, march(10, 18)).reason(RefusalReason.FEAR))
        .add(Sign.notSeen(SignKind.STANDS, march(10, 19)).reason(RefusalReason.WRONG_DAY))
        .add(OvaryScan.of(OvaryFinding.FOLLICLES, march(11, 8)))
        .add(
            BreedingDone.of(Semen.CHILLED, march(12, 10))
                .route(Route.TRANSCERVICAL)
                .sire("Rex")
                .note("quiet"))
        .add(
            PregnancyScan.of(ScanFinding.PREGNANT, march(12, 11))
                .innerChorionicCavityMm(18.5, 19)
                .biparietalMm(12)
                .fetuses(5))
        .add(Radiograph.at(march(12, 12)).fetuses(5).skeletonSeen(true))
        .add(BodyTemperature.of(37.8, march(12, 13)))
        .semen(semen())
        .laboratory(
            LaboratoryHours.unknown()
                .turnaroundHours(8)
                .opensOn(DayOfWeek.FRIDAY, DayOfWeek.MONDAY)
                .reachable(true))
        .outcome(
            Outcome.unknown()
                .pregnant(true)
                .whelpedOn(day("2027-03-12"))
                .litterSize(6)
                .pupsBornAlive(5))
        .insemination(insemination())
        .background(background());
  }

  private static Female female() {
    return Female.unknown()
        .id("juniper")
        .name("Juniper")
        .breed("Whippet")
        .bodyMassKg(13.2)
        .bornOn(day("2022-03-10"))
        .littersWhelped(1)
        .caesareans(0)
        .missedPregnancies(0);
  }

  private static Progesterone value() {
    return Progesterone.below(2.1, Unit.NG_PER_ML)
        .drawn(march(8, 7))
        .reportedAt(march(8, 15))
        .method(Method.CLIA)
        .laboratory("A")
        .specimen(Specimen.SERUM)
        .tube(Tube.PLAIN)
        .handling(Handling.HAEMOLYSED, Handling.CHILLED_EARLY)
        .asReported("<2,1 ng/ml");
  }

  private static SemenPlan semen() {
    return SemenPlan.of(Semen.CHILLED)
        .route(Route.TRANSCERVICAL)
        .doses(2)
        .hoursBetween(24)
        .chilledAgeHours(24)
        .dose(Dose.unknown().totalSperm(3e8).progressivelyMotilePercent(70).normalPercent(80))
        .available(march(12, 8), march(20, 20))
        .order(
            OrderTerms.unknown()
                .cutOff(LocalTime.of(14, 0))
                .transitHours(22)
                .noDeliveryOn(DayOfWeek.SUNDAY)
                .holidays(day("2027-03-29"))
                .collectionOn(DayOfWeek.TUESDAY, DayOfWeek.FRIDAY))
        .travelHours(1.5);
  }

  private static Insemination insemination() {
    return Insemination.unknown()
        .at(march(13, 10))
        .ejaculate(
            Ejaculate.of(
                    EjaculateFraction.of(Fraction.SPERM_RICH)
                        .volumeMl(2.5)
                        .appearance(SemenColour.MILKY))
                .collectedAt(march(12, 9))
                .concentrationMillionPerMl(300)
                .progressivelyMotilePercent(85)
                .normalPercent(80)
                .temperatureC(36))
        .certificate(
            Certificate.of(2)
                .unit(FrozenUnit.VIAL)
                .spermPerUnitMillion(60)
                .volumeMlPerUnit(0.5)
                .progressivelyMotilePercent(30)
                .normalPercent(75))
        .arrival(
            Arrival.unknown()
                .collectedAt(march(12, 9))
                .arrivedAt(march(12, 16))
                .temperatureC(5)
                .volumeMl(10)
                .concentrationMillionPerMl(28)
                .totalSpermMillion(310)
                .progressivelyMotilePercent(70)
                .normalPercent(78))
        .wanted(Wanted.nothing().volumeMl(4).concentrationMillionPerMl(50).doses(2))
        .extenderTemperatureC(35);
  }

  private static Background background() {
    return Background.unknown()
        .lastWhelpedOn(day("2026-08-15"))
        .tests(
            HealthTest.of(
                    Whose.FEMALE,
                    HealthTestKind.BRUCELLA,
                    day("2027-02-04"),
                    HealthTestResult.NEGATIVE)
                .condition("B. canis"),
            HealthTest.of(
                    Whose.STUD, HealthTestKind.GENETIC, day("2022-01-10"), HealthTestResult.CLEAR)
                .condition("MD"))
        .stud(
            Stud.unknown()
                .name("Alder")
                .breed("Whippet")
                .bodyMassKg(15.5)
                .bornOn(day("2021-05-02"))
                .provenSire(true));
  }
}
