package io.github.tiderule.api.report;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;

import io.github.tiderule.api.report.text.Columns;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.EggShare;
import io.github.tiderule.engine.validation.Legibility;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.Nightly;
import io.github.tiderule.format.SampleAdvice;
import io.github.tiderule.format.Seasons;
import io.github.tiderule.format.Seasons.Season;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.rules.source.Sources;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class ReportsTest {

  private static final CycleRecord CYCLE = Documents.read(Documents.fullCycle());
  private static final Sources SOURCES = Sources.load();

  private static void assertFits(String text) {
    for (String line : text.split("\n", -1)) {
      assertThat(line, Columns.of(line), is(lessThanOrEqualTo(Page.WIDTH)));
      assertThat(line, line.stripTrailing(), is(line));
      line.codePoints()
          .forEach(
              character ->
                  assertThat(
                      Integer.toHexString(character), Legibility.isSafe(character), is(true)));
    }
    assertThat(text, endsWith("\n"));
  }

  @Test
  void fitEightyColumnsWhateverTheTexts() {
    for (int seed = 0; seed < Nightly.of(100, 400); seed++) {
      Advice advice = InventedAdvice.of(seed);
      assertFits(AdviceReport.text(CYCLE, advice));
      assertFits(FirstScreen.text(CYCLE, advice));
      assertFits(TraceReport.text(CYCLE, Reasoning.of(advice), SOURCES));
    }
  }

  @Test
  void thePlanReadsAsAPersonWouldPutIt() {
    assertThat(
        AdviceReport.text(CYCLE, SampleAdvice.full()),
        is(Documents.resource("/io/github/tiderule/api/report/plan.txt")));
  }

  @Test
  void theReasoningReadsAsAVetWouldWantIt() {
    assertThat(
        TraceReport.text(CYCLE, Reasoning.of(SampleAdvice.full()), SOURCES),
        is(Documents.resource("/io/github/tiderule/api/report/trace.txt")));
  }

  @Test
  void saySoWhereNothingCanBeSaid() {
    String plan = AdviceReport.text(CYCLE, SampleAdvice.empty());
    assertThat(plan, containsString("No day can be named yet"));
    assertThat(plan, containsString("Nothing can be said of ovulation yet."));
    assertThat(plan, not(containsString("WHELPING")));
    assertThat(plan, not(containsString("null")));
    assertFits(plan);
    String trace = TraceReport.text(CYCLE, Reasoning.of(SampleAdvice.empty()), SOURCES);
    assertThat(trace, containsString("No observation entered the timeline."));
    assertThat(trace, not(containsString("null")));
  }

  @Test
  void putAVetsCautionBesideTheHeadline() {
    String plan = AdviceReport.text(CYCLE, SampleAdvice.full());
    int vet = plan.indexOf("See a vet: She is unwell");
    assertThat(vet > 0 && vet < plan.indexOf("THE PLAN"), is(true));
    assertThat(plan.indexOf("Never force") > plan.indexOf("CAUTIONS"), is(true));
  }

  @Test
  void noDayOfAPlanStandsBeforeTheVet() {
    Season ill =
        Seasons.text(
            """
            {"schema": "tiderule/cycle/1", "asOf": "2027-01-13T12:00:00+01:00",
             "zone": "Europe/Vienna", "firstBlood": {"on": "2027-01-03", "certainty": "seen"},
             "observations": [
              {"id": "p1", "kind": "progesterone", "at": "2027-01-10T08:00:00+01:00", "value": 1.1,
               "unit": "ng/mL"},
              {"id": "s1", "kind": "sign", "at": "2027-01-13T08:00:00+01:00",
               "sign": "foul-discharge", "present": true}]}\
            """);
    assertThat(ill.reasoning().advice().breeding().plan(), is(notNullValue()));
    String plan = AdviceReport.text(ill.cycle(), ill.reasoning().advice());
    assertThat(
        plan,
        containsString("THE PLAN\n  None of these days before a vet has seen her and agrees.\n"));
    assertThat(
        AdviceReport.text(CYCLE, SampleAdvice.full()), not(containsString("None of these days")));
  }

  /** Progesterone near 5 ng/mL from the 11th to the 18th, which no day of ovulation fits. */
  @Test
  void noDayOfOvulationStandsBesideValuesThatStandStill() {
    Season still =
        Seasons.text(
            """
            {"schema": "tiderule/cycle/1", "asOf": "2027-03-18T18:00:00+01:00",
             "zone": "Europe/Vienna", "firstBlood": {"on": "2027-03-01", "certainty": "seen"},
             "observations": [
              {"id": "p1", "kind": "progesterone", "at": "2027-03-09T08:00:00+01:00", "value": 2.4,
               "unit": "ng/mL"},
              {"id": "p2", "kind": "progesterone", "at": "2027-03-11T08:00:00+01:00", "value": 4.6,
               "unit": "ng/mL"},
              {"id": "p3", "kind": "progesterone", "at": "2027-03-15T08:00:00+01:00", "value": 5.1,
               "unit": "ng/mL"},
              {"id": "p4", "kind": "progesterone", "at": "2027-03-18T08:00:00+01:00", "value": 4.7,
               "unit": "ng/mL"}]}\
            """);
    String plan = AdviceReport.text(still.cycle(), still.reasoning().advice());
    assertThat(plan, containsString("HOW SURE\n  Nothing is proven, and no day of ovulation"));
    assertThat(plan, not(containsString("most likely ovulated")));
  }

  @Test
  void doNotDependOnTheLocale() {
    Locale before = Locale.getDefault();
    String here = AdviceReport.text(CYCLE, SampleAdvice.full());
    String trace = TraceReport.text(CYCLE, Reasoning.of(SampleAdvice.full()), SOURCES);
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(AdviceReport.text(CYCLE, SampleAdvice.full()), is(here));
      assertThat(TraceReport.text(CYCLE, Reasoning.of(SampleAdvice.full()), SOURCES), is(trace));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void aRefusalNamesPlaceMessageCodeAndHint() {
    String text =
        RefusalReport.text(
            "juni\u001bper.json",
            List.of(
                new Problem("/a", ProblemCode.NEGATIVE_VALUE, "value is -3", "Maybe 3?"),
                new Problem("", ProblemCode.EMPTY_FILE, "x".repeat(300), "y ".repeat(90))));
    assertThat(text, containsString("/a\n  value is -3 (negative-value)\n  Maybe 3?\n"));
    assertThat(text, containsString("juni<U+001B>per.json is refused, with 2 problems."));
    assertFits(text);
  }

  @Test
  void sharesNeverReadNothingOrAllWhenTheyAreNot() {
    assertThat(Shares.number(0), is("0"));
    assertThat(Shares.number(0.004), is("under 1"));
    assertThat(Shares.number(0.824), is("82"));
    assertThat(Shares.number(0.999), is("over 99"));
    assertThat(Shares.number(1), is("100"));
    assertThat(Shares.unlucky(new EggShare(0.9, 0.7)), is("; if unlucky, 70"));
    assertThat(Shares.unlucky(new EggShare(0.97, 0.98)), is(""));
    assertThat(Shares.unlucky(new EggShare(0.2, 0.01)), is("; if unlucky, hardly any"));
  }

  @Test
  void windowsNameASecondDay() {
    var evening = java.time.OffsetDateTime.parse("2027-01-14T20:00:00+01:00");
    assertThat(Words.REPORTS.window(evening, evening.plusHours(2)), is("20:00–22:00"));
    assertThat(Words.REPORTS.window(evening, evening.plusHours(4)), is("20:00–24:00"));
    assertThat(Words.REPORTS.window(evening, evening.plusHours(6)), is("20:00–02:00 Fri 15 Jan"));
  }
}
