package io.github.tiderule.api.picture.svg;

import java.util.List;

/** Lines through points without corners (Catmull–Rom splines written as cubic curves). */
public final class Smooth {

  private static final double THIRD_OF_SLOPE = 1.0 / 6;

  private Smooth() {}

  /** A place. */
  public record Point(double x, double y) {}

  /** The line as path commands, without the move to its first point. */
  public static String through(List<Point> points) {
    StringBuilder path = new StringBuilder();
    for (int i = 1; i < points.size(); i++) {
      Point before = points.get(Math.max(i - 2, 0));
      Point from = points.get(i - 1);
      Point to = points.get(i);
      Point after = points.get(Math.min(i + 1, points.size() - 1));
      path.append('C')
          .append(
              place(from.x + lean(before.x, to.x), held(from.y + lean(before.y, to.y), from, to)))
          .append(' ')
          .append(place(to.x - lean(from.x, after.x), held(to.y - lean(from.y, after.y), from, to)))
          .append(' ')
          .append(place(to.x, to.y));
    }
    return path.toString();
  }

  /** Keeps a curve from swinging beyond the points it joins. */
  private static double held(double y, Point one, Point other) {
    return Math.min(Math.max(y, Math.min(one.y, other.y)), Math.max(one.y, other.y));
  }

  private static double lean(double before, double after) {
    return (after - before) * THIRD_OF_SLOPE;
  }

  /** A place as path commands write it. */
  public static String place(double x, double y) {
    return Svg.number(x) + " " + Svg.number(y);
  }
}
