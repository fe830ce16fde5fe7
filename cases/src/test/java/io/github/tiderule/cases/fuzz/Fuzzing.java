package io.github.tiderule.cases.fuzz;

/** How long a target is tried where nothing else is said. */
final class Fuzzing {

  /** On the build server; elsewhere only what is kept is tried again. */
  static final String MOST = "60s";

  private Fuzzing() {}
}
