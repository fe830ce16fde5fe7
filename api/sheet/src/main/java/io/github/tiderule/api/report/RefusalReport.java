package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.format.problem.Problem;
import java.util.List;

/** A refused file for people: every problem, where it is, and what may have been meant. */
public final class RefusalReport {

  private static final Texts TEXTS = Texts.ofReports();

  private RefusalReport() {}

  /**
   * The report, each line ended by a line feed.
   *
   * @param file the file's name as it was given
   */
  public static String text(String file, List<Problem> problems) {
    Page page = new Page(Telling.onTerminal());
    page.line(TEXTS.say("refused.title", file, TEXTS.count("refused.problems", problems.size())));
    for (Problem problem : problems) {
      page.gap();
      page.line(problem.path().isEmpty() ? TEXTS.say("refused.whole") : problem.path());
      page.indented(2, problem.message() + " (" + problem.code().word() + ")");
      page.indented(2, problem.hint());
    }
    return page.toString();
  }
}
