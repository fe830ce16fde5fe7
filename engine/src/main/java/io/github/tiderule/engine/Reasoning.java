package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.reasoning.TraceLine;
import io.github.tiderule.rules.Account;
import io.github.tiderule.rules.Firing;
import io.github.tiderule.rules.RuleCard;
import io.github.tiderule.rules.Stage;
import io.github.tiderule.rules.condition.ConditionSeen;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * An advice with the means to ask why: what each condition of a rule saw, whether the rule spoke or
 * kept silent. Conditions are worked out when they are asked for. Not for use by many threads.
 */
public final class Reasoning {

  private final Advice advice;
  private final List<RuleCard> cards;
  private final Map<Stage, Account> accounts;
  private final Map<Integer, Firing> firings;
  private final int nearMissesUntold;
  private final @Nullable Posterior posterior;

  Reasoning(
      Advice advice,
      List<RuleCard> cards,
      Map<Stage, Account> accounts,
      Map<Integer, Firing> firings,
      int nearMissesUntold,
      @Nullable Posterior posterior) {
    this.advice = advice;
    this.cards = cards;
    this.accounts = accounts;
    this.firings = firings;
    this.nearMissesUntold = nearMissesUntold;
    this.posterior = posterior;
  }

  /** An advice that came from elsewhere: of its conditions nothing is known. */
  public static Reasoning of(Advice advice) {
    return new Reasoning(advice, List.of(), Map.of(), Map.of(), 0, null);
  }

  public Advice advice() {
    return advice;
  }

  /** What the estimator believes, to be drawn; empty where nothing can be said of the season. */
  public Optional<Posterior> posterior() {
    return Optional.ofNullable(posterior);
  }

  /** How many near misses the advice leaves out, since they are further off than those it names. */
  public int nearMissesUntold() {
    return nearMissesUntold;
  }

  /** The rule of an id. */
  public Optional<RuleCard> rule(String id) {
    return cards.stream().filter(card -> card.id().equals(id)).findFirst();
  }

  /** The lines of the trace in which a rule spoke; none where it kept silent. */
  public List<TraceLine> spoken(String rule) {
    return advice.reasoning().trace().stream().filter(line -> line.rule().equals(rule)).toList();
  }

  /** Whether the stage of a rule came to its turn: an emergency ends the talk before others do. */
  public boolean ran(RuleCard rule) {
    return accounts.containsKey(rule.stage());
  }

  /**
   * The conditions behind a line of the trace with what each saw; empty for the engine's own steps.
   */
  public List<ConditionSeen> conditions(TraceLine line) {
    @Nullable Firing firing = firings.get(line.seq());
    @Nullable Account account = firing == null ? null : accounts.get(firing.rule().stage());
    return firing == null || account == null ? List.of() : account.conditions(firing);
  }

  /** The conditions of a rule with what each saw, for the facts that come nearest to meeting it. */
  public List<ConditionSeen> conditions(RuleCard rule) {
    @Nullable Account account = accounts.get(rule.stage());
    return account == null ? List.of() : account.conditions(rule.id());
  }
}
