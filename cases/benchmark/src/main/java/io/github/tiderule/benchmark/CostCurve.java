package io.github.tiderule.benchmark;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** What an answer costs by its size, drawn: three panels with one scale. */
final class CostCurve {

  private static final int PANEL = 240;
  private static final int LEFT = 60;
  private static final int TOP = 40;
  private static final int BOTTOM = 220;

  private static final String[] TITLES = {"observations", "doses", "half-days to breed on"};
  private static final String[] USUAL = {"10", "2", "0"};

  private CostCurve() {}

  /**
   * The picture.
   *
   * @param warm medians, ms, by size as observations/doses/half-days
   */
  static String of(Map<String, Double> warm) {
    double most =
        warm.entrySet().stream()
            .filter(one -> one.getKey().contains("/"))
            .mapToDouble(Map.Entry::getValue)
            .max()
            .orElseThrow();
    StringBuilder svg = new StringBuilder();
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d 270\" font-family=\"sans-serif\""
                + " font-size=\"12\">%n<title>Milliseconds for one warm answer, by size</title>%n",
            3 * (PANEL + LEFT)));
    for (int panel = 0; panel < TITLES.length; panel++) {
      svg.append(panel(warm, panel, most));
    }
    return svg.append("</svg>\n").toString();
  }

  private static String panel(Map<String, Double> warm, int panel, double most) {
    TreeMap<Integer, Double> points = new TreeMap<>();
    warm.forEach(
        (size, time) -> {
          String[] sizes = size.split("/", -1);
          if (sizes.length == 3 && others(sizes, panel) && !(panel == 2 && sizes[2].equals("0"))) {
            points.put(Integer.valueOf(sizes[panel]), time);
          }
        });
    int left = LEFT + panel * (PANEL + LEFT) - 20;
    int largest = points.lastKey();
    StringBuilder path = new StringBuilder();
    StringBuilder marks = new StringBuilder();
    points.forEach(
        (size, time) -> {
          double x = left + (PANEL - 20) * (double) size / largest;
          double y = BOTTOM - (BOTTOM - TOP) * time / most;
          path.append(String.format(Locale.ROOT, "%s%.1f %.1f", path.isEmpty() ? "M" : " L", x, y));
          marks.append(
              String.format(
                  Locale.ROOT,
                  "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"3\"/><text x=\"%.1f\" y=\"%d\""
                      + " text-anchor=\"middle\">%d</text><text x=\"%.1f\" y=\"%.1f\""
                      + " text-anchor=\"middle\">%.1f</text>%n",
                  x,
                  y,
                  x,
                  BOTTOM + 16,
                  size,
                  x,
                  y - 8,
                  time));
        });
    return String.format(
        Locale.ROOT,
        "<path d=\"M%d %d V%d H%d\" fill=\"none\" stroke=\"black\"/><text x=\"%d\" y=\"%d\">%s</text>"
            + "<text x=\"%d\" y=\"20\">ms</text><path d=\"%s\" fill=\"none\" stroke=\"black\"/>%n%s",
        left,
        TOP,
        BOTTOM,
        left + PANEL - 10,
        left,
        BOTTOM + 36,
        TITLES[panel],
        left,
        path,
        marks);
  }

  private static boolean others(String[] sizes, int panel) {
    for (int i = 0; i < sizes.length; i++) {
      if (i != panel && !sizes[i].equals(USUAL[i])) {
        return false;
      }
    }
    return true;
  }
}
