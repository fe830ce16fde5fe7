package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import org.jspecify.annotations.Nullable;

/** What her values do, in a line of the trade. */
final class ValuesSection {

  private ValuesSection() {}

  static void write(Page page, @Nullable SeasonCourse course) {
    if (course == null) {
      return;
    }
    page.heading(SectionKind.VALUES);
    page.indented(2, page.telling().say(course.text()) + ".");
    if (course.withdrawn() != null) {
      page.indented(2, page.telling().say(course.withdrawn()) + ".");
    }
  }
}
