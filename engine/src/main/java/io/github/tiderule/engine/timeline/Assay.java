package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;

/**
 * One way a method may read against radioimmunoassay: {@code reading = intercept + slope × true},
 * times a scale of its own for every laboratory. Immutable.
 */
final class Assay {

  /** Least share of the true level a reading with a negative intercept falls to. */
  private static final double LEAST_SHARE = 0.25;

  /** Logs of true levels, ng/mL, that readings are tabulated between; beyond, they are held. */
  private static final double LOWEST = -8;

  private static final double HIGHEST = 8;
  private static final double PER_UNIT = 256;

  /** Least true level that a reading is taken back to, ng/mL. */
  private static final double MIN = 1e-3;

  private final double weight;
  private final double intercept;
  private final double slope;
  private final double scaleLogSd;
  private final double[] cv;
  private final double[] logReading;
  private final double[] elasticity;

  private Assay(double weight, double intercept, double slope, double scaleLogSd, double[] cv) {
    this.weight = weight;
    this.intercept = intercept;
    this.slope = slope;
    this.scaleLogSd = scaleLogSd;
    this.cv = cv;
    int size = proportional() ? 0 : (int) ((HIGHEST - LOWEST) * PER_UNIT) + 1;
    logReading = new double[size];
    elasticity = new double[size];
    for (int i = 0; i < size; i++) {
      double level = Math.exp(LOWEST + i / PER_UNIT);
      double line = intercept + slope * level;
      double least = LEAST_SHARE * level;
      logReading[i] = Math.log(Math.max(line, least));
      elasticity[i] = line <= least ? 1 : slope * level / line;
    }
  }

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
        new double[] {number(row, "cvBelow3"), number(row, "cvTo10"), number(row, "cvAbove10")});
  }

  /**
   * The only way of a laboratory whose scale was learned: in place of all its method's ways.
   *
   * @param ways of its method, at least one; the first repeats as well as it does
   */
  static Assay learned(double factor, double logSd, List<Assay> ways) {
    return new Assay(1, 0, factor, logSd, ways.get(0).cv);
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

  /**
   * Log of the expected reading, where it is not proportional; from a table, with an error below
   * 10⁻⁴ but within 1/256 of the level at which the reading begins to be held.
   *
   * @param logLevel log of the true level, ng/mL
   */
  double logReading(double logLevel) {
    return in(logReading, logLevel);
  }

  /**
   * Relative change of the reading for a relative change of the true level, where the reading is
   * not proportional.
   *
   * @param logLevel log of the true level, ng/mL
   */
  double elasticity(double logLevel) {
    return in(elasticity, logLevel);
  }

  private static double in(double[] table, double logLevel) {
    double place = (Math.min(Math.max(logLevel, LOWEST), HIGHEST) - LOWEST) * PER_UNIT;
    int i = Math.min((int) place, table.length - 2);
    return table[i] + (place - i) * (table[i + 1] - table[i]);
  }

  /** Log of the true level, ng/mL, that reads so. */
  double logTrue(double ngPerMl) {
    double line = (ngPerMl - intercept) / slope;
    return Math.log(intercept == 0 ? line : Math.min(Math.max(line, MIN), ngPerMl / LEAST_SHARE));
  }

  /** Coefficient of variation at a reading. */
  double cvAt(double ngPerMl) {
    return ngPerMl < 3 ? cv[0] : ngPerMl <= 10 ? cv[1] : cv[2];
  }

  /** How likely this way is among the ways of its method; they sum to 1. */
  double weight() {
    return weight;
  }

  /** The line's slope. */
  double slope() {
    return slope;
  }

  /** Spread of the laboratory's own log scale. */
  double scaleLogSd() {
    return scaleLogSd;
  }
}
