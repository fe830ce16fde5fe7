package io.github.tiderule.api.command.stream;

/** A fault of ours, on one line. */
public final class Fault {

  private Fault() {}

  /** What it is called, and its message. */
  public static String words(Throwable fault) {
    String message = fault.getMessage() == null ? "" : ": " + fault.getMessage();
    return (fault.getClass().getSimpleName() + message).replaceAll("\\s+", " ");
  }
}
