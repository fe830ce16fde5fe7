package io.github.tiderule.api.fault;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a serving process is put through, and what must hold then.
 *
 * <p>Tried shortly at every build. With {@code -Dtiderule.faults=FILE} it is tried at length, and
 * what was seen is written into the table in that file, a row for each fault.
 */
enum Fault {
  TWICE_THE_LOAD(
      "twice what it can do",
      "Waiting is bounded; who is sent away gets 503 with Retry-After; nothing acknowledged is lost;"
          + " memory is flat; it is itself again in seconds."),
  DISK_FULL(
      "disk full",
      "A change is refused with 503 and nothing of it kept; reading goes on; nothing acknowledged is"
          + " lost; with room again, changes go on without a restart."),
  DATABASE_GONE(
      "database server stopped and started",
      "Requests are refused with 503 and Retry-After, none hangs; nothing acknowledged is lost; it"
          + " goes on by itself when the server is back."),
  CLOCK_JUMPS(
      "clock jumps",
      "No fault and no answer lost; entries keep their order; what the moved clock makes"
          + " implausible is refused by name."),
  KILLED(
      "killed without a word (SIGKILL)",
      "It starts again on the same record, which is sound and holds everything acknowledged."),
  TWO_PROCESSES(
      "two processes on one file",
      "They take turns at writing; each sees what the other wrote; nothing acknowledged is lost.");

  private static final @Nullable String TABLE = System.getProperty("tiderule.faults");
  private static final String HEADING =
      """
      # Faults

      What the serving process was put through, by the tests in `io.github.tiderule.api.fault`. Made again,
      a row at a time, by

          mvn test -pl api/command -am -Dtest='io.github.tiderule.api.fault.*' \\
            -Dsurefire.failIfNoSpecifiedTests=false -Dtiderule.faults=$PWD/cases/report/faults.md

      It takes about half an hour on two free processors. Figures are of the machine it was made on.

      | fault | what must hold | what was seen |
      |---|---|---|
      """;

  /** What was tried by hand stands below, and stays. */
  private static final String BY_HAND = "## ";

  private final String title;
  private final String mustHold;

  Fault(String title, String mustHold) {
    this.title = title;
    this.mustHold = mustHold;
  }

  /** Whether it is to be tried at length. */
  static boolean atLength() {
    return TABLE != null;
  }

  /** Writes what was seen into the table, in the place of what was seen before. */
  void seen(String words) {
    System.out.println(title + ": " + words);
    if (TABLE == null) {
      return;
    }
    try {
      Path file = Path.of(TABLE);
      Map<Fault, String> rows = new EnumMap<>(Fault.class);
      StringBuilder rest = new StringBuilder();
      if (Files.exists(file)) {
        for (String line : Files.readAllLines(file)) {
          if (!rest.isEmpty() || line.startsWith(BY_HAND)) {
            rest.append('\n').append(line);
          }
          for (Fault fault : values()) {
            if (line.startsWith("| " + fault.title + " |")) {
              rows.put(fault, line);
            }
          }
        }
      }
      rows.put(this, "| " + title + " | " + mustHold + " | " + words + " |");
      Files.writeString(file, HEADING + String.join("\n", rows.values()) + "\n" + rest + "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
