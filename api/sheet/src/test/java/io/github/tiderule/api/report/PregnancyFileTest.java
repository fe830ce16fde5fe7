package io.github.tiderule.api.report;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.stringContainsInOrder;

import io.github.tiderule.api.calendar.AdvisedDates;
import io.github.tiderule.api.calendar.CalendarFeed;
import io.github.tiderule.api.paper.BreederSheet;
import io.github.tiderule.api.paper.PaperSize;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.format.Seasons;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.Schemas;
import io.github.tiderule.rules.fact.EarlierCycle;
import io.github.tiderule.rules.fact.Outcome;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.PregnancyScan;
import io.github.tiderule.rules.fact.observation.Radiograph;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.Sign;
import io.github.tiderule.rules.fact.observation.SignKind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a cycle file says of pregnancy, whelping and earlier litters. */
class PregnancyFileTest {

  private static final String FILE =
      """
      {"schema": "tiderule/cycle/1", "asOf": "2027-03-10T12:00:00+01:00", "zone": "Europe/Vienna",
       "female": {"id": "juniper", "bodyMassKg": 8,
                  "earlierCycles": [{"firstBloodOn": "2026-05-01", "dioestrusOn": "2026-05-19",
                                     "whelpedOn": "2026-07-15", "litterSize": 6, "pregnant": true}]},
       "firstBlood": {"on": "2026-12-09", "certainty": "seen"},
       "observations": [
        {"id": "m1", "kind": "breeding", "at": "2026-12-22T17:00:00+01:00", "semen": "natural",
         "route": "natural"},
        {"id": "u1", "kind": "scan", "at": "2027-01-18T10:00:00+01:00", "finding": "heartbeats",
         "innerChorionicCavityMm": [24.5, 26], "biparietalMm": [9.1], "fetuses": 5},
        {"id": "r1", "kind": "radiograph", "at": "2027-02-15T10:00:00+01:00", "fetuses": 5,
         "skeletonSeen": true},
        {"id": "t1", "kind": "temperature", "at": "2027-02-20T19:00:00+01:00", "celsius": 37.3},
        {"id": "s1", "kind": "sign", "at": "2027-02-21T19:00:00+01:00", "sign": "pup-born",
         "present": true}],
       "outcome": {"pregnant": true, "whelpedOn": "2027-02-21", "litterSize": 5,
                   "pupsBornAlive": 5}}
      """;

  private static final String STRAINING =
      "{\"id\": \"s1\", \"kind\": \"sign\", \"at\": \"2027-02-20T11:00:00+01:00\","
          + " \"sign\": \"straining\", \"present\": true}";

  private static CycleRecord read(String file) {
    Reading reading = CycleFile.read(file.getBytes(StandardCharsets.UTF_8));
    if (reading instanceof Reading.Read read) {
      return read.cycle();
    }
    throw new AssertionError(reading);
  }

  @Test
  void readsAllOfIt() {
    CycleRecord cycle = read(FILE);
    assertThat(
        cycle.observations().subList(1, 5),
        contains(
            new PregnancyScan(
                "u1",
                Instant.parse("2027-01-18T09:00:00Z"),
                ScanFinding.HEARTBEATS,
                List.of(24.5, 26.0),
                List.of(9.1),
                5),
            new Radiograph("r1", Instant.parse("2027-02-15T09:00:00Z"), 5, true),
            new BodyTemperature("t1", Instant.parse("2027-02-20T18:00:00Z"), 37.3),
            new Sign("s1", Instant.parse("2027-02-21T18:00:00Z"), SignKind.PUP_BORN, true)));
    assertThat(cycle.outcome(), is(new Outcome(true, LocalDate.parse("2027-02-21"), 5, 5)));
    assertThat(
        cycle.earlierCycles(),
        contains(
            new EarlierCycle(
                LocalDate.parse("2026-05-01"),
                null,
                LocalDate.parse("2026-05-19"),
                LocalDate.parse("2026-07-15"),
                6,
                true)));
    assertThat(Schemas.againstCycle(FILE), is(empty()));
  }

  @Test
  void everyPartOfTheAnswerFitsItsSchema() {
    Tiderule engine = Tiderule.create();
    CycleRecord whelped = read(FILE);
    String open = FILE.replaceAll("(?s),\\s*\"outcome\".*\\}\\}", "}");
    CycleRecord near = read(open).knownAt(Instant.parse("2027-02-18T12:00:00Z"));
    for (CycleRecord cycle : List.of(whelped, near)) {
      String json = AdviceJson.text(engine.advise(cycle), Layout.INDENTED);
      assertThat(Schemas.againstAdvice(json), is(empty()));
    }
    assertThat(engine.advise(whelped).course().lookBack() != null, is(true));
    assertThat(engine.advise(near).course().caesarean() != null, is(true));
    assertThat(engine.advise(near).course().pregnancy() != null, is(true));
  }

  /** A stop comes first; dates of the pregnancy and red flags stay, in every door but the plan. */
  @Test
  void afterAStopThePregnancyIsStillTold() throws IOException {
    String stopped =
        FILE.replaceAll("(?s),\\s*\"outcome\".*\\}\\}", "}")
            .replace("2027-03-10T12:00:00+01:00", "2027-02-20T12:00:00+01:00")
            .replaceAll("(?s),\\s*\\{\"id\": \"t1\".*?\\]", "]")
            .replace("\"skeletonSeen\": true}]", "\"skeletonSeen\": true}, " + STRAINING + "]");
    CycleRecord cycle = read(stopped);
    Reasoning reasoning = Seasons.engine().reason(cycle);
    String json = AdviceJson.text(reasoning.advice(), Layout.INDENTED);
    assertThat(Schemas.againstAdvice(json), is(empty()));
    assertThat(
        json,
        allOf(
            containsString("\"level\": \"stop\""),
            containsString("\"plan\": null"),
            containsString("\"redFlags\": [\n"),
            containsString("\"happened\": [\n"),
            not(containsString("\"whelping\": null"))));
    String report = AdviceReport.text(cycle, reasoning.advice());
    assertThat(
        report,
        stringContainsInOrder(
            "Call a vet now",
            "Stop: She strains",
            "WHELPING",
            "WHAT HAPPENED",
            "RED FLAGS AT WHELPING",
            "Green discharge before the first pup: vet now."));
    String calendar =
        CalendarFeed.text(
            "s", List.of(AdvisedDates.of(json, "Juniper")), Instant.parse("2027-02-20T11:00:00Z"));
    assertThat(calendar, containsString("Juniper: whelping"));
    try (PDDocument paper = Loader.loadPDF(BreederSheet.pdf(cycle, reasoning, PaperSize.A4))) {
      assertThat(paper.getNumberOfPages(), is(1));
      PDFTextStripper downwards = new PDFTextStripper();
      downwards.setSortByPosition(true);
      assertThat(
          downwards.getText(paper),
          stringContainsInOrder("Call a vet now", "Stop: She strains", "What happened"));
      assertThat(
          new PDFTextStripper().getText(paper).replaceAll("\\s+", " "),
          allOf(
              containsString("Green discharge before the first pup: vet now"),
              containsString("Radiograph, 5 pups counted")));
    }
  }

  @Test
  void theCalendarHasTheWhelpingOnceItHappened() {
    String json = AdviceJson.text(Seasons.engine().advise(read(FILE)), Layout.INDENTED);
    String calendar =
        CalendarFeed.text(
            "s", List.of(AdvisedDates.of(json, "Juniper")), Instant.parse("2027-03-10T11:00:00Z"));
    assertThat(
        calendar,
        allOf(
            containsString("SUMMARY:Juniper: whelped"),
            containsString("DTSTART;VALUE=DATE:20270221"),
            containsString("She whelped\\, 5 pups\\, 5 born alive."),
            not(containsString("s-milestone"))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          "pregnant": true, "whelpedOn": "2027-02-21" | "pregnant": false, "whelpedOn": "2027-02-21" | /outcome/pregnant | contradiction
          "whelpedOn": "2027-02-21" | "whelpedOn": "2027-03-21" | /outcome/whelpedOn | implausible-date
          "whelpedOn": "2027-02-21" | "whelpedOn": "2026-11-21" | /outcome/whelpedOn | wrong-order
          "pupsBornAlive": 5 | "pupsBornAlive": 6 | /outcome/pupsBornAlive | out-of-range
          "pupsBornAlive": 5 | "pupsAlive": 5 | /outcome/pupsAlive | unknown-field
          "finding": "heartbeats" | "finding": "not-pregnant" | /observations/1 | contradiction
          "finding": "heartbeats", | `` | /observations/1/finding | missing-field
          [24.5, 26] | [2450] | /observations/1/innerChorionicCavityMm/0 | out-of-range
          "celsius": 37.3 | "celsius": 99.1 | /observations/3/celsius | out-of-range
          "celsius": 37.3 | "value": 37.3 | /observations/3/celsius | missing-field
          "dioestrusOn": "2026-05-19" | "dioestrusOn": "2026-04-19" | /female/earlierCycles/0/dioestrusOn | wrong-order
          "whelpedOn": "2026-07-15" | "whelpedOn": "2026-12-01" | /female/earlierCycles/0/whelpedOn | implausible-date
          """)
  void refusesWhatCannotBe(String right, String wrong, String path, String code) {
    String file = FILE.replace(right, wrong);
    assertThat(file.equals(FILE), is(false));
    Reading reading = CycleFile.read(file.getBytes(StandardCharsets.UTF_8));
    assertThat(reading instanceof Reading.Refused, is(true));
    List<String> problems =
        ((Reading.Refused) reading)
            .problems().stream().map(one -> one.path() + " " + one.code().word()).toList();
    assertThat(problems.get(0), is(path + " " + code));
  }
}
