package io.github.tiderule.api.command;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.days.StudPlan;
import io.github.tiderule.rules.RuleBase;
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
 * @param shareStud from females by name, and services in time order, to who is given which
 * @param rules the rules it speaks from
 */
public record Engine(
    Function<CycleRecord, Advice> advise,
    BiFunction<Map<String, CycleRecord>, List<Instant>, StudPlan> shareStud,
    RuleBase rules) {

  /** The real one. */
  public static Supplier<Engine> real() {
    return () -> {
      Tiderule tiderule = Tiderule.create();
      return new Engine(tiderule::advise, tiderule::shareStud, tiderule.rules());
    };
  }
}
