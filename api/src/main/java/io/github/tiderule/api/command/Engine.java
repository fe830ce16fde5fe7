package io.github.tiderule.api.command;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.parameter.Overlay;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * What a command needs of the engine. Made only when it is needed: making it takes longer than all
 * the rest of a short run, and a refused file needs none.
 *
 * @param advise from a cycle to its advice; safe for use by many threads
 * @param reason from a cycle to its advice with the means to ask why
 * @param rules the rules it speaks from
 * @param with the same engine with a clinic's own parameters
 */
public record Engine(
    Function<CycleRecord, Advice> advise,
    Function<CycleRecord, Reasoning> reason,
    RuleBase rules,
    Function<Overlay, Engine> with) {

  /** An engine that answers by a function of its own, whatever the parameters. */
  public Engine(Function<CycleRecord, Advice> advise, RuleBase rules) {
    this(
        advise,
        cycle -> Reasoning.of(advise.apply(cycle)),
        rules,
        overlay -> new Engine(advise, rules.with(overlay)));
  }

  /** The real one. */
  public static Supplier<Engine> real() {
    return () -> of(Tiderule.create());
  }

  private static Engine of(Tiderule tiderule) {
    return new Engine(
        tiderule::advise,
        tiderule::reason,
        tiderule.rules(),
        overlay -> of(tiderule.with(overlay)));
  }
}
