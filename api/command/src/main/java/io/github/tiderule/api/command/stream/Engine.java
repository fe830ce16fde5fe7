package io.github.tiderule.api.command.stream;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.days.StudPlan;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.parameter.Overlay;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * What a command needs of the engine. Made only when it is needed: making it takes longer than all
 * the rest of a short run, and a refused file needs none.
 *
 * @param advise from a cycle to its advice; safe for use by many threads
 * @param reason from a cycle to its advice with the means to ask why
 * @param shareStud from females by name, and services in time order, to who is given which
 * @param rules the rules it speaks from
 * @param with the same engine with a clinic's own parameters
 */
public record Engine(
    Function<CycleRecord, Advice> advise,
    Function<CycleRecord, Reasoning> reason,
    BiFunction<Map<String, CycleRecord>, List<Instant>, StudPlan> shareStud,
    RuleBase rules,
    Function<Overlay, Engine> with) {

  /** An engine that answers by functions of its own, whatever the parameters. */
  public Engine(
      Function<CycleRecord, Advice> advise,
      BiFunction<Map<String, CycleRecord>, List<Instant>, StudPlan> shareStud,
      RuleBase rules) {
    this(
        advise,
        cycle -> Reasoning.of(advise.apply(cycle)),
        shareStud,
        rules,
        overlay -> new Engine(advise, shareStud, rules.with(overlay)));
  }

  /** The real one. */
  public static Supplier<Engine> real() {
    return () -> of(Tiderule.create());
  }

  private static Engine of(Tiderule tiderule) {
    return new Engine(
        tiderule::advise,
        tiderule::reason,
        tiderule::shareStud,
        tiderule.rules(),
        overlay -> of(tiderule.with(overlay)));
  }
}
