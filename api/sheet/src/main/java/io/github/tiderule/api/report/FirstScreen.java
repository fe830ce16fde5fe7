package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.BestDays;
import io.github.tiderule.api.report.text.Columns;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import java.util.List;

/**
 * The answer first on a terminal: what a tired keeper reads on one screen, which is {@link Front}
 * with the days beside each other. Plain text of at most 80 columns, and of {@value #LINES} lines
 * wherever no more has to be said of what is grave; everything else stands in {@link AdviceReport}.
 */
public final class FirstScreen {

  /** Lines of the smallest screen a terminal is opened with. */
  public static final int LINES = 24;

  private static final Texts TEXTS = Texts.ofReports();

  private static final int MOST_DAYS = 8;
  private static final int MOST_DUE = 6;
  private static final int FEW = 4;
  private static final int FEWEST = 2;
  private static final int BAR = 20;

  private final CycleRecord cycle;
  private final Advice advice;
  private final Front front;
  private final Page page;
  private final Words words;

  private FirstScreen(CycleRecord cycle, Advice advice) {
    Telling telling = Telling.onTerminal(cycle);
    this.cycle = cycle;
    this.advice = advice;
    this.front = Front.of(cycle, advice, telling);
    this.page = new Page(telling);
    this.words = telling.words();
  }

  /** The first screen of a season, each line ended by a line feed. */
  public static String text(CycleRecord cycle, Advice advice) {
    int days = MOST_DAYS;
    int due = MOST_DUE;
    String screen = new FirstScreen(cycle, advice).written(days, due);
    while (screen.lines().count() > LINES && days > FEWEST) {
      if (days > FEW || due == FEWEST) {
        days--;
        due = Math.min(due, Math.max(FEWEST, days));
      } else {
        due--;
      }
      screen = new FirstScreen(cycle, advice).written(days, due);
    }
    return screen;
  }

  private String written(int days, int due) {
    page.line(
        TEXTS.say(
            "screen.title",
            Telling.who(cycle.female().name(), advice.femaleId()),
            words.moment(advice.asOf()),
            cycle.zone()));
    page.gap();
    page.line(front.headline());
    front.then().forEach(next -> page.hanging(0, "-", next));
    lines(front.grave());
    lines(front.questions());
    lines(front.plan());
    due(due);
    days(days);
    known();
    page.line(TEXTS.say("screen.more"));
    return page.toString();
  }

  private void lines(List<Section.Line> lines) {
    for (Section.Line line : lines) {
      if (line.mark().isEmpty()) {
        page.line(line.words());
      } else {
        page.hanging(0, line.mark(), line.words());
      }
    }
  }

  private void due(int most) {
    if (front.due().isEmpty()) {
      return;
    }
    page.gap();
    page.line(TEXTS.say("screen.due"));
    List<Due> shown = front.due().stream().limit(most).toList();
    int wide = shown.stream().mapToInt(item -> Columns.of(item.when())).max().orElse(0);
    shown.forEach(item -> page.hanging(2, Columns.padded(item.when(), wide) + " ", item.what()));
  }

  private void days(int most) {
    List<BreedingDay> shown = BestDays.of(advice, most);
    if (shown.isEmpty()) {
      return;
    }
    page.gap();
    page.preformatted(TEXTS.say("screen.days"));
    shown.forEach(day -> page.preformatted(row(day)));
  }

  private String row(BreedingDay day) {
    int bar = (int) Math.round(day.eggShare().mean() * BAR);
    return (BestDays.isPlanned(advice, day) ? "* " : "  ")
        + Columns.padded(words.shortDay(day.day()), 12)
        + Columns.padded(words.window(day.from(), day.to()), 14)
        + Columns.padded(Shares.number(day.eggShare().mean()), 9)
        + "=".repeat(bar);
  }

  private void known() {
    page.gap();
    page.hanging(0, TEXTS.say("screen.sure"), front.sure());
    if (front.values() != null) {
      page.hanging(0, TEXTS.say("screen.values"), front.values());
    }
  }
}
