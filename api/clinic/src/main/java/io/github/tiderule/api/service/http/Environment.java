package io.github.tiderule.api.service.http;

import io.github.tiderule.api.access.Attempts;
import io.github.tiderule.api.access.Passwords;
import io.github.tiderule.api.record.store.Store;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.rules.RuleBase;
import java.time.Clock;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * What the service works with.
 *
 * @param advise from a cycle to its advice; safe for use by many threads
 * @param reason from a cycle to its advice with the means to ask why; safe likewise
 * @param rules the rules it speaks from, when they are asked for
 * @param faults told of every fault of ours, and of a record that cannot be used, in one line
 */
public record Environment(
    Store store,
    Function<CycleRecord, Advice> advise,
    Function<CycleRecord, Reasoning> reason,
    Supplier<RuleBase> rules,
    Clock clock,
    Passwords passwords,
    Attempts attempts,
    Consumer<String> faults) {

  /** Enough for whoever looks at a season, and at another, and back. */
  private static final int RECENT = 24;

  /**
   * The same, with advice worked out one piece after the other, and the last reasons remembered.
   */
  public Environment through(Gate gate) {
    Recent<CycleRecord, Reasoning> recent = new Recent<>(RECENT);
    return new Environment(
        store,
        cycle -> gate.pass(() -> advise.apply(cycle)),
        cycle ->
            recent
                .find(cycle)
                .orElseGet(() -> recent.keep(cycle, gate.pass(() -> reason.apply(cycle)))),
        rules,
        clock,
        passwords,
        attempts,
        faults);
  }
}
