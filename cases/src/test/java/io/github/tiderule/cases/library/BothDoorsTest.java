package io.github.tiderule.cases.library;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.engine.CycleBuilder;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.CycleRefused;
import io.github.tiderule.engine.validation.Violation;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.assay.LaboratoryHours;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.semen.Dose;
import io.github.tiderule.rules.fact.semen.OrderTerms;
import io.github.tiderule.rules.fact.semen.Semen;
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
import io.github.tiderule.rules.semen.Insemination;
import io.github.tiderule.rules.semen.Wanted;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the reader of files refuses, a record built in Java is refused for too, and as much. */
class BothDoorsTest {

  private static final Instant AS_OF = Instant.parse("2027-01-12T17:30:00Z");
  private static final Instant AT = Instant.parse("2027-01-08T07:00:00Z");
  private static final LocalDate BLOOD = LocalDate.of(2027, 1, 3);
  private static final LocalDate AHEAD = LocalDate.of(2040, 5, 1);

  /**
   * One thing that is wrong, told to both.
   *
   * @param members what stands in the file beside what it must have, or instead of it
   * @param pointer where the reader must find it
   * @param code of both
   * @param built the same in Java
   * @param field where the record must find it
   */
  private record Slip(
      String members,
      String pointer,
      String code,
      UnaryOperator<CycleBuilder> built,
      String field) {

    @Override
    public String toString() {
      return field + " " + code;
    }
  }

  private static Slip slip(
      String members,
      String pointer,
      String code,
      UnaryOperator<CycleBuilder> built,
      String field) {
    return new Slip(members, pointer, code, built, field);
  }

  /** A slip in the one observation there is. */
  private static Slip seen(
      String members, String name, String code, Observation observation) {
    String part = name.isEmpty() ? "" : "/" + name.replace("[", "/").replace("]", "");
    return slip(
        "'observations': [{'id': 'o1', 'at': '2027-01-08T07:00:00Z', %s}]".formatted(members),
        "/observations/0" + part,
        code,
        cycle -> cycle.add(observation.withId("o1")),
        "observations[0]" + (name.isEmpty() ? "" : "." + name));
  }

  private static Slip plan(String member, String name, String code, SemenPlan plan) {
    return slip(
        "'breeding': {'semen': 'chilled', %s}".formatted(member),
        "/breeding/" + name.replace(".", "/").replace("[", "/").replace("]", ""),
        code,
        cycle -> cycle.semen(plan),
        "semenPlan." + name);
  }

  private static Slip inHand(String members, String name, String code, Insemination inHand) {
    return slip(
        "'insemination': {%s}".formatted(members),
        "/insemination/" + name.replace(".", "/").replace("[", "/").replace("]", ""),
        code,
        cycle -> cycle.insemination(inHand),
        "insemination." + name);
  }

  private static Slip her(String member, String name, String code, Female female) {
    return slip(
        "'female': {%s}".formatted(member),
        "/female/" + name,
        code,
        cycle -> cycle.female(female),
        "female." + name);
  }

  private static Slip earlier(String members, String name, String code, EarlierCycle earlier) {
    return slip(
        "'female': {'earlierCycles': [{%s}]}".formatted(members),
        "/female/earlierCycles/0/" + name,
        code,
        cycle -> cycle.add(earlier),
        "earlierCycles[0]." + name);
  }

  private static Slip ended(String members, String name, String code, Outcome outcome) {
    return slip(
        "'outcome': {%s}".formatted(members),
        "/outcome/" + name,
        code,
        cycle -> cycle.outcome(outcome),
        "outcome." + name);
  }

  private static Progesterone.Result value(double value) {
    return Progesterone.of(value, Unit.NG_PER_ML);
  }

  private static Progesterone named(String laboratory) {
    return value(2).drawn(AT).laboratory(laboratory);
  }

  private static SemenPlan chilled() {
    return SemenPlan.of(Semen.CHILLED);
  }

  private static Stream<Slip> observations() {
    String p4 = "'kind': 'progesterone', 'unit': 'ng/mL', ";
    String band = "'kind': 'progesterone-band', 'unit': 'ng/mL', ";
    return Stream.of(
        seen(p4 + "'value': -3", "value", "negative-value", value(-3).drawn(AT)),
        seen(p4 + "'value': 10001", "value", "out-of-range", value(10_001).drawn(AT)),
        seen(
            p4 + "'value': 0, 'comparator': '<'",
            "value",
            "out-of-range",
            Progesterone.below(0, Unit.NG_PER_ML).drawn(AT)),
        seen(
            p4 + "'value': 2, 'reportedAt': '2027-01-08T06:00:00Z'",
            "reportedAt",
            "wrong-order",
            value(2).drawn(AT).reportedAt(AT.minusSeconds(3600))),
        seen(p4 + "'value': 2, 'laboratory': ' '", "laboratory", "empty-text", named(" ")),
        seen(
            p4 + "'value': 2, 'laboratory': 'A\\u202e'",
            "laboratory",
            "illegal-character",
            named("A\u202e")),
        seen(
            p4 + "'value': 2, 'laboratory': '" + "A".repeat(121) + "'",
            "laboratory",
            "too-long",
            named("A".repeat(121))),
        seen(band + "'low': -1", "low", "negative-value", above(-1)),
        seen(
            band + "'low': 10, 'high': 3",
            "low",
            "wrong-order",
            ProgesteroneBand.between(10, 3, Unit.NG_PER_ML, AT)),
        seen(
            band + "'high': 0",
            "",
            "out-of-range",
            ProgesteroneBand.below(0, Unit.NG_PER_ML, AT)),
        seen("'kind': 'cytology'", "", "missing-field", Smear.at(AT)),
        seen(
            "'kind': 'cytology', 'cornifiedPercent': 101",
            "cornifiedPercent",
            "out-of-range",
            Smear.at(AT).cornifiedPercent(101)),
        seen("'kind': 'radiograph'", "", "missing-field", Radiograph.at(AT)),
        seen(
            "'kind': 'radiograph', 'fetuses': 31",
            "fetuses",
            "out-of-range",
            Radiograph.at(AT).fetuses(31)),
        seen(
            "'kind': 'scan', 'finding': 'not-pregnant', 'fetuses': 2",
            "",
            "contradiction",
            PregnancyScan.of(ScanFinding.NOT_PREGNANT, AT).fetuses(2)),
        seen(
            "'kind': 'scan', 'finding': 'pregnant', 'biparietalMm': [12, 121]",
            "biparietalMm[1]",
            "out-of-range",
            PregnancyScan.of(ScanFinding.PREGNANT, AT).biparietalMm(12, 121)),
        seen(
            "'kind': 'temperature', 'celsius': 98",
            "celsius",
            "out-of-range",
            BodyTemperature.of(98, AT)));
  }

  private static ProgesteroneBand above(double low) {
    return ProgesteroneBand.above(low, Unit.NG_PER_ML, AT);
  }

  private static Stream<Slip> ofObservations() {
    String lh = "{'id': '%s', 'kind': 'lh', 'at': '%s', 'result': 'positive'}";
    String two = lh.formatted("l1", "2027-01-08T07:00:00Z");
    return Stream.of(
        slip(
            "'observations': [" + two + ", " + two + "]",
            "/observations/1/id",
            "duplicate-id",
            cycle ->
                cycle.add(LhTest.positive(AT).withId("l1")).add(LhTest.positive(AT).withId("l1")),
            "observations[1].id"),
        slip(
            "'observations': [" + lh.formatted("l1", "2027-03-15T09:00:00Z") + "]",
            "/observations/0/at",
            "implausible-date",
            cycle -> cycle.add(LhTest.positive(Instant.parse("2027-03-15T09:00:00Z"))),
            "observations[0].at"),
        slip(
            "'observations': [" + lh.formatted("l1", "2025-12-01T09:00:00Z") + "]",
            "/observations/0/at",
            "implausible-date",
            cycle -> cycle.add(LhTest.positive(Instant.parse("2025-12-01T09:00:00Z"))),
            "observations[0].at"),
        slip(
            "'observations': [" + lh.formatted("x".repeat(65), "2027-01-08T07:00:00Z") + "]",
            "/observations/0/id",
            "too-long",
            cycle -> cycle.add(LhTest.positive(AT).withId("x".repeat(65))),
            "observations[0].id"),
        slip(
            "'observations': ["
                + String.join(",", Collections.nCopies(501, lh.formatted("l", "…")))
                + "]",
            "/observations",
            "too-many",
            cycle -> cycle.addAll(Collections.nCopies(501, LhTest.positive(AT))),
            "observations"));
  }

  private static Stream<Slip> semen() {
    return Stream.of(
        plan("'doses': -3", "doses", "negative-value", chilled().doses(-3)),
        plan("'doses': 5", "doses", "out-of-range", chilled().doses(5)),
        plan("'hoursBetween': 241", "hoursBetween", "out-of-range", chilled().hoursBetween(241)),
        plan(
            "'chilledAgeHours': -1",
            "chilledAgeHours",
            "negative-value",
            chilled().chilledAgeHours(-1)),
        plan("'travelHours': 300", "travelHours", "out-of-range", chilled().travelHours(300)),
        plan(
            "'dose': {'progressivelyMotilePercent': 250}",
            "dose.progressivelyMotilePercent",
            "out-of-range",
            chilled().dose(Dose.unknown().progressivelyMotilePercent(250))),
        plan(
            "'dose': {'totalSperm': 1.0E12}",
            "dose.totalSperm",
            "out-of-range",
            chilled().dose(Dose.unknown().totalSperm(1e12))),
        plan(
            "'available': [{'from': '2027-01-20T08:00:00Z', 'to': '2027-01-14T08:00:00Z'}]",
            "available[0].from",
            "wrong-order",
            chilled()
                .available(
                    Instant.parse("2027-01-20T08:00:00Z"), Instant.parse("2027-01-14T08:00:00Z"))),
        plan(
            "'order': {'transitHours': 500}",
            "order.transitHours",
            "out-of-range",
            chilled().order(OrderTerms.unknown().transitHours(500))),
        plan(
            "'order': {'holidays': ['1999-01-06']}",
            "order.holidays[0]",
            "implausible-date",
            chilled().order(OrderTerms.unknown().holidays(LocalDate.of(1999, 1, 6)))),
        slip(
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

  private static Stream<Slip> insemination() {
    return Stream.of(
        inHand(
            "'ejaculate': {'fractions': [{'fraction': 'sperm-rich', 'volumeMl': 0}]}",
            "ejaculate.fractions[0].volumeMl",
            "out-of-range",
            of(Ejaculate.of(EjaculateFraction.of(Fraction.SPERM_RICH).volumeMl(0)))),
        inHand(
            "'ejaculate': {'fractions': [], 'normalPercent': 101}",
            "ejaculate.normalPercent",
            "out-of-range",
            of(Ejaculate.of().normalPercent(101))),
        inHand(
            "'ejaculate': {'fractions': [], 'temperatureC': 46}",
            "ejaculate.temperatureC",
            "out-of-range",
            of(Ejaculate.of().temperatureC(46))),
        inHand(
            "'certificate': {'units': 0}",
            "certificate.units",
            "out-of-range",
            Insemination.unknown().certificate(Certificate.of(0))),
        inHand(
            "'certificate': {'units': 2, 'spermPerUnitMillion': 20001}",
            "certificate.spermPerUnitMillion",
            "out-of-range",
            Insemination.unknown().certificate(Certificate.of(2).spermPerUnitMillion(20_001))),
        inHand(
            "'arrival': {'temperatureC': -31}",
            "arrival.temperatureC",
            "out-of-range",
            of(Arrival.unknown().temperatureC(-31))),
        inHand(
            "'arrival': {'collectedAt': '2027-01-08T07:00:00Z',"
                + " 'arrivedAt': '2027-01-08T06:00:00Z'}",
            "arrival.arrivedAt",
            "wrong-order",
            of(Arrival.unknown().collectedAt(AT).arrivedAt(AT.minusSeconds(3600)))),
        inHand(
            "'at': '2027-01-08T06:00:00Z', 'arrival': {'collectedAt': '2027-01-08T07:00:00Z'}",
            "at",
            "wrong-order",
            of(Arrival.unknown().collectedAt(AT)).at(AT.minusSeconds(3600))),
        inHand(
            "'wanted': {'doses': 0}",
            "wanted.doses",
            "out-of-range",
            Insemination.unknown().wanted(Wanted.nothing().doses(0))),
        inHand(
            "'wanted': {'concentrationMillionPerMl': 0}",
            "wanted.concentrationMillionPerMl",
            "out-of-range",
            Insemination.unknown().wanted(Wanted.nothing().concentrationMillionPerMl(0))),
        inHand(
            "'extenderTemperatureC': 98",
            "extenderTemperatureC",
            "out-of-range",
            Insemination.unknown().extenderTemperatureC(98)));
  }

  private static Stream<Slip> history() {
    LocalDate june = LocalDate.of(2026, 6, 1);
    String blood = "'firstBloodOn': '2026-06-01', ";
    EarlierCycle before = EarlierCycle.from(june);
    return Stream.of(
        her("'bornOn': '2040-05-01'", "bornOn", "implausible-date", Female.unknown().bornOn(AHEAD)),
        her("'bodyMassKg': 0.2", "bodyMassKg", "out-of-range", Female.unknown().bodyMassKg(0.2)),
        her("'name': ''", "name", "empty-text", Female.unknown().name("")),
        her("'caesareans': 41", "caesareans", "out-of-range", Female.unknown().caesareans(41)),
        earlier(
            "'firstBloodOn': '2027-01-03'", "firstBloodOn", "wrong-order", EarlierCycle.from(BLOOD)),
        earlier(
            blood + "'ovulatedOn': '2026-05-13'",
            "ovulatedOn",
            "wrong-order",
            before.ovulatedOn(LocalDate.of(2026, 5, 13))),
        earlier(
            blood + "'dioestrusOn': '2026-11-13'",
            "dioestrusOn",
            "implausible-date",
            before.dioestrusOn(LocalDate.of(2026, 11, 13))),
        earlier(
            blood + "'whelpedOn': '2026-08-13', 'pregnant': false",
            "pregnant",
            "contradiction",
            before.whelpedOn(LocalDate.of(2026, 8, 13)).pregnant(false)),
        slip(
            "'female': {'treatments': [{'kind': 'other', 'on': '2040-05-01'}]}",
            "/female/treatments/0/on",
            "implausible-date",
            cycle -> cycle.add(new Treatment(TreatmentKind.OTHER, AHEAD)),
            "treatments[0].on"),
        ended(
            "'whelpedOn': '2027-01-02'",
            "whelpedOn",
            "wrong-order",
            Outcome.unknown().whelpedOn(LocalDate.of(2027, 1, 2))),
        ended(
            "'pregnant': false, 'litterSize': 1",
            "pregnant",
            "contradiction",
            Outcome.unknown().pregnant(false).litterSize(1)),
        ended(
            "'litterSize': 3, 'pupsBornAlive': 4",
            "pupsBornAlive",
            "out-of-range",
            Outcome.unknown().litterSize(3).pupsBornAlive(4)));
  }

  private static Stream<Slip> background() {
    return Stream.of(
        slip(
            "'female': {'lastWhelpedOn': '2040-05-01'}",
            "/female/lastWhelpedOn",
            "implausible-date",
            cycle -> cycle.background(Background.unknown().lastWhelpedOn(AHEAD)),
            "background.lastWhelpedOn"),
        slip(
            "'female': {'tests': [{'kind': 'brucella', 'on': '2027-01-04', 'result': 'clear'}]}",
            "/female/tests/0/result",
            "unknown-word",
            cycle ->
                cycle.background(
                    Background.unknown()
                        .tests(
                            HealthTest.of(
                                Whose.FEMALE,
                                HealthTestKind.BRUCELLA,
                                LocalDate.of(2027, 1, 4),
                                HealthTestResult.CLEAR))),
            "background.tests[0].result"),
        slip(
            "'stud': {'bodyMassKg': 151}",
            "/stud/bodyMassKg",
            "out-of-range",
            cycle -> cycle.background(Background.unknown().stud(Stud.unknown().bodyMassKg(151))),
            "background.stud.bodyMassKg"),
        slip(
            "'firstBlood': {'on': '2027-01-13', 'certainty': 'seen'}",
            "/firstBlood/on",
            "implausible-date",
            cycle -> cycle.firstBlood(FirstBlood.seen(LocalDate.of(2027, 1, 13))),
            "firstBlood.on"));
  }

  private static Stream<Slip> slips() {
    return Stream.of(
            observations(), ofObservations(), semen(), insemination(), history(), background())
        .flatMap(one -> one);
  }

  private static List<Problem> refusedFile(String members) {
    String own = members.replace('\'', '"');
    StringBuilder file =
        new StringBuilder("{\"schema\": \"tiderule/cycle/1\", \"asOf\": \"2027-01-12T17:30:00Z\"");
    file.append(", \"zone\": \"Europe/Vienna\", ").append(own);
    if (!own.startsWith("\"firstBlood\"")) {
      file.append(", \"firstBlood\": {\"on\": \"2027-01-03\", \"certainty\": \"seen\"}");
    }
    if (!own.startsWith("\"observations\"")) {
      file.append(", \"observations\": []");
    }
    Reading reading = CycleFile.read(file.append('}').toString().getBytes(StandardCharsets.UTF_8));
    assertThat(reading.toString(), reading instanceof Reading.Refused, is(true));
    return ((Reading.Refused) reading).problems();
  }

  private static List<Violation> refused(UnaryOperator<CycleBuilder> built) {
    CycleBuilder whole =
        CycleRecord.on(AS_OF, ZoneId.of("Europe/Vienna")).firstBlood(FirstBlood.seen(BLOOD));
    CycleBuilder cycle = built.apply(whole);
    return assertThrows(CycleRefused.class, cycle::build).violations();
  }

  @ParameterizedTest
  @MethodSource("slips")
  void bothRefuseTheSame(Slip slip) {
    List<Problem> inFile = refusedFile(slip.members());
    List<Violation> inJava = refused(slip.built());
    assertThat(
        inFile.stream().map(one -> one.path() + " " + one.code().word()).toList().toString(),
        is("[" + slip.pointer() + " " + slip.code() + "]"));
    assertThat(
        inJava.stream().map(one -> one.field() + " " + one.code().word()).toList().toString(),
        is("[" + slip.field() + " " + slip.code() + "]"));
    if (!slip.code().equals("duplicate-id")) {
      assertThat(inJava.get(0).message(), is(inFile.get(0).message()));
    }
  }

  @Test
  void aRecordTellsAllThatIsWrongAtOnce() {
    CycleBuilder wrong =
        CycleRecord.on(AS_OF, ZoneId.of("Europe/Vienna"))
            .female(Female.unknown().bornOn(AHEAD))
            .add(value(-3).drawn(AT))
            .semen(
                chilled().doses(-3).dose(Dose.unknown().progressivelyMotilePercent(250)));
    CycleRefused refused = assertThrows(CycleRefused.class, wrong::build);
    assertThat(
        refused.getMessage(),
        is(
            "firstBlood: firstBlood is missing; female.bornOn: bornOn (2040-05-01) lies after asOf;"
                + " observations[0].value: value is -3, below zero; semenPlan.doses: doses is -3,"
                + " below zero; semenPlan.dose.progressivelyMotilePercent:"
                + " progressivelyMotilePercent is 250; it must be 0 to 100 %"));
  }
}
