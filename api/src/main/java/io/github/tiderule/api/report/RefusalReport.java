package io.github.tiderule.api.report;

import io.github.tiderule.api.problem.Problem;
import java.util.List;

/** A refused file for people: every problem, where it is, and what may have been meant. */
public final class RefusalReport {

  private RefusalReport() {}

  /**
   * The report, each line ended by a line feed.
   *
   * @param file the file's name as it was given
   */
  public static String text(String file, List<Problem> problems) {
    Page page = new Page();
    String count = problems.size() == 1 ? "1 problem" : problems.size() + " problems";
    page.line(file + " is refused, with " + count + ". Nothing was worked out.");
    for (Problem problem : problems) {
      page.gap();
      page.line(problem.path().isEmpty() ? "the whole file" : problem.path());
      page.indented(2, problem.message() + " (" + problem.code().word() + ")");
      page.indented(2, problem.hint());
    }
    return page.toString();
  }
}
