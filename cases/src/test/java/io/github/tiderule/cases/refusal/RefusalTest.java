package io.github.tiderule.cases.refusal;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.not;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.tiderule.cases.ProgramRun;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Wrong files through the program: the right refusal, or the right question. */
class RefusalTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  private static String cycle(String observations) {
    return """
        {"schema": "tiderule/cycle/1", "asOf": "2027-01-12T18:30:00+01:00", "zone": "Europe/Vienna",
         "firstBlood": {"on": "2027-01-03", "certainty": "seen"}, "observations": [%s]}
        """
        .formatted(observations);
  }

  private static final String GOOD =
      "{'id': 'p1', 'kind': 'progesterone', 'at': '2027-01-08T08:00:00+01:00', 'value': 0.8,"
          + " 'unit': 'ng/mL', 'method': 'eclia', 'laboratory': 'A'}";

  private static String quoted(String text) {
    return text.replace('\'', '"');
  }

  private static JsonNode refused(String file) throws IOException {
    ProgramRun run = ProgramRun.of(file, "advise", "--json", "-");
    assertThat(run.out() + run.err(), run.status(), equalTo(2));
    JsonNode answer = JSON.readTree(run.out());
    assertThat(answer.get("schema").asText(), equalTo("tiderule/problems/1"));
    return answer.get("problems");
  }

  private static List<String> paths(JsonNode problems) {
    return problems.findValuesAsText("path");
  }

  @Test
  void refusesAnEmptyFileAndWhatIsNotJson() throws IOException {
    assertThat(refused("").get(0).get("code").asText(), equalTo("empty-file"));
    assertThat(refused("progesterone 2,1").get(0).get("code").asText(), equalTo("not-json"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'value': 0.8 | 'value': -0.8 | /observations/0/value | negative-value",
        "'value': 0.8 | 'value': NaN | /observations/0/value | not-a-number",
        "'value': 0.8 | 'value': 'high' | /observations/0/value | not-a-number",
        "'value': 0.8, | '' | /observations/0/value | missing-field",
        "'value': 0.8 | 'valeu': 0.8 | /observations/0/valeu | unknown-field",
        "2027-01-08T08 | 2072-01-08T08 | /observations/0/at | implausible-date"
      })
  void refusesOneSlip(String from, String to, String path, String code) throws IOException {
    String changed = GOOD.replace(from, to.equals("''") ? "" : to);
    assertThat(changed, not(equalTo(GOOD)));
    JsonNode problems = refused(cycle(quoted(changed)));
    assertThat(paths(problems), hasItem(path));
    assertThat(problems.findValuesAsText("code"), hasItem(code));
  }

  @Test
  void refusesTwoObservationsWithOneId() throws IOException {
    JsonNode problems = refused(cycle(quoted(GOOD + "," + GOOD)));
    assertThat(problems.get(0).get("code").asText(), equalTo("duplicate-id"));
    assertThat(problems.get(0).get("path").asText(), equalTo("/observations/1/id"));
  }

  @Test
  void tellsEveryProblemAtOnce() throws IOException {
    String two =
        quoted(
            GOOD.replace("0.8", "-1")
                + ","
                + GOOD.replace("p1", "p2").replace("eclia", "guess").replace("'unit'", "'units'"));
    JsonNode problems = refused(cycle(two).replace("Europe/Vienna", "Europe/Atlantis"));
    assertThat(
        paths(problems),
        hasItems(
            "/zone", "/observations/0/value", "/observations/1/method", "/observations/1/units"));
  }

  @Test
  void refusesTenMegabytesOfNestingQuickly() throws IOException {
    byte[] nested = "[".repeat(10 * 1024 * 1024).getBytes(java.nio.charset.StandardCharsets.UTF_8);
    long start = System.nanoTime();
    ProgramRun run = ProgramRun.of(nested, "advise", "--json", "-");
    assertThat(run.status(), equalTo(2));
    assertThat(JSON.readTree(run.out()).get("problems").size(), equalTo(1));
    assertThat((System.nanoTime() - start) / 1e9, lessThan(5.0));
  }

  @Test
  void holdsAnObservationAfterTheMomentOfTheAdvice() throws IOException {
    String later = GOOD.replace("p1", "p2").replace("2027-01-08", "2027-01-14");
    ProgramRun run = ProgramRun.of(cycle(quoted(GOOD + "," + later)), "advise", "--json", "-");
    assertThat(run.status(), equalTo(0));
    JsonNode answer = JSON.readTree(run.out());
    assertThat(answer.get("questions").findValuesAsText("about"), equalTo(List.of("p2")));
    assertThat(answer.get("influence").findValuesAsText("observation"), equalTo(List.of("p1")));
  }

  @Test
  void holdsAValueWithoutUnitAndShowsBothReadings() throws IOException {
    String bare =
        GOOD.replace("p1", "p2")
            .replace("2027-01-08", "2027-01-11")
            .replace("0.8", "6.2")
            .replace(" 'unit': 'ng/mL',", "");
    ProgramRun run = ProgramRun.of(cycle(quoted(GOOD + "," + bare)), "advise", "--json", "-");
    assertThat(run.status(), equalTo(0));
    JsonNode answer = JSON.readTree(run.out());
    JsonNode question = answer.get("questions").get(0);
    assertThat(question.get("about").asText(), equalTo("p2"));
    assertThat(
        question.get("readings").findValuesAsText("unit"), equalTo(List.of("ng/mL", "nmol/L")));
    assertThat(question.get("readings").get(1).get("meaning").asText(), containsString("1.95"));
    assertThat(answer.get("action").get("now").asText(), equalTo("answer"));
    assertThat(answer.get("influence").findValuesAsText("observation"), equalTo(List.of("p1")));
  }

  /** A rise that is seen only across two laboratories is no rise. */
  @Test
  void neverDrawsALineThroughTwoLaboratories() throws IOException {
    String low = GOOD;
    String high =
        GOOD.replace("p1", "p2").replace("2027-01-08", "2027-01-11").replace("0.8", "2.4");
    String other = high.replace("'laboratory': 'A'", "'laboratory': 'B'");
    assertThat(titles(low + "," + high), containsString("First rise"));
    assertThat(titles(low + "," + other), not(containsString("First rise")));
  }

  private static String titles(String observations) throws IOException {
    ProgramRun run = ProgramRun.of(cycle(quoted(observations)), "advise", "--json", "-");
    StringBuilder titles = new StringBuilder();
    for (JsonNode line : JSON.readTree(run.out()).get("trace")) {
      // the finding itself, not what it waits for
      titles.append(line.get("title").asText().replace("A first rise waits", "")).append('\n');
    }
    return titles.toString();
  }
}
