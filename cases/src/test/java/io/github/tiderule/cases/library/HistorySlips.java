package io.github.tiderule.cases.library;

import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.EarlierKind;
import io.github.tiderule.rules.fact.Female;
import io.github.tiderule.rules.fact.FirstBlood;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.Treatment;
import io.github.tiderule.rules.fact.TreatmentForm;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.kennel.Background;
import io.github.tiderule.rules.kennel.HealthTest;
import io.github.tiderule.rules.kennel.HealthTestKind;
import io.github.tiderule.rules.kennel.HealthTestResult;
import io.github.tiderule.rules.kennel.Stud;
import io.github.tiderule.rules.kennel.Whose;
import java.time.LocalDate;
import java.util.stream.Stream;

/** What can be wrong with the female, her seasons, and the time before. */
final class HistorySlips {

  private static final LocalDate BLOOD = LocalDate.of(2027, 1, 3);
  private static final LocalDate AHEAD = LocalDate.of(2040, 5, 1);

  private HistorySlips() {}

  static Stream<Slip> history() {
    LocalDate june = LocalDate.of(2026, 6, 1);
    String blood = "'firstBloodOn': '2026-06-01', ";
    EarlierCycle before = EarlierCycle.from(june);
    return Stream.of(
        Slip.her(
            "'bornOn': '2040-05-01'", "bornOn", "implausible-date", Female.unknown().bornOn(AHEAD)),
        Slip.her(
            "'bodyMassKg': 0.2", "bodyMassKg", "out-of-range", Female.unknown().bodyMassKg(0.2)),
        Slip.her("'name': ''", "name", "empty-text", Female.unknown().name("")),
        Slip.her("'caesareans': 41", "caesareans", "out-of-range", Female.unknown().caesareans(41)),
        Slip.earlier(
            "'firstBloodOn': '2027-01-03'",
            "firstBloodOn",
            "wrong-order",
            EarlierCycle.from(BLOOD)),
        Slip.earlier(
            blood + "'ovulatedOn': '2026-05-13'",
            "ovulatedOn",
            "wrong-order",
            before.ovulatedOn(LocalDate.of(2026, 5, 13))),
        Slip.earlier(
            blood + "'dioestrusOn': '2026-11-13'",
            "dioestrusOn",
            "implausible-date",
            before.dioestrusOn(LocalDate.of(2026, 11, 13))),
        Slip.earlier(
            blood + "'whelpedOn': '2026-08-13', 'pregnant': false",
            "pregnant",
            "contradiction",
            before.whelpedOn(LocalDate.of(2026, 8, 13)).pregnant(false)),
        Slip.earlier(
            blood + "'ovulatedOn': '2026-06-13', 'kind': 'broken-off'",
            "kind",
            "contradiction",
            before.ovulatedOn(LocalDate.of(2026, 6, 13)).kind(EarlierKind.BROKEN_OFF)),
        Slip.earlier(
            blood + "'litterSize': 3, 'kind': 'no-ovulation'",
            "kind",
            "contradiction",
            before.litterSize(3).kind(EarlierKind.NO_OVULATION)),
        Slip.of(
            "'female': {'treatments': [{'kind': 'other', 'on': '2040-05-01'}]}",
            "/female/treatments/0/on",
            "implausible-date",
            cycle -> cycle.add(new Treatment(TreatmentKind.OTHER, AHEAD)),
            "treatments[0].on"),
        Slip.of(
            "'female': {'treatments': [{'kind': 'deslorelin', 'on': '2026-05-01', 'removedOn':"
                + " '2026-04-01'}]}",
            "/female/treatments/0/removedOn",
            "wrong-order",
            cycle ->
                cycle.add(
                    new Treatment(TreatmentKind.DESLORELIN, LocalDate.of(2026, 5, 1))
                        .removedOn(LocalDate.of(2026, 4, 1))),
            "treatments[0].removedOn"),
        Slip.of(
            "'female': {'treatments': [{'kind': 'progestogen', 'on': '2026-05-01', 'form':"
                + " 'long-acting', 'removedOn': '2026-06-01'}]}",
            "/female/treatments/0/removedOn",
            "contradiction",
            cycle ->
                cycle.add(
                    new Treatment(TreatmentKind.PROGESTOGEN, LocalDate.of(2026, 5, 1))
                        .form(TreatmentForm.LONG_ACTING)
                        .removedOn(LocalDate.of(2026, 6, 1))),
            "treatments[0].removedOn"),
        Slip.ended(
            "'whelpedOn': '2027-01-02'",
            "whelpedOn",
            "wrong-order",
            Outcome.unknown().whelpedOn(LocalDate.of(2027, 1, 2))),
        Slip.ended(
            "'pregnant': false, 'litterSize': 1",
            "pregnant",
            "contradiction",
            Outcome.unknown().pregnant(false).litterSize(1)),
        Slip.ended(
            "'litterSize': 3, 'pupsBornAlive': 4",
            "pupsBornAlive",
            "out-of-range",
            Outcome.unknown().litterSize(3).pupsBornAlive(4)));
  }

  static Stream<Slip> background() {
    return Stream.of(
        Slip.of(
            "'female': {'lastWhelpedOn': '2040-05-01'}",
            "/female/lastWhelpedOn",
            "implausible-date",
            cycle -> cycle.background(Background.unknown().lastWhelpedOn(AHEAD)),
            "background.lastWhelpedOn"),
        Slip.of(
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
        Slip.of(
            "'stud': {'bodyMassKg': 151}",
            "/stud/bodyMassKg",
            "out-of-range",
            cycle -> cycle.background(Background.unknown().stud(Stud.unknown().bodyMassKg(151))),
            "background.stud.bodyMassKg"),
        Slip.of(
            "'firstBlood': {'on': '2027-01-13', 'certainty': 'seen'}",
            "/firstBlood/on",
            "implausible-date",
            cycle -> cycle.firstBlood(FirstBlood.seen(LocalDate.of(2027, 1, 13))),
            "firstBlood.on"));
  }
}
