package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.conclusion.care.CaesareanVerdict;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.List;

/**
 * Days for a planned caesarean, for a vet to decide about.
 *
 * @param days in the order of time
 * @param text how to read them
 */
public record Caesarean(List<Day> days, Sentence text) {

  public Caesarean {
    days = List.copyOf(days);
  }

  /**
   * One local day.
   *
   * @param daysAfterOvulation from the local day of the middle of ovulation
   * @param chanceEarly probability that its noon lies before 61 days after ovulation
   * @param chanceBegun probability that she whelps before its noon
   */
  public record Day(
      LocalDate day,
      int daysAfterOvulation,
      double chanceEarly,
      double chanceBegun,
      CaesareanVerdict verdict,
      Sentence text,
      String rule,
      List<String> sources) {

    public Day {
      sources = List.copyOf(sources);
    }
  }
}
