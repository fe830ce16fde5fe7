package io.github.tiderule.api.paper;

import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.rules.source.Sources;
import java.util.List;

/** At most three pages for a vet: history, observations, plan, estimate, reasoning and sources. */
public final class ReferralSummary {

  private static final Texts TEXTS = Texts.ofReports();

  private static final int PAGES = 3;

  private ReferralSummary() {}

  /** The pages as a PDF file. */
  public static byte[] pdf(
      CycleRecord cycle, Reasoning reasoning, Sources sources, PaperSize paper) {
    PlanParts plan = new PlanParts(cycle, reasoning.advice());
    TraceParts trace = new TraceParts(cycle, reasoning, sources);
    String title = Names.title("paper.summary", cycle, reasoning.advice());
    CurveInput input = CurveInput.of(cycle, reasoning, Telling.onPaper(cycle));
    return new Sheet(
            title,
            TEXTS.say("paper.rest.trace"),
            "summary",
            PAGES,
            List.of(
                (html, room) -> html.title(title),
                plan::moment,
                plan::now,
                plan::values,
                new HistoryPart(cycle),
                new CurvePart(input, 165, 155, 145, 135, 125, 115, 105),
                new SeriesPart(input),
                plan::howTaken,
                new EstimatePart(reasoning.advice()),
                plan::plan,
                plan::days,
                plan::nextTest,
                plan::insemination,
                plan::whelping,
                plan::questions,
                plan::cautions,
                trace::schools,
                trace::trace,
                trace::notFired,
                trace::sources,
                trace::stamp))
        .pdf(paper);
  }
}
