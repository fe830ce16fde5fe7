package io.github.tiderule.engine.advice.reasoning;

import io.github.tiderule.rules.fact.Worded;

/** How an observation is taken that is not taken simply as reported. */
public enum ObservationUse implements Worded {
  /** Asked about, and not used until answered. */
  HELD("held"),
  /** Used with less weight. */
  DISCOUNTED("discounted"),
  /** Read in another unit. */
  CONVERTED("converted"),
  /** Kept out of the estimate. */
  SET_ASIDE("set-aside");

  private final String word;

  ObservationUse(String word) {
    this.word = word;
  }

  @Override
  public String word() {
    return word;
  }
}
