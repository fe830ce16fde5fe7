package io.github.tiderule.rules.conclusion.care;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a rule of thumb makes of a season: weak evidence, told beside the plan and never in it.
 *
 * @param from the day it counts from; absent for a mating to come, and where it says nothing yet
 * @param after days after that; none where it says nothing yet
 * @param but what limits it here; absent where nothing does
 */
public record RuleOfThumb(
    Thumb thumb,
    Sentence words,
    @Nullable LocalDate from,
    List<Double> after,
    List<String> observations,
    @Nullable Sentence but)
    implements Conclusion {

  public RuleOfThumb {
    after = List.copyOf(after);
    observations = List.copyOf(observations);
  }

  /** Counted from a day that an observation is of. */
  public static RuleOfThumb of(
      Thumb thumb, Sentence words, String observation, LocalDate from, double days) {
    return new RuleOfThumb(thumb, words, from, List.of(days), List.of(observation), null);
  }

  /** Counted from a day. */
  public static RuleOfThumb of(
      Thumb thumb, Sentence words, LocalDate from, double first, double second, double third) {
    return new RuleOfThumb(thumb, words, from, List.of(first, second, third), List.of(), null);
  }

  /** Counted from a mating to come. */
  public static RuleOfThumb of(Thumb thumb, Sentence words, double days) {
    return new RuleOfThumb(thumb, words, null, List.of(days), List.of(), null);
  }

  /** One that says nothing yet. */
  public static RuleOfThumb of(Thumb thumb, Sentence words) {
    return new RuleOfThumb(thumb, words, null, List.of(), List.of(), null);
  }

  /** The same with what limits it here. */
  public RuleOfThumb but(Sentence limit) {
    return new RuleOfThumb(thumb, words, from, after, observations, limit);
  }
}
