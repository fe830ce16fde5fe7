package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.BreedingDay;
import io.github.tiderule.engine.advice.Plan;
import io.github.tiderule.engine.advice.Reason;
import io.github.tiderule.rules.source.Sources;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/**
 * A day she could be bred on, with every reason for and against it.
 *
 * @param on as on the wire, to link to
 * @param share eggs in 100
 * @param unlucky the share it falls short of one time in ten
 * @param verdict the class of its style
 * @param planned whether the plan breeds on it
 */
public record Day(
    String on,
    String words,
    String window,
    String share,
    String unlucky,
    String verdict,
    String verdictWords,
    boolean planned,
    List<Ground> grounds) {

  /** A reason for or against a day. */
  public record Ground(
      String effect, String text, String rule, List<Named> from, List<Cited> sources) {}

  /** The days a filter keeps, in their order. */
  static List<Day> all(
      Advice advice, Sources sources, Filter filter, Telling telling, Texts texts) {
    Words words = telling.words();
    return advice.breeding().days().stream()
        .sorted(Comparator.comparing(BreedingDay::day))
        .filter(day -> filter.keepsDay(day.day()))
        .map(
            day ->
                new Day(
                    day.day().toString(),
                    words.shortDay(day.day()),
                    words.window(day.from(), day.to()),
                    Shares.number(day.eggShare().mean()),
                    Shares.number(day.eggShare().unlucky()),
                    day.verdict().word(),
                    texts.word("verdict", day.verdict().word()),
                    isPlanned(advice, day.day()),
                    day.reasons().stream()
                        .filter(reason -> filter.keepsRule(reason.rule()))
                        .filter(reason -> filter.keepsAny(reason.observations()))
                        .map(reason -> ground(reason, sources, telling, texts))
                        .toList()))
        .filter(
            day ->
                (filter.rule().isEmpty() && filter.observation().isEmpty())
                    || !day.grounds().isEmpty())
        .toList();
  }

  private static boolean isPlanned(Advice advice, LocalDate day) {
    Plan plan = advice.breeding().plan();
    return plan != null && plan.at().stream().anyMatch(at -> at.toLocalDate().equals(day));
  }

  private static Ground ground(Reason reason, Sources sources, Telling telling, Texts texts) {
    return new Ground(
        texts.word("effect", reason.effect()),
        telling.say(reason.text()),
        reason.rule(),
        Named.all(reason.observations(), telling),
        Cited.all(reason.sources(), sources));
  }
}
