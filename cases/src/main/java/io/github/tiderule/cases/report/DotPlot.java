package io.github.tiderule.cases.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A plot of rows: each row a name and some dots on one axis. Marks are told apart by shape as well
 * as by colour.
 */
final class DotPlot {

  private static final int ROW = 24;
  private static final int LEFT = 330;
  private static final int WIDTH = 900;
  private static final int RIGHT = 24;
  private static final int TOP = 58;
  private static final List<String> COLOURS = List.of("#1f5fa8", "#b4490f", "#3d7a3a", "#6b6f76");

  private record Row(String name, double[] values) {}

  private final String title;
  private final String axis;
  private final double low;
  private final double high;
  private final double step;
  private final List<String> series;
  private final List<Row> rows = new ArrayList<>();
  private final List<Double> lines = new ArrayList<>();

  /**
   * An empty plot.
   *
   * @param series what each dot of a row stands for, at most four
   */
  DotPlot(String title, String axis, double low, double high, double step, List<String> series) {
    this.title = title;
    this.axis = axis;
    this.low = low;
    this.high = high;
    this.step = step;
    this.series = List.copyOf(series);
  }

  /** Adds a row; a value that is not finite is left out, one beyond the axis stands at its edge. */
  DotPlot row(String name, double... values) {
    rows.add(new Row(name, values.clone()));
    return this;
  }

  /** Adds an upright line. */
  DotPlot line(double at) {
    lines.add(at);
    return this;
  }

  String svg() {
    int bottom = TOP + ROW * rows.size();
    StringBuilder out = new StringBuilder();
    out.append(
        format(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\""
                + " height=\"%d\" role=\"img\" font-family=\"system-ui, sans-serif\""
                + " font-size=\"13\">%n<title>%s</title>%n"
                + "<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>%n",
            WIDTH, bottom + 48, WIDTH, bottom + 48, HtmlSheet.escaped(title)));
    legend(out);
    grid(out, bottom);
    for (int i = 0; i < rows.size(); i++) {
      double y = TOP + ROW * (i + 0.5);
      out.append(text(LEFT - 10, y + 4, "end", rows.get(i).name()));
      dots(out, rows.get(i).values(), y);
    }
    return out.append("</svg>\n").toString();
  }

  private void legend(StringBuilder out) {
    out.append(text(12, 20, "start", title));
    int x = LEFT;
    for (int i = 0; i < series.size(); i++) {
      out.append(mark(i, x, 38)).append(text(x + 10, 42, "start", series.get(i)));
      x += 28 + 7 * series.get(i).length();
    }
  }

  private void grid(StringBuilder out, int bottom) {
    for (double at = low; at <= high + step / 2; at += step) {
      out.append(upright(at, bottom, "#e3e7ec", 1));
      out.append(text(x(at), bottom + 18, "middle", plain(at)));
    }
    lines.forEach(at -> out.append(upright(at, bottom, "#8a93a0", 2)));
    out.append(text((x(low) + x(high)) / 2, bottom + 38, "middle", axis));
  }

  private String upright(double at, int bottom, String colour, int width) {
    return format(
        "<line x1=\"%.1f\" y1=\"%d\" x2=\"%.1f\" y2=\"%d\" stroke=\"%s\" stroke-width=\"%d\"/>%n",
        x(at), TOP - 4, x(at), bottom, colour, width);
  }

  private void dots(StringBuilder out, double[] values, double y) {
    for (int i = 0; i < values.length; i++) {
      if (Double.isFinite(values[i])) {
        out.append(mark(i, x(Math.max(low, Math.min(high, values[i]))), y));
      }
    }
  }

  private static String mark(int series, double x, double y) {
    String colour = COLOURS.get(series);
    return switch (series) {
      case 0 -> format("<circle cx=\"%.1f\" cy=\"%.1f\" r=\"5\" fill=\"%s\"/>%n", x, y, colour);
      case 1 ->
          format(
              "<rect x=\"%.1f\" y=\"%.1f\" width=\"9\" height=\"9\" fill=\"%s\"/>%n",
              x - 4.5, y - 4.5, colour);
      case 2 -> format("<path d=\"M%.1f %.1fl5.5 9.5h-11z\" fill=\"%s\"/>%n", x, y - 5.5, colour);
      default ->
          format(
              "<path d=\"M%.1f %.1fl5 5l-5 5l-5-5z\" fill=\"none\" stroke=\"%s\""
                  + " stroke-width=\"1.6\"/>%n",
              x, y - 5, colour);
    };
  }

  private double x(double value) {
    return LEFT + (WIDTH - RIGHT - LEFT) * (value - low) / (high - low);
  }

  private static String text(double x, double y, String anchor, String words) {
    return format(
        "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" fill=\"#1c2430\">%s</text>%n",
        x, y, anchor, HtmlSheet.escaped(words));
  }

  private static String plain(double number) {
    return number == Math.rint(number)
        ? Long.toString(Math.round(number))
        : String.format(Locale.ROOT, "%.1f", number);
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern.replace("%n", "\n"), values);
  }
}
