package io.github.tiderule.api.report;

import io.github.tiderule.api.report.text.Columns;
import io.github.tiderule.api.report.text.Page;
import io.github.tiderule.api.report.text.SectionKind;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.rules.conclusion.Effect;
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
    page.heading(SectionKind.DAYS);
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
    Words words = page.telling().words();
    page.preformatted(
        "  "
            + row(
                day.rank() + ".",
                words.day(day.day()),
                words.window(day.from(), day.to()),
                day.verdict().word(),
                Shares.number(day.eggShare().mean())
                    + " ("
                    + Shares.number(day.eggShare().unlucky())
                    + ")"));
    told(day).forEach(reason -> page.hanging(6, label(reason), reason.text()));
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
    return reason.effect() != Effect.SUPPORTS;
  }

  private static String row(String rank, String day, String time, String verdict, String eggs) {
    return cell(rank, 4) + cell(day, 17) + cell(time, 13) + cell(verdict, 13) + eggs;
  }

  /** A cell of some columns; of more where what it holds is longer. */
  private static String cell(String words, int columns) {
    return Columns.padded(words, Math.max(columns, Columns.of(words) + 1));
  }

  /** What speaks for the verdict comes first; otherwise the order of the rules stands. */
  private static int weight(BreedingDay day, Reason reason) {
    return switch (reason.effect()) {
      case VETOES -> 0;
      case OPPOSES -> day.verdict() == Verdict.AVOID ? 1 : 2;
      default -> day.verdict() == Verdict.AVOID ? 2 : 1;
    };
  }

  private static String label(Reason reason) {
    return switch (reason.effect()) {
      case SUPPORTS -> TEXTS.say("days.because");
      case VETOES -> TEXTS.say("days.ruled-out");
      default -> TEXTS.say("days.but");
    };
  }

  /** A time with the clock window of its day, where it lies in one. */
  static String momentInWindow(OffsetDateTime at, List<BreedingDay> days, Words words) {
    return days.stream()
        .filter(day -> holds(day, at))
        .findFirst()
        .map(
            day ->
                TEXTS.say(
                    "plan.window",
                    words.day(day.day()),
                    words.window(day.from(), day.to()),
                    words.clock(at),
                    Shares.inHundred(day.eggShare().mean())))
        .orElseGet(() -> TEXTS.say("plan.about", words.day(at.toLocalDate()), words.clock(at)));
  }

  /** Whether a time lies in the clock window of a day. */
  static boolean holds(BreedingDay day, OffsetDateTime at) {
    return !at.isBefore(day.from()) && !at.isAfter(day.to());
  }
}
