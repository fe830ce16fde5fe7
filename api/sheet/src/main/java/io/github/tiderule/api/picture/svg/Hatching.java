package io.github.tiderule.api.picture.svg;

/** Slanting lines within a rectangle: told apart from any grey, and printed by any printer. */
public final class Hatching {

  private Hatching() {}

  /**
   * Draws them.
   *
   * @param step from line to line
   */
  public static void draw(
      Svg svg, double left, double top, double right, double bottom, double step, Colour stroke) {
    double height = bottom - top;
    StringBuilder path = new StringBuilder();
    // lines of all rectangles lie on one lattice, so that neighbours look of a piece
    double first = Math.floor((left - height) / step) * step;
    for (double foot = first; foot < right; foot += step) {
      double from = Math.max(foot, left);
      double to = Math.min(foot + height, right);
      if (to > from) {
        path.append('M')
            .append(Svg.number(from))
            .append(' ')
            .append(Svg.number(bottom - (from - foot)))
            .append('L')
            .append(Svg.number(to))
            .append(' ')
            .append(Svg.number(bottom - (to - foot)));
      }
    }
    if (!path.isEmpty()) {
      svg.empty("path", "d", path, "stroke", stroke, "stroke-width", 0.8, "fill", "none");
    }
  }
}
