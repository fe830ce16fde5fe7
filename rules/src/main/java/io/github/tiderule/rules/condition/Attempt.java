package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.condition.Condition.Need;
import io.github.tiderule.rules.condition.expression.Check;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How far some facts go towards meeting a rule.
 *
 * @param match what the conditions matched, by place; empty places are null
 * @param misses the conditions that are not met, in order; none when the rule speaks
 */
record Attempt(@Nullable Object[] match, List<Miss> misses) {

  /** A condition without any fact of its kind is further off than one whose fact fails a check. */
  private static final int NOTHING_OF_ITS_KIND = 5;

  /**
   * A condition that is not met.
   *
   * @param index its place in the rule
   * @param nearest for a fact there should be, the one that comes nearest, if there is any of its
   *     kind; for a fact there must not be, the one there is
   * @param unmet the checks the nearest fact fails; empty where there is none
   */
  record Miss(int index, Condition condition, @Nullable Object nearest, List<Check> unmet) {

    /** Whether something is there that must not be. */
    boolean inTheWay() {
      return condition.need() == Need.NONE;
    }

    int distance() {
      return inTheWay() ? 1 : nearest == null ? NOTHING_OF_ITS_KIND : unmet.size();
    }
  }

  /** What is missed at one condition of the rule, if anything. */
  Optional<Miss> at(int index) {
    return misses.stream().filter(miss -> miss.index() == index).findFirst();
  }

  int distance() {
    return misses.stream().mapToInt(Miss::distance).sum();
  }

  /** Whether this one comes at least as near as another. */
  boolean asNearAs(@Nullable Attempt other) {
    return other == null
        || misses.size() < other.misses.size()
        || (misses.size() == other.misses.size() && distance() <= other.distance());
  }
}
