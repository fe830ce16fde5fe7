package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import java.util.Set;

/** Answers less what only says that a unit was converted, to be held against each other. */
public final class UnitWords {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String CONVERTED = "RDG-058";

  /** Rules that ask only of a value in nmol/L whether it was in the other unit. */
  private static final Set<String> OF_ONE_UNIT = Set.of("RDG-015", "RDG-016");

  private UnitWords() {}

  /** An answer without the words about conversion. */
  public static JsonNode without(Advice advice) {
    return without(AdviceJson.text(advice, Layout.INDENTED));
  }

  /**
   * An answer without the words about conversion.
   *
   * @throws IllegalArgumentException if it is no JSON
   */
  public static JsonNode without(String advice) {
    try {
      ObjectNode kept = (ObjectNode) JSON.readTree(advice);
      ArrayNode trace = JSON.createArrayNode();
      for (JsonNode line : kept.get("trace")) {
        if (!line.get("rule").asText().equals(CONVERTED)) {
          trace.add(((ObjectNode) line).without("seq"));
        }
      }
      kept.set("trace", trace);
      ArrayNode notes = JSON.createArrayNode();
      for (JsonNode note : kept.get("observationNotes")) {
        if (!note.get("use").asText().equals("converted")) {
          notes.add(note);
        }
      }
      kept.set("observationNotes", notes);
      ArrayNode silent = JSON.createArrayNode();
      for (JsonNode rule : kept.get("notFired")) {
        if (!OF_ONE_UNIT.contains(rule.get("rule").asText())) {
          silent.add(rule);
        }
      }
      kept.set("notFired", silent);
      return kept;
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("no answer in JSON", e);
    }
  }
}
