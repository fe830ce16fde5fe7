package io.github.tiderule.cases.published;

import static io.github.tiderule.cases.published.Measures.number;

import io.github.tiderule.engine.timeline.Timeline;
import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * The progesterone the engine expects of a bitch of whom it knows nothing, by days from the LH
 * peak. Arguments begin with a method's word.
 */
final class CurveMeasures {

  private static final double HIGHEST = 200;
  private static final int HALVINGS = 60;

  private final Timeline timeline;

  private CurveMeasures(Parameters parameters) {
    timeline = Timeline.of(parameters);
  }

  static CurveMeasures of(Parameters parameters) {
    return new CurveMeasures(parameters);
  }

  Map<String, ToDoubleFunction<List<String>>> known() {
    return Map.of(
        "level", a -> level(a.get(0), number(a, 1)),
        "level-nmol", a -> Unit.NMOL_PER_L.fromNgPerMl(level(a.get(0), number(a, 1))),
        "level-ratio", a -> level(a.get(0), number(a, 1)) / level(a.get(0), number(a, 2)),
        "level-rank", a -> rank(a.get(0), number(a, 1), number(a, 2)),
        "growth", a -> growth(number(a, 0), number(a, 1)));
  }

  /** Median, ng/mL. */
  private double level(String method, double daysAfterPeak) {
    double low = Math.log(0.01);
    double high = Math.log(HIGHEST);
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (below(method, daysAfterPeak, middle) < 0.5) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return Math.exp(low);
  }

  /** Where a value lies among those of all bitches, 0 to 1. */
  private double rank(String method, double daysAfterPeak, double ngPerMl) {
    return below(method, daysAfterPeak, Math.log(ngPerMl));
  }

  private double growth(double fromDay, double toDay) {
    return Math.pow(level("ria", toDay) / level("ria", fromDay), 1 / (toDay - fromDay));
  }

  private double below(String method, double daysAfterPeak, double log) {
    Series series = Series.of("any", method(method));
    return timeline.afterPeak(series, daysAfterPeak).below(Math.exp(log));
  }

  /** The method of a word. */
  static Method method(String word) {
    return Arrays.stream(Method.values())
        .filter(method -> ((Worded) method).word().equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no method is called " + word));
  }
}
