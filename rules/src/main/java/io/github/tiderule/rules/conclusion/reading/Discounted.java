package io.github.tiderule.rules.conclusion.reading;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.List;

/**
 * An observation that is used, but trusted less.
 *
 * @param direction which way it is likely to be wrong
 */
public record Discounted(String observation, Direction direction, Sentence words)
    implements Conclusion {

  /** Which way a result is likely to be wrong. */
  public enum Direction {
    /** Lower than the truth. */
    READS_LOW,
    /** Off by itself, either way. */
    EITHER,
    /** Right beside others of its series, but the scale of the whole series is uncertain. */
    SCALE
  }

  @Override
  public List<String> observations() {
    return List.of(observation);
  }
}
