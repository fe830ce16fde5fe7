package io.github.tiderule.rules.parameter;

import java.time.LocalDate;

/**
 * One number of the trade.
 *
 * @param id dotted name; the part before the first dot is the stage or part that uses it
 * @param min least value that makes sense
 * @param max greatest value that makes sense
 * @param source a key of the source list
 * @param read how the figure was read: abstract, second-hand, memory, derived, common practice or
 *     working value
 * @param since when the value came into force
 */
public record Parameter(
    String id,
    double value,
    String unit,
    double min,
    double max,
    String source,
    String read,
    LocalDate since,
    String meaning) {

  public Parameter {
    if (!(value >= min && value <= max)) {
      throw new IllegalArgumentException(
          "parameter " + id + " is " + value + ", outside " + min + " to " + max);
    }
  }

  /** The stage or part that uses it. */
  public String scope() {
    return id.substring(0, id.indexOf('.'));
  }
}
