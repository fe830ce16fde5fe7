package io.github.tiderule.rules.conclusion;

import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.List;

/** A reason for or against one day. */
public record DayReason(LocalDate day, Effect effect, List<String> observations, Sentence words)
    implements Conclusion {

  public DayReason {
    observations = List.copyOf(observations);
  }

  /** A reason that rests on some observations, or on none. */
  public static DayReason of(LocalDate day, Effect effect, Sentence words, String... observations) {
    return new DayReason(day, effect, List.of(observations), words);
  }
}
