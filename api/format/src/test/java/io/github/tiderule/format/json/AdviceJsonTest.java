package io.github.tiderule.format.json;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.SampleAdvice;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class AdviceJsonTest {

  private static JsonNode tree(String json) throws IOException {
    return new ObjectMapper().readTree(json);
  }

  private static List<String> names(JsonNode node) {
    List<String> names = new ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }

  @Test
  void writesTheFieldsInTheirOrder() throws IOException {
    JsonNode advice = tree(AdviceJson.text(SampleAdvice.full(), Layout.INDENTED));
    assertThat(
        names(advice),
        contains(
            "schema",
            "stamp",
            "asOf",
            "validUntil",
            "femaleId",
            "action",
            "lhPeak",
            "ovulation",
            "breedingDays",
            "plan",
            "nextTest",
            "noTestBecause",
            "bred",
            "whelping",
            "pregnancy",
            "caesarean",
            "lookBack",
            "questions",
            "cautions",
            "influence",
            "wouldChange",
            "trace",
            "notFired",
            "disagreements",
            "observationNotes",
            "dayCounts",
            "insemination",
            "beforeSeason",
            "course"));
    assertThat(
        names(advice.get("ovulation")),
        contains(
            "median",
            "p05",
            "p25",
            "p75",
            "p95",
            "confirmed",
            "byDay",
            "noOvulationProbability",
            "patterns",
            "fit"));
  }

  @Test
  void writesTheSheetAndTheSeasonOnlyWhereThereIsOne() throws IOException {
    JsonNode sheet =
        tree(AdviceJson.text(SampleAdvice.full(), Layout.ONE_LINE)).get("insemination");
    assertThat(sheet.at("/at").asText(), is("2027-01-14T10:00:00+01:00"));
    assertThat(sheet.at("/usable/least").decimalValue().toPlainString(), is("40"));
    assertThat(sheet.at("/doses/0/unitsForOne").asInt(), is(3));
    assertThat(sheet.at("/doses/1/unitsForOne").isNull(), is(true));
    assertThat(sheet.at("/temperature/extenderShiftC").asDouble(), is(-15.0));
    assertThat(sheet.at("/sameDay/0/veterinaryAct").asBoolean(), is(true));
    assertThat(sheet.at("/secondParcelBy").asText(), is("2027-01-16"));
    JsonNode empty = tree(AdviceJson.text(SampleAdvice.empty(), Layout.ONE_LINE));
    assertThat(empty.has("insemination"), is(false));
    assertThat(empty.has("beforeSeason"), is(false));
  }

  @Test
  void writesWhatHerValuesDoOnlyWhereSomethingTells() throws IOException {
    JsonNode course = tree(AdviceJson.text(SampleAdvice.full(), Layout.ONE_LINE)).get("course");
    assertThat(
        names(course), contains("kind", "text", "observations", "since", "rule", "withdrawn"));
    assertThat(course.at("/kind").asText(), is("rising-again"));
    assertThat(course.at("/since").asText(), is("2027-01-05T08:00:00+01:00"));
    assertThat(course.at("/observations/1").asText(), is("p4"));
    JsonNode empty = tree(AdviceJson.text(SampleAdvice.empty(), Layout.ONE_LINE));
    assertThat(empty.has("course"), is(false));
  }

  @Test
  void writesValuesAsTheContractHasThem() throws IOException {
    String line = AdviceJson.text(SampleAdvice.full(), Layout.ONE_LINE);
    JsonNode advice = tree(line);
    assertThat(advice.at("/schema").asText(), is("tiderule/advice/1"));
    assertThat(advice.at("/asOf").asText(), is("2027-01-12T18:30:00+01:00"));
    assertThat(advice.at("/action/now").asText(), is("book"));
    assertThat(advice.at("/breedingDays/0/day").asText(), is("2027-01-14"));
    assertThat(advice.at("/breedingDays/1/verdict").asText(), is("avoid"));
    assertThat(line, containsString("\"eggShare\":{\"mean\":0.0004,\"p10\":0}"));
    assertThat(advice.at("/plan/alternatives/0/eggShare/mean").toString(), is("0.865"));
    assertThat(advice.at("/plan/at/1").asText(), is("2027-01-15T10:00:00+01:00"));
    assertThat(advice.at("/influence/0/ovulationShiftHours").toString(), is("-9.5"));
    assertThat(advice.at("/influence/0/widthChangeHours").toString(), is("-31"));
    assertThat(advice.at("/wouldChange/0/below").toString(), is("3.1"));
    assertThat(advice.at("/wouldChange/0/above").isNull(), is(true));
  }

  @Test
  void writesNullWhereNothingCanBeSaid() throws IOException {
    JsonNode advice = tree(AdviceJson.text(SampleAdvice.empty(), Layout.INDENTED));
    for (String name :
        List.of(
            "femaleId",
            "lhPeak",
            "ovulation",
            "plan",
            "nextTest",
            "noTestBecause",
            "bred",
            "whelping")) {
      assertThat(name, advice.has(name) && advice.get(name).isNull(), is(true));
    }
  }

  @Test
  void laysOutForPeopleOrOnOneLine() {
    String indented = AdviceJson.text(SampleAdvice.full(), Layout.INDENTED);
    assertThat(indented, containsString("\n  \"stamp\": {\n    \"engine\": \"0.1.0\","));
    assertThat(indented, endsWith("}\n"));
    String line = AdviceJson.text(SampleAdvice.empty(), Layout.ONE_LINE);
    assertThat(line.indexOf('\n'), is(line.length() - 1));
    assertThat(line, not(containsString("\": ")));
  }

  @Test
  void doesNotDependOnTheLocale() {
    Locale before = Locale.getDefault();
    String here = AdviceJson.text(SampleAdvice.full(), Layout.INDENTED);
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(AdviceJson.text(SampleAdvice.full(), Layout.INDENTED), is(here));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void roundsTheSameOnBothSidesOfNoise() {
    assertThat(Figures.rounded(0.12345, 4), is(Figures.rounded(0.12344999999999998, 4)));
    assertThat(Figures.rounded(0.12345, 4).toPlainString(), is("0.1235"));
    assertThat(Figures.rounded(-0.00001, 4).toPlainString(), is("0"));
    assertThat(Figures.rounded(-0.25, 1).toPlainString(), is("-0.3"));
    assertThat(Figures.rounded(100.0, 4).toPlainString(), is("100"));
    assertThat(Figures.rounded(3.0e8, 4).toPlainString(), is("300000000"));
  }

  @Test
  void writesNoNumberThatIsNone() {
    assertThrows(IllegalArgumentException.class, () -> Figures.rounded(Double.NaN, 4));
    assertThrows(
        IllegalArgumentException.class, () -> Figures.rounded(Double.POSITIVE_INFINITY, 4));
  }

  @Test
  void writesARefusal() {
    assertThat(
        ProblemsJson.ofLine(
            3, Documents.refused(Documents.fullCycle("\"value\": 2.1", "\"value\": -3"))),
        is(
            "{\"schema\":\"tiderule/problems/1\",\"line\":3,\"problems\":[{\"path\":"
                + "\"/observations/0/value\",\"code\":\"negative-value\",\"message\":"
                + "\"value is -3, below zero\",\"hint\":\"Maybe 3? If the minus sign stood for"
                + " \\\"below\\\", use the comparator \\\"<\\\".\"}]}\n"));
  }
}
