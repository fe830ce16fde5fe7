package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.parameter.Parameter;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The facts of one run of a stage, its parameters and its conclusions among them. */
public final class Given {

  private final Parameters parameters;
  private final List<Object> facts;
  private final Map<Class<?>, List<Object>> byType = new HashMap<>();

  /**
   * @param facts in an order of their own; equal ones count once
   */
  public Given(Parameters parameters, Collection<?> facts) {
    this.parameters = parameters;
    Set<Object> distinct = new LinkedHashSet<>(facts);
    this.facts = List.copyOf(distinct);
  }

  /** The facts that may meet a condition. */
  List<?> candidates(Condition condition) {
    if (condition.type() != Parameter.class) {
      return byType.computeIfAbsent(
          condition.type(), type -> facts.stream().filter(type::isInstance).toList());
    }
    return condition.parameter().isPresent()
        ? parameters.find(condition.parameter().get()).map(List::of).orElse(List.of())
        : List.copyOf(parameters.all());
  }
}
