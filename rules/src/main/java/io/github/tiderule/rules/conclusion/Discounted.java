package io.github.tiderule.rules.conclusion;

import java.util.List;

/**
 * An observation that is used, but trusted less.
 *
 * @param direction which way it is likely to be wrong
 */
public record Discounted(String observation, Direction direction, String sentence)
    implements Conclusion {

  /** Which way a result is likely to be wrong. */
  public enum Direction {
    READS_LOW,
    EITHER
  }

  @Override
  public List<String> observations() {
    return List.of(observation);
  }
}
