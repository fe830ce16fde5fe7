package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Progesterone numbers of one series, and at most one limit, in the plainest way: one full
 * covariance for every course, way to read and odd number, solved by elimination. With a limit, no
 * number may be moved.
 */
final class PlainValues {

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
  private static final int SPEEDS = 21;
  private static final double REACH = 3.75;

  private final Model model;
  private final Evidence evidence;
  private final List<Evidence.Value> values;
  private final List<Evidence.Interval> limits;
  private final List<Line> lines = new ArrayList<>();
  private final List<Model.Plateau> plateaus;
  private double driftSd;
  private double driftDays;

  /** A row of the table of methods. */
  private record Line(double weight, double intercept, double slope, double scaleSd, double cv) {}

  /**
   * @param evidence of which the numbers and limits are of the same series; a coefficient of
   *     variation that is the same at every level
   * @param plateaus with the logs of their shares
   */
  PlainValues(Model model, Evidence evidence, List<Model.Plateau> plateaus) {
    this.model = model;
    this.evidence = evidence;
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
   * @param peak a multiple of a quarter day
   * @param logs of the numbers
   * @param counted which numbers there are
   * @param courses weights of the ordinary course, plateau, irregular course and early fall
   */
  double density(double peak, double[] logs, boolean[] counted, double... courses) {
    return density(peak, logs, counted, -1, new double[] {0}, courses)[0];
  }

  /**
   * The same by the log of one number, all others as they are.
   *
   * @param sure that number, which is not odd
   * @param at its logs
   */
  double[] density(double peak, int sure, double[] at, double... courses) {
    double[] logs = logs();
    logs[sure] = 0;
    boolean[] all = new boolean[logs.length];
    Arrays.fill(all, true);
    return density(peak, logs, all, sure, at, courses);
  }

  private double[] density(
      double peak, double[] logs, boolean[] counted, int sure, double[] at, double[] courses) {
    double[] sum = new double[at.length];
    double weights = 0;
    for (int r = 0; r < SPEEDS; r++) {
      weights += weight(r);
    }
    Lattice here = new Lattice((int) Math.round(4 * peak), 1, 0.25);
    for (Line line : lines) {
      driftSd = model.driftSd;
      driftDays = model.driftDays;
      for (int r = 0; courses[0] > 0 && r < SPEEDS; r++) {
        double z = -REACH + 2 * REACH * r / (SPEEDS - 1);
        double rate = Math.exp(model.rateSd * z);
        double part = line.weight() * courses[0] * weight(r) / weights;
        course(line, model.curve, peak, rate, logs, counted, sure, at, part, sum);
      }
      for (Model.Plateau plateau : courses[1] > 0 ? plateaus : List.<Model.Plateau>of()) {
        double later = model.onset.putOff(here, plateau.days(), evidence)[0];
        double part = line.weight() * courses[1] * later * Math.exp(plateau.logShare());
        course(line, plateau.curve(), peak, 1, logs, counted, sure, at, part, sum);
      }
      for (PopulationCurve falling : courses[3] > 0 ? model.failing : List.<PopulationCurve>of()) {
        double part = line.weight() * courses[3] / model.failing.size();
        course(line, falling, peak, 1, logs, counted, sure, at, part, sum);
      }
      if (courses[2] > 0) {
        driftSd = model.irregularSd;
        driftDays = model.irregularDays;
        double part = line.weight() * courses[2];
        course(line, model.curve, peak, 1, logs, counted, sure, at, part, sum);
      }
    }
    return sum;
  }

  private double speed(double z) {
    double wider = model.wideRateSd / model.rateSd;
    return (1 - model.wideRateWeight) * STANDARD.density(z)
        + model.wideRateWeight * STANDARD.density(z / wider) / wider;
  }

  /** What a point of speed weighs; those at either end count half. */
  private double weight(int point) {
    double half = point == 0 || point == SPEEDS - 1 ? 0.5 : 1;
    return half * speed(-REACH + 2 * REACH * point / (SPEEDS - 1));
  }

  private void course(
      Line line,
      PopulationCurve curve,
      double peak,
      double rate,
      double[] logs,
      boolean[] counted,
      int sure,
      double[] at,
      double weight,
      double[] into) {
    int[] of = IntStream.range(0, logs.length).filter(i -> counted[i]).toArray();
    int n = of.length;
    double[] residual = new double[n];
    double[] along = new double[n];
    double[][] moved = new double[n][];
    double[][] covariance = new double[n][n];
    for (int a = 0; a < n; a++) {
      double onCurve = onCurve(rate, values.get(of[a]).day() - peak);
      residual[a] = logs[of[a]] - expected(line, curve.logMean(onCurve));
      along[a] = of[a] == sure ? 1 : 0;
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
                + Math.pow(driftSd, 2) * Math.exp(-0.5 * Math.pow(apart / driftDays, 2));
      }
      covariance[a][a] += own(line, value.ngPerMl());
    }
    double whole = weight;
    for (Evidence.Interval limit : limits) {
      whole *=
          below(line, curve, onCurve(rate, limit.day() - peak), limit, covariance, residual, moved);
    }
    double good = 1 - model.oddWeight;
    int maybe = n - (sure >= 0 ? 1 : 0);
    normal(covariance, residual, along, at, whole * Math.pow(good, maybe), into);
    for (int a = 0; a < n; a++) {
      if (of[a] != sure) {
        covariance[a][a] += model.oddSd * model.oddSd;
        double odd = whole * Math.pow(good, maybe - 1) * model.oddWeight;
        normal(covariance, residual, along, at, odd, into);
        for (int b = 0; b < a; b++) {
          if (of[b] != sure) {
            covariance[b][b] += model.oddSd * model.oddSd;
            double both = odd * model.oddWeight / good;
            normal(covariance, residual, along, at, both, into);
            covariance[b][b] -= model.oddSd * model.oddSd;
          }
        }
        covariance[a][a] -= model.oddSd * model.oddSd;
      }
    }
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
            + Math.pow(driftSd, 2)
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
    double since = days - model.ratePivot;
    double most = Math.exp(model.value("rate.most-after"));
    double after = Math.min(Math.max(rate, 1 / most), most);
    return model.ratePivot + (since < 0 ? rate : after) * since;
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

  /** Adds normal densities at a residual and so far from it along a direction, times a weight. */
  private static void normal(
      double[][] covariance,
      double[] residual,
      double[] along,
      double[] at,
      double weight,
      double[] into) {
    double[][] solved = solve(covariance, residual);
    double[] direction = solve(covariance, along)[0];
    double still = 0;
    double mixed = 0;
    double far = 0;
    for (int i = 0; i < residual.length; i++) {
      still += residual[i] * solved[0][i];
      mixed += along[i] * solved[0][i];
      far += along[i] * direction[i];
    }
    double scale = weight / Math.sqrt(Math.pow(2 * Math.PI, residual.length) * solved[1][0]);
    for (int x = 0; x < at.length; x++) {
      into[x] += scale * Math.exp(-0.5 * (still + 2 * at[x] * mixed + at[x] * at[x] * far));
    }
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
