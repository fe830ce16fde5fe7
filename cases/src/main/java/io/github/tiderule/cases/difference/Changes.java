package io.github.tiderule.cases.difference;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

/** What differs between two answers to one cycle, by what a breeder or a vet would notice. */
final class Changes {

  private static final Map<String, Function<JsonNode, Set<String>>> LOOKED_AT =
      new LinkedHashMap<>();

  static {
    LOOKED_AT.put("refusal", answer -> each(answer.path("problems"), "path", "code"));
    LOOKED_AT.put("action", answer -> words(answer.path("action").path("now")));
    LOOKED_AT.put("plan", answer -> words(answer.path("plan").path("at")));
    LOOKED_AT.put("ovulation median", answer -> words(answer.path("ovulation").path("median")));
    LOOKED_AT.put("next test", answer -> words(answer.path("nextTest").path("at")));
    LOOKED_AT.put("questions", answer -> each(answer.path("questions"), "about", "text"));
    LOOKED_AT.put("cautions", answer -> each(answer.path("cautions"), "rule", "level"));
    LOOKED_AT.put("rules fired", answer -> each(answer.path("trace"), "rule"));
  }

  private Changes() {}

  /** One line for each thing that differs; none where nothing does. */
  static List<String> between(JsonNode before, JsonNode after) {
    List<String> changes = new ArrayList<>();
    LOOKED_AT.forEach(
        (what, of) -> {
          Set<String> gone = of.apply(before);
          Set<String> come = of.apply(after);
          Set<String> both = new TreeSet<>(gone);
          both.retainAll(come);
          gone.removeAll(both);
          come.removeAll(both);
          if (!gone.isEmpty() || !come.isEmpty()) {
            changes.add(what + ": " + list(gone) + " -> " + list(come));
          }
        });
    return changes;
  }

  private static String list(Set<String> words) {
    return words.isEmpty() ? "nothing" : String.join(", ", words);
  }

  private static Set<String> words(JsonNode node) {
    Set<String> words = new TreeSet<>();
    if (node.isArray()) {
      words.add(
          node.isEmpty()
              ? "none"
              : "["
                  + StreamSupport.stream(node.spliterator(), false)
                      .map(JsonNode::asText)
                      .collect(Collectors.joining(" "))
                  + "]");
    } else if (node.isValueNode() && !node.isNull()) {
      words.add(node.asText());
    }
    return words;
  }

  private static Set<String> each(JsonNode list, String... fields) {
    Set<String> words = new TreeSet<>();
    for (JsonNode one : list) {
      words.add(
          Arrays.stream(fields)
              .map(field -> one.path(field).asText())
              .collect(Collectors.joining(" ")));
    }
    return words;
  }
}
