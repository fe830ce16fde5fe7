package io.github.tiderule.format.laboratory;

/** A cell that cannot be used; the message says why, as the end of a sentence about the line. */
final class Unusable extends Exception {

  private static final long serialVersionUID = 1L;

  Unusable(String message) {
    super(message, null, false, false);
  }
}
