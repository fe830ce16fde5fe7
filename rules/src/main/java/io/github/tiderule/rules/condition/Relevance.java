package io.github.tiderule.rules.condition;

import io.github.tiderule.rules.conclusion.Conclusion;
import io.github.tiderule.rules.conclusion.reading.Level;
import io.github.tiderule.rules.conclusion.reading.Question;
import io.github.tiderule.rules.condition.Attempt.Miss;
import io.github.tiderule.rules.condition.Condition.Need;
import io.github.tiderule.rules.condition.expression.Check;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.parameter.Parameter;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Which near misses are worth telling. A rule about frozen semen is always one condition short for
 * a natural mating, and nobody wants to read that. Told is, beside at least one condition that
 * rests on something observed: an open question in the way; a value that was not given; a number
 * that comes near its threshold; a kind of observation of which there is none at all.
 */
final class Relevance {

  /** Numbers that together miss their thresholds by more than this share are not near. */
  static final double NEAR = 0.5;

  /** How far off a kind of observation is of which there is none. */
  static final double NONE_OF_ITS_KIND = 1;

  /** How far off a rule is that is not told of. */
  static final double NOT_TOLD = Double.POSITIVE_INFINITY;

  private static final String GIVEN = " != null";

  private Relevance() {}

  /** Whether conditions are such that missing one of them could be worth telling. */
  static boolean possible(List<Condition> conditions) {
    long observed =
        conditions.stream()
            .filter(condition -> condition.need() == Need.ONE && restsOn(condition.type()))
            .count();
    boolean learnable =
        observed > 1
            || conditions.stream()
                .anyMatch(
                    condition ->
                        condition.need() == Need.NONE
                            ? condition.type() == Question.class
                            : !restsOn(condition.type()) && asksWhetherGiven(condition));
    return observed > 0 && learnable;
  }

  private static boolean restsOn(Class<?> type) {
    return Observation.class.isAssignableFrom(type) || Conclusion.class.isAssignableFrom(type);
  }

  private static boolean asksWhetherGiven(Condition condition) {
    return condition.checks().stream().anyMatch(check -> check.text().endsWith(GIVEN));
  }

  /** Whether conditions have no fact of their kind, and so many or such that it is not told of. */
  static boolean hopeless(RuleConditions rule, Given given) {
    boolean lacking = false;
    for (Condition condition : rule.conditions()) {
      if (condition.need() != Need.NONE
          && condition.type() != Parameter.class
          && given.candidates(condition).isEmpty()) {
        if (lacking || !isObserved(condition.type())) {
          return true;
        }
        lacking = true;
      }
    }
    return false;
  }

  /** How far an attempt with one miss is from speaking, from 0; {@link #NOT_TOLD} where too far. */
  static double distance(RuleConditions rule, Given given, Attempt attempt) {
    if (!restsOnSomething(attempt)) {
      return NOT_TOLD;
    }
    Miss miss = attempt.misses().get(0);
    if (!mayBeTold(miss, given)) {
      return NOT_TOLD;
    }
    if (miss.inTheWay()) {
      return 0;
    }
    @Nullable Object nearest = miss.nearest();
    if (nearest == null) {
      return NONE_OF_ITS_KIND;
    }
    return onlyForWantOfAValue(miss) ? 0 : gap(rule, attempt, miss, nearest);
  }

  /** Whether there is a way to miss a condition that is worth telling, whatever the facts. */
  static boolean mayBeTold(Condition condition) {
    return condition.need() == Need.NONE
        ? condition.type().isAssignableFrom(Question.class)
        : isObserved(condition.type()) || asksWhetherGiven(condition);
  }

  /** Whether a miss may be worth telling, whatever the rest of the attempt. */
  static boolean mayBeTold(Miss miss, Given given) {
    @Nullable Object nearest = miss.nearest();
    if (miss.inTheWay()) {
      return nearest instanceof Question;
    }
    boolean observed = isObserved(miss.condition().type());
    if (nearest == null) {
      return observed && given.candidates(miss.condition()).isEmpty();
    }
    return onlyForWantOfAValue(miss)
        || (observed && miss.unmet().stream().allMatch(check -> check.comparison().isPresent()));
  }

  private static boolean isObserved(Class<?> type) {
    return Observation.class.isAssignableFrom(type) || type == Level.class;
  }

  private static boolean restsOnSomething(Attempt attempt) {
    for (@Nullable Object fact : attempt.match()) {
      if (fact instanceof Observation
          || (fact instanceof Conclusion conclusion && !conclusion.observations().isEmpty())) {
        return true;
      }
    }
    return false;
  }

  /** Whether all that fails are tests of a value that was not given, which rules ask for first. */
  private static boolean onlyForWantOfAValue(Miss miss) {
    List<String> wanting =
        miss.unmet().stream()
            .map(Check::text)
            .filter(text -> text.endsWith(GIVEN))
            .map(text -> text.substring(0, text.length() - GIVEN.length()))
            .toList();
    return !wanting.isEmpty()
        && miss.unmet().stream()
            .allMatch(check -> wanting.stream().anyMatch(check.text()::contains));
  }

  private static double gap(RuleConditions rule, Attempt attempt, Miss miss, Object nearest) {
    Map<String, @Nullable Object> names = rule.named(attempt.match());
    double sum =
        miss.unmet().stream()
            .mapToDouble(
                check ->
                    check
                        .comparison()
                        .map(comparison -> comparison.gap(nearest, names, rule.imports()))
                        .orElse(NOT_TOLD))
            .sum();
    return sum <= NEAR ? sum : NOT_TOLD;
  }
}
