package io.github.tiderule.rules;

import io.github.tiderule.rules.condition.Condition;
import io.github.tiderule.rules.condition.Condition.Need;
import io.github.tiderule.rules.condition.RuleConditions;
import io.github.tiderule.rules.condition.expression.Binding;
import io.github.tiderule.rules.condition.expression.Check;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.drools.model.Constraint;
import org.drools.model.Pattern;
import org.drools.model.Rule;
import org.drools.model.SingleConstraint;
import org.drools.model.Variable;

/** Takes a compiled rule apart into its conditions. */
final class ConditionReader {

  /** A rule has conditions of a kind that is not explained one by one. */
  static final class Unreadable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Unreadable(String rule, Object what) {
      super("rule " + rule + " has a condition that cannot be explained: " + what);
    }
  }

  private final String rule;
  private final Map<String, Integer> places = new LinkedHashMap<>();

  private ConditionReader(String rule) {
    this.rule = rule;
  }

  /**
   * The conditions of a rule.
   *
   * @throws Unreadable if the rule uses more than facts that there must or must not be
   */
  static RuleConditions read(Rule rule, Map<String, Class<?>> imports) {
    ConditionReader reader = new ConditionReader(rule.getName());
    List<Condition> conditions =
        rule.getView().getSubConditions().stream()
            .filter(one -> one.getType() != org.drools.model.Condition.Type.CONSEQUENCE)
            .map(reader::condition)
            .toList();
    return new RuleConditions(
        rule.getName(), conditions, reader.places, reader.places.size(), imports);
  }

  private Condition condition(org.drools.model.Condition condition) {
    return switch (condition.getType()) {
      case PATTERN -> condition((Pattern<?>) condition, Need.ONE, List.of());
      case NOT -> group(condition, Need.NONE);
      case EXISTS -> group(condition, Need.SOME);
      default -> throw new Unreadable(rule, condition.getType());
    };
  }

  /** Facts that there must, or must not, be together. */
  private Condition group(org.drools.model.Condition condition, Need need) {
    List<org.drools.model.Condition> inner = condition.getSubConditions();
    if (inner.size() == 1 && inner.get(0).getType() == org.drools.model.Condition.Type.AND) {
      inner = inner.get(0).getSubConditions();
    }
    List<Pattern<?>> patterns = new ArrayList<>();
    for (org.drools.model.Condition one : inner) {
      if (!(one instanceof Pattern<?> pattern)) {
        throw new Unreadable(rule, one.getType());
      }
      patterns.add(pattern);
    }
    List<Condition> with =
        patterns.stream().skip(1).map(one -> condition(one, Need.ONE, List.of())).toList();
    return condition(patterns.get(0), need, with);
  }

  private Condition condition(Pattern<?> pattern, Need need, List<Condition> with) {
    Variable<?> variable = pattern.getPatternVariable();
    List<Binding> bindings =
        pattern.getBindings().stream()
            .map(
                binding ->
                    new Binding(
                        place(binding.getBoundVariable()),
                        places(binding.getInputVariables()),
                        binding::eval))
            .toList();
    return new Condition(
        need, variable.getType(), place(variable), checks(pattern.getConstraint()), bindings, with);
  }

  private int place(Variable<?> variable) {
    return places.computeIfAbsent(variable.getName(), name -> places.size());
  }

  private List<Integer> places(Variable<?>[] variables) {
    return Arrays.stream(variables).map(this::place).toList();
  }

  private List<Check> checks(Constraint constraint) {
    return switch (constraint.getType()) {
      case MULTIPLE, AND ->
          constraint.getChildren().stream().flatMap(child -> checks(child).stream()).toList();
      case OR -> List.of(anyOf(constraint));
      case SINGLE -> {
        SingleConstraint single = (SingleConstraint) constraint;
        yield single == SingleConstraint.TRUE ? List.of() : List.of(check(single));
      }
    };
  }

  private Check check(SingleConstraint constraint) {
    return new Check(
        constraint.predicateInformation().getStringConstraint(),
        places(constraint.getVariables()),
        constraint.getPredicate()::test);
  }

  private Check anyOf(Constraint constraint) {
    List<List<Check>> alternatives = constraint.getChildren().stream().map(this::checks).toList();
    Set<Integer> reads = new LinkedHashSet<>();
    alternatives.forEach(all -> all.forEach(check -> reads.addAll(check.reads())));
    List<Integer> order = List.copyOf(reads);
    String text =
        alternatives.stream()
            .map(all -> all.stream().map(Check::text).collect(Collectors.joining(" && ")))
            .collect(Collectors.joining(" || "));
    return new Check(
        text,
        order,
        values -> {
          for (List<Check> all : alternatives) {
            if (holdAll(all, order, values)) {
              return true;
            }
          }
          return false;
        });
  }

  private static boolean holdAll(List<Check> all, List<Integer> order, Object[] values)
      throws Exception {
    for (Check check : all) {
      Object[] own = check.reads().stream().map(place -> values[order.indexOf(place)]).toArray();
      if (!check.test().holds(own)) {
        return false;
      }
    }
    return true;
  }
}
