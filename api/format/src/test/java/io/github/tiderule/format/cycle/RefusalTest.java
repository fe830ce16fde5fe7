package io.github.tiderule.format.cycle;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.format.Documents;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RefusalTest {

  /** One change to the full cycle file, and the one problem it must give. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          "asOf": "2027-01-12T18:30:00+01:00", | `` | /asOf | missing-field | it was left out
          tiderule/cycle/1 | tiderule/cycle/2 | /schema | unknown-schema | tiderule/cycle/1
          Europe/Vienna | Europe/Viena | /zone | unknown-zone | "Europe/Vienna"
          "zone": "Europe/Vienna" | "zone": "+01:00" | /zone | unknown-zone | Europe/Vienna
          "breed": | "bred": | /female/bred | unknown-field | Maybe "breed"
          "breed": | "colour": "red", "breed": | /female/colour | unknown-field | Fields known here: id, name
          "laboratory": {"turn | "labratory": 1, "laboratory": {"turn | /labratory | unknown-field | "laboratory"
          "value": 2.1 | "value": -3 | /observations/0/value | negative-value | Maybe 3?
          "value": 2.1, | `` | /observations/0/value | missing-field | left out
          "value": 2.1 | "value": null | /observations/0/value | missing-field | left out
          "value": 2.1 | "value": NaN | /observations/0/value | not-a-number | until the number is known
          "value": 2.1 | "value": -Infinity | /observations/0/value | not-a-number | until the number
          "value": 2.1 | "value": 1e400 | /observations/0/value | not-a-number | until the number
          "value": 2.1 | "value": "NaN" | /observations/0/value | not-a-number | until the number
          "value": 2.1 | "value": "5,4" | /observations/0/value | not-a-number | Maybe 5.4,
          "value": 2.1 | "value": "5,432" | /observations/0/value | not-a-number | Maybe 5.432, or 5432?
          "value": 2.1 | "value": "<0.2" | /observations/0/value | not-a-number | Maybe 0.2, with the comparator "<"?
          "value": 2.1 | "value": "2,1 ng/ml" | /observations/0/value | not-a-number | Maybe 2.1, without quotes, with the unit
          "value": 2.1 | "value": true | /observations/0/value | wrong-type | quotes or brackets
          "value": 2.1 | "value": 0 | /observations/0/value | out-of-range | the limit
          "value": 2.1 | "value": 10001 | /observations/0/value | out-of-range | another unit
          "comparator": "<" | "comparator": "<=" | /observations/0/comparator | unknown-word | Allowed: <, >.
          "unit": "ng/mL", "method" | "unit": "ng/ml", "method" | /observations/0/unit | unknown-word | Maybe "ng/mL"?
          "unit": "ng/mL", "method" | "unit": "\\u00b5g/L", "method" | /observations/0/unit | unknown-word | Maybe "ug/L"?
          "unit": "ng/mL", "method" | "unit": "ng/dL", "method" | /observations/0/unit | unknown-word | Allowed: ng/mL, nmol/L, ug/L.
          "method": "clia" | "method": "clai" | /observations/0/method | unknown-word | Maybe "clia"?
          "handling": ["chilled-early", | "handling": ["chilled_erly", | /observations/0/handling/0 | unknown-word | Maybe "chilled-early"?
          "laboratory": "A" | "laboratory": "A\\u202E" | /observations/0/laboratory | illegal-character | pasted
          "laboratory": "A" | "laboratory": "A\\u001b[2J" | /observations/0/laboratory | illegal-character | pasted
          "laboratory": "A" | "laboratory": " " | /observations/0/laboratory | empty-text | leave the field out
          "laboratory": "A" | "laboratory": null | /observations/0/laboratory | wrong-type | leave the field out
          "reportedAt": "2027-01-08T16 | "reportedAt": "2027-01-08T06 | /observations/0/reportedAt | wrong-order | swapped
          "id": "k1" | "id": "p1" | /observations/1/id | duplicate-id | pasted twice
          "id": "k1" | "id": 7 | /observations/1/id | wrong-type | quotes
          "low": 3, "high": 10, | `` | /observations/1 | missing-field | at least one edge
          "low": 3 | "low": 10 | /observations/1/low | wrong-order | swapped
          "low": 3, "high": 10 | "high": 0 | /observations/1 | out-of-range | swapped
          "result": "positive" | "result": "pos" | /observations/2/result | unknown-word | Allowed: positive, negative.
          "result": "positive" | "result": "positive", "value": 3 | /observations/2/value | unknown-field | belongs to progesterone
          "result": "positive" | "result": "positive", "semen": "fresh" | /observations/2/semen | unknown-field | belongs to breeding
          "cornifiedPercent": 90, "neutrophils": "none" | "cornifiedPercent": 101 | /observations/3/cornifiedPercent | out-of-range | another unit
          , "cornifiedPercent": 90, "neutrophils": "none" | `` | /observations/3 | missing-field | at least one
          , "folds": "shrinking" | `` | /observations/4/folds | missing-field | left out
          "sign": "stands", | `` | /observations/5/sign | missing-field | left out
          "present": true | "present": "yes" | /observations/5/present | wrong-type | quotes
          , "present": true | `` | /observations/5/present | missing-field | left out
          "finding": "follicles" | "finding": "folicles" | /observations/6/finding | unknown-word | Maybe "follicles"?
          , "route": "vaginal" | `` | /observations/7/route | missing-field | left out
          "kind": "lh", | `` | /observations/2/kind | missing-field | left out
          "kind": "lh" | "kind": "hl" | /observations/2/kind | unknown-word | Allowed: progesterone, progesterone-band
          2027-01-09T09:00:00Z | 2072-01-09T09:00:00Z | /observations/2/at | implausible-date | Maybe 2027-01-09?
          2027-01-09T09:00:00Z | 2028-01-09T09:00:00Z | /observations/2/at | implausible-date | Maybe 2027-01-09?
          2027-01-09T09:00:00Z | 2025-01-09T09:00:00Z | /observations/2/at | implausible-date | Maybe 2027-01-09?
          2027-01-09T09:00:00Z | 2027-10-01T09:00:00Z | /observations/2/at | implausible-date | Maybe 2027-01-10?
          2027-01-09T09:00:00Z | 2027-01-09T09:00:00 | /observations/2/at | missing-offset | Maybe 2027-01-09T09:00:00+01:00?
          2027-01-09T09:00:00Z | 2027-07-09 9:00 | /observations/2/at | missing-offset | Maybe 2027-07-09T09:00:00+02:00?
          2027-01-09T09:00:00Z | 2027-01-09T09:00Z | /observations/2/at | not-an-instant | Maybe 2027-01-09T09:00:00Z?
          2027-01-09T09:00:00Z | 2027-01-09t09:00:00+0100 | /observations/2/at | not-an-instant | Maybe 2027-01-09T09:00:00+01:00?
          2027-01-09T09:00:00Z | 2027-02-30T09:00:00Z | /observations/2/at | not-an-instant | Write it like
          2027-01-09T09:00:00Z | Saturday | /observations/2/at | not-an-instant | Write it like
          "on": "2027-01-03", | `` | /firstBlood/on | missing-field | left out
          "on": "2027-01-03" | "on": "3.1.2027" | /firstBlood/on | not-a-date | Maybe 2027-01-03?
          "on": "2027-01-03" | "on": "01/03/2027" | /firstBlood/on | not-a-date | Write it like 2027-01-08.
          "on": "2027-01-03" | "on": "2027-02-29" | /firstBlood/on | not-a-date | Write it like
          "on": "2027-01-03" | "on": "2027-01-13" | /firstBlood/on | implausible-date | Maybe 2026-12-13?
          "certainty": "seen" | "certainty": "sure" | /firstBlood/certainty | unknown-word | Allowed: seen, estimated, unknown.
          "bornOn": "2022-03-10" | "bornOn": "2028-03-10" | /female/bornOn | implausible-date | year
          "bodyMassKg": 13.2 | "bodyMassKg": 1320 | /female/bodyMassKg | out-of-range | another unit
          "littersWhelped": 1 | "littersWhelped": 1.5 | /female/littersWhelped | not-a-whole-number | round
          "ovulatedOn": "2026-06-13" | "ovulatedOn": "2026-05-13" | /female/earlierCycles/0/ovulatedOn | wrong-order | swapped
          "ovulatedOn": "2026-06-13" | "ovulatedOn": "2026-11-13" | /female/earlierCycles/0/ovulatedOn | implausible-date | year
          "firstBloodOn": "2026-06-01", "ovulatedOn": "2026-06-13" | "firstBloodOn": "2027-01-03" | /female/earlierCycles/0/firstBloodOn | wrong-order | present season
          "kind": "other" | "kind": "otter" | /female/treatments/0/kind | unknown-word | Maybe "other"?
          "doses": 2 | "doses": 5 | /breeding/doses | out-of-range | another unit
          "doses": 2 | "doses": 0 | /breeding/doses | out-of-range | another unit
          "normalPercent": 80 | "normalPercent": 180 | /breeding/dose/normalPercent | out-of-range | another unit
          "from": "2027-01-12T08 | "from": "2027-01-22T08 | /breeding/available/0/from | wrong-order | swapped
          "cutOff": "14:00" | "cutOff": "24:00" | /breeding/order/cutOff | not-a-time | 14:00
          "cutOff": "14:00" | "cutOff": "2 pm" | /breeding/order/cutOff | not-a-time | 14:00
          ["SUNDAY"] | ["Sunday"] | /breeding/order/noDeliveryOn/0 | unknown-word | Maybe "SUNDAY"?
          ["SUNDAY"] | "SUNDAY" | /breeding/order/noDeliveryOn | wrong-type | brackets
          "doses": 2 | "doses": 2, "doses": 3 | /breeding/doses | duplicate-key | remove one
          "name": "Juniper" | "na~m/e": 1, "name": "Juniper" | /female/na~0m~1e | unknown-field | Fields known
          """)
  void refusesOneSlipWithOneProblem(
      String part, String instead, String path, String code, String hint) {
    List<Problem> problems = Documents.refused(Documents.fullCycle(part, instead));
    List<String> places = problems.stream().map(p -> p.path() + " " + p.code().word()).toList();
    assertThat(problems.toString(), places, contains(path + " " + code));
    assertThat(problems.get(0).hint(), containsString(hint));
  }

  @Test
  void namesFieldAndValueInEveryMessage() {
    assertThat(
        Documents.refused(Documents.fullCycle("\"value\": 2.1", "\"value\": -3")).get(0).message(),
        is("value is -3, below zero"));
  }

  @Test
  void listsAllProblemsAtOnce() {
    String file =
        """
        {"schema": "tiderule/cycle/1", "asOf": "2027-02-10T18:30:00+01:00",
         "zone": "Europe/Vienna", "firstBlood": {"certainty": "seen"}, "notes": "…",
         "observations": [
          {"id": "p1", "kind": "progesterone", "at": "2072-02-07T08:00:00+01:00", "value": -3},
          {"id": "p1", "kind": "progesterone", "at": "2027-02-09 08:00", "value": "5,4"},
          {"id": "c1", "kind": "cytology", "at": "2027-02-09T08:00:00+01:00", "folds": "flat"},
          7]}
        """;
    assertThat(
        Documents.refused(file).stream()
            .map(p -> p.path() + " | " + p.code().word() + " | " + p.message() + " | " + p.hint())
            .collect(Collectors.joining("\n")),
        is(
            """
            /firstBlood/on | missing-field | on is missing | Maybe it was left out?
            /observations/0/at | implausible-date | at is in 2072, outside 2000 to 2060 | Maybe 2027-02-07?
            /observations/0/value | negative-value | value is -3, below zero | Maybe 3? If the minus sign stood for "below", use the comparator "<".
            /observations/1/id | duplicate-id | id is "p1", which is already the id at /observations/0/id | Maybe one was pasted twice? Give every observation its own id.
            /observations/1/at | missing-offset | at is "2027-02-09 08:00", which lacks the offset from UTC | Maybe 2027-02-09T08:00:00+01:00?
            /observations/1/value | not-a-number | value is the text "5,4", not a number | Maybe 5.4, without quotes?
            /observations/2 | missing-field | cornifiedPercent and neutrophils are both missing | Maybe one of them was left out? A smear needs at least one.
            /observations/2/folds | unknown-field | there is no field "folds" here | Maybe the kind is a slip? "folds" belongs to vaginoscopy, not cytology.
            /observations/3 | wrong-type | observations[3] is 7, which is a number, not an object | Maybe quotes or brackets are too many or too few?
            /notes | unknown-field | there is no field "notes" here | Fields known here: schema, zone, asOf, firstBlood, female, observations, insemination, breeding, stud, laboratory, outcome."""));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          `` | empty-file | nothing
          ` ` | empty-file | nothing
          {"schema": | not-json | line 1, column 11
          {'schema': 1} | not-json | line 1, column 2
          {"a": 1,} | not-json | line 1
          {"a": 01} | not-json | line 1
          no | not-json | line 1
          {} {} | trailing-content | line 1, column 3
          {} x | trailing-content | line 1, column 3
          [] | wrong-type | the document is a list
          null | wrong-type | the document is null
          "text" | wrong-type | the document is "text"
          """)
  void refusesWhatIsNoDocument(String file, String code, String message) {
    List<Problem> problems = Documents.refused(file);
    assertThat(problems, hasSize(1));
    assertThat(problems.get(0).code().word(), is(code));
    assertThat(problems.get(0).path(), is(""));
    assertThat(problems.get(0).message(), containsString(message));
  }

  @Test
  void refusesNestingQuicklyWhateverItsDepth() {
    Assertions.assertTimeout(
        Duration.ofSeconds(5),
        () -> {
          for (String bracket : List.of("[", "{\"a\":")) {
            assertThat(
                code(bracket.repeat(100).getBytes(StandardCharsets.UTF_8)),
                is(ProblemCode.TOO_DEEP));
            assertThat(
                code(bracket.repeat(200_000).getBytes(StandardCharsets.UTF_8)),
                is(ProblemCode.TOO_DEEP));
            assertThat(
                code(
                    bracket.repeat(10_000_000 / bracket.length()).getBytes(StandardCharsets.UTF_8)),
                is(ProblemCode.TOO_LARGE));
          }
        });
  }

  @Test
  void refusesBytesThatAreNotUtf8() {
    byte[] latin =
        Documents.fullCycle("Juniper", "J\u00fcniper").getBytes(StandardCharsets.ISO_8859_1);
    assertThat(code(latin), is(ProblemCode.NOT_UTF8));
    assertThat(Documents.refused(latin).get(0).message(), containsString("line 6"));
    assertThat(
        code(Documents.fullCycle().getBytes(StandardCharsets.UTF_16)), is(ProblemCode.NOT_UTF8));
    assertThat(code(new byte[] {'{', '"', (byte) 0xC3}), is(ProblemCode.NOT_UTF8));
  }

  @Test
  void refusesTooLongTextsListsAndNumbers() {
    assertThat(code(Documents.fullCycle("juniper", "j".repeat(65))), is(ProblemCode.TOO_LONG));
    assertThat(code(Documents.fullCycle("Juniper", "j".repeat(121))), is(ProblemCode.TOO_LONG));
    assertThat(
        Documents.read(Documents.fullCycle("Juniper", "j".repeat(120))).female().name(),
        is("j".repeat(120)));
    assertThat(
        code(Documents.fullCycle("2.1,", "1" + "0".repeat(2000) + ",")), is(ProblemCode.TOO_LARGE));
    assertThat(code(Documents.cycleWith(lhTests(501))), is(ProblemCode.TOO_MANY));
    assertThat(Documents.read(Documents.cycleWith(lhTests(500))).observations(), hasSize(500));
  }

  private static String lhTests(int count) {
    return IntStream.range(0, count)
        .mapToObj(
            i ->
                "{\"id\": \"l"
                    + i
                    + "\", \"kind\": \"lh\", \"at\": \"2027-01-08T08:00:00+01:00\","
                    + " \"result\": \"negative\"}")
        .collect(Collectors.joining(","));
  }

  @Test
  void listsAThousandProblemsAndSaysThatThereAreMore() {
    String file =
        "{"
            + IntStream.range(0, 3000)
                .mapToObj(i -> "\"field" + i + "\": 1")
                .collect(Collectors.joining(","))
            + "}";
    List<Problem> problems = Documents.refused(file);
    assertThat(problems, hasSize(1001));
    assertThat(problems.get(1000).code(), is(ProblemCode.TOO_MANY_PROBLEMS));
  }

  private static ProblemCode code(String file) {
    return code(file.getBytes(StandardCharsets.UTF_8));
  }

  private static ProblemCode code(byte[] file) {
    List<Problem> problems = Documents.refused(file);
    assertThat(problems.toString(), problems, hasSize(1));
    return problems.get(0).code();
  }
}
