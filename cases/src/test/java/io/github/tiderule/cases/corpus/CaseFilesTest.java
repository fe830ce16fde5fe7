package io.github.tiderule.cases.corpus;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.in;
import static org.hamcrest.Matchers.not;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every case file by itself, without the engine: schema, sources, rules, twins, names. */
class CaseFilesTest {

  private static final Path ROOT = Path.of("").toAbsolutePath();
  private static final Path RULES =
      ROOT.resolve("../rules/src/main/resources/io/github/tiderule").normalize();
  private static final Pattern ID =
      Pattern.compile(
          "@id\\( *\"(?<rule>[A-Z]{3}-[0-9]{3})\" *\\)|^(?<row>[A-Z]{3}-[0-9]{3}),\\k<row>,",
          Pattern.MULTILINE);
  private static final List<CaseFolder> CASES = Corpus.under(ROOT);
  private static final Schema SCHEMA = schema();
  private static final Set<String> SOURCES = sources();
  private static final Set<String> IDS = ruleIds();

  private static Schema schema() {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(text(ROOT.resolve("expect.schema.json")));
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Set<String> sources() {
    Set<String> keys = new HashSet<>();
    text(RULES.resolve("sources.csv")).lines().forEach(line -> keys.add(line.split(",", 2)[0]));
    return keys;
  }

  private static Set<String> ruleIds() {
    Set<String> ids =
        new HashSet<>(Set.of("EST-001", "EST-002", "EST-003", "EST-004", "EST-005", "EST-006"));
    try (Stream<Path> files = Files.walk(RULES.resolve("rulebase"))) {
      for (Path file : files.filter(one -> one.toString().matches(".*\\.drl(\\.csv)?")).toList()) {
        Matcher matcher = ID.matcher(text(file));
        while (matcher.find()) {
          String rule = matcher.group("rule");
          ids.add(rule == null ? matcher.group("row") : rule);
        }
      }
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return ids;
  }

  @TestFactory
  Stream<DynamicTest> everyCaseIsWellFormed() {
    return CASES.stream()
        .map(folder -> DynamicTest.dynamicTest(folder.name(), () -> check(folder)));
  }

  private static void check(CaseFolder folder) throws IOException {
    JsonNode written = folder.expectation();
    assertThat(SCHEMA.validate(written.toString(), InputFormat.JSON), empty());
    Bounds.words(written.get("sources")).forEach(key -> assertThat(key, in(SOURCES)));
    for (JsonNode list : written.path("expect").path("rules")) {
      Bounds.words(list).forEach(id -> assertThat(id, in(IDS)));
    }
    assertThat("says", written.has("says"), equalTo(folder.open()));
    assertThat(
        "dispute", written.has("dispute"), equalTo(folder.topic().equals(CaseFolder.DISPUTED)));
    String elder = written.path("expect").path("twin").path("of").asText("");
    if (!elder.isEmpty()) {
      assertThat(CASES.stream().map(CaseFolder::name).toList(), hasItem(elder));
      assertThat(elder, not(equalTo(folder.name())));
    }
    try (Stream<Path> files = Files.list(folder.path())) {
      assertThat(
          files.map(file -> file.getFileName().toString()).sorted().toList(),
          equalTo(List.of("cycle.json", "expect.yaml")));
    }
    Yaml.json(folder.cycle());
  }

  @Test
  void numbersAreNotUsedTwiceInATopic() {
    List<String> numbers =
        CASES.stream()
            .map(one -> one.topic() + one.path().getFileName().toString().substring(0, 4))
            .toList();
    assertThat(new HashSet<>(numbers), hasSize(numbers.size()));
  }

  @Test
  void noTwoCasesAreTheSame() {
    List<String> cycles = new ArrayList<>();
    CASES.forEach(one -> cycles.add(Yaml.json(one.cycle()) + " " + one.protocol()));
    assertThat(new HashSet<>(cycles), hasSize(cycles.size()));
  }
}
