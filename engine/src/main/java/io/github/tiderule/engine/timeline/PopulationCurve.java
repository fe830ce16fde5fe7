package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.parameter.Parameters;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

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
  private static final double COMES_ON = 0.75;

  /** Standard deviations from there at which it is 0 or 1 as far as can be seen. */
  private static final double FAR = 5;

  /** A rest this far below the curve, in logs, adds less than one part in ten thousand to it. */
  private static final double UNSEEN = 2;

  /**
   * Log of the level and its basal share, one after the other, since both are asked for at once.
   */
  private final double[] table;

  private final double basal;
  private final double start;
  private final double end;

  /** What this curve is where its own table ends. */
  private final @Nullable PopulationCurve beyond;

  private PopulationCurve(
      double[] logMean, double basal, double start, @Nullable PopulationCurve beyond) {
    this.basal = basal;
    this.start = start;
    this.beyond = beyond;
    end = start + (logMean.length - 1) / PER_DAY;
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
    return new PopulationCurve(logMean, basal, FIRST, null);
  }

  /**
   * The curve of a season that rests at a level for some days before the surge: the fourth-power
   * mean of this curve and of a rest that comes on within a day.
   */
  PopulationCurve withRest(double days, double ngPerMl) {
    double from = -days - FAR * COMES_ON;
    double until = -days;
    while (until < LAST && logMean(until) < Math.log(ngPerMl) + UNSEEN) {
      until += 1 / PER_DAY;
    }
    return changed(
        from,
        until,
        (at, log) -> {
          double rest = ngPerMl * Normal.cdf((at + days) / COMES_ON);
          return 0.25 * Math.log(Math.exp(4 * log) + Math.pow(rest, 4));
        });
  }

  /**
   * The curve of a season in which the level falls back to base from some days after the peak on.
   */
  PopulationCurve falling(double days, double speed) {
    return changed(
        days - 2 * FAR * COMES_ON,
        LAST,
        (at, log) -> {
          double since = COMES_ON * Math.log1p(Math.exp((at - days) / COMES_ON));
          double above = Math.max(0, Math.exp(log) - basal);
          return Math.log(basal + above * Math.exp(-speed * since));
        });
  }

  private PopulationCurve changed(double from, double until, DoubleBinaryOperator logMean) {
    int first = Math.max(0, (int) Math.floor((from - start) * PER_DAY));
    int last = Math.min(table.length / 2 - 1, (int) Math.ceil((until - start) * PER_DAY));
    double[] changed = new double[last - first + 1];
    for (int i = 0; i < changed.length; i++) {
      double at = start + (first + i) / PER_DAY;
      changed[i] = logMean.applyAsDouble(at, table[2 * (first + i)]);
    }
    return new PopulationCurve(changed, basal, start + first / PER_DAY, this);
  }

  /** Whether this curve differs there, to what can be seen, from the common one. */
  boolean differsAt(double days) {
    return days > start && days < end;
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
    if (beyond != null && !differsAt(days)) {
      return beyond.in(which, days);
    }
    double place = (days - start) * PER_DAY;
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
