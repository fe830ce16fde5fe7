package io.github.tiderule.api.picture;

import io.github.tiderule.engine.Posterior;
import io.github.tiderule.engine.Posterior.Expected;
import io.github.tiderule.rules.fact.Method;
import io.github.tiderule.rules.fact.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Where values are expected, 9 in 10 of them: a shaded band with dashed edges and its middle. */
final class ExpectedBand {

  private static final Duration STEP = Duration.ofHours(12);

  private final Series series;
  private final List<Expected> course;

  private ExpectedBand(Series series, List<Expected> course) {
    this.series = series;
    this.course = course;
  }

  /** The band of a season; empty where no progesterone is behind it. */
  static ExpectedBand of(CurveInput input, TimeScale times) {
    Series series = input.latestSeries().orElse(Series.of(null, Method.UNKNOWN));
    Posterior posterior = input.posterior().orElse(null);
    if (posterior == null || !posterior.restsOnProgesterone()) {
      return new ExpectedBand(series, List.of());
    }
    List<Instant> instants = new ArrayList<>();
    for (Instant at = times.from(); at.isBefore(times.to()); at = at.plus(STEP)) {
      instants.add(at);
    }
    instants.add(times.to());
    return new ExpectedBand(series, posterior.course(series, instants));
  }

  boolean isEmpty() {
    return course.isEmpty();
  }

  /** As whose values it reads. */
  Series series() {
    return series;
  }

  /** Its middle at its highest, ng/mL. */
  double highest() {
    return course.stream().mapToDouble(Expected::median).max().orElse(0);
  }

  /** Its middle at its lowest, ng/mL. */
  double lowest() {
    return course.stream().mapToDouble(Expected::median).min().orElse(Double.MAX_VALUE);
  }

  void draw(Svg svg, Frame frame, LevelScale levels) {
    if (course.isEmpty()) {
      return;
    }
    String low = path(frame, levels, Expected::low);
    String high = path(frame, levels, Expected::high);
    List<Expected> back = new ArrayList<>(course);
    java.util.Collections.reverse(back);
    StringBuilder area = new StringBuilder(high);
    for (Expected one : back) {
      area.append('L').append(place(frame, levels, one, Expected::low));
    }
    svg.empty("path", "d", area.append('Z'), "fill", Colours.BAND, "stroke", "none");
    edge(svg, low, "3 3", 1);
    edge(svg, high, "3 3", 1);
    edge(svg, path(frame, levels, Expected::median), "", 1.2);
  }

  private static void edge(Svg svg, String path, String dash, double width) {
    svg.empty(
        "path",
        "d",
        path,
        "fill",
        "none",
        "stroke",
        Colours.BAND_EDGE,
        "stroke-width",
        width,
        "stroke-dasharray",
        dash.isEmpty() ? "none" : dash);
  }

  private String path(Frame frame, LevelScale levels, ToDoubleFunction<Expected> level) {
    StringBuilder path = new StringBuilder();
    for (Expected one : course) {
      path.append(path.isEmpty() ? 'M' : 'L').append(place(frame, levels, one, level));
    }
    return path.toString();
  }

  private static String place(
      Frame frame, LevelScale levels, Expected one, ToDoubleFunction<Expected> level) {
    return Svg.number(frame.times().within(one.at()))
        + " "
        + Svg.number(levels.y(level.applyAsDouble(one)));
  }
}
