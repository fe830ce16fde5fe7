package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Columns;
import io.github.tiderule.api.report.text.LocalWords;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.engine.advice.Verdict;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/** The ranked days of a report. */
final class DaysTable {

  private static final Texts TEXTS = Texts.ofReports();

  private static final int MOST_DAYS = 12;
  private static final int MOST_REASONS = 3;

  private DaysTable() {}

  static void write(Page page, List<BreedingDay> days) {
    if (days.isEmpty()) {
      return;
    }
    page.heading(TEXTS.say("days.title"));
    page.preformatted(
        "  "
            + row(
                "",
                TEXTS.say("days.day"),
                TEXTS.say("days.time"),
                TEXTS.say("days.verdict"),
                TEXTS.say("days.eggs")));
    days.stream().limit(MOST_DAYS).forEach(day -> write(page, day));
    page.indented(2, TEXTS.say("days.note"));
    if (days.size() > MOST_DAYS) {
      page.indented(2, TEXTS.say("days.more", days.size() - MOST_DAYS));
    }
  }

  private static void write(Page page, BreedingDay day) {
    page.preformatted(
        "  "
            + row(
                day.rank() + ".",
                LocalWords.day(day.day()),
                LocalWords.window(day.from(), day.to()),
                day.verdict().word(),
                Shares.number(day.eggShare().mean())
                    + " ("
                    + Shares.number(day.eggShare().unlucky())
                    + ")"));
    told(day).forEach(reason -> page.hanging(6, label(reason), reason.text().toString()));
  }

  /** As many reasons as fit; the strongest one against a day is always among them. */
  private static List<Reason> told(BreedingDay day) {
    List<Reason> reasons =
        day.reasons().stream()
            .sorted((one, other) -> Integer.compare(weight(day, one), weight(day, other)))
            .toList();
    int most = day.verdict() == Verdict.AVOID ? 1 : MOST_REASONS;
    if (reasons.size() <= most) {
      return reasons;
    }
    List<Reason> told = new ArrayList<>(reasons.subList(0, most));
    boolean against = told.stream().anyMatch(DaysTable::against);
    if (!against) {
      reasons.stream().filter(DaysTable::against).findFirst().ifPresent(r -> told.set(most - 1, r));
    }
    return told;
  }

  private static boolean against(Reason reason) {
    return !reason.effect().equals("supports");
  }

  private static String row(String rank, String day, String time, String verdict, String eggs) {
    return Columns.padded(rank, 4)
        + Columns.padded(day, 17)
        + Columns.padded(time, 13)
        + Columns.padded(verdict, 13)
        + eggs;
  }

  /** What speaks for the verdict comes first; otherwise the order of the rules stands. */
  private static int weight(BreedingDay day, Reason reason) {
    return switch (reason.effect()) {
      case "vetoes" -> 0;
      case "opposes" -> day.verdict() == Verdict.AVOID ? 1 : 2;
      default -> day.verdict() == Verdict.AVOID ? 2 : 1;
    };
  }

  private static String label(Reason reason) {
    return switch (reason.effect()) {
      case "supports" -> TEXTS.say("days.because");
      case "vetoes" -> TEXTS.say("days.ruled-out");
      default -> TEXTS.say("days.but");
    };
  }

  /** A time with the clock window of its day, where it lies in one. */
  static String momentInWindow(OffsetDateTime at, List<BreedingDay> days) {
    for (BreedingDay day : days) {
      if (!at.isBefore(day.from()) && !at.isAfter(day.to())) {
        return TEXTS.say(
            "plan.window",
            LocalWords.day(day.day()),
            LocalWords.window(day.from(), day.to()),
            LocalWords.clock(at),
            Shares.inHundred(day.eggShare().mean()));
      }
    }
    return TEXTS.say("plan.about", LocalWords.day(at.toLocalDate()), LocalWords.clock(at));
  }
}
