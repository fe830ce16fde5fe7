package io.github.tiderule.api.command.stream;

/** What the process ends with. */
public final class ExitStatus {

  /** Done. */
  public static final int DONE = 0;

  /** A fault of ours. */
  public static final int FAULT = 1;

  /** Bad usage, or a file that was refused or cannot be read. */
  public static final int REFUSED = 2;

  /** A batch in which some lines were refused. */
  public static final int SOME_REFUSED = 3;

  private ExitStatus() {}
}
