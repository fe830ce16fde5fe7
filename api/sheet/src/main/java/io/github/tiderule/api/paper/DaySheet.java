package io.github.tiderule.api.paper;

import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.InseminationSheet;
import java.util.List;

/**
 * One page for the day of insemination, to be taken along: what the semen is worth, what is done in
 * which order, and when to call a vet.
 */
public final class DaySheet {

  private static final Texts TEXTS = Texts.ofReports();
  private static final int PAGES = 1;

  private DaySheet() {}

  /** Whether an answer has a sheet for the day: none is made for semen that is not to be used. */
  public static boolean isIn(Advice advice) {
    InseminationSheet sheet = advice.breeding().insemination();
    return sheet != null && sheet.isForTheDay();
  }

  /**
   * The page as a PDF file.
   *
   * @throws IllegalArgumentException if the answer has no sheet for the day
   */
  public static byte[] pdf(CycleRecord cycle, Advice advice, PaperSize paper) {
    if (!isIn(advice)) {
      throw new IllegalArgumentException("no sheet for the day of insemination");
    }
    PlanParts plan = new PlanParts(cycle, advice);
    String title = Names.title("paper.day", cycle, advice);
    return new Sheet(
            title,
            TEXTS.say("paper.rest.plan"),
            "day",
            PAGES,
            List.of(
                (html, room) -> html.title(title),
                plan::moment,
                plan::alarms,
                plan::wholeInsemination,
                plan::vet,
                plan::stamp))
        .pdf(paper);
  }
}
