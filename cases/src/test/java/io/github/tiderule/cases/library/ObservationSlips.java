package io.github.tiderule.cases.library;

import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.BreedingDone;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.RefusalReason;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import io.github.tiderule.rules.fact.semen.Semen;
import java.time.Instant;
import java.util.Collections;
import java.util.stream.Stream;

/** What can be wrong with observations. */
final class ObservationSlips {

  private static final Instant AT = Instant.parse("2027-01-08T07:00:00Z");

  private ObservationSlips() {}

  private static Progesterone.Result value(double value) {
    return Progesterone.of(value, Unit.NG_PER_ML);
  }

  private static Progesterone named(String laboratory) {
    return value(2).drawn(AT).laboratory(laboratory);
  }

  static Stream<Slip> observations() {
    String p4 = "'kind': 'progesterone', 'unit': 'ng/mL', ";
    String band = "'kind': 'progesterone-band', 'unit': 'ng/mL', ";
    return Stream.of(
        Slip.seen(p4 + "'value': -3", "value", "negative-value", value(-3).drawn(AT)),
        Slip.seen(p4 + "'value': 10001", "value", "out-of-range", value(10_001).drawn(AT)),
        Slip.seen(
            p4 + "'value': 0, 'comparator': '<'",
            "value",
            "out-of-range",
            Progesterone.below(0, Unit.NG_PER_ML).drawn(AT)),
        Slip.seen(
            p4 + "'value': 2, 'reportedAt': '2027-01-08T06:00:00Z'",
            "reportedAt",
            "wrong-order",
            value(2).drawn(AT).reportedAt(AT.minusSeconds(3600))),
        Slip.seen(p4 + "'value': 2, 'laboratory': ' '", "laboratory", "empty-text", named(" ")),
        Slip.seen(
            p4 + "'value': 2, 'laboratory': 'A\\u202e'",
            "laboratory",
            "illegal-character",
            named("A\u202e")),
        Slip.seen(
            p4 + "'value': 2, 'laboratory': '" + "A".repeat(121) + "'",
            "laboratory",
            "too-long",
            named("A".repeat(121))),
        Slip.seen(band + "'low': -1", "low", "negative-value", above(-1)),
        Slip.seen(
            band + "'low': 10, 'high': 3",
            "low",
            "wrong-order",
            ProgesteroneBand.between(10, 3, Unit.NG_PER_ML, AT)),
        Slip.seen(
            band + "'high': 0", "", "out-of-range", ProgesteroneBand.below(0, Unit.NG_PER_ML, AT)),
        Slip.seen("'kind': 'cytology'", "", "missing-field", Smear.at(AT)),
        Slip.seen(
            "'kind': 'cytology', 'cornifiedPercent': 101",
            "cornifiedPercent",
            "out-of-range",
            Smear.at(AT).cornifiedPercent(101)),
        Slip.seen("'kind': 'radiograph'", "", "missing-field", Radiograph.at(AT)),
        Slip.seen(
            "'kind': 'radiograph', 'fetuses': 31",
            "fetuses",
            "out-of-range",
            Radiograph.at(AT).fetuses(31)),
        Slip.seen(
            "'kind': 'scan', 'finding': 'not-pregnant', 'fetuses': 2",
            "",
            "contradiction",
            PregnancyScan.of(ScanFinding.NOT_PREGNANT, AT).fetuses(2)),
        Slip.seen(
            "'kind': 'scan', 'finding': 'pregnant', 'biparietalMm': [12, 121]",
            "biparietalMm[1]",
            "out-of-range",
            PregnancyScan.of(ScanFinding.PREGNANT, AT).biparietalMm(12, 121)),
        Slip.seen(
            "'kind': 'temperature', 'celsius': 98",
            "celsius",
            "out-of-range",
            BodyTemperature.of(98, AT)));
  }

  private static ProgesteroneBand above(double low) {
    return ProgesteroneBand.above(low, Unit.NG_PER_ML, AT);
  }

  static Stream<Slip> ofObservations() {
    String lh = "{'id': '%s', 'kind': 'lh', 'at': '%s', 'result': 'positive'}";
    String two = lh.formatted("l1", "2027-01-08T07:00:00Z");
    return Stream.of(
        Slip.of(
            "'observations': [" + two + ", " + two + "]",
            "/observations/1/id",
            "duplicate-id",
            cycle ->
                cycle.add(LhTest.positive(AT).withId("l1")).add(LhTest.positive(AT).withId("l1")),
            "observations[1].id"),
        Slip.of(
            "'observations': [" + lh.formatted("l1", "2027-03-15T09:00:00Z") + "]",
            "/observations/0/at",
            "implausible-date",
            cycle -> cycle.add(LhTest.positive(Instant.parse("2027-03-15T09:00:00Z"))),
            "observations[0].at"),
        Slip.of(
            "'observations': [" + lh.formatted("l1", "2025-12-01T09:00:00Z") + "]",
            "/observations/0/at",
            "implausible-date",
            cycle -> cycle.add(LhTest.positive(Instant.parse("2025-12-01T09:00:00Z"))),
            "observations[0].at"),
        Slip.of(
            "'observations': [" + lh.formatted("x".repeat(65), "2027-01-08T07:00:00Z") + "]",
            "/observations/0/id",
            "too-long",
            cycle -> cycle.add(LhTest.positive(AT).withId("x".repeat(65))),
            "observations[0].id"),
        Slip.of(
            "'observations': ["
                + String.join(",", Collections.nCopies(501, lh.formatted("l", "…")))
                + "]",
            "/observations",
            "too-many",
            cycle -> cycle.addAll(Collections.nCopies(501, LhTest.positive(AT))),
            "observations"),
        Slip.of(
            "'observations': [{'id': 's1', 'kind': 'sign', 'at': '2027-01-08T07:00:00Z', 'sign':"
                + " 'flags', 'present': true, 'reason': 'fear'}]",
            "/observations/0/reason",
            "contradiction",
            cycle ->
                cycle.add(Sign.seen(SignKind.FLAGS, AT).reason(RefusalReason.FEAR).withId("s1")),
            "observations[0].reason"),
        Slip.of(
            "'observations': [{'id': 'm1', 'kind': 'breeding', 'at': '2027-01-08T07:00:00Z',"
                + " 'semen': 'natural', 'route': 'natural', 'sire': ' '}]",
            "/observations/0/sire",
            "empty-text",
            cycle -> cycle.add(BreedingDone.of(Semen.NATURAL, AT).sire(" ").withId("m1")),
            "observations[0].sire"));
  }
}
