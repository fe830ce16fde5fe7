package io.github.tiderule.api.command;

/** A fault of ours, on one line. */
final class Fault {

  private Fault() {}

  static String words(Throwable fault) {
    String message = fault.getMessage() == null ? "" : ": " + fault.getMessage();
    return (fault.getClass().getSimpleName() + message).replaceAll("\\s+", " ");
  }
}
