package io.github.tiderule.format.cycle;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.problem.Problem;
import java.util.List;

/** What came of reading a cycle file: all of it, or nothing and every reason why. */
public sealed interface Reading {

  /** The file was read. */
  record Read(CycleRecord cycle) implements Reading {}

  /**
   * The file was refused.
   *
   * @param problems at least one, in the order they were met
   */
  record Refused(List<Problem> problems) implements Reading {

    public Refused {
      problems = List.copyOf(problems);
    }
  }
}
