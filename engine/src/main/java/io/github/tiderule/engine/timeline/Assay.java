package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Method;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;

/**
 * One way a method may read against radioimmunoassay: {@code reading = intercept + slope × true},
 * times a scale of its own for every laboratory.
 *
 * @param weight how likely this way is among the ways of its method; they sum to 1
 * @param scaleLogSd spread of the laboratory's own scale
 * @param cv coefficient of variation below 3, to 10, and above 10 ng/mL
 */
record Assay(double weight, double intercept, double slope, double scaleLogSd, List<Double> cv) {

  /** Least share of the true level a reading with a negative intercept falls to. */
  private static final double LEAST_SHARE = 0.25;

  /** All methods, each with one way or several where published comparisons disagree. */
  static Map<Method, List<Assay>> load() {
    Map<Method, List<Assay>> assays = new EnumMap<>(Method.class);
    for (CSVRecord row : Parameters.assays().rows()) {
      Method method =
          Arrays.stream(Method.values())
              .filter(m -> m.word().equals(row.get("method")))
              .findFirst()
              .orElseThrow(() -> new IllegalStateException("no method " + row.get("method")));
      assays.computeIfAbsent(method, m -> new ArrayList<>()).add(read(row));
    }
    return assays;
  }

  private static Assay read(CSVRecord row) {
    return new Assay(
        number(row, "weight"),
        number(row, "intercept"),
        number(row, "slope"),
        number(row, "scaleLogSd"),
        List.of(number(row, "cvBelow3"), number(row, "cvTo10"), number(row, "cvAbove10")));
  }

  private static double number(CSVRecord row, String column) {
    return Double.parseDouble(row.get(column));
  }

  /** Whether a reading is the true level times a factor, so that its elasticity is 1. */
  boolean proportional() {
    return intercept == 0;
  }

  /** Log of the factor of a proportional reading. */
  double logSlope() {
    return Math.log(slope);
  }

  /** Log of the expected reading at a true level, where the reading is not proportional. */
  double logReading(double trueLevel) {
    return Math.log(Math.max(intercept + slope * trueLevel, LEAST_SHARE * trueLevel));
  }

  /**
   * Relative change of the reading for a relative change of the true level, where the reading is
   * not proportional.
   */
  double elasticity(double trueLevel) {
    double reading = intercept + slope * trueLevel;
    return reading <= LEAST_SHARE * trueLevel ? 1 : slope * trueLevel / reading;
  }

  /** Coefficient of variation at a reading. */
  double cvAt(double ngPerMl) {
    return ngPerMl < 3 ? cv.get(0) : ngPerMl <= 10 ? cv.get(1) : cv.get(2);
  }
}
