package io.github.tiderule.engine;

import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.rules.RuleBase;

/**
 * The engine: a cycle record in, advice out.
 *
 * <p>Immutable and safe for use by many threads; make one per process.
 */
public final class Tiderule {

  private final RuleBase rules;

  private Tiderule(RuleBase rules) {
    this.rules = rules;
  }

  /**
   * An engine over the rules that come with it.
   *
   * @throws IllegalStateException if the rule base is not whole
   */
  public static Tiderule create() {
    return new Tiderule(RuleBase.load());
  }

  /** The rules, parameters and sources it speaks from. */
  public RuleBase rules() {
    return rules;
  }

  /** The breeding-day plan for a season, with its reasons. Never throws on a legal record. */
  @SuppressWarnings("DoNotCallSuggester")
  public Advice advise(CycleRecord cycle) {
    throw new UnsupportedOperationException("not written yet: " + cycle.asOf());
  }
}
