package io.github.tiderule.rules.parameter;

/**
 * One thing that is wrong with a local protocol.
 *
 * @param line number of the line, from 1; 0 for the file as a whole
 * @param column the column's heading; empty for the line as a whole
 * @param given what stands there
 * @param message what is wrong, naming the parameter and its value
 */
public record OverlayFault(int line, String column, Kind kind, String given, String message) {

  /** The kinds of faults. */
  public enum Kind {
    EMPTY,
    NOT_A_TABLE,
    WRONG_HEADING,
    WRONG_CELL_COUNT,
    UNKNOWN_PARAMETER,
    REPEATED_PARAMETER,
    NOT_A_NUMBER,
    OUT_OF_RANGE,
    NOT_A_DATE,
    EMPTY_TEXT,
    TOO_LONG,
    ILLEGAL_CHARACTER
  }
}
