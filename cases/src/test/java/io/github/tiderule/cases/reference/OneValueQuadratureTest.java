package io.github.tiderule.cases.reference;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;

import io.github.tiderule.cases.InventedSeason;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.engine.advice.course.Ovulation;
import io.github.tiderule.engine.advice.course.Quantiles;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.special.Erf;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One radioimmunoassay value with first blood seen, by adaptive quadrature: the prior of the LH
 * peak times the chance of the value, integrated over the peak and the speed of the rise. For one
 * value, level, baseline, scale and error sum to one normal on the log scale.
 */
class OneValueQuadratureTest {

  private static final Tiderule ENGINE = Tiderule.create();
  private static final Parameters PARAMETERS = ENGINE.rules().parameters();
  private static final HermiteCurve CURVE = HermiteCurve.ofPopulation();

  private static final List<Plateau> PLATEAUS =
      Parameters.plateaus().rows().stream()
          .map(
              row ->
                  new Plateau(
                      Double.parseDouble(row.get("days")),
                      Double.parseDouble(row.get("ngPerMl")),
                      Double.parseDouble(row.get("weight"))))
          .toList();
  private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();

  /** The likelihood of a log value is of the order of 1, so this is a share of the whole. */
  private static final double TOLERANCE = 1e-8;

  private static final double LAG_MEAN = parameter("lag.mean");
  private static final double LAG_SD = parameter("lag.sd");
  private static final double LAG_MIN = parameter("lag.min");
  private static final double LAG_MAX = parameter("lag.max");
  private static final double EARLIEST = -3.9;
  private static final double LATEST = 45;
  private static final double ALLOWED_DAYS = 1 / 24.0;

  @ParameterizedTest
  @CsvSource({"6, 0.6", "9, 2.1", "11, 4.4", "13, 12.5"})
  void quantilesAgree(double day, double ngPerMl) {
    Advice advice = ENGINE.advise(new InventedSeason().progesterone(day, ngPerMl).asOf(day + 0.25));
    Density density = new Density(day, ngPerMl);

    Quantiles peak = Objects.requireNonNull(advice.timing().lhPeak());
    assertThat(days(peak.p05()), closeTo(density.peakQuantile(0.05), ALLOWED_DAYS));
    assertThat(days(peak.p25()), closeTo(density.peakQuantile(0.25), ALLOWED_DAYS));
    assertThat(days(peak.median()), closeTo(density.peakQuantile(0.5), ALLOWED_DAYS));
    assertThat(days(peak.p75()), closeTo(density.peakQuantile(0.75), ALLOWED_DAYS));
    assertThat(days(peak.p95()), closeTo(density.peakQuantile(0.95), ALLOWED_DAYS));

    Ovulation ovulation = Objects.requireNonNull(advice.timing().ovulation());
    assertThat(days(ovulation.p05()), closeTo(density.ovulationQuantile(0.05), ALLOWED_DAYS));
    assertThat(days(ovulation.median()), closeTo(density.ovulationQuantile(0.5), ALLOWED_DAYS));
    assertThat(days(ovulation.p95()), closeTo(density.ovulationQuantile(0.95), ALLOWED_DAYS));
  }

  private record Plateau(double days, double ngPerMl, double weight) {}

  private static double days(java.time.OffsetDateTime at) {
    return InventedSeason.days(at.toInstant());
  }

  private static double parameter(String id) {
    return PARAMETERS.value("timeline." + id);
  }

  private static double normal(double x, double mean, double sd) {
    double z = (x - mean) / sd;
    return Math.exp(-z * z / 2) / (sd * Math.sqrt(2 * Math.PI));
  }

  private static double below(double z) {
    return 0.5 * Erf.erfc(-z / Math.sqrt(2));
  }

  /** Posterior density of the LH peak, in days after noon of first blood, and its quantiles. */
  private static final class Density {

    private final double at;
    private final double logValue;
    private final double value;
    private final double total;
    private final Map<Double, Double> known = new HashMap<>();

    Density(double at, double value) {
      this.at = at;
      this.value = value;
      this.logValue = Math.log(value);
      this.total = integral(this::weight, EARLIEST, LATEST);
    }

    double peakQuantile(double share) {
      return solve(x -> integral(this::weight, EARLIEST, x) / total - share);
    }

    /** The lag is independent of the value: P(ω < x) averages P(lag < x − λ) over the peak. */
    double ovulationQuantile(double share) {
      return solve(
          x ->
              integral(peak -> weight(peak) * lagBelow(x - peak), EARLIEST, LATEST) / total
                  - share);
    }

    private static double solve(UnivariateFunction miss) {
      return new BrentSolver(1e-5).solve(200, miss, EARLIEST + 0.5, LATEST - 1);
    }

    /** Gauss rules on ever smaller pieces, until halving a piece changes nothing that matters. */
    private double integral(UnivariateFunction f, double from, double to) {
      double sum = 0;
      // pieces begin at whole days after the start, so that their nodes come up again
      for (double a = from; a < to; a += 1) {
        double b = Math.min(a + 1, to);
        sum += halving(f, a, b, rule(f, a, b), 12);
      }
      return sum;
    }

    private double halving(UnivariateFunction f, double a, double b, double whole, int depth) {
      double middle = (a + b) / 2;
      double left = rule(f, a, middle);
      double right = rule(f, middle, b);
      if (Math.abs(left + right - whole) < TOLERANCE || depth == 0) {
        return left + right;
      }
      return halving(f, a, middle, left, depth - 1) + halving(f, middle, b, right, depth - 1);
    }

    private static double rule(UnivariateFunction f, double a, double b) {
      return GAUSS.legendre(8, a, b).integrate(f);
    }

    private double weight(double peak) {
      return known.computeIfAbsent(peak, this::weightAnew);
    }

    private double weightAnew(double peak) {
      double plateau = parameter("plateau.weight");
      double irregular = parameter("irregular.weight");
      double failing = parameter("failing.weight");
      double without = parameter("no-ovulation.weight") + parameter("broken-off.weight");
      double ordinary = 1 - plateau - irregular - failing - without;
      return prior(peak)
          * (ordinary * ordinary(peak)
              + plateau * plateau(peak)
              + irregular * irregular(peak)
              + failing * failing(peak));
    }

    private static double prior(double peak) {
      double shift = parameter("onset.shift");
      double log = Math.log(peak + shift);
      double mean = Math.log(parameter("onset.median") + shift);
      double wide = parameter("onset.wide-weight");
      return ((1 - wide) * normal(log, mean, parameter("onset.log-sd"))
              + wide * normal(log, mean, parameter("onset.wide-log-sd")))
          / (peak + shift);
    }

    private double ordinary(double peak) {
      double sd = parameter("rate.log-sd");
      double pivot = parameter("rate.pivot");
      double sum = 0;
      double weights = 0;
      double most = parameter("rate.most-after");
      double wide = parameter("rate.wide-weight");
      double since = at - peak - pivot;
      for (int point = -75; point <= 75; point++) {
        double log = sd * 0.05 * point;
        double held = since < 0 ? log : Math.min(Math.max(log, -most), most);
        double scaled = pivot + Math.exp(held) * since;
        double weight =
            (1 - wide) * normal(log, 0, sd) + wide * normal(log, 0, parameter("rate.wide-log-sd"));
        weight *= Math.abs(point) == 75 ? 0.5 : 1;
        weights += weight;
        sum += weight * chance(CURVE.at(scaled), scaled);
      }
      return sum / weights;
    }

    private double irregular(double peak) {
      return chance(CURVE.at(at - peak), at - peak, parameter("irregular.log-sd"));
    }

    private double failing(double peak) {
      double tau = at - peak;
      double base = parameter("level.basal");
      double sum = 0;
      int count = 0;
      for (double begins = parameter("failing.first");
          begins <= parameter("failing.last");
          begins += parameter("failing.step")) {
        double since = 0.75 * Math.log1p(Math.exp((tau - begins) / 0.75));
        double above = Math.max(0, Math.exp(CURVE.at(tau)) - base);
        double level = Math.log(base + above * Math.exp(-parameter("failing.speed") * since));
        sum += chance(level, tau);
        count++;
      }
      return sum / count;
    }

    private double plateau(double peak) {
      double tau = at - peak;
      double sum = 0;
      double weights = 0;
      for (Plateau one : PLATEAUS) {
        double rest = one.ngPerMl() * below((tau + one.days()) / 0.75);
        double level = Math.log(Math.exp(4 * CURVE.at(tau)) + Math.pow(rest, 4)) / 4;
        boolean inside = peak - one.days() > EARLIEST;
        double later = inside ? prior(peak - one.days()) / prior(peak) : 0;
        sum += one.weight() * (0.5 + 0.5 * later) * chance(level, tau);
        weights += one.weight();
      }
      return sum / weights;
    }

    private double chance(double level, double days) {
      return chance(level, days, parameter("drift.log-sd"));
    }

    private double chance(double level, double days, double drift) {
      double base = Math.min(1, parameter("level.basal") * Math.exp(-level));
      double late = Math.min(Math.max((days - 4) / 4, 0), 1);
      double rise = (1 - base) * (1 + parameter("level.luteal-growth") * late);
      double scale = 0.06;
      double cv = 0.08;
      double floor = parameter("assay.floor") / value;
      double variance =
          sq(base * parameter("level.baseline-log-sd"))
              + sq(rise * parameter("level.rise-log-sd"))
              + sq(scale)
              + sq(parameter("swing.log-sd"))
              + sq(drift)
              + sq(parameter("pulse.log-sd"))
              + sq(cv)
              + sq(floor);
      double odd = parameter("odd.weight");
      return (1 - odd) * normal(logValue, level, Math.sqrt(variance))
          + odd * normal(logValue, level, Math.sqrt(variance + sq(parameter("odd.log-sd"))));
    }

    private static double lagBelow(double lag) {
      if (lag <= LAG_MIN || lag >= LAG_MAX) {
        return lag <= LAG_MIN ? 0 : 1;
      }
      double least = below((LAG_MIN - LAG_MEAN) / LAG_SD);
      double most = below((LAG_MAX - LAG_MEAN) / LAG_SD);
      return (below((lag - LAG_MEAN) / LAG_SD) - least) / (most - least);
    }

    private static double sq(double x) {
      return x * x;
    }
  }
}
