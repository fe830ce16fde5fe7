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
  private final double[][] logs = new double[4][24];
  private final Combination combination;

  CombinationTest() {
    for (int i = 0; i < 24; i++) {
      prior[i] = i < 2 ? 0 : 0.02 + 0.003 * i;
      logs[0][i] = -700 - Math.pow(i - 9.3, 2) / 8;
      logs[1][i] = -698 - Math.pow(i - 14.1, 2) / 11;
      logs[2][i] = -699 - Math.pow(i - 10.2, 2) / 40;
      logs[3][i] = i < 5 ? Double.NEGATIVE_INFINITY : -701;
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
    double[] priors = model.courseWeights();
    double[][][] joint = new double[4][][];
    double total = 0;
    for (int c = 0; c < 4; c++) {
      joint[c] = joint(seen, logs[c], priors[c], largest);
      total += 0.5 * sum(joint[c]);
    }
    Evidence unsmeared = seen;
    for (Evidence.SmearSeen smear : seen.smears()) {
      unsmeared = unsmeared.without(smear.id());
    }
    double otherwise = 0;
    for (int c = 0; c < 4; c++) {
      otherwise += 0.5 * sum(joint(unsmeared, logs[c], priors[c], largest));
    }
    double smears = total / otherwise;
    double[] without = {model.brokenOffWeight, model.noOvulationWeight};
    double[] logsWithout = {logNone, logNone - 1};
    for (int c = 0; c < 2; c++) {
      without[c] *=
          smears
              * new PeakEvidence(model, seen).withoutOvulation()
              * new OvulationEvidence(model, seen).withoutOvulation()
              * Math.exp(logsWithout[c] - largest);
      total += without[c];
    }
    Combination.Result result = combination.combine(logs, logsWithout);
    double mean = (0.3 * without[0] + 0.2 * without[1]) / total;
    double[] peak = new double[24];
    double[] ovulation = new double[24 + joint[0][0].length - 1];
    double[][] over = new double[4][24];
    for (int c = 0; c < 4; c++) {
      assertThat(result.share()[c], closeTo(0.5 * sum(joint[c]) / total, 1e-12));
      for (int i = 0; i < 24; i++) {
        over[c][i] = c % 2 == 0 ? i / 30.0 : 1 - i / 25.0;
        for (int l = 0; l < joint[c][i].length; l++) {
          peak[i] += joint[c][i][l];
          ovulation[i + l] += joint[c][i][l];
          mean += 0.5 * joint[c][i][l] * over[c][i] / total;
        }
      }
    }
    assertThat(result.without()[0], closeTo(without[0] / total, 1e-12));
    assertThat(result.without()[1], closeTo(without[1] / total, 1e-12));
    assertThat(result.courses().silent(), is(result.without()[1]));
    assertThat(result.average(over, new double[] {0.3, 0.2}), closeTo(mean, 1e-12));
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
  void theOutlineIsTheShareOfEachCourseAtEachPlace() {
    double[][] outline = combination.outline(logs);
    double[] priors = model.courseWeights();
    double[][][] joint = new double[4][][];
    double total = 0;
    for (int c = 0; c < 4; c++) {
      joint[c] = joint(evidence, logs[c], priors[c], -699);
      total += sum(joint[c]);
    }
    for (int c = 0; c < 4; c++) {
      for (int i = 0; i < 24; i++) {
        assertThat(outline[c][i], closeTo(Arrays.stream(joint[c][i]).sum() / total, 1e-12));
      }
    }
  }
}
