package io.github.tiderule.api.page.plan;

import io.github.tiderule.api.report.text.BestDays;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Reason;
import java.util.List;

/**
 * One day of the strip.
 *
 * @param on as in {@code 2027-01-14}
 * @param share eggs in 100, in words
 * @param unlucky the share it falls short of one time in ten, in words
 * @param meanPart width of the bar, 0 to 100
 * @param lowPart place of the mark for the unlucky case, 0 to 100
 * @param verdict the class of its style, which is the word of the wire
 * @param verdictWords the verdict with its sign
 * @param planned whether the plan breeds on it
 */
public record DayCell(
    String on,
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

  /** A reason for or against a day. */
  public record Ground(String effect, String text, String rule) {}

  /** The days worth showing, in their order. */
  static List<DayCell> all(Advice advice, Telling telling, Texts texts) {
    return BestDays.of(advice, BestDays.MOST).stream()
        .map(day -> of(day, advice, telling, texts))
        .toList();
  }

  private static DayCell of(BreedingDay day, Advice advice, Telling telling, Texts texts) {
    String verdict = day.verdict().word();
    Words words = telling.words();
    return new DayCell(
        day.day().toString(),
        words.shortDay(day.day()),
        words.window(day.from(), day.to()),
        Shares.number(day.eggShare().mean()),
        Shares.number(day.eggShare().unlucky()),
        Math.round(100 * day.eggShare().mean()),
        Math.round(100 * day.eggShare().unlucky()),
        verdict,
        texts.word("verdict", verdict),
        BestDays.isPlanned(advice, day),
        day.reasons().stream().map(reason -> ground(reason, telling, texts)).toList());
  }

  private static Ground ground(Reason reason, Telling telling, Texts texts) {
    return new Ground(
        texts.word("effect", reason.effect()), telling.say(reason.text()), reason.rule());
  }
}
