package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.parameter.Parameters;
import java.util.List;
import org.apache.commons.csv.CSVRecord;

/**
 * The population's progesterone about the LH peak, tabulated finely.
 *
 * <p>{@code m(τ)}: ng/mL by radioimmunoassay, τ days after the LH peak, log values joined by a
 * {@link MonotoneCurve} through the published points. Between table entries, 1/64 day apart, log
 * values are joined by straight lines; the error is below 10⁻⁴.
 */
final class PopulationCurve {

  private static final double FIRST = -40;
  private static final double LAST = 130;
  private static final double PER_DAY = 64;

  private final double[] logMean;

  private PopulationCurve(double[] logMean) {
    this.logMean = logMean;
  }

  static PopulationCurve load() {
    List<CSVRecord> rows = Parameters.curve().rows();
    double[] day = rows.stream().mapToDouble(row -> Double.parseDouble(row.get("day"))).toArray();
    double[] log =
        rows.stream()
            .mapToDouble(row -> Math.log(Double.parseDouble(row.get("ngPerMl"))))
            .toArray();
    MonotoneCurve curve = MonotoneCurve.of(day, log);
    double[] table = new double[(int) ((LAST - FIRST) * PER_DAY) + 2];
    for (int i = 0; i < table.length; i++) {
      table[i] = curve.at(FIRST + i / PER_DAY);
    }
    return new PopulationCurve(table);
  }

  /**
   * The curve of a season that rests at a level for some days before the surge: the fourth-power
   * mean of this curve and of a rest that comes on within a day.
   */
  PopulationCurve withRest(double days, double ngPerMl) {
    double[] table = new double[logMean.length];
    for (int i = 0; i < table.length; i++) {
      double rest = ngPerMl * Normal.cdf((FIRST + i / PER_DAY + days) / 0.5);
      table[i] = 0.25 * Math.log(Math.pow(Math.exp(logMean[i]), 4) + Math.pow(rest, 4));
    }
    return new PopulationCurve(table);
  }

  /** Log of the population's level, ln ng/mL, at {@code days} after the LH peak. */
  double logMean(double days) {
    double place = (days - FIRST) * PER_DAY;
    if (!(place > 0)) {
      return logMean[0];
    }
    int i = (int) place;
    if (i >= logMean.length - 1) {
      return logMean[logMean.length - 1];
    }
    double part = place - i;
    return logMean[i] + part * (logMean[i + 1] - logMean[i]);
  }
}
