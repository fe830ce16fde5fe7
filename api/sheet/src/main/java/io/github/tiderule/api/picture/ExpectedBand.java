package io.github.tiderule.api.picture;

import io.github.tiderule.api.picture.svg.Colour;
import io.github.tiderule.api.picture.svg.Smooth;
import io.github.tiderule.api.picture.svg.Svg;
import io.github.tiderule.engine.Posterior;
import io.github.tiderule.engine.Posterior.Expected;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;
import java.util.function.ToDoubleFunction;

/** Where values are expected, 9 in 10 of them: a shaded band with dashed edges and its middle. */
final class ExpectedBand {

  private static final Duration STEP = Duration.ofHours(12);

  /** A course costs more than all else in a picture, and each is drawn for several widths. */
  private static final Map<Posterior, ExpectedBand> LAST =
      Collections.synchronizedMap(new WeakHashMap<>());

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
    ExpectedBand last = LAST.get(posterior);
    if (last != null && last.isOf(series, instants)) {
      return last;
    }
    ExpectedBand band = new ExpectedBand(series, posterior.course(series, instants));
    LAST.put(posterior, band);
    return band;
  }

  private boolean isOf(Series wanted, List<Instant> instants) {
    return series.equals(wanted) && course.stream().map(Expected::at).toList().equals(instants);
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
    List<Smooth.Point> low = points(frame, levels, Expected::low);
    List<Smooth.Point> high = points(frame, levels, Expected::high);
    List<Smooth.Point> back = new ArrayList<>(low);
    Collections.reverse(back);
    String area =
        path(high)
            + 'L'
            + Smooth.place(back.get(0).x(), back.get(0).y())
            + Smooth.through(back)
            + 'Z';
    svg.empty("path", "d", area, "fill", Colour.BAND, "stroke", "none");
    svg.stroke(path(low), Colour.BAND_EDGE, 1, "3 3");
    svg.stroke(path(high), Colour.BAND_EDGE, 1, "3 3");
    svg.stroke(path(points(frame, levels, Expected::median)), Colour.BAND_EDGE, 1.2, "");
  }

  private static String path(List<Smooth.Point> points) {
    return 'M' + Smooth.place(points.get(0).x(), points.get(0).y()) + Smooth.through(points);
  }

  private List<Smooth.Point> points(
      Frame frame, LevelScale levels, ToDoubleFunction<Expected> level) {
    return course.stream()
        .map(
            one ->
                new Smooth.Point(
                    frame.times().within(one.at()), levels.y(level.applyAsDouble(one))))
        .toList();
  }
}
