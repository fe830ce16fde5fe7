package io.github.tiderule.format.fhir;

import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.rules.fact.Worded;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What becomes of one Observation.
 *
 * @param line number of its line, from 1, in a file with one resource on each
 * @param place JSON Pointer of it in the file, or in its line
 * @param id the observation of the season that it is or becomes; absent when there is none
 * @param message what else is to be said of it
 * @param problems why it is refused
 * @param observation as it would stand in a cycle file; absent unless it is new or corrected
 */
public record Found(
    @Nullable Integer line,
    String place,
    Outcome outcome,
    @Nullable String id,
    String message,
    List<Problem> problems,
    Node.@Nullable Members observation) {

  public Found {
    problems = List.copyOf(problems);
  }

  /** What becomes of an Observation. */
  public enum Outcome implements Worded {
    /** It would be added. */
    NEW,
    /** It would stand in the place of what the laboratory reported before. */
    CORRECTION,
    /** What the laboratory reported before would be taken back. */
    RETRACTION,
    /** The season has it already. */
    DUPLICATE,
    /** It is no result, or not one yet. */
    LEFT_OUT,
    /** It cannot be used. */
    REFUSED;

    @Override
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether the season would be changed. */
    public boolean changes() {
      return this == NEW || this == CORRECTION || this == RETRACTION;
    }
  }

  static Found of(FhirFile.Part part, Outcome outcome, @Nullable String id, String message) {
    return new Found(part.line(), part.at().text(), outcome, id, message, List.of(), null);
  }

  static Found refused(FhirFile.Part part, List<Problem> problems) {
    return new Found(part.line(), part.at().text(), Outcome.REFUSED, null, "", problems, null);
  }

  static Found of(
      FhirFile.Part part, Outcome outcome, String id, String message, Node.Members observation) {
    return new Found(part.line(), part.at().text(), outcome, id, message, List.of(), observation);
  }
}
