package io.github.tiderule.api.page;

import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.Standing;
import io.github.tiderule.api.page.words.Texts;
import io.github.tiderule.api.record.Cycle;
import io.github.tiderule.api.record.Female;
import io.github.tiderule.api.record.Ledger;
import io.github.tiderule.api.record.Page;
import io.github.tiderule.api.report.AccuracyReport;
import io.github.tiderule.api.report.Section;
import io.github.tiderule.api.service.Answer;
import io.github.tiderule.api.service.Call;
import io.github.tiderule.api.service.Route;
import io.github.tiderule.engine.WhelpedSeason;
import io.github.tiderule.engine.advice.LookBack;
import io.github.tiderule.engine.change.Told;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** How well past whelpings of a kennel were foretold: predicted against actual. */
public final class TimingPages {

  /** Each is worked out anew, so a kennel with more litters is judged by its latest. */
  static final int MOST_SEASONS = 40;

  private static final String BULLET = "-";

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

  private record Past(String key, String whelpedOn, Standing.Held held) {}

  private record Seen(List<Past> whelped, int others) {}

  static List<Route> all() {
    return List.of(Route.page(Route.Method.GET, "/timing", Route.Need.ANYBODY, TimingPages::show));
  }

  private static Answer show(Call call) {
    Seen seen = call.read(ledger -> seen(call, ledger));
    int most = Math.min(MOST_SEASONS, seen.whelped().size());
    int others = seen.others();
    List<String> paths = new ArrayList<>();
    List<WhelpedSeason> seasons = new ArrayList<>();
    for (Past past : seen.whelped().subList(0, most)) {
      String file = past.held().file(past.held().cycle().moment(call.now()));
      Told told = Standing.answered(file, call.environment().reason()).told();
      LookBack back = told.advice().lookBack();
      if (back == null) {
        others++;
      } else {
        paths.add("/seasons/" + past.key());
        seasons.add(WhelpedSeason.of(told.cycle(), back));
      }
    }
    Frame frame = Frame.of(call, Texts.in(Locale.ROOT).say("timing.title"));
    return Templates.page(
        "timing", timing(frame, paths, seasons, seen.whelped().size() - most, others));
  }

  private static Timing timing(
      Frame frame, List<String> paths, List<WhelpedSeason> seasons, int leftOut, int others) {
    List<Section> sections = AccuracyReport.sections(seasons, 0);
    List<String> words =
        sections.get(0).lines().stream()
            .filter(line -> line.mark().equals(BULLET))
            .map(line -> frame.words().localised(line.words()))
            .toList();
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < paths.size(); i++) {
      lines.add(new Line(paths.get(i), words.get(i)));
    }
    return new Timing(
        frame,
        List.copyOf(lines),
        Section.of(sections, AccuracyReport.TOGETHER).lines().stream()
            .map(
                line ->
                    new Section.Line(
                        line.indent(), line.mark(), frame.words().localised(line.words())))
            .toList(),
        leftOut,
        others);
  }

  /** Every season of every female one may see. */
  private static Seen seen(Call call, Ledger ledger) {
    Person person = call.person();
    List<Past> whelped = new ArrayList<>();
    int others = 0;
    Page.Wanted wanted = Page.Wanted.FIRST;
    while (true) {
      Page<Female> page =
          ledger.females().seenBy(person.key(), person.role().isOfTheClinic(), wanted);
      for (Female female : page.items()) {
        for (Cycle cycle : Seasons.of(ledger, female).all()) {
          String on = Documents.text(Documents.of(cycle.document()), "outcome", "whelpedOn");
          if (on == null) {
            others++;
          } else {
            whelped.add(new Past(cycle.key(), on, Standing.Held.of(ledger, female, cycle)));
          }
        }
      }
      if (page.next() == null) {
        whelped.sort(Comparator.comparing(Past::whelpedOn).reversed());
        return new Seen(List.copyOf(whelped), others);
      }
      wanted = new Page.Wanted(page.next(), wanted.limit());
    }
  }
}
