package io.github.tiderule.api.page;

import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.page.plan.CurveView;
import io.github.tiderule.api.page.plan.Standing;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The guide inside the program: a first season, how it reasons, and what other programs can ask.
 */
public final class GuidePages {

  /** How many parts each chapter has; its texts are {@code guide.CHAPTER.NUMBER}. */
  static final Map<String, Integer> CHAPTERS =
      Map.of("first-season", 7, "reasoning", 7, "programs", 6);

  /** After which part the picture stands. */
  private static final Map<String, Integer> PICTURED = Map.of("first-season", 4, "reasoning", 4);

  /** A season that nobody had, for the picture. */
  private static final String INVENTED =
      """
      {"schema": "tiderule/cycle/1", "asOf": "2027-01-13T12:00:00+01:00",
       "zone": "Europe/Vienna", "female": {"id": "fern", "name": "Fern (invented)"},
       "firstBlood": {"on": "2027-01-02", "certainty": "seen"},
       "observations": [
        {"id": "p1", "kind": "progesterone", "at": "2027-01-07T08:00:00+01:00", "value": 0.7,
         "unit": "ng/mL", "method": "clia", "laboratory": "north"},
        {"id": "p2", "kind": "progesterone", "at": "2027-01-10T08:00:00+01:00", "value": 1.6,
         "unit": "ng/mL", "method": "clia", "laboratory": "north"},
        {"id": "p3", "kind": "progesterone", "at": "2027-01-12T08:00:00+01:00", "value": 4.1,
         "unit": "ng/mL", "method": "clia", "laboratory": "north"},
        {"id": "c1", "kind": "cytology", "at": "2027-01-12T08:10:00+01:00",
         "cornifiedPercent": 90, "neutrophils": "none"}],
       "breeding": {"semen": "fresh", "route": "vaginal", "doses": 2}}""";

  private GuidePages() {}

  /**
   * A chapter.
   *
   * @param pictured after which part the picture stands; 0 for none
   */
  public record Chapter(
      Frame frame, String name, List<Integer> parts, int pictured, @Nullable CurveView curve) {}

  static List<Route> all() {
    return CHAPTERS.keySet().stream()
        .sorted()
        .map(
            name ->
                Route.page(
                    Route.Method.GET,
                    "/help/" + name,
                    Route.Need.NOBODY,
                    call -> chapter(call, name)))
        .toList();
  }

  private static Answer chapter(Call call, String name) {
    Frame frame = Frame.of(call, "").titled("guide." + name);
    int pictured = PICTURED.getOrDefault(name, 0);
    return Templates.page(
        "guide",
        new Chapter(
            frame,
            name,
            IntStream.rangeClosed(1, CHAPTERS.getOrDefault(name, 0)).boxed().toList(),
            pictured,
            pictured == 0 ? null : curve(call, frame)));
  }

  private static CurveView curve(Call call, Frame frame) {
    Standing.Answered answered = Standing.answered(INVENTED, call.environment().reason());
    return CurveView.still(answered, Telling.toPerson(answered.cycle(), frame.words()));
  }
}
