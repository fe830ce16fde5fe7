package io.github.tiderule.api.paper;

import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import java.util.List;

/** One page for the breeder, in the order of {@code Front}: the answer, what is due, her days. */
public final class BreederSheet {

  private static final Texts TEXTS = Texts.ofReports();

  private static final int PAGES = 1;

  private BreederSheet() {}

  /** The page as a PDF file. */
  public static byte[] pdf(CycleRecord cycle, Reasoning reasoning, PaperSize paper) {
    PlanParts plan = new PlanParts(cycle, reasoning.advice());
    return new Sheet(
            Names.title("plan.title", cycle, reasoning.advice()),
            TEXTS.say("paper.rest.plan"),
            "breeder",
            PAGES,
            List.of(
                plan::title,
                plan::answer,
                plan::due,
                plan::questions,
                new CurvePart(
                    CurveInput.of(cycle, reasoning, Telling.onPaper(cycle)),
                    168,
                    158,
                    148,
                    136,
                    122,
                    106,
                    88,
                    66),
                plan::known,
                (html, room) -> html.open("left"),
                plan::plan,
                plan::nextTest,
                plan::whelping,
                plan::beforeSeason,
                (html, room) -> html.close().open("right"),
                plan::vet,
                plan::cautions,
                (html, room) -> html.close(),
                plan::stamp))
        .pdf(paper);
  }
}
