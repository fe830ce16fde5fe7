package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Labels;
import io.github.tiderule.api.picture.svg.Smooth;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.engine.Posterior;
import io.github.tiderule.engine.Posterior.Likely;
import java.util.List;

/** How likely LH peak and ovulation are at each time: one dashed, one solid and filled. */
final class DensityPanel {

  private static final Texts TEXTS = Texts.ofReports();

  private final Frame frame;
  private final Posterior posterior;

  DensityPanel(Frame frame, Posterior posterior) {
    this.frame = frame;
    this.posterior = posterior;
  }

  void draw(Svg svg, double top, double bottom) {
    List<Likely> peak = posterior.lhPeak();
    List<Likely> ovulation = posterior.ovulation();
    double letter = frame.letter();
    double most = Math.max(most(peak).perDay(), most(ovulation).perDay());
    double scale = (bottom - top - 1.5 * letter) / most;
    svg.empty(
        "path",
        "d",
        path(ovulation, scale, bottom),
        "fill",
        Colour.OVULATION_FILL,
        "stroke",
        Colour.OVULATION,
        "stroke-width",
        1.4);
    svg.empty(
        "path",
        "d",
        path(peak, scale, bottom),
        "fill",
        "none",
        "stroke",
        Colour.PEAK,
        "stroke-width",
        1.4,
        "stroke-dasharray",
        "5 3");
    svg.line(frame.left(), bottom, frame.right(), bottom, Colour.FRAME, 1, "");
    name(svg, TEXTS.say("curve.ovulation"), Colour.OVULATION, most(ovulation), scale, bottom, 1);
    name(svg, TEXTS.say("curve.peak"), Colour.PEAK, most(peak), scale, bottom, -1);
  }

  private void name(
      Svg svg, String name, Colour fill, Likely most, double scale, double bottom, int side) {
    double letter = frame.letter();
    double x = frame.times().within(most.at());
    double y = bottom - scale * most.perDay() - 0.35 * letter;
    double aside = 0.5 * Labels.breadth(name, letter);
    frame
        .labels()
        .write(
            svg,
            name,
            letter,
            fill,
            x,
            y,
            x + side * aside,
            y,
            x + side * 2 * aside,
            y,
            x + side * 3 * aside,
            bottom - 0.5 * letter);
  }

  private static Likely most(List<Likely> density) {
    Likely most = density.get(0);
    for (Likely one : density) {
      most = one.perDay() > most.perDay() ? one : most;
    }
    return most;
  }

  private String path(List<Likely> density, double scale, double bottom) {
    List<Smooth.Point> points =
        density.stream()
            .filter(one -> frame.times().holds(one.at()))
            .map(one -> new Smooth.Point(frame.times().x(one.at()), bottom - scale * one.perDay()))
            .toList();
    if (points.isEmpty()) {
      return 'M' + Smooth.place(frame.left(), bottom) + 'Z';
    }
    Smooth.Point first = points.get(0);
    Smooth.Point last = points.get(points.size() - 1);
    return 'M'
        + Smooth.place(first.x(), bottom)
        + 'L'
        + Smooth.place(first.x(), first.y())
        + Smooth.through(points)
        + 'L'
        + Smooth.place(last.x(), bottom)
        + 'Z';
  }
}
