package io.github.tiderule.cases.demo;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.not;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import io.github.tiderule.api.Main;
import io.github.tiderule.cases.ProgramRun;
import io.github.tiderule.cases.corpus.UnitWords;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every demonstration cycle, through the program: what each answer must hold. */
class DemonstrationTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Set<String> ENGINE_STEPS =
      Set.of("EST-001", "EST-002", "EST-003", "EST-004", "EST-005", "EST-006");

  private static Path folder() {
    return Path.of("demo");
  }

  static List<Path> cycles() throws IOException {
    try (Stream<Path> files = Files.list(folder())) {
      return files.filter(file -> file.toString().endsWith(".json")).sorted().toList();
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String adviseJson(String cycle) {
    ProgramRun run = ProgramRun.of(cycle, "advise", "--json", "-");
    assertThat(run.err(), run.status(), equalTo(0));
    return run.out();
  }

  private static JsonNode advise(String cycle) throws IOException {
    return JSON.readTree(adviseJson(cycle));
  }

  @Test
  void thereAreSixOrMore() throws IOException {
    assertThat(cycles().size(), greaterThanOrEqualTo(6));
  }

  @ParameterizedTest
  @MethodSource("cycles")
  void theReportFitsEightyColumns(Path file) {
    ProgramRun run = ProgramRun.of(read(file), "advise", "--full", "-");
    assertThat(run.status(), equalTo(0));
    assertThat(run.out(), containsString("WHAT TO DO NOW"));
    assertThat(run.out(), containsString("CAUTIONS"));
    run.out().lines().forEach(line -> assertThat(line, line.length(), lessThanOrEqualTo(80)));
  }

  @ParameterizedTest
  @MethodSource("cycles")
  void theAnswerFitsItsSchema(Path file) {
    assertThat(schema("advice-1").validate(adviseJson(read(file)), InputFormat.JSON), empty());
    assertThat(schema("cycle-1").validate(read(file), InputFormat.JSON), empty());
  }

  private static Schema schema(String name) {
    String resource = "/io/github/tiderule/schema/" + name + ".schema.json";
    try (InputStream in = Objects.requireNonNull(Main.class.getResourceAsStream(resource))) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @MethodSource("cycles")
  void theAnswerIsTheSameWhateverTheOrder(Path file) throws IOException {
    String cycle = read(file);
    String answer = adviseJson(cycle);
    assertThat(adviseJson(cycle), equalTo(answer));
    for (int seed = 1; seed <= 3; seed++) {
      ObjectNode shuffled = (ObjectNode) JSON.readTree(cycle);
      List<JsonNode> observations = new ArrayList<>();
      shuffled.get("observations").forEach(observations::add);
      Collections.shuffle(observations, new Random(seed));
      ArrayNode array = JSON.createArrayNode();
      observations.forEach(array::add);
      shuffled.set("observations", array);
      assertThat("seed " + seed, adviseJson(shuffled.toString()), equalTo(answer));
    }
  }

  @ParameterizedTest
  @MethodSource("cycles")
  void theAnswerIsTheSameInTheOtherUnit(Path file) throws IOException {
    ObjectNode other = (ObjectNode) JSON.readTree(read(file));
    for (JsonNode observation : other.get("observations")) {
      if (observation.path("kind").asText().equals("progesterone")) {
        boolean mass = observation.get("unit").asText().equals("ng/mL");
        double value = observation.get("value").asDouble();
        ((ObjectNode) observation).put("value", mass ? value * 3.18 : value / 3.18);
        ((ObjectNode) observation).put("unit", mass ? "nmol/L" : "ng/mL");
      }
    }
    assertThat(
        UnitWords.without(adviseJson(other.toString())),
        equalTo(UnitWords.without(adviseJson(read(file)))));
  }

  @ParameterizedTest
  @MethodSource("cycles")
  void everyReasonNamesARuleASourceAndAnObservation(Path file) throws IOException {
    JsonNode answer = advise(read(file));
    Set<String> ids = new HashSet<>();
    JSON.readTree(read(file)).get("observations").forEach(o -> ids.add(o.get("id").asText()));
    Set<String> rules = new HashSet<>(ENGINE_STEPS);
    Set<String> sources = new HashSet<>();
    JsonNode book = JSON.readTree(ProgramRun.of("", "rulebook", "--format", "json").out());
    for (JsonNode rule : book.findParents("title")) {
      rules.add(rule.path("id").asText());
    }
    for (JsonNode source : book.findParents("citation")) {
      sources.add(source.path("key").asText());
    }
    assertThat(sources, hasItem("mir-2011"));
    List<JsonNode> reasons = new ArrayList<>(answer.findValues("reasons"));
    for (JsonNode list : reasons) {
      for (JsonNode reason : list) {
        assertThat(rules, hasItem(reason.get("rule").asText()));
        reason.get("sources").forEach(key -> assertThat(sources, hasItem(key.asText())));
        reason.get("observations").forEach(id -> assertThat(ids, hasItem(id.asText())));
      }
    }
    for (JsonNode line : answer.get("trace")) {
      assertThat(rules, hasItem(line.get("rule").asText()));
      line.get("sources").forEach(key -> assertThat(sources, hasItem(key.asText())));
      line.get("matched").forEach(id -> assertThat(ids, hasItem(id.asText())));
      assertThat(line.get("concluded").size(), greaterThanOrEqualTo(1));
    }
    answer.get("influence").forEach(i -> assertThat(ids, hasItem(i.get("observation").asText())));
    answer.get("action").get("because").forEach(rule -> assertThat(rules, hasItem(rule.asText())));
  }

  @ParameterizedTest
  @MethodSource("cycles")
  void theNumbersAreLegal(Path file) throws IOException {
    JsonNode answer = advise(read(file));
    OffsetDateTime asOf = OffsetDateTime.parse(answer.get("asOf").asText());
    assertThat(answer.get("action").get("headline").asText().length(), lessThan(140));
    JsonNode ovulation = answer.get("ovulation");
    double sum = 0;
    for (JsonNode day : ovulation.get("byDay")) {
      sum += day.get("probability").asDouble();
    }
    assertThat(sum, closeTo(1 - ovulation.get("noOvulationProbability").asDouble(), 1e-4));
    int rank = 1;
    for (JsonNode day : answer.get("breedingDays")) {
      assertThat(day.get("rank").asInt(), equalTo(rank++));
      double mean = day.get("eggShare").get("mean").asDouble();
      assertThat(mean, lessThanOrEqualTo(1.0));
      assertThat(mean, greaterThanOrEqualTo(0.0));
      assertThat(OffsetDateTime.parse(day.get("to").asText()).isAfter(asOf), equalTo(true));
      if (!day.get("reasons").findValuesAsText("effect").contains("vetoes")) {
        continue;
      }
      assertThat(day.get("verdict").asText(), equalTo("avoid"));
    }
    for (JsonNode at : answer.get("plan").get("at")) {
      assertThat(OffsetDateTime.parse(at.asText()).isBefore(asOf), equalTo(false));
    }
  }

  @Test
  void aBatchAnswersInOrderAndPassesOverABadLine() throws IOException {
    StringBuilder lines = new StringBuilder();
    List<String> ids = new ArrayList<>();
    for (Path file : cycles()) {
      JsonNode cycle = JSON.readTree(read(file));
      ids.add(cycle.get("female").get("id").asText());
      lines.append(cycle).append('\n');
    }
    lines.append("{\"schema\": 1}\n");
    ProgramRun run = ProgramRun.of(lines.toString(), "batch", "-");
    assertThat(run.status(), equalTo(3));
    List<String> answers = run.out().lines().toList();
    assertThat(answers.size(), equalTo(ids.size() + 1));
    for (int i = 0; i < ids.size(); i++) {
      assertThat(JSON.readTree(answers.get(i)).get("femaleId").asText(), equalTo(ids.get(i)));
    }
    JsonNode refused = JSON.readTree(answers.get(ids.size()));
    assertThat(refused.get("schema").asText(), equalTo("tiderule/problems/1"));
    assertThat(refused.get("line").asInt(), equalTo(ids.size() + 1));
  }

  @Test
  void surgicalInseminationIsNeverRecommended() throws IOException {
    ObjectNode cycle = (ObjectNode) JSON.readTree(read(folder().resolve("frozen-one-dose.json")));
    ((ObjectNode) cycle.get("breeding")).put("route", "surgical");
    JsonNode answer = advise(cycle.toString());
    for (JsonNode day : answer.get("breedingDays")) {
      assertThat(day.get("verdict").asText(), not(equalTo("recommended")));
    }
    assertThat(
        answer.get("cautions").findValuesAsText("text").toString(), containsString("urgical"));
  }
}
