package io.github.tiderule.format.problem;

/**
 * One thing that is wrong with a document.
 *
 * @param path JSON Pointer (RFC 6901) of the place; empty for the document as a whole
 * @param message what is wrong, naming the field and its value
 * @param hint what may have been meant, or what to do
 */
public record Problem(String path, ProblemCode code, String message, String hint) {

  /** A problem with the usual hint of its code. */
  public static Problem of(String path, ProblemCode code, String message) {
    return new Problem(path, code, message, code.usualHint());
  }
}
