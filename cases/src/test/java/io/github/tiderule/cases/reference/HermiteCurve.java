package io.github.tiderule.cases.reference;

import io.github.tiderule.rules.parameter.Parameters;
import java.util.List;
import org.hipparchus.analysis.interpolation.HermiteInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialFunction;

/**
 * The population curve of progesterone, joined by cubics through value and slope at both ends of
 * each piece; slopes after Fritsch and Butland (weighted harmonic means), so that nothing
 * overshoots. Outside the points the end values hold.
 */
final class HermiteCurve {

  private final double[] days;
  private final double[] logs;
  private final PolynomialFunction[] pieces;

  private HermiteCurve(double[] days, double[] logs) {
    this.days = days;
    this.logs = logs;
    int n = days.length;
    double[] slopes = slopes();
    pieces = new PolynomialFunction[n - 1];
    for (int i = 0; i < n - 1; i++) {
      HermiteInterpolator piece = new HermiteInterpolator();
      double length = days[i + 1] - days[i];
      piece.addSamplePoint(0, new double[] {logs[i]}, new double[] {slopes[i]});
      piece.addSamplePoint(length, new double[] {logs[i + 1]}, new double[] {slopes[i + 1]});
      pieces[i] = piece.getPolynomials()[0];
    }
  }

  static HermiteCurve ofPopulation() {
    var rows = List.copyOf(Parameters.curve().rows());
    return new HermiteCurve(
        rows.stream().mapToDouble(row -> Double.parseDouble(row.get("day"))).toArray(),
        rows.stream()
            .mapToDouble(row -> Math.log(Double.parseDouble(row.get("ngPerMl"))))
            .toArray());
  }

  /** Log of ng/mL some days after the LH peak. */
  double at(double day) {
    int last = days.length - 1;
    if (day <= days[0]) {
      return logs[0];
    }
    if (day >= days[last]) {
      return logs[last];
    }
    int i = 0;
    while (day > days[i + 1]) {
      i++;
    }
    return pieces[i].value(day - days[i]);
  }

  private double[] slopes() {
    int n = days.length;
    double[] slopes = new double[n];
    for (int i = 1; i < n - 1; i++) {
      double left = chord(i - 1);
      double right = chord(i);
      if (left * right > 0) {
        double h0 = days[i] - days[i - 1];
        double h1 = days[i + 1] - days[i];
        double w0 = 2 * h1 + h0;
        double w1 = h1 + 2 * h0;
        slopes[i] = (w0 + w1) / (w0 / left + w1 / right);
      }
    }
    // the end pieces are flat or nearly so, far from any rise: their outer slopes do not matter
    slopes[0] = chord(0);
    slopes[n - 1] = chord(n - 2);
    return slopes;
  }

  private double chord(int i) {
    return (logs[i + 1] - logs[i]) / (days[i + 1] - days[i]);
  }
}
