package io.github.tiderule.cases.property;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Looks through an answer for numbers no answer may hold. */
final class Numbers {

  private static final Set<String> SHARES =
      Set.of("mean", "p10", "probability", "noOvulationProbability", "gain");
  private static final double ROUNDING = 1e-3;

  private Numbers() {}

  /** The first number that is not finite, a share outside 0 to 1, or days that do not add up. */
  static Optional<String> illegal(JsonNode answer) {
    Optional<String> found = in("", answer);
    if (found.isPresent() || !answer.path("ovulation").has("byDay")) {
      return found;
    }
    double sum = answer.path("ovulation").path("noOvulationProbability").asDouble();
    for (JsonNode day : answer.path("ovulation").path("byDay")) {
      sum += day.get("probability").asDouble();
    }
    return Math.abs(sum - 1) < ROUNDING
        ? Optional.empty()
        : Optional.of("the days of ovulation add up to " + sum);
  }

  private static Optional<String> in(String name, JsonNode node) {
    if (node.isNumber()) {
      double number = node.asDouble();
      boolean legal = Double.isFinite(number) && (!SHARES.contains(name) || share(number));
      return legal ? Optional.empty() : Optional.of(name + " is " + number);
    }
    if (node.isTextual() && Set.of("NaN", "Infinity", "-Infinity").contains(node.asText())) {
      return Optional.of(name + " is " + node.asText());
    }
    if (node.isArray()) {
      for (JsonNode one : node) {
        Optional<String> found = in(name, one);
        if (found.isPresent()) {
          return found;
        }
      }
      return Optional.empty();
    }
    for (Map.Entry<String, JsonNode> entry : node.properties()) {
      Optional<String> found = in(entry.getKey(), entry.getValue());
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private static boolean share(double number) {
    return number >= 0 && number <= 1;
  }
}
