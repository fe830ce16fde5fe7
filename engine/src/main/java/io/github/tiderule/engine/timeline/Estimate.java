package io.github.tiderule.engine.timeline;

import java.util.List;

/**
 * What the timeline knows after all evidence.
 *
 * @param peak LH peak, days after the anchor, given that she ovulates
 * @param ovulation ovulation, days after the anchor, given that she ovulates
 * @param fit posterior predictive probability that progesterone numbers on a regular course fit it
 *     worse than hers do, none of them odd; 1 where there is no number
 * @param influences one for each observation
 */
public record Estimate(
    Density peak, Density ovulation, Courses courses, double fit, List<Pull> influences) {

  /**
   * Posterior probabilities of the courses, which sum to 1.
   *
   * @param ordinary from base through the LH peak to ovulation and on
   * @param plateau with a rest before the surge
   * @param irregular she ovulates on a course that is like none of the others
   * @param failing she ovulates and the level falls early afterwards
   * @param brokenOff the level rises and falls back, and she does not ovulate this time
   * @param silent the level stays low, and she does not ovulate this time
   */
  public record Courses(
      double ordinary,
      double plateau,
      double irregular,
      double failing,
      double brokenOff,
      double silent) {}

  /** Posterior probability of the plateau before the surge. */
  public double plateau() {
    return courses.plateau();
  }

  /** Posterior probability that she does not ovulate this time. */
  public double noOvulation() {
    return courses.brokenOff() + courses.silent();
  }

  /**
   * What one observation does.
   *
   * @param day when it was made, days after the anchor
   * @param medianShift median of ovulation with it less without it, days
   * @param widthChange width of the 90 % interval with it less without it, days
   * @param odd probability that it is the odd one out
   */
  public record Pull(
      String observation, double day, double medianShift, double widthChange, double odd) {}
}
