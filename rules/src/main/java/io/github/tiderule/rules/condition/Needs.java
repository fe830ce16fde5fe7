package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.condition.Condition.Need;
import io.github.tiderule.rules.parameter.Parameter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the rules of a stage cannot do without. A rule that asks for a kind of fact that no rule
 * concludes keeps silent where there is none, and so needs none of its parameters either.
 */
public final class Needs {

  /**
   * One rule.
   *
   * @param kinds kinds of facts that there must be and that rules do not conclude
   * @param parameters ids of the parameters it asks for
   */
  private record OfRule(List<Class<?>> kinds, Set<String> parameters) {

    private boolean met(Collection<?> facts) {
      for (Class<?> kind : kinds) {
        if (facts.stream().noneMatch(kind::isInstance)) {
          return false;
        }
      }
      return true;
    }
  }

  private final List<OfRule> rules;

  private Needs(List<OfRule> rules) {
    this.rules = rules;
  }

  /**
   * The needs of some rules; empty where one of them asks for parameters otherwise than by name.
   */
  public static Optional<Needs> ofRules(Collection<RuleConditions> rules) {
    List<OfRule> all = new ArrayList<>();
    for (RuleConditions rule : rules) {
      List<Class<?>> kinds = new ArrayList<>();
      Set<String> parameters = new LinkedHashSet<>();
      for (Condition condition : rule.conditions()) {
        if (!collect(condition, kinds, parameters)) {
          return Optional.empty();
        }
      }
      all.add(new OfRule(List.copyOf(kinds), parameters));
    }
    return Optional.of(new Needs(all));
  }

  private static boolean collect(
      Condition condition, List<Class<?>> kinds, Set<String> parameters) {
    if (condition.type().isAssignableFrom(Parameter.class)) {
      condition.parameter().ifPresent(parameters::add);
      return condition.parameter().isPresent();
    }
    if (condition.need() != Need.NONE && !mayBeConcluded(condition.type())) {
      kinds.add(condition.type());
    }
    return condition.with().stream()
        .allMatch(
            one ->
                collect(
                    one, condition.need() == Need.NONE ? new ArrayList<>() : kinds, parameters));
  }

  private static boolean mayBeConcluded(Class<?> type) {
    return Conclusion.class.isAssignableFrom(type) || type.isAssignableFrom(Conclusion.class);
  }

  /** Those of some parameters that could matter to some facts. */
  public List<Parameter> of(Collection<Parameter> parameters, Collection<?> facts) {
    Set<String> wanted = new HashSet<>();
    for (OfRule rule : rules) {
      if (rule.met(facts)) {
        wanted.addAll(rule.parameters());
      }
    }
    return parameters.stream().filter(parameter -> wanted.contains(parameter.id())).toList();
  }
}
