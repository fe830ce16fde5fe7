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
   * @param kinds places, among all kinds asked for, of those that there must be and that rules do
   *     not conclude
   * @param parameters ids of the parameters it asks for
   */
  private record OfRule(int[] kinds, List<String> parameters) {

    private boolean met(boolean[] present) {
      for (int kind : kinds) {
        if (!present[kind]) {
          return false;
        }
      }
      return true;
    }
  }

  private final List<Class<?>> kinds;
  private final List<OfRule> rules;

  private Needs(List<Class<?>> kinds, List<OfRule> rules) {
    this.kinds = kinds;
    this.rules = rules;
  }

  /**
   * The needs of some rules; empty where one of them asks for parameters otherwise than by name.
   */
  public static Optional<Needs> ofRules(Collection<RuleConditions> rules) {
    List<OfRule> all = new ArrayList<>();
    List<Class<?>> everyKind = new ArrayList<>();
    for (RuleConditions rule : rules) {
      List<Class<?>> kinds = new ArrayList<>();
      Set<String> parameters = new LinkedHashSet<>();
      for (Condition condition : rule.conditions()) {
        if (!collect(condition, kinds, parameters)) {
          return Optional.empty();
        }
      }
      all.add(new OfRule(places(kinds, everyKind), List.copyOf(parameters)));
    }
    return Optional.of(new Needs(List.copyOf(everyKind), all));
  }

  private static int[] places(List<Class<?>> kinds, List<Class<?>> everyKind) {
    kinds.stream().filter(kind -> !everyKind.contains(kind)).distinct().forEach(everyKind::add);
    return kinds.stream().mapToInt(everyKind::indexOf).toArray();
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
  public List<Parameter> of(List<Parameter> parameters, Collection<?> facts) {
    boolean[] present = present(facts);
    Set<String> wanted = new HashSet<>();
    for (OfRule rule : rules) {
      if (rule.met(present)) {
        wanted.addAll(rule.parameters());
      }
    }
    List<Parameter> chosen = new ArrayList<>(wanted.size());
    for (Parameter parameter : parameters) {
      if (wanted.contains(parameter.id())) {
        chosen.add(parameter);
      }
    }
    return chosen;
  }

  /** Of every kind that is asked for, whether there is one. */
  private boolean[] present(Collection<?> facts) {
    Set<Class<?>> types = new HashSet<>();
    for (Object fact : facts) {
      types.add(fact.getClass());
    }
    boolean[] present = new boolean[kinds.size()];
    for (Class<?> type : types) {
      for (int i = 0; i < present.length; i++) {
        present[i] |= kinds.get(i).isAssignableFrom(type);
      }
    }
    return present;
  }
}
