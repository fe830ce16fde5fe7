package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Columns;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Action;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.Amount;
import io.github.tiderule.engine.advice.Bred;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.InseminationSheet;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Warning;
import io.github.tiderule.engine.advice.course.SeasonCourse;
import io.github.tiderule.engine.advice.reasoning.Query;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The answer first: what a tired keeper reads on one screen. In this order: what to do and on which
 * day, what is due, the days beside each other, how sure it is, what her results do, what is grave.
 * Plain text of at most 80 columns, and of {@value #LINES} lines wherever no more has to be said of
 * what is grave; everything else stands in {@link AdviceReport}.
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
  private final Page page;
  private final Telling telling;
  private final Words words;

  private FirstScreen(CycleRecord cycle, Advice advice) {
    this.cycle = cycle;
    this.advice = advice;
    this.telling = Telling.onTerminal(cycle);
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
    answer();
    due(due);
    days(days);
    known();
    page.line(TEXTS.say("screen.more"));
    return page.toString();
  }

  private void answer() {
    page.line(telling.say(advice.action().headline()));
    advice.action().then().forEach(next -> page.hanging(0, "-", next));
    AdviceReport.grave(page, 0, advice);
    for (Query query : advice.questions()) {
      page.hanging(0, TEXTS.say("screen.question"), query.text());
    }
    Bred bred = advice.bred();
    if (bred != null) {
      page.hanging(
          0,
          TEXTS.say("screen.bred"),
          Shares.expected(bred.eggShare()) + " " + telling.say(bred.text()));
    }
    Plan plan = advice.plan();
    if (plan != null) {
      boolean vet = advice.action().now() == Action.Now.VET;
      page.line(
          TEXTS.say(
              vet ? "screen.plan.vet" : "screen.plan",
              plan.at().stream()
                  .map(this::dose)
                  .collect(Collectors.joining(TEXTS.say("screen.and"))),
              Shares.expected(plan.eggShare())));
    }
    sheet(advice.insemination());
  }

  private String dose(OffsetDateTime at) {
    return advice.breedingDays().stream()
        .filter(day -> DaysTable.holds(day, at))
        .findFirst()
        .map(day -> words.shortDay(day.day()) + " " + words.window(day.from(), day.to()))
        .orElseGet(() -> words.shortMoment(at));
  }

  private void sheet(@Nullable InseminationSheet sheet) {
    if (sheet == null) {
      return;
    }
    for (Warning finding : sheet.findings()) {
      if (!finding.level().equals(AdviceReport.CARE)) {
        page.hanging(0, TEXTS.say("screen.semen"), finding.text());
      }
    }
    Amount usable = sheet.usable();
    if (usable != null) {
      page.hanging(
          0,
          TEXTS.say("screen.semen"),
          TEXTS.say("screen.semen.usable", usable.words(), usable.unit()));
    }
  }

  private void due(int most) {
    List<DueList.Item> items = DueList.of(advice, telling);
    if (items.isEmpty()) {
      return;
    }
    page.gap();
    page.line(TEXTS.say("screen.due"));
    int wide = items.stream().limit(most).mapToInt(item -> Columns.of(item.when())).max().orElse(0);
    items.stream()
        .limit(most)
        .forEach(item -> page.hanging(2, Columns.padded(item.when(), wide) + " ", item.what()));
  }

  private void days(int most) {
    List<BreedingDay> shown =
        advice.breedingDays().stream()
            .limit(most)
            .sorted(Comparator.comparing(BreedingDay::day))
            .toList();
    if (shown.isEmpty()) {
      return;
    }
    page.gap();
    page.preformatted(TEXTS.say("screen.days"));
    shown.forEach(day -> page.preformatted(row(day)));
  }

  private String row(BreedingDay day) {
    Plan plan = advice.plan();
    boolean planned = plan != null && plan.at().stream().anyMatch(at -> DaysTable.holds(day, at));
    int bar = (int) Math.round(day.eggShare().mean() * BAR);
    return (planned ? "* " : "  ")
        + Columns.padded(words.shortDay(day.day()), 12)
        + Columns.padded(words.window(day.from(), day.to()), 14)
        + Columns.padded(Shares.number(day.eggShare().mean()), 9)
        + "=".repeat(bar);
  }

  private void known() {
    page.gap();
    page.hanging(0, TEXTS.say("screen.sure"), Certainties.inDays(cycle, advice, words));
    SeasonCourse course = advice.course();
    if (course != null) {
      page.hanging(0, TEXTS.say("screen.values"), telling.say(course.text()) + ".");
    }
  }
}
