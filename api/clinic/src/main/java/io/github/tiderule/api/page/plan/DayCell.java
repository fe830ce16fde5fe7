package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.engine.advice.Verdict;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One day of the strip.
 *
 * @param share eggs in 100, in words
 * @param unlucky the share it falls short of one time in ten, in words
 * @param meanPart width of the bar, 0 to 100
 * @param lowPart place of the mark for the unlucky case, 0 to 100
 * @param verdict the class of its style, which is the word of the wire
 * @param verdictWords the verdict with its sign
 * @param planned whether the plan breeds on it
 */
public record DayCell(
    String day,
    String window,
    String share,
    String unlucky,
    long meanPart,
    long lowPart,
    String verdict,
    String verdictWords,
    boolean planned,
    List<Ground> reasons) {

  private static final int DAYS_AROUND = 1;
  private static final int LEAST_DAYS = 4;

  /** A reason for or against a day. */
  public record Ground(String effect, String text, String rule) {}

  /**
   * The days worth showing, in their order: those that can be bred on, and the ones around them.
   */
  static List<DayCell> all(Advice advice, Telling telling, Texts texts) {
    List<BreedingDay> inOrder =
        advice.breedingDays().stream().sorted(Comparator.comparing(BreedingDay::day)).toList();
    List<LocalDate> open =
        inOrder.stream()
            .filter(day -> day.verdict() != Verdict.AVOID || day.rank() <= LEAST_DAYS)
            .map(BreedingDay::day)
            .toList();
    if (open.isEmpty()) {
      return List.of();
    }
    LocalDate from = open.get(0).minusDays(DAYS_AROUND);
    LocalDate to = open.get(open.size() - 1).plusDays(DAYS_AROUND);
    return inOrder.stream()
        .filter(day -> !day.day().isBefore(from) && !day.day().isAfter(to))
        .map(day -> of(day, advice.plan(), telling, texts))
        .toList();
  }

  private static DayCell of(BreedingDay day, @Nullable Plan plan, Telling telling, Texts texts) {
    String verdict = day.verdict().word();
    Words words = telling.words();
    return new DayCell(
        words.shortDay(day.day()),
        words.window(day.from(), day.to()),
        Shares.number(day.eggShare().mean()),
        Shares.number(day.eggShare().unlucky()),
        Math.round(100 * day.eggShare().mean()),
        Math.round(100 * day.eggShare().unlucky()),
        verdict,
        texts.word("verdict", verdict),
        plan != null && plan.at().stream().anyMatch(at -> at.toLocalDate().equals(day.day())),
        day.reasons().stream().map(reason -> ground(reason, telling, texts)).toList());
  }

  private static Ground ground(Reason reason, Telling telling, Texts texts) {
    return new Ground(
        texts.word("effect", reason.effect()), telling.say(reason.text()), reason.rule());
  }
}
