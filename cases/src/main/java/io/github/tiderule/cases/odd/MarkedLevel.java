package io.github.tiderule.cases.odd;

import io.github.tiderule.cases.cohort.Draws;
import java.util.Map;
import java.util.TreeMap;

/**
 * Progesterone through a season: straight lines on the log scale between marks, flat before the
 * first and after the last, times a swing from day to day.
 */
final class MarkedLevel {

  private static final double SWING_SD = 0.08;
  private static final double SWING_KEPT = 0.5;
  private static final int DAYS = 160;

  private final TreeMap<Double, Double> logs = new TreeMap<>();
  private final double[] swing = new double[DAYS];

  MarkedLevel(Draws draws) {
    swing[0] = draws.normal(0, SWING_SD);
    for (int i = 1; i < DAYS; i++) {
      swing[i] =
          SWING_KEPT * swing[i - 1]
              + draws.normal(0, SWING_SD * Math.sqrt(1 - SWING_KEPT * SWING_KEPT));
    }
  }

  /** Adds a mark. */
  MarkedLevel mark(double day, double level) {
    logs.put(day, StrictMath.log(level));
    return this;
  }

  /** Drops every mark after a day. */
  void clearAfter(double day) {
    logs.tailMap(day, false).clear();
  }

  /** The day of the highest mark before a day, the last of equals; minus infinity for none. */
  double topBefore(double day) {
    double top = Double.NEGATIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (Map.Entry<Double, Double> mark : logs.headMap(day, false).entrySet()) {
      if (mark.getValue() >= highest) {
        highest = mark.getValue();
        top = mark.getKey();
      }
    }
    return top;
  }

  /** Level in her blood, ng/mL, without the pulses within a day. */
  double at(double day) {
    return StrictMath.exp(lineAt(day) + swingAt(day));
  }

  private double lineAt(double day) {
    Map.Entry<Double, Double> before = logs.floorEntry(day);
    Map.Entry<Double, Double> after = logs.ceilingEntry(day);
    if (before == null) {
      return logs.firstEntry().getValue();
    }
    if (after == null) {
      return before.getValue();
    }
    double span = after.getKey() - before.getKey();
    double part = span == 0 ? 0 : (day - before.getKey()) / span;
    return before.getValue() + part * (after.getValue() - before.getValue());
  }

  private double swingAt(double day) {
    double place = Math.min(Math.max(day, 0), DAYS - 1.001);
    int i = (int) place;
    double part = place - i;
    return swing[i] * (1 - part) + swing[i + 1] * part;
  }
}
