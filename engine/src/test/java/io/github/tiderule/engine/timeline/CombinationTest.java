package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Weights given by hand joined, beside sums over every peak and every lag. */
class CombinationTest {

  private final Model model = new Model(Parameters.load());
  private final Lattice peaks = new Lattice(16, 24, 0.5);
  private final Evidence evidence =
      new PlainEvidence()
          .lh(12.2, true)
          .smear(13.4, 90.0, Neutrophils.NONE)
          .scan(14.6, true)
          .evidence();
  private final double[] prior = new double[24];
  private final double[] logOrdinary = new double[24];
  private final double[] logPlateau = new double[24];
  private final Combination combination;

  CombinationTest() {
    for (int i = 0; i < 24; i++) {
      prior[i] = i < 2 ? 0 : 0.02 + 0.003 * i;
      logOrdinary[i] = -700 - Math.pow(i - 9.3, 2) / 8;
      logPlateau[i] = -698 - Math.pow(i - 14.1, 2) / 11;
    }
    combination = new Combination(model, peaks, prior, evidence);
  }

  /** By hand: weight of each peak with one course, by each lag. */
  private double[][] joint(Evidence seen, double[] log, double course, double largest) {
    double[] lag = new Lag(model).kernel(0.5);
    double[] side = new PeakEvidence(model, seen).on(peaks);
    double[] ovulated =
        new OvulationEvidence(model, seen).on(new Lattice(16, 24 + lag.length - 1, 0.5));
    double[][] joint = new double[24][lag.length];
    for (int i = 0; i < 24; i++) {
      for (int l = 0; l < lag.length; l++) {
        joint[i][l] =
            course * prior[i] * side[i] * Math.exp(log[i] - largest) * lag[l] * ovulated[i + l];
      }
    }
    return joint;
  }

  private static double sum(double[][] joint) {
    return Arrays.stream(joint).mapToDouble(row -> Arrays.stream(row).sum()).sum();
  }

  private void compare(Combination combination, Evidence seen, double logNone) {
    double largest = -699;
    double[][] ordinary =
        joint(seen, logOrdinary, 1 - model.plateauWeight - model.noOvulationWeight, largest);
    double[][] plateau = joint(seen, logPlateau, model.plateauWeight, largest);
    double none =
        model.noOvulationWeight
            * new PeakEvidence(model, seen).withoutOvulation()
            * new OvulationEvidence(model, seen).withoutOvulation()
            * Math.exp(logNone - largest);
    double total = 0.5 * sum(ordinary) + 0.5 * sum(plateau) + none;
    Combination.Result result = combination.combine(logOrdinary, logPlateau, logNone);
    assertThat(result.ordinary(), closeTo(0.5 * sum(ordinary) / total, 1e-12));
    assertThat(result.plateau(), closeTo(0.5 * sum(plateau) / total, 1e-12));
    assertThat(result.none(), closeTo(none / total, 1e-12));

    double[] peak = new double[24];
    double[] ovulation = new double[24 + ordinary[0].length - 1];
    double[] overOrdinary = new double[24];
    double[] overPlateau = new double[24];
    double mean = 0.3 * none / total;
    for (int i = 0; i < 24; i++) {
      overOrdinary[i] = i / 30.0;
      overPlateau[i] = 1 - i / 25.0;
      for (int l = 0; l < ordinary[i].length; l++) {
        peak[i] += ordinary[i][l] + plateau[i][l];
        ovulation[i + l] += ordinary[i][l] + plateau[i][l];
        mean += 0.5 * ordinary[i][l] * overOrdinary[i] / total;
        mean += 0.5 * plateau[i][l] * overPlateau[i] / total;
      }
    }
    assertThat(result.average(overOrdinary, overPlateau, 0.3), closeTo(mean, 1e-12));
    Density peaked = Density.of(peaks, peak);
    Density ovulated = Density.of(new Lattice(16, ovulation.length, 0.5), ovulation);
    for (int i = 0; i < 24; i++) {
      assertThat(result.peak().value(i), closeTo(peaked.value(i), 1e-12));
    }
    for (int j = 0; j < ovulation.length; j++) {
      assertThat(result.ovulation().value(j), closeTo(ovulated.value(j), 1e-12));
    }
    assertThat(result.median(), is(result.ovulation().quantile(0.5)));
    assertThat(result.width(), closeTo(ovulated.quantile(0.95) - ovulated.quantile(0.05), 1e-9));
  }

  @Test
  void everyCourseHasItsShareAndEveryTimeItsDensity() {
    compare(combination, evidence, -697);
    compare(combination, evidence, -740);
    compare(combination, evidence, -650);
  }

  /** What speaks of ovulation is taken over only where it is the same. */
  @Test
  void withOtherEvidenceItIsAsIfMadeAnew() {
    for (String left : new String[] {"l0", "c0", "u0", "nothing"}) {
      Evidence rest = evidence.without(left);
      compare(combination.with(rest), rest, -697);
    }
  }

  @Test
  void theOutlineIsTheLogOfTheLikelierCourse() {
    double[] outline = combination.outline(logOrdinary, logPlateau);
    double[][] ordinary = joint(evidence, logOrdinary, 1, -699);
    double[][] plateau = joint(evidence, logPlateau, 1, -699);
    double usual = 0;
    double resting = 0;
    for (int i = 0; i < 24; i++) {
      double a = Arrays.stream(ordinary[i]).sum();
      double b = Arrays.stream(plateau[i]).sum();
      usual += (1 - model.plateauWeight) * a;
      resting += model.plateauWeight * b;
      if (i < 2) {
        assertThat(outline[i], is(Double.NEGATIVE_INFINITY));
      } else {
        assertThat(outline[i], closeTo(Math.log(Math.max(a, b)) - 699, 1e-9));
      }
    }
    assertThat(
        combination.plateauShare(logOrdinary, logPlateau),
        closeTo(resting / (resting + usual), 1e-12));
  }
}
