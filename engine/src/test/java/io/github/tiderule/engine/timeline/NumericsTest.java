package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.parameter.Parameters;
import java.time.Instant;
import java.util.Arrays;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** The small parts the estimator reckons with, beside closed forms and numbers worked by hand. */
class NumericsTest {

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  /**
   * A normal of 2 and 0.45 cut off at 1 and 4: α = −2.222, φ(α) = 0.0338, 0.9869 is left; mean 2 +
   * 0.45·0.0342, variance 0.45²(1 − 2.222·0.0342 − 0.0342²).
   */
  private static final double LAG_MEAN = 2.0154;

  private static final double LAG_SD = 0.4323;

  @Test
  void aLatticeCoversItsSpan() {
    Lattice lattice = Lattice.covering(-1.1, 2.3, 0.5);
    assertThat(lattice.at(0), closeTo(-1.5, 1e-12));
    assertThat(lattice.count(), is(9));
    assertThat(lattice.at(8), closeTo(2.5, 1e-12));
    assertThrows(IllegalArgumentException.class, () -> new Lattice(0, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new Lattice(0, 1, 0));
    assertThrows(IllegalArgumentException.class, () -> new Lattice(0, 1, Double.NaN));
  }

  @Test
  void theTableOfTheNormalIsTheNormal() {
    for (double z = -9; z <= 9; z += 0.0137) {
      assertThat("z " + z, Normal.quickCdf(z), closeTo(STANDARD.cumulativeProbability(z), 1e-6));
      assertThat("z " + z, Normal.density(z), closeTo(STANDARD.density(z), 1e-12));
      assertThat("z " + z, Normal.cdf(z), closeTo(STANDARD.cumulativeProbability(z), 1e-12));
    }
    assertThat(Normal.quickCdf(-8), is(0.0));
    assertThat(Normal.quickCdf(Double.NEGATIVE_INFINITY), is(0.0));
    assertThat(Normal.quickCdf(8), is(1.0));
    assertThat(Normal.quickCdf(Double.POSITIVE_INFINITY), is(1.0));
    assertThat(Normal.quickCdf(Double.NaN), is(0.0));
  }

  @Test
  void theTailOfChiSquareIsItsTail() {
    for (int degrees = 1; degrees <= 41; degrees++) {
      ChiSquaredDistribution law = ChiSquaredDistribution.of(degrees);
      for (double x = 0; x < 200; x += 0.37) {
        String where = degrees + " degrees, " + x;
        assertThat(where, ChiSquare.above(degrees, x), closeTo(law.survivalProbability(x), 3e-6));
      }
    }
    assertThat(ChiSquare.above(0, 0), is(1.0));
    assertThat(ChiSquare.above(3, 1e9), is(0.0));
    assertThat(ChiSquare.above(4, Double.POSITIVE_INFINITY), is(0.0));
  }

  /** A trapezoid rule gives the moments of a normal. */
  @Test
  void nodesStandForANormal() {
    Nodes nodes = Nodes.of(13, 3.5);
    double sum = 0;
    double mean = 0;
    double square = 0;
    for (int i = 0; i < nodes.count(); i++) {
      sum += nodes.weight()[i];
      mean += nodes.weight()[i] * nodes.z()[i];
      square += nodes.weight()[i] * nodes.z()[i] * nodes.z()[i];
    }
    assertThat(nodes.count(), is(13));
    assertThat(nodes.z()[0], closeTo(-3.5, 1e-12));
    assertThat(nodes.z()[12], closeTo(3.5, 1e-12));
    assertThat(sum, closeTo(1, 1e-12));
    assertThat(mean, closeTo(0, 1e-12));
    assertThat(square, closeTo(1, 0.01));
  }

  @Test
  void choleskyGivesInverseAndDeterminant() {
    double[][] matrix = {{4, 2, 0.6}, {2, 3, 0.5}, {0.6, 0.5, 2}};
    Cholesky cholesky = Cholesky.of(matrix);
    // 4(6 − 0.25) − 2(4 − 0.3) + 0.6(1 − 1.8)
    assertThat(cholesky.logDeterminant(), closeTo(Math.log(23 - 7.4 - 0.48), 1e-12));
    double[][] inverse = cholesky.inverse();
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        double product = 0;
        for (int k = 0; k < 3; k++) {
          product += matrix[i][k] * inverse[k][j];
        }
        assertThat(i + ", " + j, product, closeTo(i == j ? 1 : 0, 1e-12));
      }
    }
    assertThrows(
        IllegalArgumentException.class, () -> Cholesky.of(new double[][] {{1, 1}, {1, 1}}));
    assertThrows(
        IllegalArgumentException.class, () -> Cholesky.of(new double[][] {{1, 2}, {2, 1}}));
  }

  /** Four points carry a cubic, two a straight line. */
  @Test
  void interpolationIsExactForWhatItIsMadeFor() {
    Lattice sparse = new Lattice(4, 8, 0.5);
    Lattice fine = new Lattice(16, 29, 0.125);
    Interpolation between = Interpolation.of(sparse, fine);
    double[] cubic = new double[8];
    double[] line = new double[8];
    for (int i = 0; i < 8; i++) {
      cubic[i] = cubic(sparse.at(i));
      line[i] = 3 - 2 * sparse.at(i);
    }
    double[] curved = between.cubic(cubic);
    double[] straight = between.linear(line);
    assertThat(curved.length, is(29));
    for (int i = 0; i < 29; i++) {
      assertThat("place " + i, curved[i], closeTo(cubic(fine.at(i)), 1e-9));
      assertThat("place " + i, straight[i], closeTo(3 - 2 * fine.at(i), 1e-9));
    }
  }

  private static double cubic(double x) {
    return 1 - x + 0.5 * x * x - 0.25 * x * x * x;
  }

  @Test
  void aMixtureIsASumOfLikelihoods() {
    Mixture mixture = new Mixture(2);
    for (int round = 0; round < 2; round++) {
      mixture.clear();
      mixture.add(-3, new double[] {0.25, 0.5}, 0.5);
      mixture.add(-1, new double[] {0.5, 0}, 0.25);
      mixture.add(-2, new double[] {0, 0.125}, 1);
      double sum = Math.exp(-3) + Math.exp(-1) + Math.exp(-2);
      assertThat(mixture.log(), closeTo(Math.log(sum), 1e-12));
      assertThat(
          mixture.oddShare(0), closeTo((0.25 * Math.exp(-3) + 0.5 * Math.exp(-1)) / sum, 1e-12));
      assertThat(
          mixture.oddShare(1), closeTo((0.5 * Math.exp(-3) + 0.125 * Math.exp(-2)) / sum, 1e-12));
      assertThat(
          mixture.fit(),
          closeTo((0.5 * Math.exp(-3) + 0.25 * Math.exp(-1) + Math.exp(-2)) / sum, 1e-12));
      mixture.addWithout(0, -4, 2);
      mixture.addWithout(0, -2, 3);
      mixture.addWithout(0, -3, 5);
      mixture.addWithout(0, -1, 1e6);
      double without = 2 * Math.exp(-4) + 3 * Math.exp(-2) + 5 * Math.exp(-3) + 1e6 * Math.exp(-1);
      assertThat(mixture.logWithout(0), closeTo(Math.log(without), 1e-12));
      mixture.addWithout(1, 0, 1);
      mixture.addWithout(1, -61, 1);
      assertThat(mixture.logWithout(1), is(0.0));
      mixture.addWithout(1, -10, 1);
      assertThat(mixture.logWithout(1), closeTo(Math.log1p(Math.exp(-10)), 1e-15));
    }
  }

  /** Slopes 1 and 4 on cells of 1 and 2: the harmonic mean with weights 5 and 4 is 9/(5 + 1). */
  @Test
  void aMonotoneCurveHasTheSlopesOfItsRule() {
    MonotoneCurve curve = MonotoneCurve.of(new double[] {0, 1, 3}, new double[] {0, 1, 9});
    assertThat(curve.at(-1), is(0.0));
    assertThat(curve.at(0), is(0.0));
    assertThat(curve.at(1), is(1.0));
    assertThat(curve.at(3), is(9.0));
    assertThat(curve.at(4), is(9.0));
    double inner = 9.0 / (5 / 1.0 + 4 / 4.0);
    assertThat((curve.at(1 + 1e-6) - 1) / 1e-6, closeTo(inner, 1e-4));
    assertThat((1 - curve.at(1 - 1e-6)) / 1e-6, closeTo(inner, 1e-4));
    // three-point formula: ((2·1 + 2)·1 − 1·4)/3 is 0; ((2·2 + 1)·4 − 2·1)/3 is 6
    assertThat(curve.at(1e-6) / 1e-6, closeTo(0, 1e-4));
    assertThat((9 - curve.at(3 - 1e-6)) / 1e-6, closeTo(6, 1e-4));
    // Hermite at the middle: mean of the ends plus an eighth of the cell times the slopes' loss
    assertThat(curve.at(2), closeTo((1 + 9) / 2.0 + 2 * (inner - 6) / 8, 1e-12));
    assertThat(curve.at(0.5), closeTo(0.5 + (0 - inner) / 8, 1e-12));
  }

  @Test
  void aMonotoneCurveDoesNotOvershootWhereItTurns() {
    MonotoneCurve curve = MonotoneCurve.of(new double[] {0, 1, 2, 3}, new double[] {0, 1, 0.5, 4});
    for (double t = 0; t <= 1; t += 0.01) {
      assertThat(curve.at(t) <= 1 && curve.at(t) >= 0, is(true));
    }
    assertThat((curve.at(1 + 1e-6) - 1) / 1e-6, closeTo(0, 1e-4));
    // at the left end ((2 + 1)·1 − (−0.5))/2 is 1.75, less than three times 1
    assertThat(curve.at(1e-6) / 1e-6, closeTo(1.75, 1e-4));
    // at the right end ((2 + 1)·3.5 + 0.5)/2 is 5.5, less than three times 3.5
    assertThat((4 - curve.at(3 - 1e-6)) / 1e-6, closeTo(5.5, 1e-4));
    // a slope more than three times the end's own is held at that
    MonotoneCurve steep = MonotoneCurve.of(new double[] {0, 1, 2}, new double[] {0, 1, -6});
    assertThat(steep.at(1e-6) / 1e-6, closeTo(3, 1e-4));
  }

  @Test
  void pointsThatMakeNoCurveAreRefused() {
    double[] two = {0, 1};
    double[] three = {0, 1, 2};
    double[] twice = {0, 1, 1};
    assertThrows(IllegalArgumentException.class, () -> MonotoneCurve.of(two, two));
    assertThrows(IllegalArgumentException.class, () -> MonotoneCurve.of(three, two));
    assertThrows(IllegalArgumentException.class, () -> MonotoneCurve.of(twice, three));
  }

  /** The cut-off is spread over a step, which mean and spread hardly notice. */
  @Test
  void theLagSumsToOneAndHasItsMean() {
    Model model = new Model(Parameters.load());
    for (double step : new double[] {0.125, 0.25, 0.5}) {
      double[] kernel = new Lag(model).kernel(step);
      double mean = 0;
      double square = 0;
      for (int i = 0; i < kernel.length; i++) {
        mean += kernel[i] * i * step;
        square += kernel[i] * i * step * i * step;
        boolean inside =
            i * step >= model.value("lag.min") - step && i * step <= model.value("lag.max") + step;
        assertThat(kernel[i] >= 0 && (inside || kernel[i] == 0), is(true));
      }
      assertThat(Arrays.stream(kernel).sum(), closeTo(1, 1e-12));
      assertThat("step " + step, mean, closeTo(LAG_MEAN, 0.008));
      assertThat("step " + step, Math.sqrt(square - mean * mean), closeTo(LAG_SD, 0.006));
      // the places beside the cut-off carry part of their weight
      int last = (int) Math.round(model.value("lag.max") / step);
      double z = (last * step - model.value("lag.mean")) / model.value("lag.sd");
      int middle = (int) Math.round(model.value("lag.mean") / step);
      double ratio = kernel[last] / kernel[middle];
      assertThat(ratio, closeTo(0.5 * Math.exp(-z * z / 2), 0.002));
      assertThat(kernel[last + 1], is(0.0));
    }
  }

  @Test
  void anAssayReadsAlongItsLine() {
    int lines = 0;
    for (Method method : Method.values()) {
      for (Assay assay : new Model(Parameters.load()).assays(method)) {
        assertThat(assay.slope() > 0 && assay.weight() > 0 && assay.scaleLogSd() > 0, is(true));
        if (assay.proportional()) {
          assertThat(assay.logSlope(), closeTo(Math.log(assay.slope()), 1e-12));
          continue;
        }
        lines++;
        double intercept = Math.exp(assay.logReading(Math.log(50))) - 50 * assay.slope();
        for (double level : new double[] {0.2, 0.5, 1, 2, 5, 10, 30, 80}) {
          double line = intercept + assay.slope() * level;
          double held = Math.max(line, 0.25 * level);
          assertThat(
              method + " at " + level,
              Math.exp(assay.logReading(Math.log(level))),
              closeTo(held, 0.004 * held + 0.002));
          double elasticity = line <= 0.25 * level ? 1 : assay.slope() * level / line;
          if (Math.abs(line / level - 0.25) > 0.02) {
            assertThat(
                method + " at " + level,
                assay.elasticity(Math.log(level)),
                closeTo(elasticity, 0.01));
          }
        }
        assertThat(assay.logReading(-20), closeTo(assay.logReading(-8), 1e-12));
        assertThat(assay.logReading(20), closeTo(assay.logReading(8), 1e-12));
      }
      double sum =
          new Model(Parameters.load()).assays(method).stream().mapToDouble(Assay::weight).sum();
      assertThat(method.word(), sum, closeTo(1, 1e-9));
    }
    assertThat(lines > 0, is(true));
  }

  @Test
  void theCoefficientOfVariationGoesByThreeSpans() {
    Assay assay = new Model(Parameters.load()).assays(Method.ECLIA).get(0);
    assertThat(assay.cvAt(2.99) == assay.cvAt(0.2), is(true));
    assertThat(assay.cvAt(3) == assay.cvAt(10), is(true));
    assertThat(assay.cvAt(10.01) == assay.cvAt(60), is(true));
    Assay odd =
        Arrays.stream(Method.values())
            .map(method -> new Model(Parameters.load()).assays(method).get(0))
            .filter(one -> one.cvAt(1) != one.cvAt(5) && one.cvAt(5) != one.cvAt(20))
            .findFirst()
            .orElseThrow();
    assertThat(odd.cvAt(3) == odd.cvAt(2.99), is(false));
    assertThat(odd.cvAt(10) == odd.cvAt(10.01), is(false));
  }

  @Test
  void theCurveHasItsTableAndItsBasalShare() {
    Model model = new Model(Parameters.load());
    Parameters.curve()
        .rows()
        .forEach(
            row -> {
              double day = Double.parseDouble(row.get("day"));
              double level = Double.parseDouble(row.get("ngPerMl"));
              assertThat(Math.exp(model.curve.logMean(day)), closeTo(level, 0.01 * level));
              assertThat(
                  model.curve.baseShare(day),
                  closeTo(Math.min(1, model.value("level.basal") / level), 0.01));
            });
    assertThat(model.curve.logMean(-60), is(model.curve.logMean(-40)));
    assertThat(model.curve.baseShare(-60), is(model.curve.baseShare(-40)));
    assertThat(model.curve.logMean(200), closeTo(model.curve.logMean(129), 1e-9));
    assertThat(model.curve.baseShare(200), closeTo(model.curve.baseShare(129), 1e-9));
    // a rest of three days at 2.5: the fourth-power mean well inside of it
    PopulationCurve resting = model.curve.withRest(3, 2.5);
    double usual = Math.exp(model.curve.logMean(-1));
    assertThat(
        Math.exp(resting.logMean(-1)),
        closeTo(Math.pow(Math.pow(usual, 4) + Math.pow(2.5, 4), 0.25), 0.01));
    assertThat(resting.logMean(-8), closeTo(model.curve.logMean(-8), 1e-6));
    assertThat(
        Math.exp(resting.logMean(-3)),
        closeTo(
            Math.pow(Math.pow(Math.exp(model.curve.logMean(-3)), 4) + Math.pow(1.25, 4), 0.25),
            0.01));
  }

  @Test
  void anUnknownParameterIsNamed() {
    Model model = new Model(Parameters.load());
    assertThrows(IllegalArgumentException.class, () -> model.value("no.such"));
    assertThrows(IllegalStateException.class, () -> NeutrophilChances.of("no-such-phase"));
    assertThat(model.early.of((Neutrophils) null), is(1.0));
  }

  @Test
  void theAxisCountsElapsedDaysFromAMidnight() {
    Instant start = Instant.parse("2027-01-03T11:00:00Z");
    TimeAxis axis = TimeAxis.from(start);
    double day = axis.day(start);
    assertThat(axis.day(start.plusSeconds(36 * 3600)), closeTo(day + 1.5, 1e-12));
    assertThat(axis.instant(day), is(start));
    assertThat(axis.instant(day + 2.25), is(start.plusSeconds(54 * 3600)));
    double midnight = axis.day(Instant.parse("2027-01-03T00:00:00Z"));
    assertThat(midnight, closeTo(Math.rint(midnight), 1e-12));
  }
}
