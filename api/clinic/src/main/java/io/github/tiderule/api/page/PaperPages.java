package io.github.tiderule.api.page;

import io.github.tiderule.api.page.plan.Standing;
import io.github.tiderule.api.paper.BreederSheet;
import io.github.tiderule.api.paper.DaySheet;
import io.github.tiderule.api.paper.PaperSize;
import io.github.tiderule.api.paper.ReferralSummary;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import java.util.List;

/**
 * The plan on paper, the sheet for the day of insemination and the summary for a vet; on A4 unless
 * {@code ?paper=letter} is asked for.
 */
final class PaperPages {

  private static final String PDF = "application/pdf";

  private PaperPages() {}

  private interface Print {
    byte[] of(Call call, CycleRecord cycle, Reasoning reasoning, PaperSize paper);
  }

  static List<Route> all() {
    return List.of(
        route(
            "/plan.pdf",
            (call, cycle, reasoning, paper) -> BreederSheet.pdf(cycle, reasoning, paper)),
        route("/day.pdf", (call, cycle, reasoning, paper) -> day(cycle, reasoning, paper)),
        route(
            "/summary.pdf",
            (call, cycle, reasoning, paper) ->
                ReferralSummary.pdf(
                    cycle, reasoning, call.environment().rules().get().sources(), paper)));
  }

  private static Route route(String path, Print print) {
    return Route.page(
        Route.Method.GET,
        SeasonPages.ONE + path,
        Route.Need.ANYBODY,
        call -> Answer.file(PDF, printed(call, print)));
  }

  /** There is none where nothing is known of the semen and no insemination is close. */
  private static byte[] day(CycleRecord cycle, Reasoning reasoning, PaperSize paper) {
    if (!DaySheet.isIn(reasoning.advice())) {
      throw Refusal.notFound();
    }
    return DaySheet.pdf(cycle, reasoning.advice(), paper);
  }

  private static byte[] printed(Call call, Print print) {
    Standing.Answered answered =
        Standing.of(SeasonPages.held(call), call.now(), call.environment().reason()).answered();
    return print.of(call, answered.cycle(), answered.reasoning(), paper(call));
  }

  private static PaperSize paper(Call call) {
    return call.query("paper").flatMap(PaperSize::of).orElse(PaperSize.A4);
  }
}
