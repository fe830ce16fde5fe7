package io.github.tiderule.spark;

import io.github.tiderule.engine.Tiderule;

/**
 * The engine of this Java machine: made when the first task asks, then shared by all its tasks.
 * Making one costs as much as many answers, and one serves any number of threads.
 */
final class JvmEngine {

  private static final class Made {
    private static final Tiderule TIDERULE = Tiderule.create();
  }

  private JvmEngine() {}

  static Tiderule tiderule() {
    return Made.TIDERULE;
  }
}
