package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.LocalWords;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Section;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.Accuracy;
import io.github.tiderule.engine.WhelpedSeason;
import io.github.tiderule.engine.advice.course.LookBack;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** How well past whelpings were foretold. Plain text of at most 80 columns. */
public final class AccuracyReport {

  private static final Texts TEXTS = Texts.ofReports();

  /** All seasons in a few figures. */
  public static final String TOGETHER = TEXTS.say("accuracy.together");

  private AccuracyReport() {}

  /**
   * The report, each line ended by a line feed.
   *
   * @param others seasons read that have no whelping to compare
   */
  public static String text(List<WhelpedSeason> seasons, int others) {
    return written(seasons, others).toString();
  }

  /**
   * The same in sections: the first has the seasons, one a line with a dash, in their order; the
   * second is {@link #TOGETHER}.
   */
  public static List<Section> sections(List<WhelpedSeason> seasons, int others) {
    return written(seasons, others).sections();
  }

  private static Page written(List<WhelpedSeason> seasons, int others) {
    Page page = new Page();
    page.line(TEXTS.say("accuracy.title"));
    page.indented(2, TEXTS.say("accuracy.how"));
    for (WhelpedSeason season : seasons) {
      LookBack back = season.lookBack();
      String female = season.female().isEmpty() ? "" : season.female() + ", ";
      page.hanging(
          2,
          "-",
          TEXTS.say(
              back.within() ? "accuracy.inside" : "accuracy.outside",
              female + LocalWords.day(back.whelpedOn()),
              LocalWords.shortDay(back.median().toLocalDate()),
              LocalWords.shortDay(back.p05().toLocalDate()),
              LocalWords.shortDay(back.p95().toLocalDate()),
              String.format(Locale.ROOT, "%+.1f", back.errorDays())));
    }
    summary(page, WhelpedSeason.accuracy(seasons));
    if (others > 0) {
      page.indented(2, TEXTS.count("accuracy.others", others));
    }
    return page;
  }

  private static void summary(Page page, Accuracy accuracy) {
    page.heading(TOGETHER);
    if (accuracy.seasons() == 0) {
      page.indented(2, TEXTS.say("accuracy.none"));
      return;
    }
    page.indented(
        2,
        TEXTS.say(
            number(accuracy.biasDays()) < 0 ? "accuracy.error.earlier" : "accuracy.error.later",
            TEXTS.count("accuracy.seasons", accuracy.seasons()),
            tenth(number(accuracy.medianDays())),
            tenth(number(accuracy.p90Days())),
            tenth(Math.abs(number(accuracy.biasDays())))));
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

  private static String tenth(double days) {
    return String.format(Locale.ROOT, "%.1f", days);
  }

  private static double number(@Nullable Double value) {
    return Objects.requireNonNull(value);
  }
}
