package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Labels;
import io.github.tiderule.api.picture.svg.Marker;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import java.util.List;

/**
 * The progesterone of several seasons of one female, laid over each other by ovulation: whether she
 * rises alike each time. On the log scale, in ng/mL, each season with a shape and dashes of its
 * own.
 *
 * <p>Immutable. The same input gives the same picture.
 */
public final class SeasonsOverlay {

  private static final Texts TEXTS = Texts.ofReports();

  private static final double[] LEVELS = {0.5, 1, 2, 5, 10, 20, 50};
  private static final int FIRST_DAY = -8;
  private static final int LAST_DAY = 6;
  private static final double LOWEST = 0.3;
  private static final double HIGHEST = 60;

  private final List<Season> seasons;
  private final Words words;
  private final CurveSize size;

  /**
   * One season.
   *
   * @param name what it is called in the legend
   */
  public record Season(String name, List<Value> values) {

    public Season {
      values = List.copyOf(values);
    }
  }

  /**
   * One value.
   *
   * @param day days after ovulation, negative before it
   */
  public record Value(double day, double ngPerMl) {}

  private SeasonsOverlay(List<Season> seasons, Words words, CurveSize size) {
    this.seasons = List.copyOf(seasons);
    this.words = words;
    this.size = size;
  }

  /** Some seasons, laid out for a width. */
  public static SeasonsOverlay of(List<Season> seasons, Words words, CurveSize size) {
    return new SeasonsOverlay(seasons, words, size);
  }

  /**
   * The picture, an {@code svg} element without an XML declaration, fit to stand within a page.
   *
   * @param name what ids within it begin with; letters only
   */
  public String svg(String name) {
    double letter = size.letter();
    Svg body = new Svg();
    double top = legend(body) + 2.2 * letter;
    double bottom = top + 0.7 * size.levels();
    double height = bottom + 3.4 * letter;
    grid(body, top, bottom);
    for (int i = 0; i < seasons.size(); i++) {
      draw(body, seasons.get(i), Marker.of(i), top, bottom);
    }
    Svg svg = new Svg();
    svg.drawing(size.width(), height, "img", name + "-title");
    svg.text("title", TEXTS.say("overlay.title"), "id", name + "-title");
    svg.empty("rect", "width", size.width(), "height", height, "fill", Colour.PAPER);
    return svg.add(body).close("svg").toString();
  }

  private double legend(Svg svg) {
    double letter = size.letter();
    double x = 4;
    double y = letter;
    for (int i = 0; i < seasons.size(); i++) {
      Marker marker = Marker.of(i);
      double broad = 2.8 * letter + Labels.breadth(seasons.get(i).name(), letter);
      if (x > 4 && x + broad > size.width()) {
        x = 4;
        y += 1.5 * letter;
      }
      double middle = y - 0.35 * letter;
      svg.line(x, middle, x + 2.2 * letter, middle, marker.colour(), 1.2, marker.dash());
      marker.draw(svg, x + 1.1 * letter, middle, 0.34 * letter, true);
      svg.words(x + 2.6 * letter, y, letter, "start", Colour.INK, seasons.get(i).name());
      x += broad + 1.4 * letter;
    }
    return y;
  }

  private double left() {
    return 3 * size.letter();
  }

  private double x(double day) {
    return left()
        + (size.width() - left() - size.letter()) * (day - FIRST_DAY) / (LAST_DAY - FIRST_DAY);
  }

  private static double y(double level, double top, double bottom) {
    double held = Math.min(Math.max(level, LOWEST), HIGHEST);
    return bottom - (bottom - top) * Math.log(held / LOWEST) / Math.log(HIGHEST / LOWEST);
  }

  private void grid(Svg svg, double top, double bottom) {
    double letter = size.letter();
    for (double level : LEVELS) {
      double y = y(level, top, bottom);
      svg.line(left(), y, x(LAST_DAY), y, Colour.GRID, 1, "");
      svg.words(left() - 5, y + 0.35 * letter, letter, "end", Colour.QUIET, words.number(level));
    }
    svg.words(2, top - 0.5 * letter, letter, "start", Colour.QUIET, "ng/mL");
    for (int day = FIRST_DAY; day <= LAST_DAY; day++) {
      boolean ovulation = day == 0;
      svg.line(
          x(day),
          top,
          x(day),
          bottom,
          ovulation ? Colour.OVULATION : Colour.GRID,
          ovulation ? 1.6 : 1,
          "");
      if (day % 2 == 0) {
        svg.words(
            x(day), bottom + 1.2 * letter, letter, "middle", Colour.QUIET, Integer.toString(day));
      }
    }
    svg.words(
        (left() + x(LAST_DAY)) / 2,
        bottom + 2.6 * letter,
        letter,
        "middle",
        Colour.QUIET,
        TEXTS.say("overlay.days"));
  }

  private void draw(Svg svg, Season season, Marker marker, double top, double bottom) {
    StringBuilder path = new StringBuilder();
    List<Value> shown =
        season.values().stream()
            .filter(one -> one.day() >= FIRST_DAY && one.day() <= LAST_DAY)
            .toList();
    for (Value value : shown) {
      path.append(path.isEmpty() ? 'M' : 'L')
          .append(Svg.number(x(value.day())))
          .append(' ')
          .append(Svg.number(y(value.ngPerMl(), top, bottom)));
    }
    if (shown.size() > 1) {
      svg.stroke(path, marker.colour(), 1.2, marker.dash());
    }
    shown.forEach(
        value ->
            marker.draw(
                svg, x(value.day()), y(value.ngPerMl(), top, bottom), 0.34 * size.letter(), true));
  }
}
