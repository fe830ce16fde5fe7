package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Hatching;
import io.github.tiderule.api.picture.svg.Labels;
import io.github.tiderule.api.picture.svg.Marker;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.Progesterone;
import io.github.tiderule.rules.fact.observation.ProgesteroneBand;
import java.util.ArrayList;
import java.util.List;

/** What the marks mean: only those that are there. */
final class Legend {

  private static final Texts TEXTS = Texts.ofReports();

  private static final double LINE = 1.5;

  private final Frame frame;
  private final double sample;
  private final List<Entry> entries = new ArrayList<>();

  /** A mark and its words. */
  private record Entry(Sample sample, String words) {}

  /** Draws a mark about a place. */
  private interface Sample {
    void draw(Svg svg, double x, double y);
  }

  Legend(Frame frame, ExpectedBand band) {
    this.frame = frame;
    this.sample = 2.2 * frame.letter();
    series();
    doubts();
    negatives();
    if (!band.isEmpty()) {
      entries.add(
          new Entry(
              this::band,
              frame.input().series().size() > 1
                  ? TEXTS.say("curve.legend.expected-as", CurveWords.brief(band.series()))
                  : TEXTS.say("curve.legend.expected")));
    }
    if (!PlanStrips.windows(frame.input()).isEmpty()) {
      entries.add(new Entry(this::strip, TEXTS.say("curve.legend.planned")));
    }
  }

  private void series() {
    List<Series> all = frame.input().series();
    for (int i = 0; i < all.size(); i++) {
      Marker marker = Marker.of(i);
      entries.add(
          new Entry(
              (svg, x, y) -> {
                svg.line(x - sample / 2, y, x + sample / 2, y, marker.colour(), 1.2, marker.dash());
                marker.draw(svg, x, y, frame.mark(), true);
              },
              CurveWords.brief(all.get(i))));
    }
    if (!frame.input().all(ProgesteroneBand.class).isEmpty()) {
      entries.add(new Entry(this::kit, TEXTS.say("curve.legend.band")));
    }
    if (frame.input().all(Progesterone.class).stream().anyMatch(v -> v.comparator() != null)) {
      entries.add(new Entry(this::limit, TEXTS.say("curve.legend.limit")));
    }
  }

  private void doubts() {
    List<Observation> all = frame.input().cycle().observations();
    if (all.stream().anyMatch(one -> frame.input().held(one.id()))) {
      entries.add(
          new Entry(
              (svg, x, y) -> {
                hollow(svg, x, y);
                LevelMarks.cross(svg, x, y, 1.5 * frame.mark());
              },
              TEXTS.say("curve.legend.held")));
    }
    if (all.stream()
        .anyMatch(one -> !frame.input().taken(one.id()) && !frame.input().held(one.id()))) {
      entries.add(new Entry(this::hollow, TEXTS.say("curve.legend.doubted")));
    }
  }

  private void negatives() {
    List<Observation> all = frame.input().cycle().observations();
    if (all.stream().anyMatch(one -> !FindingWords.saysYes(one))) {
      entries.add(
          new Entry(
              (svg, x, y) -> {
                double r = 1.1 * frame.mark();
                Marker.ring(svg, x, y, r);
                svg.line(x - 0.6 * r, y, x + 0.6 * r, y, Colour.INK, 1.3, "");
              },
              TEXTS.say("curve.legend.negative")));
    }
  }

  private void hollow(Svg svg, double x, double y) {
    Marker.CIRCLE.draw(svg, x, y, frame.mark(), false);
  }

  private void limit(Svg svg, double x, double y) {
    double r = frame.mark();
    Marker.CIRCLE.draw(svg, x, y - r, r, false);
    LevelMarks.arrow(svg, x, y - r, 1, 0.8 * r, Marker.CIRCLE.colour());
  }

  private void kit(Svg svg, double x, double y) {
    box(svg, x, y, 0.6 * frame.mark(), 0.5 * frame.letter(), Colour.QUIET, Colour.INK);
  }

  private void band(Svg svg, double x, double y) {
    double half = sample / 2;
    double tall = 0.4 * frame.letter();
    box(svg, x, y, half, tall, Colour.BAND, "none");
    for (int side = -1; side <= 1; side++) {
      svg.line(
          x - half,
          y + side * tall,
          x + half,
          y + side * tall,
          Colour.BAND_EDGE,
          1,
          side == 0 ? "" : "3 3");
    }
  }

  private void strip(Svg svg, double x, double y) {
    double half = sample / 3;
    double tall = 0.4 * frame.letter();
    box(svg, x, y, half, tall, "none", Colour.BREED);
    Hatching.draw(svg, x - half, y - tall, x + half, y + tall, 5, Colour.BREED);
  }

  private static void box(
      Svg svg, double x, double y, double half, double tall, Object fill, Object stroke) {
    svg.empty(
        "rect",
        "x",
        x - half,
        "y",
        y - tall,
        "width",
        2 * half,
        "height",
        2 * tall,
        "fill",
        fill,
        "stroke",
        stroke,
        "stroke-width",
        1);
  }

  /** Draws it, or only measures. */
  double draw(Svg svg, double top) {
    double letter = frame.letter();
    double x = 4;
    double y = top + letter;
    for (Entry entry : entries) {
      double breadth = sample + 6 + Labels.breadth(entry.words(), letter);
      if (x > 4 && x + breadth > frame.size().width()) {
        x = 4;
        y += LINE * letter;
      }
      entry.sample().draw(svg, x + sample / 2, y - 0.35 * letter);
      svg.words(x + sample + 6, y, letter, "start", Colour.INK, entry.words());
      x += breadth + 1.4 * letter;
    }
    return entries.isEmpty() ? top : y + 0.5 * letter;
  }
}
