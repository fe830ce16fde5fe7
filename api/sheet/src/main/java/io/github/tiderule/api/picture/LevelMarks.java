package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Labels;
import io.github.tiderule.api.picture.svg.Marker;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.rules.fact.assay.Comparator;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Progesterone values by series, limits as arrows, kit bands as bars, doubted ones hollow. */
final class LevelMarks {

  private final Frame frame;
  private final LevelScale levels;
  private final CurveInput input;
  private final List<Progesterone> values;
  private final List<ProgesteroneBand> bands;
  private final List<Series> series;

  LevelMarks(Frame frame, LevelScale levels) {
    this.frame = frame;
    this.levels = levels;
    this.input = frame.input();
    this.values =
        input.all(Progesterone.class).stream()
            .filter(value -> frame.times().holds(value.at()))
            .toList();
    this.bands =
        input.all(ProgesteroneBand.class).stream()
            .filter(band -> frame.times().holds(band.at()))
            .toList();
    this.series = input.series();
  }

  /** The marker of a value. */
  private Marker marker(Progesterone value) {
    return Marker.of(series.indexOf(value.series()));
  }

  void draw(Svg svg) {
    bands.forEach(band -> draw(svg, band));
    series.forEach(one -> line(svg, one));
    values.forEach(value -> draw(svg, value));
    // doubts are named first, then the latest: where there is no room, the table has the rest
    List<Progesterone> latestFirst = new ArrayList<>(values);
    Collections.reverse(latestFirst);
    latestFirst.stream().filter(value -> !input.taken(value.id())).forEach(v -> name(svg, v));
    latestFirst.stream().filter(value -> input.taken(value.id())).forEach(v -> name(svg, v));
    bands.forEach(band -> name(svg, band));
  }

  /** Numbers of one series that count; two series never form a line. */
  private void line(Svg svg, Series one) {
    StringBuilder path = new StringBuilder();
    int count = 0;
    for (Progesterone value : values) {
      if (value.series().equals(one)
          && value.comparator() == null
          && value.statedUnit() != null
          && input.counts(value.id())) {
        path.append(path.isEmpty() ? 'M' : 'L')
            .append(Svg.number(frame.times().x(value.at())))
            .append(' ')
            .append(Svg.number(levels.y(value.ngPerMl())));
        count++;
      }
    }
    if (count > 1) {
      Marker marker = Marker.of(series.indexOf(one));
      svg.stroke(path, marker.colour(), 1.2, marker.dash());
    }
  }

  private void draw(Svg svg, Progesterone value) {
    double x = frame.times().x(value.at());
    svg.open("g").text("title", new CurveWords(input).of(value));
    if (value.statedUnit() == null) {
      double top = levels.y(value.value());
      double bottom = levels.y(Unit.NMOL_PER_L.toNgPerMl(value.value()));
      svg.line(x, top, x, bottom, marker(value).colour(), 1, "2 2");
      mark(svg, value, x, top);
      mark(svg, value, x, bottom);
    } else {
      double y = levels.y(value.ngPerMl());
      mark(svg, value, x, y);
      if (value.comparator() == Comparator.BELOW || levels.below(value.ngPerMl())) {
        arrow(svg, x, y, 1, marker(value).colour());
      } else if (value.comparator() == Comparator.ABOVE || levels.above(value.ngPerMl())) {
        arrow(svg, x, y, -1, marker(value).colour());
      }
    }
    svg.close("g");
  }

  private void mark(Svg svg, Progesterone value, double x, double y) {
    double r = frame.mark();
    boolean limit = value.comparator() != null;
    marker(value).draw(svg, x, y, r, input.taken(value.id()) && !limit);
    if (input.held(value.id())) {
      cross(svg, x, y, 1.5 * r);
    }
    frame.labels().mark(x, y, 1.2 * r);
  }

  /** What says that a value is not used. */
  static void cross(Svg svg, double x, double y, double r) {
    svg.line(x - r, y - r, x + r, y + r, Colour.INK, 1.4, "");
    svg.line(x - r, y + r, x + r, y - r, Colour.INK, 1.4, "");
  }

  /** An arrow away from a mark; down for 1, up for −1. */
  static void arrow(Svg svg, double x, double y, int down, double r, Colour colour) {
    double tip = y + down * 4 * r;
    svg.line(x, y + down * r, x, tip, colour, 1.5, "");
    svg.empty(
        "path",
        "d",
        "M"
            + Svg.number(x - 0.8 * r)
            + ' '
            + Svg.number(tip - down * 1.2 * r)
            + 'L'
            + Svg.number(x)
            + ' '
            + Svg.number(tip)
            + 'L'
            + Svg.number(x + 0.8 * r)
            + ' '
            + Svg.number(tip - down * 1.2 * r),
        "fill",
        "none",
        "stroke",
        colour,
        "stroke-width",
        1.5);
  }

  private void arrow(Svg svg, double x, double y, int down, Colour colour) {
    double r = frame.mark();
    arrow(svg, x, y, down, r, colour);
    double tip = y + down * 4 * r;
    frame.labels().take(x - r, Math.min(y, tip), x + r, Math.max(y, tip));
  }

  private void draw(Svg svg, ProgesteroneBand band) {
    if (band.statedUnit() == null) {
      return;
    }
    Double low = ngPerMl(band, band.low());
    Double high = ngPerMl(band, band.high());
    double x = frame.times().x(band.at());
    double bottom = low == null ? levels.bottom() : levels.y(low);
    double top = high == null ? levels.top() : levels.y(high);
    double half = 0.6 * frame.mark();
    svg.open("g")
        .text("title", new CurveWords(input).of(band))
        .empty(
            "rect",
            "x",
            x - half,
            "y",
            top,
            "width",
            2 * half,
            "height",
            Math.max(bottom - top, 1),
            "fill",
            input.taken(band.id()) ? Colour.QUIET : Colour.PAPER,
            "fill-opacity",
            0.75,
            "stroke",
            Colour.INK,
            "stroke-width",
            1.2);
    if (input.held(band.id())) {
      cross(svg, x, (top + bottom) / 2, 1.5 * frame.mark());
    }
    svg.close("g");
    frame.labels().take(x - half, top, x + half, bottom);
  }

  private static @Nullable Double ngPerMl(ProgesteroneBand band, @Nullable Double edge) {
    Unit unit = band.statedUnit();
    return edge == null || unit == null ? null : unit.toNgPerMl(edge);
  }

  private void name(Svg svg, Progesterone value) {
    double x = frame.times().x(value.at());
    double y = levels.y(value.statedUnit() == null ? value.value() : value.ngPerMl());
    String number = new CurveWords(input).number(value);
    String use = input.use(value.id());
    boolean plain =
        input.taken(value.id()) || (input.counts(value.id()) && noneTaken(value.series()));
    if (plain || !write(svg, number + " " + CurveWords.brief(use), x, y)) {
      write(svg, number, x, y);
    }
  }

  /** Whether a whole series is doubted; then its hollow marks say so, and no word is needed. */
  private boolean noneTaken(Series one) {
    return values.stream()
        .filter(value -> value.series().equals(one))
        .noneMatch(value -> input.taken(value.id()));
  }

  private void name(Svg svg, ProgesteroneBand band) {
    if (band.statedUnit() != null) {
      Double high = ngPerMl(band, band.high());
      write(
          svg,
          new CurveWords(input).number(band),
          frame.times().x(band.at()),
          high == null ? levels.top() + frame.letter() : levels.y(high));
    }
  }

  private boolean write(Svg svg, String words, double x, double y) {
    double letter = frame.letter();
    double aside = Labels.breadth(words, letter) / 2 + 1.6 * frame.mark() + 2;
    double above = y - 1.5 * frame.mark() - 0.3 * letter;
    double below = y + 1.5 * frame.mark() + 0.9 * letter;
    return frame
        .labels()
        .write(
            svg,
            words,
            letter,
            Colour.INK,
            x,
            above,
            x - aside,
            y + 0.2 * letter,
            x + aside,
            y + 0.3 * letter,
            x,
            below,
            x - aside * 0.8,
            above,
            x + aside * 0.8,
            below);
  }
}
