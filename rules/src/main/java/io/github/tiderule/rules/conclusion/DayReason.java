package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.List;

/** A reason for or against one day. */
public record DayReason(
    LocalDate day, Effect effect, About about, List<String> observations, Sentence words)
    implements Conclusion {

  public DayReason {
    observations = List.copyOf(observations);
  }

  /** A reason in nothing that more hangs on than its words. */
  public DayReason(LocalDate day, Effect effect, List<String> observations, Sentence words) {
    this(day, effect, About.OTHER, observations, words);
  }

  /** A reason that rests on some observations, or on none. */
  public static DayReason of(LocalDate day, Effect effect, Sentence words, String... observations) {
    return new DayReason(day, effect, List.of(observations), words);
  }

  /** A reason in what a dose holds. */
  public static DayReason ofDose(LocalDate day, Effect effect, Sentence words) {
    return new DayReason(day, effect, About.DOSE, List.of(), words);
  }

  /** A day that meets several times fewer eggs than the best one. */
  public static DayReason farBelowBest(LocalDate day, Sentence words) {
    return new DayReason(day, Effect.OPPOSES, About.FAR_BELOW_BEST, List.of(), words);
  }

  /** A day that is closed until a test has been made. */
  public static DayReason untilTested(LocalDate day, List<String> observations, Sentence words) {
    return new DayReason(day, Effect.VETOES, About.TEST_FIRST, observations, words);
  }
}
