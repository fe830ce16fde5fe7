package io.github.tiderule.format.cycle;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.Documents;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.OvaryScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.observation.Vaginoscopy;
import io.github.tiderule.rules.fact.semen.Availability;
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
import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

class CycleFileTest {

  @Test
  void readsEveryField() {
    CycleRecord expected =
        new CycleRecord(
            Instant.parse("2027-01-12T17:30:00Z"),
            ZoneId.of("Europe/Vienna"),
            new Female(
                "juniper", "Juniper", "Whippet", 13.2, LocalDate.parse("2022-03-10"), 1, 0, 0),
            List.of(new EarlierCycle(LocalDate.parse("2026-06-01"), LocalDate.parse("2026-06-13"))),
            List.of(new Treatment(TreatmentKind.OTHER, LocalDate.parse("2026-11-02"))),
            new FirstBlood(LocalDate.parse("2027-01-03"), Certainty.SEEN),
            List.of(
                new Progesterone(
                    "p1",
                    Instant.parse("2027-01-08T07:00:00Z"),
                    Instant.parse("2027-01-08T15:00:00Z"),
                    2.1,
                    Comparator.BELOW,
                    Unit.NG_PER_ML,
                    Method.CLIA,
                    "A",
                    Specimen.SERUM,
                    Tube.PLAIN,
                    List.of(Handling.CHILLED_EARLY, Handling.HAEMOLYSED),
                    "<2,1 ng/ml"),
                new ProgesteroneBand(
                    "k1", Instant.parse("2027-01-09T07:00:00Z"), 3.0, 10.0, Unit.NG_PER_ML),
                new LhTest("l1", Instant.parse("2027-01-09T09:00:00Z"), true),
                new Smear("c1", Instant.parse("2027-01-10T07:00:00Z"), 90.0, Neutrophils.NONE),
                new Vaginoscopy("v1", Instant.parse("2027-01-10T07:10:00Z"), Folds.SHRINKING),
                new Sign("s1", Instant.parse("2027-01-10T17:00:00Z"), SignKind.STANDS, true),
                new OvaryScan("u1", Instant.parse("2027-01-11T07:00:00Z"), OvaryFinding.FOLLICLES),
                new BreedingDone(
                    "m1", Instant.parse("2027-01-12T09:00:00Z"), Semen.CHILLED, Route.VAGINAL)),
            new SemenPlan(
                Semen.CHILLED,
                Route.TRANSCERVICAL,
                2,
                24.0,
                24.0,
                new Dose(3.0e8, 70.0, 80.0),
                List.of(
                    new Availability(
                        Instant.parse("2027-01-12T07:00:00Z"),
                        Instant.parse("2027-01-20T19:00:00Z"))),
                new OrderTerms(
                    LocalTime.parse("14:00"),
                    22.0,
                    List.of(DayOfWeek.SUNDAY),
                    List.of(LocalDate.parse("2027-01-06")),
                    List.of(DayOfWeek.TUESDAY, DayOfWeek.FRIDAY)),
                1.5),
            new LaboratoryHours(
                8.0, List.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.FRIDAY)),
            Outcome.unknown(),
            insemination(),
            background());
    assertThat(Documents.read(Documents.fullCycle()), is(expected));
  }

  private static Insemination insemination() {
    Instant collected = Instant.parse("2027-01-12T08:00:00Z");
    return new Insemination(
        Instant.parse("2027-01-13T09:00:00Z"),
        new Ejaculate(
            collected,
            List.of(
                new EjaculateFraction(Fraction.PRESPERM, 0.8, SemenColour.CLEAR),
                new EjaculateFraction(Fraction.SPERM_RICH, 2.5, SemenColour.MILKY),
                new EjaculateFraction(Fraction.PROSTATIC, 6.0, SemenColour.CLEAR)),
            300.0,
            85.0,
            80.0,
            36.0),
        new Certificate(FrozenUnit.VIAL, 2, 60.0, 0.5, 30.0, 75.0),
        new Arrival(
            collected, Instant.parse("2027-01-12T15:00:00Z"), 5.0, 10.0, 28.0, 310.0, 70.0, 78.0),
        new Wanted(4.0, 50.0, 2),
        35.0);
  }

  private static Background background() {
    return new Background(
        true,
        LocalDate.parse("2026-08-10"),
        List.of(
            new HealthTest(
                Whose.FEMALE,
                HealthTestKind.BRUCELLA,
                LocalDate.parse("2027-01-04"),
                HealthTestResult.NEGATIVE,
                null),
            new HealthTest(
                Whose.STUD,
                HealthTestKind.GENETIC,
                LocalDate.parse("2022-01-10"),
                HealthTestResult.CLEAR,
                "MD")),
        new Stud("Alder", "Whippet", 15.5, LocalDate.parse("2021-05-02"), true));
  }

  @Test
  void takesNoMoreThanTheLeast() {
    CycleRecord cycle = Documents.read(Documents.cycleWith(""));
    assertThat(cycle.female(), is(Female.unknown()));
    assertThat(cycle.semenPlan(), is(SemenPlan.naturalUnlimited()));
    assertThat(cycle.laboratory(), is(LaboratoryHours.unknown()));
    assertThat(cycle.observations().isEmpty(), is(true));
  }

  @Test
  void takesAValueWithoutUnitOrMethod() {
    CycleRecord cycle =
        Documents.read(
            Documents.cycleWith(
                """
                {"id": "p1", "kind": "progesterone", "at": "2027-01-08T08:00:00+01:00",
                 "value": -0.0}"""));
    Progesterone value = (Progesterone) cycle.observations().get(0);
    assertThat(value.statedUnit(), is(nullValue()));
    assertThat(value.method(), is(Method.UNKNOWN));
    assertThat(Double.compare(value.value(), 0.0), is(0));
  }

  @Test
  void takesAnUnknownFirstDayWithAndWithoutADate() {
    String seen = "{\"on\": \"2027-01-03\", \"certainty\": \"seen\"}";
    String without = Documents.cycleWith("").replace(seen, "{\"certainty\": \"unknown\"}");
    String with =
        Documents.cycleWith("")
            .replace(seen, "{\"certainty\": \"unknown\", \"on\": \"2027-01-02\"}");
    assertThat(Documents.read(without).firstBlood(), is(new FirstBlood(null, Certainty.UNKNOWN)));
    assertThat(
        Documents.read(with).firstBlood(),
        is(new FirstBlood(LocalDate.parse("2027-01-02"), Certainty.UNKNOWN)));
  }

  @Test
  void takesAnObservationUpToSixtyDaysAhead() {
    CycleRecord cycle =
        Documents.read(
            Documents.cycleWith(
                """
                {"id": "l1", "kind": "lh", "at": "2027-03-13T08:00:00+01:00",
                 "result": "negative"}"""));
    assertThat(cycle.observations().get(0).id(), is("l1"));
  }

  @Test
  void takesAByteOrderMarkAndCarriageReturns() {
    String windows = "\uFEFF" + Documents.fullCycle().replace("\n", "\r\n");
    assertThat(Documents.read(windows), is(Documents.read(Documents.fullCycle())));
  }

  @Test
  void readsTheSameFromShuffledFieldsAndObservations() {
    String one =
        """
        {"id": "a", "kind": "lh", "at": "2027-01-09T08:00:00+01:00", "result": "negative"}""";
    String other =
        """
        {"result": "positive", "kind": "lh", "at": "2027-01-08T08:00:00+01:00", "id": "b"}""";
    CycleRecord cycle = Documents.read(Documents.cycleWith(one + "," + other));
    assertThat(cycle, is(Documents.read(Documents.cycleWith(other + "," + one))));
    assertThat(cycle.observations().stream().map(o -> o.id()).toList(), contains("b", "a"));
  }

  @Test
  void takesAnotherMomentInsteadOfTheFilesOwn() {
    byte[] file = Documents.fullCycle().getBytes(StandardCharsets.UTF_8);
    Instant earlier = Instant.parse("2027-01-10T06:00:00Z");
    assertThat(
        CycleFile.read(file, earlier),
        is(new Reading.Read(Documents.read(Documents.fullCycle()).asOf(earlier))));
  }

  @Test
  void judgesDatesAgainstTheMomentTakenInstead() {
    byte[] file = Documents.fullCycle().getBytes(StandardCharsets.UTF_8);
    Reading reading = CycleFile.read(file, Instant.parse("2029-01-10T06:00:00Z"));
    assertThat(reading instanceof Reading.Refused, is(true));
  }
}
