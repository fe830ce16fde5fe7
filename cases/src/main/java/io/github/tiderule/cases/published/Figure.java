package io.github.tiderule.cases.published;

import java.util.List;

/**
 * One published figure.
 *
 * @param read how the source was read
 * @param measure name of what is measured on the engine; empty where it cannot be tested
 * @param published NaN where it cannot be tested
 * @param low least measurement that reproduces it
 * @param high greatest measurement that reproduces it
 * @param status {@code reproduced}, {@code missed} or {@code untested}, as last seen
 * @param note how the span was chosen, or why it is missed or cannot be tested
 */
public record Figure(
    String id,
    String section,
    String claim,
    String source,
    String read,
    String measure,
    List<String> arguments,
    double published,
    double low,
    double high,
    String unit,
    String status,
    String note) {

  public Figure {
    arguments = List.copyOf(arguments);
  }

  /** Whether the engine can be held against it. */
  public boolean testable() {
    return !measure.isEmpty();
  }
}
