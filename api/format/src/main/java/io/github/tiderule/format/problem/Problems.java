package io.github.tiderule.format.problem;

import java.util.ArrayList;
import java.util.List;

/** Gathers the problems of one document in the order they are met. Not for use by many threads. */
public final class Problems {

  /** How many problems are listed before the rest is summed up. */
  static final int MOST = 1000;

  private final List<Problem> found = new ArrayList<>();

  /** Notes a problem with the usual hint of its code. */
  public void add(Pointer at, ProblemCode code, String message) {
    add(at, code, message, code.usualHint());
  }

  /** Notes a problem. */
  public void add(Pointer at, ProblemCode code, String message, String hint) {
    if (found.size() < MOST) {
      found.add(new Problem(at.text(), code, message, hint));
    } else if (found.size() == MOST) {
      found.add(
          Problem.of(
              "",
              ProblemCode.TOO_MANY_PROBLEMS,
              "there are more problems than the " + MOST + " listed"));
    }
  }

  /** Whether nothing was noted. */
  public boolean none() {
    return found.isEmpty();
  }

  /** What was noted so far. */
  public List<Problem> all() {
    return List.copyOf(found);
  }
}
