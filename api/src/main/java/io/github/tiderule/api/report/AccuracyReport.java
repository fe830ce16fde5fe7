package io.github.tiderule.api.report;

import io.github.tiderule.engine.WhelpedSeason;
import io.github.tiderule.engine.advice.LookBack;
import io.github.tiderule.engine.whelping.Accuracy;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** How well past whelpings were foretold. Plain text of at most 80 columns. */
public final class AccuracyReport {

  /** All seasons in a few figures. */
  public static final String TOGETHER = "All together";

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
    page.line("Whelping, foretold and actual");
    page.indented(
        2,
        "Each forecast is the one that would have been given a week before she whelped, from what"
            + " was known then.");
    for (WhelpedSeason season : seasons) {
      LookBack back = season.lookBack();
      String female = season.female().isEmpty() ? "" : season.female() + ", ";
      page.hanging(
          2,
          "-",
          female
              + LocalWords.day(back.whelpedOn())
              + ": foretold "
              + LocalWords.shortDay(back.median().toLocalDate())
              + " ("
              + LocalWords.shortDay(back.p05().toLocalDate())
              + " to "
              + LocalWords.shortDay(back.p95().toLocalDate())
              + "), "
              + String.format(Locale.ROOT, "%+.1f", back.errorDays())
              + " days, "
              + (back.within() ? "inside." : "outside."));
    }
    summary(page, WhelpedSeason.accuracy(seasons));
    if (others > 0) {
      page.indented(
          2, others + (others == 1 ? " season has" : " seasons have") + " no whelping to compare.");
    }
    return page;
  }

  private static void summary(Page page, Accuracy accuracy) {
    page.heading(TOGETHER);
    if (accuracy.seasons() == 0) {
      page.indented(2, "No season has a whelping to compare yet.");
      return;
    }
    page.indented(
        2,
        accuracy.seasons()
            + (accuracy.seasons() == 1 ? " season" : " seasons")
            + String.format(
                Locale.ROOT,
                ": median error %.1f days, 9 in 10 within %.1f; on average %.1f days %s than"
                    + " foretold.",
                number(accuracy.medianDays()),
                number(accuracy.p90Days()),
                Math.abs(number(accuracy.biasDays())),
                number(accuracy.biasDays()) < 0 ? "earlier" : "later"));
    page.indented(
        2,
        "Inside the 9-in-10 days: "
            + Shares.inHundred(number(accuracy.within()))
            + "; so few seasons fit anything from "
            + Shares.number(number(accuracy.withinLow()))
            + " to "
            + Shares.inHundred(number(accuracy.withinHigh()))
            + ".");
    if (accuracy.few()) {
      page.indented(
          2,
          "Fewer than " + Accuracy.FEW + " seasons: chance alone can make this look good or bad.");
    }
  }

  private static double number(@Nullable Double value) {
    return Objects.requireNonNull(value);
  }
}
