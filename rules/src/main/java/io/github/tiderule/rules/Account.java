package io.github.tiderule.rules;

import io.github.tiderule.rules.condition.ConditionSeen;
import io.github.tiderule.rules.condition.Explanation;
import io.github.tiderule.rules.condition.Given;
import io.github.tiderule.rules.condition.RuleConditions;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Why the rules of one stage spoke or kept silent over some facts. Not for use by many threads. */
public final class Account {

  private final Map<String, RuleCard> cards;
  private final Map<String, RuleConditions> conditions;
  private final Given given;
  private final Set<String> spoke;

  Account(
      Map<String, RuleCard> cards,
      Map<String, RuleConditions> conditions,
      Given given,
      StageResult result) {
    this.cards = cards;
    this.conditions = conditions;
    this.given = given;
    this.spoke =
        result.firings().stream().map(firing -> firing.rule().id()).collect(Collectors.toSet());
  }

  /** Everything of one run that may meet a condition: its facts and what it concluded. */
  static List<?> facts(Collection<?> facts, StageResult result) {
    return Stream.concat(
            facts.stream(), result.firings().stream().flatMap(one -> one.concluded().stream()))
        .toList();
  }

  /** The rules one condition short of speaking, the nearest first. */
  public List<NearMiss> nearMisses() {
    return cards.values().stream()
        .filter(card -> !spoke.contains(card.id()))
        .flatMap(card -> nearMiss(card).stream())
        .sorted(NearMiss.ORDER)
        .toList();
  }

  private Optional<NearMiss> nearMiss(RuleCard card) {
    return explanation(card.id())
        .flatMap(Explanation::lack)
        .map(lack -> new NearMiss(card, lack.missing(), lack.distance()));
  }

  /** The conditions of a firing with what each saw; empty where they cannot be told one by one. */
  public List<ConditionSeen> conditions(Firing firing) {
    return explanation(firing.rule().id())
        .map(explanation -> explanation.conditions(firing.matched()))
        .orElse(List.of());
  }

  /**
   * The conditions of a rule with what each saw, for the facts that come nearest to meeting it;
   * empty where they cannot be told one by one.
   */
  public List<ConditionSeen> conditions(String rule) {
    return explanation(rule).map(Explanation::conditions).orElse(List.of());
  }

  /** Whether a rule's conditions are all met; for holding this account against the rule engine. */
  boolean met(String rule) {
    return explanation(rule).orElseThrow().met();
  }

  private Optional<Explanation> explanation(String rule) {
    return Optional.ofNullable(conditions.get(rule))
        .map(found -> new Explanation(Objects.requireNonNull(found), given));
  }

  /** A rule that one more thing would make speak. */
  public record NearMiss(RuleCard rule, Sentence missing, double distance) {

    /** The nearest first, then by chapter and id. */
    public static final Comparator<NearMiss> ORDER =
        Comparator.comparingDouble(NearMiss::distance)
            .thenComparing(NearMiss::rule, RuleCard.ORDER);
  }
}
