package io.github.tiderule.format.laboratory;

import io.github.tiderule.format.node.Node;
import java.util.List;
import java.util.Map;

/** A preview for people: a line for each line of the table. */
public final class PreviewReport {

  private PreviewReport() {}

  /** The report, each line ended by a line feed. */
  public static String text(List<Line> lines) {
    StringBuilder text = new StringBuilder();
    for (Line line : lines) {
      text.append("line ").append(line.number()).append(": ").append(line.outcome().word());
      Node.Members observation = line.observation();
      text.append(observation == null ? ": " + line.message() : ", " + words(observation))
          .append('\n');
    }
    return text.toString();
  }

  private static String words(Node.Members observation) {
    Map<String, Node> fields = observation.byKey();
    String unit = fields.containsKey("unit") ? " " + word(fields, "unit") : ", its unit not known";
    return word(fields, "at") + ", " + word(fields, "comparator") + word(fields, "value") + unit;
  }

  private static String word(Map<String, Node> fields, String name) {
    Node node = fields.get(name);
    if (node instanceof Node.Digits digits) {
      return digits.written();
    }
    return node instanceof Node.Text text ? text.value() : "";
  }

  /** As in {@code 2 new, 1 duplicate, 0 refused}. */
  public static String counts(List<Line> lines) {
    StringBuilder text = new StringBuilder();
    for (Line.Outcome outcome : Line.Outcome.values()) {
      long count = lines.stream().filter(line -> line.outcome() == outcome).count();
      text.append(text.isEmpty() ? "" : ", ").append(count).append(' ').append(outcome.word());
    }
    return text.toString();
  }
}
