package io.github.tiderule.api.page;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.page.frame.Frame;
import io.github.tiderule.api.page.frame.Templates;
import io.github.tiderule.api.record.PastSeasons;
import io.github.tiderule.api.report.AccuracyReport;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.WhelpedSeason;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How well past whelpings of a kennel were foretold: predicted against actual. */
public final class TimingPages {

  /** Each is worked out anew, so a kennel with more litters is judged by its latest. */
  static final int MOST_SEASONS = 40;

  private TimingPages() {}

  /**
   * The page.
   *
   * @param lines one for each season compared, last first
   * @param together what they come to
   * @param leftOut how many whelpings are older than those compared
   * @param others how many seasons have no whelping to compare
   */
  public record Timing(
      Frame frame, List<Line> lines, List<Section.Line> together, int leftOut, int others) {}

  /** A season, with the path of its page. */
  public record Line(String path, String words) {}

  static List<Route> all() {
    return List.of(Route.page(Route.Method.GET, "/timing", Route.Need.ANYBODY, TimingPages::show));
  }

  private static Answer show(Call call) {
    Person person = call.person();
    PastSeasons.Compared compared =
        call.read(
                ledger ->
                    PastSeasons.of(
                        ledger,
                        wanted ->
                            ledger
                                .females()
                                .seenBy(person.key(), person.role().isOfTheClinic(), wanted)))
            .compared(
                MOST_SEASONS,
                call.now(),
                cycle -> call.environment().reason().apply(cycle).advice());
    Frame frame = Frame.of(call, Texts.ofPages(Locale.ROOT).say("timing.title"));
    List<String> paths = compared.keys().stream().map(key -> "/seasons/" + key).toList();
    return Templates.page(
        "timing", timing(frame, paths, compared.seasons(), compared.leftOut(), compared.others()));
  }

  private static Timing timing(
      Frame frame, List<String> paths, List<WhelpedSeason> seasons, int leftOut, int others) {
    List<String> words = AccuracyReport.lines(seasons, frame.words());
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < paths.size(); i++) {
      lines.add(new Line(paths.get(i), words.get(i)));
    }
    return new Timing(
        frame,
        List.copyOf(lines),
        AccuracyReport.together(seasons, frame.words()).lines(),
        leftOut,
        others);
  }
}
