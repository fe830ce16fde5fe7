package io.github.tiderule.api.page.reasoning;

import io.github.tiderule.api.picture.Curve;
import io.github.tiderule.api.picture.CurveInput;
import io.github.tiderule.api.picture.CurveRow;
import io.github.tiderule.api.picture.CurveSize;
import io.github.tiderule.api.report.text.Shares;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.reasoning.Influence;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * An observation as it was entered and as it is taken.
 *
 * @param asReported as it was written
 * @param ngPerMl as it is reasoned with, in ng/mL; empty where it is no concentration or its unit
 *     is missing
 * @param nmolPerL the same in nmol/L
 * @param series laboratory and method; empty where there is none
 * @param use {@code taken}, {@code held}, {@code discounted} or {@code set-aside}
 * @param notes why it is not taken simply as reported
 * @param weight what it does to the estimate; absent where the timeline does not use it
 */
public record Evidence(
    String id,
    String what,
    String at,
    String asReported,
    String ngPerMl,
    String nmolPerL,
    String series,
    String use,
    List<Note> notes,
    @Nullable Weight weight) {

  /** Why an observation is not taken simply as reported, by which rule. */
  public record Note(String text, String rule) {}

  /**
   * What an observation does to the estimate.
   *
   * @param shift hours by which it moves the median of ovulation, signed
   * @param width hours by which it widens the span of 9 times in 10, signed
   * @param odd chance that it does not belong with the others, in 100
   */
  public record Weight(String shift, String width, String odd) {}

  /** What a filter keeps, in time order. */
  static List<Evidence> all(
      CycleRecord cycle, Reasoning reasoning, Filter filter, Telling telling) {
    Advice advice = reasoning.advice();
    return Curve.of(CurveInput.of(cycle, reasoning, telling), CurveSize.SCREEN).rows().stream()
        .filter(row -> filter.keepsAny(List.of(row.observation())))
        .filter(row -> filter.keepsDay(row.at().toLocalDate()))
        .filter(row -> filter.rule().isEmpty() || isUsedBy(filter.rule(), row, advice))
        .map(row -> of(row, advice, telling))
        .toList();
  }

  private static boolean isUsedBy(String rule, CurveRow row, Advice advice) {
    return advice.reasoning().trace().stream()
            .anyMatch(
                line -> line.rule().equals(rule) && line.matched().contains(row.observation()))
        || advice.reasoning().observationNotes().stream()
            .anyMatch(
                note -> note.rule().equals(rule) && note.observation().equals(row.observation()));
  }

  private static Evidence of(CurveRow row, Advice advice, Telling telling) {
    return new Evidence(
        row.observation(),
        row.what(),
        telling.words().shortMoment(row.at()),
        row.asReported(),
        row.ngPerMl(),
        row.nmolPerL(),
        row.series(),
        row.use(),
        advice.reasoning().observationNotes().stream()
            .filter(note -> note.observation().equals(row.observation()))
            .map(note -> new Note(telling.say(note.text()), note.rule()))
            .toList(),
        advice.reasoning().influence().stream()
            .filter(one -> one.observation().equals(row.observation()))
            .findFirst()
            .map(one -> weight(one, telling.words()))
            .orElse(null));
  }

  private static Weight weight(Influence influence, Words words) {
    return new Weight(
        words.number(signed(influence.ovulationShiftHours())),
        words.number(signed(influence.widthChangeHours())),
        Shares.number(influence.oddProbability()));
  }

  private static String signed(double hours) {
    String tenths = String.format(Locale.ROOT, "%+.1f", hours).replace('-', '−');
    return tenths.substring(1).equals("0.0") ? "0.0" : tenths;
  }
}
