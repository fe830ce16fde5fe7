package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.Accuracy;
import io.github.tiderule.engine.WhelpedSeason;
import io.github.tiderule.engine.advice.course.LookBack;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** How well past whelpings were foretold. Plain text of at most 80 columns. */
public final class AccuracyReport {

  private static final Texts TEXTS = Texts.ofReports();

  private AccuracyReport() {}

  /**
   * The report, each line ended by a line feed.
   *
   * @param others seasons read that have no whelping to compare
   */
  public static String text(List<WhelpedSeason> seasons, int others) {
    return written(seasons, others).toString();
  }

  /** The seasons alone, one a line, in their order. */
  public static List<String> lines(List<WhelpedSeason> seasons, Words words) {
    return seasons.stream().map(season -> line(season, words)).toList();
  }

  /** All seasons in a few figures. */
  public static Section together(List<WhelpedSeason> seasons, Words words) {
    Page page = new Page(Telling.inWords(words));
    summary(page, WhelpedSeason.accuracy(seasons));
    return Section.of(page.sections(), SectionKind.TOGETHER);
  }

  private static Page written(List<WhelpedSeason> seasons, int others) {
    Words words = Words.REPORTS;
    Page page = new Page(Telling.inWords(words));
    page.line(TEXTS.say("accuracy.title"));
    page.indented(2, TEXTS.say("accuracy.how"));
    lines(seasons, words).forEach(line -> page.hanging(2, "-", line));
    summary(page, WhelpedSeason.accuracy(seasons));
    if (others > 0) {
      page.indented(2, TEXTS.count("accuracy.others", others));
    }
    return page;
  }

  private static String line(WhelpedSeason season, Words words) {
    LookBack back = season.lookBack();
    String female = season.female().isEmpty() ? "" : season.female() + ", ";
    return TEXTS.say(
        back.within() ? "accuracy.inside" : "accuracy.outside",
        female + words.day(back.whelpedOn()),
        words.shortDay(back.median().toLocalDate()),
        words.shortDay(back.p05().toLocalDate()),
        words.shortDay(back.p95().toLocalDate()),
        words.number("%+.1f", back.errorDays()));
  }

  private static void summary(Page page, Accuracy accuracy) {
    page.heading(SectionKind.TOGETHER);
    Words words = page.telling().words();
    if (accuracy.seasons() == 0) {
      page.indented(2, TEXTS.say("accuracy.none"));
      return;
    }
    page.indented(
        2,
        TEXTS.say(
            number(accuracy.biasDays()) < 0 ? "accuracy.error.earlier" : "accuracy.error.later",
            TEXTS.count("accuracy.seasons", accuracy.seasons()),
            tenth(words, number(accuracy.medianDays())),
            tenth(words, number(accuracy.p90Days())),
            tenth(words, Math.abs(number(accuracy.biasDays())))));
    page.indented(
        2,
        TEXTS.say(
            "accuracy.within",
            Shares.inHundred(number(accuracy.within())),
            Shares.number(number(accuracy.withinLow())),
            Shares.inHundred(number(accuracy.withinHigh()))));
    if (accuracy.few()) {
      page.indented(2, TEXTS.say("accuracy.few", Accuracy.FEW));
    }
  }

  private static String tenth(Words words, double days) {
    return words.number("%.1f", days);
  }

  private static double number(@Nullable Double value) {
    return Objects.requireNonNull(value);
  }
}
