package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Labels;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.report.text.Telling;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.rules.fact.OwnTemperature;
import io.github.tiderule.rules.fact.observation.BodyTemperature;
import io.github.tiderule.rules.fact.observation.Observation;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Her temperature before whelping, reading by reading, with her own mean up to each: a fall is seen
 * against that, and not against a fixed line.
 *
 * <p>Immutable. The same input gives the same picture.
 */
public final class TemperatureCurve {

  private static final Texts TEXTS = Texts.ofReports();

  /** From so many readings on there is something to see. */
  private static final int LEAST = 2;

  private static final int MOST_DAYS = 14;
  private static final double AIR = 0.3;
  private static final double STEP = 0.5;

  private final CurveInput input;
  private final CurveSize size;
  private final List<BodyTemperature> readings;
  private final Map<String, Double> means = new HashMap<>();
  private final LocalDate first;
  private final LocalDate end;

  private TemperatureCurve(CurveInput input, CurveSize size) {
    this.input = input;
    this.size = size;
    List<Observation> used =
        input.cycle().observations().stream().filter(one -> !input.held(one.id())).toList();
    List<BodyTemperature> all =
        used.stream()
            .filter(BodyTemperature.class::isInstance)
            .map(BodyTemperature.class::cast)
            .toList();
    LocalDate last = all.isEmpty() ? LocalDate.EPOCH : day(all.get(all.size() - 1).at());
    this.readings =
        all.stream().filter(one -> day(one.at()).isAfter(last.minusDays(MOST_DAYS))).toList();
    this.first = readings.isEmpty() ? last : day(readings.get(0).at());
    this.end = last.plusDays(1);
    for (OwnTemperature own : OwnTemperature.of(used)) {
      all.stream()
          .filter(one -> one.id().equals(own.observation()))
          .forEach(one -> means.put(one.id(), one.celsius() + own.belowMean()));
    }
  }

  /** Of a season, laid out for a width. */
  public static TemperatureCurve of(CurveInput input, CurveSize size) {
    return new TemperatureCurve(input, size);
  }

  /** Whether there are readings enough to draw. */
  public boolean isWorthDrawing() {
    return readings.size() >= LEAST;
  }

  private LocalDate day(Instant at) {
    return at.atZone(input.cycle().zone()).toLocalDate();
  }

  /**
   * The picture, an {@code svg} element without an XML declaration, fit to stand within a page.
   *
   * @param name what ids within it begin with; letters only
   */
  public String svg(String name) {
    double letter = size.letter();
    double top = 2.2 * letter;
    double bottom = top + 0.5 * size.levels();
    double height = bottom + 3 * letter;
    Svg svg = new Svg();
    svg.drawing(size.width(), height, "img", name + "-title " + name + "-desc");
    svg.text(
        "title",
        TEXTS.say(
            "temperature.title",
            Telling.who(input.cycle().female().name(), input.advice().femaleId())),
        "id",
        name + "-title");
    svg.text("desc", description(), "id", name + "-desc");
    svg.empty("rect", "width", size.width(), "height", height, "fill", Colour.PAPER);
    grid(svg, top, bottom);
    line(svg, means(), Colour.OVULATION, "5 3", top, bottom);
    line(svg, points(), Colour.SERIES_1, "", top, bottom);
    Labels labels = new Labels(left(), right());
    for (int i = readings.size() - 1; i >= 0; i--) {
      mark(svg, labels, readings.get(i), top, bottom);
    }
    svg.line(
        2, letter - 0.35 * letter, 2 + 2 * letter, 0.65 * letter, Colour.OVULATION, 1.4, "5 3");
    svg.words(2 + 2.5 * letter, letter, letter, "start", Colour.INK, TEXTS.say("temperature.mean"));
    return svg.close("svg").toString();
  }

  /** What it shows in words: the last reading, and how far it lies off her mean. */
  public String description() {
    BodyTemperature last = readings.get(readings.size() - 1);
    String celsius = input.words().number("%.1f", last.celsius());
    String at = input.words().moment(last.at().atZone(input.cycle().zone()).toOffsetDateTime());
    Double mean = means.get(last.id());
    if (mean == null) {
      return TEXTS.say("temperature.last", celsius, at);
    }
    double below = mean - last.celsius();
    return TEXTS.say(
        below > 0 ? "temperature.last.below" : "temperature.last.above",
        celsius,
        at,
        input.words().number("%.1f", Math.abs(below)));
  }

  private double left() {
    return 3.4 * size.letter();
  }

  private double right() {
    return size.width() - size.letter();
  }

  private double x(Instant at) {
    Instant from = first.atStartOfDay(input.cycle().zone()).toInstant();
    Instant to = end.atStartOfDay(input.cycle().zone()).toInstant();
    double part =
        (double) Duration.between(from, at).toSeconds() / Duration.between(from, to).toSeconds();
    return left() + (right() - left()) * part;
  }

  private double lowest() {
    return readings.stream().mapToDouble(BodyTemperature::celsius).min().orElse(0) - AIR;
  }

  private double highest() {
    return readings.stream().mapToDouble(BodyTemperature::celsius).max().orElse(0) + AIR;
  }

  private double y(double celsius, double top, double bottom) {
    return bottom - (bottom - top) * (celsius - lowest()) / (highest() - lowest());
  }

  private void grid(Svg svg, double top, double bottom) {
    double letter = size.letter();
    for (double step = Math.ceil(lowest() / STEP) * STEP; step <= highest(); step += STEP) {
      double y = y(step, top, bottom);
      svg.line(left(), y, right(), y, Colour.GRID, 1, "");
      svg.words(
          left() - 5,
          y + 0.35 * letter,
          letter,
          "end",
          Colour.QUIET,
          input.words().number("%.1f", step));
    }
    List<LocalDate> days = first.datesUntil(end).toList();
    double broad = (right() - left()) / days.size();
    int every = (int) Math.ceil(Labels.breadth("Wed", letter) * 1.2 / broad);
    for (int i = 0; i < days.size(); i++) {
      double x = x(days.get(i).atStartOfDay(input.cycle().zone()).toInstant());
      svg.line(x, top, x, bottom, Colour.GRID, 1, "");
      if (i % every == 0) {
        double middle = x + broad / 2;
        svg.words(
            middle,
            bottom + 1.2 * letter,
            letter,
            "middle",
            Colour.QUIET,
            input.words().weekday(days.get(i)));
        svg.words(
            middle,
            bottom + 2.4 * letter,
            letter,
            "middle",
            Colour.QUIET,
            Integer.toString(days.get(i).getDayOfMonth()));
      }
    }
  }

  /** A place of a line. */
  private record Point(Instant at, double celsius) {}

  private List<Point> points() {
    return readings.stream().map(one -> new Point(one.at(), one.celsius())).toList();
  }

  private List<Point> means() {
    List<Point> all = new ArrayList<>();
    for (BodyTemperature one : readings) {
      Double mean = means.get(one.id());
      if (mean != null) {
        all.add(new Point(one.at(), mean));
      }
    }
    return all;
  }

  private void line(
      Svg svg, List<Point> points, Colour colour, String dash, double top, double bottom) {
    StringBuilder path = new StringBuilder();
    for (Point point : points) {
      path.append(path.isEmpty() ? 'M' : 'L')
          .append(Svg.number(x(point.at())))
          .append(' ')
          .append(Svg.number(y(point.celsius(), top, bottom)));
    }
    if (points.size() > 1) {
      svg.stroke(path, colour, 1.4, dash);
    }
  }

  private void mark(Svg svg, Labels labels, BodyTemperature one, double top, double bottom) {
    double letter = size.letter();
    double x = x(one.at());
    double y = y(one.celsius(), top, bottom);
    svg.empty(
        "circle",
        "cx",
        x,
        "cy",
        y,
        "r",
        0.3 * letter,
        "fill",
        Colour.SERIES_1,
        "stroke",
        Colour.SERIES_1,
        "stroke-width",
        1);
    labels.mark(x, y, 0.35 * letter);
    labels.write(
        svg,
        input.words().number("%.1f", one.celsius()),
        letter,
        Colour.INK,
        x,
        y - 0.6 * letter,
        x,
        y + 1.4 * letter);
  }
}
