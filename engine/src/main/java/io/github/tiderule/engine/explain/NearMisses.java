package io.github.tiderule.engine.explain;

import io.github.tiderule.engine.advice.reasoning.NotFired;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.rules.Account;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.conclusion.Awaited;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The rules one condition short of speaking. */
public final class NearMisses {

  /** How many rules that no other rule waits for are told of. */
  static final int MOST = 12;

  private final RuleBase rules;
  private final List<Awaited> awaited;
  private final List<Account.NearMiss> near;

  private NearMisses(RuleBase rules, List<Awaited> awaited, List<Account.NearMiss> near) {
    this.rules = rules;
    this.awaited = awaited;
    this.near = near;
  }

  /**
   * Of the stages that were run.
   *
   * @param runs each stage once
   */
  public static NearMisses of(RuleBase rules, List<StageRun> runs) {
    List<Awaited> awaited =
        runs.stream().flatMap(run -> run.all(Awaited.class).stream()).distinct().toList();
    Set<String> told = awaited.stream().map(Awaited::rule).collect(Collectors.toSet());
    List<Account.NearMiss> near =
        runs.stream()
            .flatMap(run -> run.account().nearMisses().stream())
            .filter(miss -> !told.contains(miss.rule().id()))
            .sorted(Account.NearMiss.ORDER)
            .toList();
    return new NearMisses(rules, awaited, near);
  }

  /** What rules themselves say they wait for, then at most {@value #MOST} others, nearest first. */
  public List<NotFired> told() {
    return Stream.concat(
            awaited.stream()
                .map(one -> new NotFired(one.rule(), title(one.rule()), one.missing()))
                .sorted(
                    Comparator.comparing(NotFired::rule)
                        .thenComparing(one -> one.missing().toString())),
            near.stream()
                .limit(MOST)
                .map(miss -> new NotFired(miss.rule().id(), miss.rule().title(), miss.missing())))
        .toList();
  }

  /** How many near misses are left out. */
  public int untold() {
    return Math.max(0, near.size() - MOST);
  }

  private String title(String rule) {
    return rules.cards().stream()
        .filter(card -> card.id().equals(rule))
        .map(RuleCard::title)
        .findFirst()
        .orElse("");
  }
}
