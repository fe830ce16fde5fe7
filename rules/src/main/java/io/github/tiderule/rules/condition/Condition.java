package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.condition.expression.Binding;
import io.github.tiderule.rules.condition.expression.Check;
import io.github.tiderule.rules.parameter.Parameter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One condition of a rule: a fact of some kind that there must be, or must not be.
 *
 * @param type the kind of fact
 * @param place where the fact goes in a match
 * @param checks in the order written
 * @param with further facts that there must be, or must not be, together with this one
 * @param needed the places of a match that its checks read and that earlier conditions must fill
 * @param parameter the id of the parameter it asks for, if it asks for one by its id
 */
public record Condition(
    Need need,
    Class<?> type,
    int place,
    List<Check> checks,
    List<Binding> bindings,
    List<Condition> with,
    List<Integer> needed,
    Optional<String> parameter) {

  private static final String ID_IS = "id == \"";

  /** What a condition asks for. */
  public enum Need {
    /** A fact, which later conditions may refer to. */
    ONE,
    /** Some fact, whichever. */
    SOME,
    /** No such fact. */
    NONE
  }

  /** A condition; what it needs of earlier ones is worked out once. */
  public Condition(
      Need need,
      Class<?> type,
      int place,
      List<Check> checks,
      List<Binding> bindings,
      List<Condition> with) {
    this(
        need,
        type,
        place,
        checks,
        bindings,
        with,
        needed(place, checks, bindings, with),
        parameter(type, checks));
  }

  public Condition {
    checks = List.copyOf(checks);
    bindings = List.copyOf(bindings);
    with = List.copyOf(with);
    needed = List.copyOf(needed);
  }

  /** Whether it asks for a parameter by its id and for nothing more. */
  boolean isParameter() {
    return parameter.isPresent() && checks.size() == 1;
  }

  /** Whether every check reads only what a match already holds, or what is found here. */
  boolean decidable(@Nullable Object[] match) {
    for (int read : needed) {
      if (match[read] == null) {
        return false;
      }
    }
    return true;
  }

  private static Optional<String> parameter(Class<?> type, List<Check> checks) {
    String text = checks.isEmpty() ? "" : checks.get(0).text();
    return type == Parameter.class && text.startsWith(ID_IS) && text.endsWith("\"")
        ? Optional.of(text.substring(ID_IS.length(), text.length() - 1))
        : Optional.empty();
  }

  private static List<Integer> needed(
      int place, List<Check> checks, List<Binding> bindings, List<Condition> with) {
    Set<Integer> found = new HashSet<>();
    List<Integer> needed = new ArrayList<>(needed(place, checks, bindings, found));
    for (Condition one : with) {
      needed.addAll(needed(one.place(), one.checks(), one.bindings(), found));
    }
    return needed.stream().distinct().toList();
  }

  private static List<Integer> needed(
      int place, List<Check> checks, List<Binding> bindings, Set<Integer> found) {
    found.add(place);
    bindings.forEach(binding -> found.add(binding.place()));
    return checks.stream()
        .flatMap(check -> check.reads().stream())
        .filter(read -> !found.contains(read))
        .toList();
  }
}
