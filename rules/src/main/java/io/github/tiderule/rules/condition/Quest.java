package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.condition.Attempt.Miss;

/**
 * What a search for facts that come near to meeting a rule is after; everything, unless it says
 * otherwise.
 */
interface Quest {

  /** Whether a fact may be one that there must be. */
  default boolean mayMatch(Object fact) {
    return true;
  }

  /** Whether a condition may be the one that is not met; no attempt that misses another counts. */
  default boolean mayMiss(Condition condition) {
    return true;
  }

  /** Whether a condition may be missed in this way; no attempt with another miss counts. */
  default boolean mayMiss(Miss miss) {
    return true;
  }

  /** Whether an attempt counts. */
  default boolean counts(Attempt attempt) {
    return true;
  }
}
