package io.github.tiderule.engine.advice.course;

import io.github.tiderule.rules.conclusion.care.CheckState;
import io.github.tiderule.rules.kennel.Whose;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What to see to before a season.
 *
 * @param next the season to come; absent where no season of hers is on file
 * @param checks what is due, to be asked or in order, in that order
 */
public record BeforeSeason(@Nullable NextSeason next, List<Check> checks) {

  /**
   * When her next season is expected.
   *
   * @param from first day of the window
   * @param to last day of the window
   * @param intervals how many intervals of hers it rests on; 0 where common practice stands in
   * @param medianDays their median, in days; the middle of common practice where there are none
   * @param text in words
   */
  public record NextSeason(
      LocalDate expected,
      LocalDate from,
      LocalDate to,
      int intervals,
      double medianDays,
      Sentence text) {}

  /**
   * One thing to see to.
   *
   * @param veterinaryAct whether a vet does it
   * @param sources keys of the source list
   */
  public record Check(
      Whose whose,
      CheckState state,
      boolean veterinaryAct,
      Sentence text,
      String rule,
      List<String> sources) {

    public Check {
      sources = List.copyOf(sources);
    }
  }

  public BeforeSeason {
    checks = List.copyOf(checks);
  }
}
