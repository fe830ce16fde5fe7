package io.github.tiderule.engine.testing;

import io.github.tiderule.engine.advice.Change;
import io.github.tiderule.engine.advice.NextTest;
import io.github.tiderule.engine.advice.OnForecast;
import io.github.tiderule.engine.advice.reasoning.EngineStep;
import io.github.tiderule.engine.advice.reasoning.TraceStage;
import io.github.tiderule.engine.days.Slot;
import io.github.tiderule.engine.explain.TraceBook;
import io.github.tiderule.engine.plan.Planned;
import io.github.tiderule.engine.season.StageRun;
import io.github.tiderule.rules.StageResult.Ruled;
import io.github.tiderule.rules.conclusion.TestFirst;
import io.github.tiderule.rules.sentence.Sentence;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A planned season with its next test.
 *
 * @param due the rules about the next test, as they were run; null where no test is talked about
 * @param nextTest null where none is advised
 * @param noTestBecause why no test is advised; null where one is
 * @param forecast a decision due before the next result; null where there is none
 * @param changes values at which the days would change
 * @param weighed what each draw is worth, in words; null where none was weighed
 */
public record Tested(
    Planned planned,
    @Nullable StageRun due,
    @Nullable NextTest nextTest,
    @Nullable Sentence noTestBecause,
    @Nullable OnForecast forecast,
    List<Change> changes,
    @Nullable List<Sentence> weighed) {

  public Tested {
    changes = List.copyOf(changes);
  }

  /** A season in which no test is talked about. */
  static Tested untold(Planned planned) {
    return new Tested(planned, null, null, null, null, List.of(), null);
  }

  /** The test that stands before anything that cannot be undone, where there is one. */
  public Optional<Ruled<TestFirst>> first() {
    return first(due);
  }

  /**
   * The first slot of a plan that can no longer be called off once the test that stands before it
   * is read; empty where there is none.
   */
  public Optional<Slot> tooLateForPlan() {
    NextTest test = nextTest;
    return test == null || first().isEmpty()
        ? Optional.empty()
        : planned
            .first()
            .filter(slot -> slot.lastCall().isBefore(test.resultAt().toInstant()))
            .filter(slot -> !slot.deadlines().isEmpty());
  }

  /** The same, of the rules about the next test. */
  static Optional<Ruled<TestFirst>> first(@Nullable StageRun due) {
    return due == null
        ? Optional.empty()
        : due.ruled(TestFirst.class)
            .min(
                Comparator.comparing((Ruled<TestFirst> ruled) -> ruled.conclusion().test())
                    .thenComparing(ruled -> ruled.rule().id()));
  }

  /** The stages of rules that were run for it. */
  public List<StageRun> runs() {
    return Stream.ofNullable(due).toList();
  }

  /** Writes down what the next test rests on. */
  public void write(TraceBook trace) {
    if (due != null) {
      trace.add(due);
    }
    if (weighed != null) {
      trace.add(TraceStage.NEXT, EngineStep.TEST_VALUE, List.of(), weighed);
    }
  }
}
