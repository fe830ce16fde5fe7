package io.github.tiderule.format.json;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * The schema and the reader must agree on what a cycle file looks like.
 *
 * <p>Deliberate differences: the reader alone knows the tz database, compares dates with each other
 * and with the season, compares the edges of a band, and looks for ids used twice. A file refused
 * for nothing but those may pass the schema. The schema names the format characters of the basic
 * plane only. Keys that stand twice cannot reach a schema at all.
 */
class MutationTest {

  private static final int DOCUMENTS = 600;
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final Set<ProblemCode> BEYOND_A_SCHEMA =
      EnumSet.of(
          ProblemCode.UNKNOWN_ZONE,
          ProblemCode.IMPLAUSIBLE_DATE,
          ProblemCode.WRONG_ORDER,
          ProblemCode.DUPLICATE_ID);

  private record Spot(JsonNode parent, String name, int index) {

    JsonNode value() {
      return parent.isObject() ? parent.get(name) : parent.get(index);
    }

    void set(JsonNode value) {
      if (parent instanceof ObjectNode object) {
        object.set(name, value);
      } else {
        ((ArrayNode) parent).set(index, value);
      }
    }

    void remove() {
      if (parent instanceof ObjectNode object) {
        object.remove(name);
      } else {
        ((ArrayNode) parent).remove(index);
      }
    }
  }

  @Test
  void schemaAndReaderAgreeOnMutatedFiles() throws IOException {
    JsonNode original = new ObjectMapper().readTree(Documents.fullCycle());
    Random random = new Random(20270112);
    int refused = 0;
    int read = 0;
    for (int i = 0; i < DOCUMENTS; i++) {
      JsonNode document = original.deepCopy();
      String change = mutate(document, random);
      Reading reading = CycleFile.read(document.toString().getBytes(StandardCharsets.UTF_8));
      List<String> complaints = Schemas.againstCycle(document.toString());
      if (reading instanceof Reading.Refused refusal) {
        refused++;
        boolean visible =
            refusal.problems().stream()
                .map(Problem::code)
                .anyMatch(code -> !BEYOND_A_SCHEMA.contains(code));
        if (visible) {
          assertThat(
              change + " is refused for " + refusal.problems() + ", yet the schema takes it",
              complaints.isEmpty(),
              is(false));
        }
      } else {
        read++;
        assertThat(change + " is read", complaints, is(List.of()));
      }
    }
    assertThat(refused, greaterThan(DOCUMENTS / 2));
    assertThat(read, greaterThan(DOCUMENTS / 20));
  }

  private static String mutate(JsonNode document, Random random) {
    List<Spot> spots = spots(document);
    Spot spot = spots.get(random.nextInt(spots.size()));
    String name = spot.parent().isObject() ? spot.name() : "entry " + spot.index();
    String was = spot.value().toString();
    switch (random.nextInt(9)) {
      case 0 -> spot.remove();
      case 1 -> spot.set(NODES.nullNode());
      case 2 -> spot.set(NODES.textNode(word(random)));
      case 3 -> spot.set(NODES.numberNode(number(random)));
      case 4 -> spot.set(NODES.booleanNode(random.nextBoolean()));
      case 5 -> spot.set(NODES.arrayNode().add(spot.value().deepCopy()));
      case 6 -> spot.set(NODES.objectNode().set("value", spot.value().deepCopy()));
      case 7 -> {
        if (spot.parent() instanceof ObjectNode object) {
          object.set(name + "x", object.remove(name));
        }
      }
      default -> {
        if (spot.parent() instanceof ObjectNode object) {
          object.set(
              List.of("value", "folds", "unit", "low", "route", "on").get(random.nextInt(6)),
              NODES.textNode(word(random)));
        }
      }
    }
    return name + " (was " + was + ") in " + spot.parent();
  }

  private static String word(Random random) {
    List<String> words =
        List.of(
            "",
            " ",
            "flat",
            "ng/mL",
            "natural",
            "unknown",
            "<",
            "5,4",
            "2027-01-05",
            "2027-02-30",
            "2027-01-05T08:00:00",
            "2027-01-05T08:00:00Z",
            "2027-01-05T08:00:00.5+00:00",
            "2027-01-05T24:00:00Z",
            "2027-01-05T08:00Z",
            "2027-02-29T08:00:00Z",
            "2027-01-05T08:00:00+19:00",
            "2027-01-05T08:00:00+18:00",
            "09:30",
            "9:30",
            "x".repeat(64),
            "x".repeat(65),
            "x".repeat(121),
            "x".repeat(201),
            "a\u0007",
            "a\u202Eb",
            "a\u200Db",
            "\uD83D\uDC15");
    return words.get(random.nextInt(words.size()));
  }

  private static double number(Random random) {
    double[] numbers = {-1, -0.0, 0, 0.4, 1, 2.0, 3, 4, 5, 40, 41, 100, 101, 150.5, 1e4, 1e5, 1e12};
    return numbers[random.nextInt(numbers.length)];
  }

  private static List<Spot> spots(JsonNode node) {
    List<Spot> spots = new ArrayList<>();
    if (node.isObject()) {
      node.fieldNames().forEachRemaining(name -> spots.add(new Spot(node, name, 0)));
    }
    for (int i = 0; node.isArray() && i < node.size(); i++) {
      spots.add(new Spot(node, "", i));
    }
    for (JsonNode child : node) {
      spots.addAll(spots(child));
    }
    return spots;
  }
}
