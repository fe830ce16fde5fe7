package io.github.tiderule.cases.difference.program;

/**
 * What one run of a program printed.
 *
 * @param status its exit status
 * @param out its standard output
 * @param err its standard error
 */
public record Printed(int status, String out, String err) {

  /** All of it; the status and the standard error only where a run did not simply succeed. */
  public String text() {
    return status == 0 && err.isEmpty()
        ? out
        : out + "-- status " + status + (err.isEmpty() ? "\n" : ", and to the people:\n" + err);
  }
}
