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

  /** Tenths of a degree add up to not quite their sum. */
  private static final double ROUNDING = 1e-9;

  /**
   * The fall that the last run of readings shows, all of them well below the mean of those before
   * it; null where there is no such run.
   */
  static @Nullable TemperatureFall in(List<Temperature> readings, Parameters parameters) {
    double least = parameters.value("whelping.temperature.own-fall") - ROUNDING;
    double sum = 0;
    for (int first = 1; first < readings.size(); first++) {
      sum += readings.get(first - 1).celsius();
      double most = sum / first - least;
      if (readings.stream().skip(first).allMatch(reading -> reading.celsius() <= most)) {
        double to = readings.get(first).day();
        double earliest = to - parameters.value("whelping.temperature.gap-hours") / HOURS;
        return new TemperatureFall(Math.max(earliest, readings.get(first - 1).day()), to);
      }
    }
    return null;
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
