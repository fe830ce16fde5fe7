package io.github.tiderule.cases.corpus;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.problem.Problem;
import java.util.List;

/** What came of a cycle file. */
public sealed interface Outcome {

  /**
   * It was read and answered.
   *
   * @param report the answer as a breeder reads it, on one line
   */
  record Advised(CycleRecord cycle, Advice advice, String report) implements Outcome {}

  /** It was refused. */
  record Refused(List<Problem> problems) implements Outcome {

    public Refused {
      problems = List.copyOf(problems);
    }
  }
}
