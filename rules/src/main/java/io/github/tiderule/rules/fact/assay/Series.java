package io.github.tiderule.rules.fact.assay;

import org.jspecify.annotations.Nullable;

/**
 * One laboratory with one method. Only values of one series can be compared number by number.
 *
 * @param laboratory the laboratory's name, or empty when nobody said
 */
public record Series(String laboratory, Method method) implements Comparable<Series> {

  /** The series of a laboratory that may be unnamed. */
  public static Series of(@Nullable String laboratory, Method method) {
    return new Series(laboratory == null ? "" : laboratory.strip(), method);
  }

  @Override
  public int compareTo(Series other) {
    int byLaboratory = laboratory.compareTo(other.laboratory);
    return byLaboratory != 0 ? byLaboratory : method.compareTo(other.method);
  }

  /** The series in words, for reasons and the trace. */
  public String words() {
    String who = laboratory.isEmpty() ? "an unnamed laboratory" : "laboratory " + laboratory;
    String how = method == Method.UNKNOWN ? "method unknown" : method.word();
    return who + ", " + how;
  }
}
