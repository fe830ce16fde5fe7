package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Series;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Progesterone numbers of one series, and at most one limit, in the plainest way: one full
 * covariance for every course, way to read and odd number, solved by elimination.
 */
final class PlainValues {

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
  private static final int SPEEDS = 17;
  private static final double REACH = 3.6;

  private final Model model;
  private final List<Evidence.Value> values;
  private final List<Evidence.Interval> limits;
  private final List<Line> lines = new ArrayList<>();
  private final List<Model.Plateau> plateaus;

  /** A row of the table of methods. */
  private record Line(double weight, double intercept, double slope, double scaleSd, double cv) {}

  /**
   * @param evidence of which the numbers and limits are of the same series; a coefficient of
   *     variation that is the same at every level
   * @param plateaus with the logs of their shares
   */
  PlainValues(Model model, Evidence evidence, List<Model.Plateau> plateaus) {
    this.model = model;
    this.plateaus = plateaus;
    values = evidence.values();
    limits = evidence.intervals();
    Series series = values.get(0).series();
    for (CSVRecord row : Parameters.assays().rows()) {
      if (row.get("method").equals(series.method().word())) {
        lines.add(
            new Line(
                number(row, "weight"),
                number(row, "intercept"),
                number(row, "slope"),
                number(row, "scaleLogSd"),
                number(row, "cvTo10")));
      }
    }
  }

  private static double number(CSVRecord row, String column) {
    return Double.parseDouble(row.get(column));
  }

  /** Logs of the numbers. */
  double[] logs() {
    return values.stream().mapToDouble(value -> Math.log(value.ngPerMl())).toArray();
  }

  /**
   * Density of the logs of the numbers, with the LH peak at a day, times the prior of its courses.
   *
   * @param logs of the numbers
   * @param counted which numbers there are
   * @param sure a number that is not odd, −1 where any may be
   */
  double density(
      double peak, double[] logs, boolean[] counted, int sure, double usual, double resting) {
    double sum = 0;
    double weights = 0;
    for (int r = 0; r < SPEEDS; r++) {
      weights += STANDARD.density(-REACH + 2 * REACH * r / (SPEEDS - 1));
    }
    for (Line line : lines) {
      for (int r = 0; usual > 0 && r < SPEEDS; r++) {
        double z = -REACH + 2 * REACH * r / (SPEEDS - 1);
        double rate = Math.exp(model.rateSd * z);
        double part = line.weight() * usual * STANDARD.density(z) / weights;
        sum += part * course(line, model.curve, peak, rate, logs, counted, sure);
      }
      for (Model.Plateau plateau : resting > 0 ? plateaus : List.<Model.Plateau>of()) {
        double part = line.weight() * resting * Math.exp(plateau.logShare());
        sum += part * course(line, plateau.curve(), peak, 1, logs, counted, sure);
      }
    }
    return sum;
  }

  private double course(
      Line line,
      PopulationCurve curve,
      double peak,
      double rate,
      double[] logs,
      boolean[] counted,
      int sure) {
    int[] of = java.util.stream.IntStream.range(0, logs.length).filter(i -> counted[i]).toArray();
    int n = of.length;
    double[] residual = new double[n];
    double[][] moved = new double[n][];
    double[][] covariance = new double[n][n];
    for (int a = 0; a < n; a++) {
      double onCurve = onCurve(rate, values.get(of[a]).day() - peak);
      residual[a] = logs[of[a]] - expected(line, curve.logMean(onCurve));
      moved[a] = moved(line, curve, onCurve);
    }
    for (int a = 0; a < n; a++) {
      Evidence.Value value = values.get(of[a]);
      for (int b = 0; b < n; b++) {
        double apart = Math.abs(value.day() - values.get(of[b]).day());
        covariance[a][b] =
            moved[a][0] * moved[b][0]
                + moved[a][1] * moved[b][1]
                + Math.pow(line.scaleSd(), 2)
                + Math.pow(model.swingSd, 2) * Math.exp(-apart / model.swingDays)
                + Math.pow(model.driftSd, 2)
                    * Math.exp(-0.5 * Math.pow(apart / model.driftDays, 2));
      }
      covariance[a][a] += own(line, value.ngPerMl());
    }
    double good = 1 - model.oddWeight;
    int maybe = n - (sure >= 0 && counted[sure] ? 1 : 0);
    double sum = Math.pow(good, maybe) * normal(covariance, residual);
    for (int a = 0; a < n; a++) {
      if (of[a] != sure) {
        covariance[a][a] += model.oddSd * model.oddSd;
        sum += Math.pow(good, maybe - 1) * model.oddWeight * normal(covariance, residual);
        covariance[a][a] -= model.oddSd * model.oddSd;
      }
    }
    for (Evidence.Interval limit : limits) {
      sum *=
          below(line, curve, onCurve(rate, limit.day() - peak), limit, covariance, residual, moved);
    }
    return sum;
  }

  /** Probability that a level lies below its limit, given the numbers, none of them odd. */
  private double below(
      Line line,
      PopulationCurve curve,
      double onCurve,
      Evidence.Interval limit,
      double[][] covariance,
      double[] residual,
      double[][] moved) {
    double[] own = moved(line, curve, onCurve);
    double variance =
        own[0] * own[0]
            + own[1] * own[1]
            + Math.pow(line.scaleSd(), 2)
            + Math.pow(model.swingSd, 2)
            + Math.pow(model.driftSd, 2)
            + own(line, limit.high());
    double[] with = new double[residual.length];
    for (int a = 0; a < with.length; a++) {
      with[a] = own[0] * moved[a][0] + own[1] * moved[a][1] + Math.pow(line.scaleSd(), 2);
    }
    double[] solved = solve(covariance, with)[0];
    double mean = expected(line, curve.logMean(onCurve));
    for (int a = 0; a < with.length; a++) {
      mean += solved[a] * residual[a];
      variance -= solved[a] * with[a];
    }
    double inside =
        STANDARD.cumulativeProbability((Math.log(limit.high()) - mean) / Math.sqrt(variance));
    return (1 - model.oddWeight) * inside + model.oddWeight / 2;
  }

  private double onCurve(double rate, double days) {
    return model.ratePivot + rate * (days - model.ratePivot);
  }

  private static double expected(Line line, double logLevel) {
    double level = Math.exp(logLevel);
    double reading = line.intercept() + line.slope() * level;
    return Math.log(line.intercept() == 0 ? reading : Math.max(reading, 0.25 * level));
  }

  /** How far one deviation of her own baseline, and of her rise, moves the log reading. */
  private double[] moved(Line line, PopulationCurve curve, double onCurve) {
    double level = Math.exp(curve.logMean(onCurve));
    double reading = line.intercept() + line.slope() * level;
    double elasticity =
        line.intercept() == 0 || reading <= 0.25 * level ? 1 : line.slope() * level / reading;
    double base = Math.min(1, model.value("level.basal") / level);
    double luteal = 1 + model.lutealGrowth * Math.min(Math.max((onCurve - 4) / 4, 0), 1);
    return new double[] {
      elasticity * base * model.baselineSd, elasticity * (1 - base) * luteal * model.riseSd
    };
  }

  private double own(Line line, double ngPerMl) {
    return Math.pow(model.pulseSd, 2)
        + Math.pow(line.cv(), 2)
        + Math.pow(model.assayFloor / Math.max(ngPerMl, model.assayFloor), 2);
  }

  private static double normal(double[][] covariance, double[] x) {
    if (x.length == 0) {
      return 1;
    }
    double[][] solved = solve(covariance, x);
    double square = 0;
    for (int i = 0; i < x.length; i++) {
      square += x[i] * solved[0][i];
    }
    return Math.exp(-0.5 * square) / Math.sqrt(Math.pow(2 * Math.PI, x.length) * solved[1][0]);
  }

  /** The solution of a system of equations, and its determinant, by Gauss's elimination. */
  private static double[][] solve(double[][] matrix, double[] right) {
    int n = right.length;
    double[][] a = Arrays.stream(matrix).map(double[]::clone).toArray(double[][]::new);
    double[] x = right.clone();
    double determinant = 1;
    for (int p = 0; p < n; p++) {
      determinant *= a[p][p];
      for (int i = p + 1; i < n; i++) {
        double factor = a[i][p] / a[p][p];
        for (int j = p; j < n; j++) {
          a[i][j] -= factor * a[p][j];
        }
        x[i] -= factor * x[p];
      }
    }
    for (int i = n - 1; i >= 0; i--) {
      for (int j = i + 1; j < n; j++) {
        x[i] -= a[i][j] * x[j];
      }
      x[i] /= a[i][i];
    }
    return new double[][] {x, {determinant}};
  }
}
