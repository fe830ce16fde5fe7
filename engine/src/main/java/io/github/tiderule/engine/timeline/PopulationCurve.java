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

  /** Standard deviation of when a rest has come on, days. */
  private static final double COMES_ON = 0.5;

  /** Standard deviations from there at which it is 0 or 1 to the last bit that counts. */
  private static final double FAR = 9;

  /**
   * Log of the level and its basal share, one after the other, since both are asked for at once.
   */
  private final double[] table;

  private final double basal;

  private PopulationCurve(double[] logMean, double basal) {
    this.basal = basal;
    table = new double[2 * logMean.length];
    for (int i = 0; i < logMean.length; i++) {
      table[2 * i] = logMean[i];
      table[2 * i + 1] = Math.min(1, basal * Math.exp(-logMean[i]));
    }
  }

  /**
   * The curve of the parameter files.
   *
   * @param basal basal level, ng/mL
   */
  static PopulationCurve load(double basal) {
    List<CSVRecord> rows = Parameters.curve().rows();
    double[] day = rows.stream().mapToDouble(row -> Double.parseDouble(row.get("day"))).toArray();
    double[] log =
        rows.stream()
            .mapToDouble(row -> Math.log(Double.parseDouble(row.get("ngPerMl"))))
            .toArray();
    MonotoneCurve curve = MonotoneCurve.of(day, log);
    double[] logMean = new double[(int) ((LAST - FIRST) * PER_DAY) + 2];
    for (int i = 0; i < logMean.length; i++) {
      logMean[i] = curve.at(FIRST + i / PER_DAY);
    }
    return new PopulationCurve(logMean, basal);
  }

  /**
   * The curve of a season that rests at a level for some days before the surge: the fourth-power
   * mean of this curve and of a rest that comes on within a day.
   */
  PopulationCurve withRest(double days, double ngPerMl) {
    double[] logMean = new double[table.length / 2];
    for (int i = 0; i < logMean.length; i++) {
      double on = (FIRST + i / PER_DAY + days) / COMES_ON;
      // the table is long, and away from where the rest comes on there is nothing to work out
      double rest = ngPerMl * (on < -FAR ? 0 : on > FAR ? 1 : Normal.cdf(on));
      logMean[i] = 0.25 * Math.log(Math.pow(Math.exp(table[2 * i]), 4) + Math.pow(rest, 4));
    }
    return new PopulationCurve(logMean, basal);
  }

  /** Log of the population's level, ln ng/mL, at {@code days} after the LH peak. */
  double logMean(double days) {
    return in(0, days);
  }

  /** Share of the level there that is basal, at most 1. */
  double baseShare(double days) {
    return in(1, days);
  }

  private double in(int which, double days) {
    double place = (days - FIRST) * PER_DAY;
    if (!(place > 0)) {
      return table[which];
    }
    int i = 2 * (int) place + which;
    if (i >= table.length - 2) {
      return table[table.length - 2 + which];
    }
    return table[i] + (place - (int) place) * (table[i + 2] - table[i]);
  }
}
