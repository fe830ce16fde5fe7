package io.github.tiderule.rules.conclusion;

import java.time.LocalDate;
import java.util.List;

/** A reason for or against one day. */
public record DayReason(LocalDate day, Effect effect, List<String> observations, String sentence)
    implements Conclusion {

  public DayReason {
    observations = List.copyOf(observations);
  }

  /** A reason that rests on some observations, or on none. */
  public static DayReason of(
      LocalDate day, Effect effect, String sentence, String... observations) {
    return new DayReason(day, effect, List.of(observations), sentence);
  }
}
