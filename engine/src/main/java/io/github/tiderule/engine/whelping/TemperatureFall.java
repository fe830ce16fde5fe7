package io.github.tiderule.engine.whelping;

import io.github.tiderule.engine.whelping.WhelpingEvidence.Temperature;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The fall of temperature before whelping, somewhere in a span of time.
 *
 * @param from days after the anchor
 * @param to not before it
 */
record TemperatureFall(double from, double to) {

  private static final int POINTS = 9;
  private static final double HOURS = 24;

  /** The fall that the last run of low readings shows; null where the last reading is not low. */
  static @Nullable TemperatureFall in(List<Temperature> readings, Parameters parameters) {
    double low = parameters.value("whelping.temperature.low");
    int first = readings.size();
    while (first > 0 && readings.get(first - 1).celsius() <= low) {
      first--;
    }
    if (first == readings.size()) {
      return null;
    }
    double to = readings.get(first).day();
    double earliest = to - parameters.value("whelping.temperature.gap-hours") / HOURS;
    double from = first == 0 ? earliest : Math.max(earliest, readings.get(first - 1).day());
    return new TemperatureFall(from, to);
  }

  /** Likelihood of whelping at a time. */
  double likelihood(double whelping, Parameters parameters) {
    double mean = parameters.value("whelping.temperature.before-hours") / HOURS;
    double sd = parameters.value("whelping.temperature.sd-hours") / HOURS;
    double untrue = parameters.value("whelping.temperature.false");
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
      double fall = from + (to - from) * (i + 0.5) / POINTS;
      sum += Bell.density(whelping, fall + mean, sd) / POINTS;
    }
    return (1 - untrue) * sum + untrue / parameters.value("whelping.temperature.chart-days");
  }
}
