package io.github.tiderule.engine.timeline;

import java.util.List;

/**
 * What the timeline knows after all evidence.
 *
 * @param peak LH peak, days after the anchor, given that she ovulates
 * @param ovulation ovulation, days after the anchor, given that she ovulates
 * @param ordinary posterior probability of the ordinary course
 * @param plateau posterior probability of a plateau before the surge
 * @param noOvulation posterior probability that she does not ovulate this time
 * @param influences one for each observation
 */
public record Estimate(
    Density peak,
    Density ovulation,
    double ordinary,
    double plateau,
    double noOvulation,
    List<Pull> influences) {

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
