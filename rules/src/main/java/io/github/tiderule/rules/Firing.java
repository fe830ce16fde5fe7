package io.github.tiderule.rules;

import io.github.tiderule.rules.conclusion.Conclusion;
import java.util.Comparator;
import java.util.List;

/**
 * One firing of one rule whose conclusions still stand at the end of the stage.
 *
 * @param observations ids of the observations its conditions matched, without repeats
 * @param concluded what it concluded, at least one
 * @param matched the facts its conditions matched
 */
public record Firing(
    RuleCard rule, List<String> observations, List<Conclusion> concluded, List<Object> matched) {

  /** By id, then by what was matched and concluded. */
  static final Comparator<Firing> ORDER =
      Comparator.comparing((Firing firing) -> firing.rule().id())
          .thenComparing(firing -> firing.observations().toString())
          .thenComparing(firing -> firing.concluded().toString());

  /** The rule and what it concluded; the facts it matched would drown both. */
  @Override
  public String toString() {
    return "Firing[rule="
        + rule
        + ", observations="
        + observations
        + ", concluded="
        + concluded
        + "]";
  }
}
