package io.github.tiderule.cases.published;

import static io.github.tiderule.cases.published.Measures.number;

import io.github.tiderule.rules.parameter.Parameters;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** How the laboratory's methods read, as the parameters have them. */
final class AssayMeasures {

  private static final double PER_CENT = 100;
  private static final int STEPS = 2000;

  private final Parameters parameters;

  private AssayMeasures(Parameters parameters) {
    this.parameters = parameters;
  }

  static AssayMeasures of(Parameters parameters) {
    return new AssayMeasures(parameters);
  }

  Map<String, ToDoubleFunction<List<String>>> known() {
    return Map.of(
        "assay", a -> reading(a.get(0), Integer.parseInt(a.get(1)), number(a, 2)),
        "assay-ratio", a -> reading("eclia", 0, number(a, 0)) / reading("clia", 1, number(a, 0)),
        "cv", a -> PER_CENT * Double.parseDouble(row(a.get(0), 0).get(a.get(1))),
        "critical-difference", a -> 1.96 * Math.sqrt(2) * number(a, 0),
        "molar-factor", a -> 1000 / number(a, 0),
        "gel-loss", a -> PER_CENT * (1 - Math.exp(value("timeline.handling.log-bias"))),
        "swing", a -> PER_CENT * (1 - Math.exp(-1.96 * swing(number(a, 0)))),
        "kit-agreement", a -> PER_CENT * agreement(number(a, 0), number(a, 1)));
  }

  private double value(String id) {
    return parameters.value(id);
  }

  /** The n-th published way in which a method is said to read. */
  private static CSVRecord row(String method, int n) {
    return Parameters.assays().rows().stream()
        .filter(row -> row.get("method").equals(method))
        .toList()
        .get(n);
  }

  private static double reading(String method, int n, double ria) {
    CSVRecord row = row(method, n);
    return Double.parseDouble(row.get("intercept")) + Double.parseDouble(row.get("slope")) * ria;
  }

  /** Standard deviation of the log ratio of two results some days apart, at one true level. */
  private double swing(double daysApart) {
    double swing = value("timeline.swing.log-sd");
    double kept = Math.exp(-daysApart / value("timeline.swing.days"));
    double cv = Double.parseDouble(row("ria", 0).get("cvTo10"));
    double own = Math.hypot(value("timeline.pulse.log-sd"), cv);
    return Math.sqrt(2 * swing * swing * (1 - kept) + 2 * own * own);
  }

  /** Share of samples a laboratory puts into a band, evenly over its logs, that a kit does too. */
  private double agreement(double low, double high) {
    NormalDistribution error = NormalDistribution.of(0, value("timeline.kit.log-sd"));
    double from = Math.log(low);
    double to = Math.log(high);
    double sum = 0;
    for (int i = 0; i < STEPS; i++) {
      double at = from + (to - from) * (i + 0.5) / STEPS;
      sum += error.probability(from - at, to - at);
    }
    return sum / STEPS;
  }
}
