package io.github.tiderule.spark;

/** The job was asked for something that cannot be; the message says what. */
final class Misuse extends Exception {

  private static final long serialVersionUID = 1L;

  Misuse(String message) {
    super(message);
  }
}
