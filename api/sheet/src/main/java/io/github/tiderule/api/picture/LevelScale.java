package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Labels;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.rules.fact.assay.Unit;

/**
 * Progesterone from bottom to top, on the log.
 *
 * @param low ng/mL at the bottom
 * @param high ng/mL at the top
 */
record LevelScale(double low, double high, double bottom, double top) {

  private static final double[] STEPS = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};

  private static final double LEAST = 0.3;
  private static final double LEAST_TOP = 12;
  private static final double LOWEST = 0.1;
  private static final double HIGHEST = 150;
  private static final double AIR = 1.25;

  /**
   * A scale that holds some levels, as far as such levels are known of bitches.
   *
   * @param least ng/mL
   * @param most ng/mL
   */
  static LevelScale holding(double least, double most, double bottom, double top) {
    return new LevelScale(
        Math.max(LOWEST, Math.min(LEAST, least / AIR)),
        Math.min(HIGHEST, Math.max(LEAST_TOP, most * AIR)),
        bottom,
        top);
  }

  /** Where a level lies, moved to the nearer end where it is beyond. */
  double y(double ngPerMl) {
    double level = Math.min(Math.max(ngPerMl, low), high);
    return bottom - (bottom - top) * Math.log(level / low) / Math.log(high / low);
  }

  boolean above(double ngPerMl) {
    return ngPerMl > high;
  }

  boolean below(double ngPerMl) {
    return ngPerMl < low;
  }

  /** Draws the levels of a unit beside the left or the right end. */
  void ticks(Svg svg, Frame frame, Unit unit, boolean leftSide) {
    double letter = frame.letter();
    for (double step : STEPS) {
      double level = unit.toNgPerMl(step);
      if (level < low * 1.02 || level > high / 1.02) {
        continue;
      }
      double y = y(level);
      if (leftSide) {
        svg.line(frame.left(), y, frame.right(), y, Colour.GRID, 1, "");
      }
      double edge = leftSide ? frame.left() : frame.right();
      double out = leftSide ? -4 : 4;
      svg.line(edge, y, edge + out, y, Colour.FRAME, 1, "");
      svg.words(
          edge + 1.6 * out,
          y + 0.35 * letter,
          letter,
          leftSide ? "end" : "start",
          Colour.QUIET,
          frame.input().words().number(step));
    }
    double breadth = Labels.breadth(unit.word(), letter);
    double start = leftSide ? 2 : frame.size().width() - 2 - breadth;
    double foot = top - 0.6 * letter;
    svg.words(
        leftSide ? start : start + breadth,
        foot,
        letter,
        leftSide ? "start" : "end",
        Colour.QUIET,
        unit.word());
    frame.labels().take(start, foot - letter, start + breadth, foot);
  }
}
