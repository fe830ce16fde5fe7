package io.github.tiderule.rules.condition;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One condition of a rule: a fact of some kind that there must be, or must not be.
 *
 * @param type the kind of fact
 * @param place where the fact goes in a match
 * @param checks in the order written
 * @param with further facts that there must be, or must not be, together with this one
 */
public record Condition(
    Need need,
    Class<?> type,
    int place,
    List<Check> checks,
    List<Binding> bindings,
    List<Condition> with) {

  /** What a condition asks for. */
  public enum Need {
    /** A fact, which later conditions may refer to. */
    ONE,
    /** Some fact, whichever. */
    SOME,
    /** No such fact. */
    NONE
  }

  public Condition {
    checks = List.copyOf(checks);
    bindings = List.copyOf(bindings);
    with = List.copyOf(with);
  }

  /** Whether every check reads only what a match already holds, or what is found here. */
  boolean decidable(@Nullable Object[] match) {
    return decidable(match, new HashSet<>());
  }

  private boolean decidable(@Nullable Object[] match, Set<Integer> found) {
    found.add(place);
    bindings.forEach(binding -> found.add(binding.place()));
    for (Check check : checks) {
      for (int read : check.reads()) {
        if (match[read] == null && !found.contains(read)) {
          return false;
        }
      }
    }
    return with.stream().allMatch(condition -> condition.decidable(match, found));
  }
}
