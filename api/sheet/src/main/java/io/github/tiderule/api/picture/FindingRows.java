package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.rules.fact.observation.LhTest;
import io.github.tiderule.rules.fact.observation.Observation;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.observation.Smear;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** A row for each other kind of observation: smears in per cent, LH tests, folds, signs, scans. */
final class FindingRows {

  private static final Texts TEXTS = Texts.ofReports();

  private static final List<String> ROWS =
      Stream.of(
              Stream.of("smear", "lh", "folds"),
              Arrays.stream(SignKind.values()).map(FindingWords::row),
              Stream.of("scan", "bred"))
          .flatMap(rows -> rows)
          .distinct()
          .toList();

  private final Frame frame;
  private final List<Observation> shown;

  FindingRows(Frame frame) {
    this.frame = frame;
    this.shown =
        frame.input().cycle().observations().stream()
            .filter(one -> frame.times().holds(one.at()))
            .toList();
  }

  private List<Observation> of(String row) {
    return shown.stream().filter(one -> FindingWords.row(one).equals(row)).toList();
  }

  private String label(Observation one) {
    return FindingWords.label(one, frame.input().words());
  }

  private double height(String row) {
    boolean plain = of(row).stream().allMatch(one -> label(one).isEmpty());
    return (row.equals("smear") ? 3.4 : plain ? 1.7 : 2.7) * frame.letter();
  }

  double height() {
    return ROWS.stream().filter(row -> !of(row).isEmpty()).mapToDouble(this::height).sum();
  }

  void draw(Svg svg, double top) {
    double y = top;
    for (String row : ROWS) {
      List<Observation> all = of(row);
      if (!all.isEmpty()) {
        double bottom = y + height(row);
        svg.line(frame.left(), bottom, frame.right(), bottom, Colour.GRID, 1, "");
        frame.rowName(svg, TEXTS.say("curve.row." + row), bottom - 0.5 * frame.letter());
        draw(svg, all, y, bottom);
        y = bottom;
      }
    }
  }

  private void draw(Svg svg, List<Observation> all, double top, double bottom) {
    double[] x = places(all);
    double mark = bottom - 0.85 * frame.letter();
    for (int i = 0; i < x.length; i++) {
      Observation one = all.get(i);
      svg.open("g").text("title", words(one));
      if (one instanceof Smear smear && smear.cornifiedPercent() != null) {
        bar(svg, smear, x[i], top, bottom);
      } else {
        dot(svg, one, x[i], mark);
      }
      if (frame.input().held(one.id())) {
        LevelMarks.cross(svg, x[i], mark, 1.5 * frame.mark());
      }
      svg.close("g");
    }
    String before = "";
    for (int i = 0; i < x.length; i++) {
      String words = label(all.get(i));
      // what is the same as before needs no word; a percentage is a number, and numbers are named
      if (!words.equals(before) || all.get(i) instanceof Smear) {
        frame
            .labels()
            .write(svg, words, frame.letter(), Colour.INK, x[i], top + 1.05 * frame.letter());
      }
      before = words;
    }
  }

  private String words(Observation one) {
    CurveWords words = new CurveWords(frame.input());
    return words.what(one)
        + ", "
        + words.moment(one.at())
        + CurveWords.use(frame.input(), one.id());
  }

  /** Where each mark stands: at its time, or beside one of the same time. */
  private double[] places(List<Observation> all) {
    double[] x = new double[all.size()];
    double apart = 2.4 * frame.mark();
    for (int i = 0; i < x.length; i++) {
      x[i] = frame.times().x(all.get(i).at());
      if (i > 0 && x[i] - x[i - 1] < apart) {
        x[i] = x[i - 1] + apart;
      }
    }
    return x;
  }

  private void bar(Svg svg, Smear smear, double x, double top, double bottom) {
    double cornified = Objects.requireNonNull(smear.cornifiedPercent());
    double full = bottom - top - 1.5 * frame.letter();
    double height = Math.max(1, full * cornified / 100);
    double half = 0.6 * frame.mark();
    svg.empty(
        "rect",
        "x",
        x - half,
        "y",
        bottom - full,
        "width",
        2 * half,
        "height",
        full,
        "fill",
        Colour.PAPER,
        "stroke",
        Colour.FRAME,
        "stroke-width",
        0.8);
    svg.empty(
        "rect",
        "x",
        x - half,
        "y",
        bottom - height,
        "width",
        2 * half,
        "height",
        height,
        "fill",
        frame.input().taken(smear.id()) ? Colour.QUIET : Colour.GRID);
    frame.labels().take(x - half, bottom - full, x + half, bottom);
  }

  private void dot(Svg svg, Observation one, double x, double y) {
    double r = frame.mark() * (one instanceof LhTest ? 1.25 : 1.1);
    boolean yes = FindingWords.saysYes(one) && frame.input().taken(one.id());
    svg.empty(
        "circle",
        "cx",
        x,
        "cy",
        y,
        "r",
        r,
        "fill",
        yes ? Colour.INK : Colour.PAPER,
        "stroke",
        Colour.INK,
        "stroke-width",
        1.3);
    if (one instanceof LhTest || !FindingWords.saysYes(one)) {
      Colour stroke = yes ? Colour.PAPER : Colour.INK;
      svg.line(x - 0.6 * r, y, x + 0.6 * r, y, stroke, 1.3, "");
      if (FindingWords.saysYes(one)) {
        svg.line(x, y - 0.6 * r, x, y + 0.6 * r, stroke, 1.3, "");
      }
    }
    frame.labels().mark(x, y, r);
  }
}
