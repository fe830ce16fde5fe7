package io.github.tiderule.engine.days;

import java.time.Instant;

/**
 * Something that must be done by a time for a slot to be used.
 *
 * @param by the last safe time, not before the moment of the advice
 */
public record Deadline(Kind kind, Instant by) {

  /** What is to be done. */
  public enum Kind {
    /** Order shipped semen. */
    ORDER,
    /** Tell the clinic. */
    BOOK,
    /** Set out for where she is bred. */
    LEAVE
  }
}
