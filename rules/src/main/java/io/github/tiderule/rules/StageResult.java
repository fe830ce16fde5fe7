package io.github.tiderule.rules;

import io.github.tiderule.rules.conclusion.Conclusion;
import java.util.List;
import java.util.stream.Stream;

/** What one stage concluded, in an order that does not depend on the order of the facts. */
public record StageResult(List<Firing> firings) {

  /** What several stages concluded, as if it were one. */
  public static StageResult together(List<StageResult> results) {
    return new StageResult(
        results.stream()
            .flatMap(result -> result.firings().stream())
            .sorted(Firing.ORDER)
            .toList());
  }

  /** All conclusions of one kind, in order. */
  public <T extends Conclusion> List<T> all(Class<T> kind) {
    return firings.stream()
        .flatMap(firing -> firing.concluded().stream())
        .filter(kind::isInstance)
        .map(kind::cast)
        .distinct()
        .toList();
  }

  /** All conclusions of one kind, each with the rule that drew it. */
  public <T extends Conclusion> Stream<Ruled<T>> ruled(Class<T> kind) {
    return firings.stream()
        .flatMap(
            firing ->
                firing.concluded().stream()
                    .filter(kind::isInstance)
                    .map(conclusion -> new Ruled<>(firing.rule(), kind.cast(conclusion))));
  }

  /** A conclusion with the rule that drew it. */
  public record Ruled<T extends Conclusion>(RuleCard rule, T conclusion) {}
}
