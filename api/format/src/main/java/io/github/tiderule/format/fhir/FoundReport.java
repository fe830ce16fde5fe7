package io.github.tiderule.format.fhir;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.problem.Problem;
import java.util.List;

/** What becomes of a file's Observations, for people: a line for each, or more when refused. */
public final class FoundReport {

  private FoundReport() {}

  /** The report, each line ended by a line feed. */
  public static String text(List<Found> all) {
    StringBuilder text = new StringBuilder();
    for (Found found : all) {
      text.append(place(found)).append(": ").append(found.outcome().word());
      if (found.id() != null) {
        text.append(" ").append(found.id());
      }
      Node.Members observation = found.observation();
      if (observation != null) {
        text.append(", ").append(observation.text("at"));
        text.append(", ").append(observation.text("asReported"));
      }
      if (!found.message().isEmpty()) {
        text.append(observation == null ? ": " : ". ").append(found.message());
      }
      text.append('\n');
      for (Problem problem : found.problems()) {
        text.append("  ").append(problem.path().isEmpty() ? "all of it" : problem.path());
        text.append(": ").append(problem.message()).append(" (").append(problem.code().word());
        text.append("). ").append(problem.hint()).append('\n');
      }
    }
    return text.toString();
  }

  private static String place(Found found) {
    String line = found.line() == null ? "" : "line " + found.line();
    if (found.place().isEmpty()) {
      return line.isEmpty() ? "the Observation" : line;
    }
    return (line + " " + found.place()).strip();
  }

  /** As in {@code 2 new, 1 correction, 0 retraction, 1 duplicate, 0 left-out, 0 refused}. */
  public static String counts(List<Found> all) {
    StringBuilder text = new StringBuilder();
    for (Found.Outcome outcome : Found.Outcome.values()) {
      long count = all.stream().filter(one -> one.outcome() == outcome).count();
      text.append(text.isEmpty() ? "" : ", ").append(count).append(' ').append(outcome.word());
    }
    return text.toString();
  }
}
