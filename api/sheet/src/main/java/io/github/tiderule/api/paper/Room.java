package io.github.tiderule.api.paper;

/**
 * How much room the parts of a sheet may take.
 *
 * @param step 0 for all they have to say; each further step leaves out more
 */
record Room(int step) {

  /** The last step there is. */
  static final int LEAST = 7;

  /**
   * How many of something to show.
   *
   * @param bySteps for each step; the last holds for those after it
   */
  int most(int... bySteps) {
    return bySteps[Math.min(step, bySteps.length - 1)];
  }
}
