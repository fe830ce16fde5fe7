package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Smears to come, and where dioestrus begins, beside fine sums over her own shift and lag. */
class OvulationEvidenceTest {

  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
  private static final double[] CORNIFIED = {20, 40, 55, 65, 75, 85, 95};

  private final Model model = new Model(Parameters.load());
  private final Timeline timeline = Timeline.of(Parameters.load());

  private double value(String name) {
    return model.value("smear." + name);
  }

  private double cells(@Nullable Double percent, double mean, double sd) {
    return percent == null
        ? 1
        : (1 - value("stray")) * STANDARD.density((percent - mean) / sd) / sd
            + value("stray") / 100;
  }

  /** By the page: a smear some days after ovulation, her own shift and lag in deviations. */
  private double likelihood(Evidence.SmearSeen smear, double days, double shift, double lag) {
    double late = days - shift * value("shift-sd") - value("rise-centre");
    double risen = 1 / (1 + Math.exp(-late / value("rise-scale")));
    double full = value("full-cornified") * risen + value("early-cornified") * (1 - risen);
    double before =
        cells(smear.cornifiedPercent(), full, value("reading-sd"))
            * (risen * model.oestrus.of(smear.neutrophils())
                + (1 - risen) * model.early.of(smear.neutrophils()));
    double after =
        cells(
                smear.cornifiedPercent(),
                value("dioestrus-cornified"),
                value("dioestrus-cornified-sd"))
            * model.dioestrus.of(smear.neutrophils());
    double turns = value("dioestrus-lag") + lag * value("dioestrus-sd");
    double past = Normal.quickCdf((days - turns) / value("dioestrus-edge"));
    return past * after + (1 - past) * before;
  }

  /** Likelihood of all smears and of each to come beside them, summed over shift and lag. */
  private double[] coming(
      double ovulation, List<Evidence.SmearSeen> seen, List<Evidence.SmearSeen> coming) {
    double[] chance = new double[coming.size()];
    double total = 0;
    for (double shift = -3.5; shift <= 3.51; shift += 0.25) {
      for (double lag = -3.5; lag <= 3.51; lag += 0.25) {
        double weight = STANDARD.density(shift) * STANDARD.density(lag);
        for (Evidence.SmearSeen smear : seen) {
          weight *= likelihood(smear, smear.day() - ovulation, shift, lag);
        }
        for (int r = 0; r < chance.length; r++) {
          double part =
              weight * likelihood(coming.get(r), coming.get(r).day() - ovulation, shift, lag);
          chance[r] += part;
          total += part;
        }
      }
    }
    for (int r = 0; r < chance.length; r++) {
      chance[r] /= total;
    }
    return chance;
  }

  private void compare(PlainEvidence season, double day) {
    Evidence evidence = season.evidence();
    List<Evidence.SmearSeen> coming = new ArrayList<>();
    for (double cornified : CORNIFIED) {
      for (Neutrophils neutrophils : Neutrophils.values()) {
        coming.add(new Evidence.SmearSeen("", day, cornified, neutrophils));
      }
    }
    Lattice ovulations = new Lattice(4, 5, 2.5);
    double[][] chance = new OvulationEvidence(model, evidence).coming(ovulations, coming);
    assertThat(chance.length, is(coming.size()));
    for (int i = 0; i < ovulations.count(); i++) {
      double[] plain = coming(ovulations.at(i), evidence.smears(), coming);
      for (int r = 0; r < plain.length; r++) {
        assertThat(
            coming.get(r) + ", ovulation " + ovulations.at(i),
            chance[r][i],
            closeTo(plain[r], 0.01));
      }
    }
  }

  @Test
  void aFirstSmear() {
    compare(new PlainEvidence(), 13);
  }

  @Test
  void aSmearAfterOthers() {
    compare(
        new PlainEvidence().smear(8, 70.0, Neutrophils.FEW).smear(11, null, Neutrophils.NONE), 13);
    compare(new PlainEvidence().smear(15, 60.0, null).smear(16.5, 30.0, Neutrophils.MANY), 17.5);
  }

  /** Foreseen in days of a half, from few cornified cells to many, by neutrophils. */
  @Test
  void theSmearsForeseenAreInTheirOrder() {
    Evidence evidence = new PlainEvidence().smear(8, 70.0, Neutrophils.FEW).evidence();
    Estimate known = timeline.estimate(evidence);
    Outlook outlook = timeline.foresight(evidence, known).smear(15);
    assertThat(outlook.results(), is(CORNIFIED.length * 3));
    List<Evidence.SmearSeen> coming = new ArrayList<>();
    for (double cornified : CORNIFIED) {
      for (Neutrophils neutrophils : List.of(Neutrophils.NONE, Neutrophils.FEW, Neutrophils.MANY)) {
        coming.add(new Evidence.SmearSeen("", 15, cornified, neutrophils));
      }
    }
    for (double ovulation : new double[] {8.5, 10, 13}) {
      double[] plain = coming(ovulation, evidence.smears(), coming);
      for (int r = 0; r < plain.length; r++) {
        assertThat(coming.get(r) + "", outlook.chance(r, ovulation), closeTo(plain[r], 0.01));
      }
    }
  }

  private static Density normal(double mean, double sd) {
    double[] weights = new double[161];
    for (int i = 0; i < weights.length; i++) {
      double z = (i * 0.125 - mean) / sd;
      weights[i] = Math.exp(-z * z / 2);
    }
    return Density.ofWeights(0, 0.125, weights);
  }

  private static double[] moments(double[] at, double[] weight) {
    double sum = 0;
    double mean = 0;
    double square = 0;
    for (int i = 0; i < at.length; i++) {
      sum += weight[i];
      mean += weight[i] * at[i];
      square += weight[i] * at[i] * at[i];
    }
    mean /= sum;
    return new double[] {sum, mean, Math.sqrt(square / sum - mean * mean)};
  }

  @Test
  void withoutSmearsDioestrusFollowsOvulationByItsLag() {
    Turning turning =
        new OvulationEvidence(model, new PlainEvidence().evidence()).turning(normal(10.4, 1.1));
    double[] moments = moments(turning.at(), turning.weight());
    assertThat(moments[0], closeTo(1, 1e-9));
    assertThat(moments[1], closeTo(10.4 + value("dioestrus-lag"), 1e-3));
    assertThat(moments[2], closeTo(Math.hypot(1.1, value("dioestrus-sd")), 0.01));
  }

  /** Smears on either side say where between them it began. */
  @Test
  void smearsSayWhereDioestrusBegins() {
    Evidence evidence =
        new PlainEvidence()
            .smear(15, 92.0, Neutrophils.NONE)
            .smear(17, 35.0, Neutrophils.MANY)
            .evidence();
    Density ovulation = normal(9.6, 0.9);
    Turning turning = timeline.turning(evidence, estimate(ovulation));
    List<Double> at = new ArrayList<>();
    List<Double> weight = new ArrayList<>();
    for (int i = 0; i < ovulation.size(); i++) {
      List<Double> byLag = new ArrayList<>();
      double sum = 0;
      for (double lag = -3.5; lag <= 3.51; lag += 0.2) {
        double one = 0;
        for (double shift = -3.5; shift <= 3.51; shift += 0.25) {
          double part = STANDARD.density(shift) * STANDARD.density(lag);
          for (Evidence.SmearSeen smear : evidence.smears()) {
            part *= likelihood(smear, smear.day() - ovulation.at(i), shift, lag);
          }
          one += part;
        }
        byLag.add(one);
        sum += one;
        at.add(ovulation.at(i) + value("dioestrus-lag") + lag * value("dioestrus-sd"));
      }
      for (double one : byLag) {
        weight.add(ovulation.value(i) * one / sum);
      }
    }
    double[] plain =
        moments(
            at.stream().mapToDouble(Double::doubleValue).toArray(),
            weight.stream().mapToDouble(Double::doubleValue).toArray());
    double[] moments = moments(turning.at(), turning.weight());
    assertThat(moments[0], closeTo(1, 1e-9));
    assertThat(moments[1], closeTo(plain[1], 0.02));
    assertThat(moments[2], closeTo(plain[2], 0.02));
  }

  private static Estimate estimate(Density ovulation) {
    return new Estimate(ovulation, ovulation, new Estimate.Courses(1, 0, 0, 0, 0, 0), 1, List.of());
  }

  /** Smears tell when, and never whether; every scan counts. */
  @Test
  void whatIsSeenWithoutOvulation() {
    Evidence evidence =
        new PlainEvidence()
            .smear(9, 80.0, Neutrophils.FEW)
            .smear(10, null, Neutrophils.MANY)
            .scan(12, true)
            .scan(13, false)
            .evidence();
    double error = model.value("scan.error");
    assertThat(
        new OvulationEvidence(model, evidence).withoutOvulation(),
        closeTo(error * (1 - error), 1e-12));
  }

  @Test
  void aScanIsAsGoodAsItsErrorAndItsSpread() {
    Evidence evidence = new PlainEvidence().scan(12, true).scan(9.5, false).evidence();
    Lattice ovulations = new Lattice(16, 20, 0.5);
    double[] likelihood = new OvulationEvidence(model, evidence).on(ovulations);
    double error = model.value("scan.error");
    double sd = model.value("scan.sd");
    for (int i = 0; i < likelihood.length; i++) {
      double past = STANDARD.cumulativeProbability((12 - ovulations.at(i)) / sd);
      double early = STANDARD.cumulativeProbability((9.5 - ovulations.at(i)) / sd);
      double expected =
          (past * (1 - error) + (1 - past) * error) * (early * error + (1 - early) * (1 - error));
      assertThat(likelihood[i], closeTo(expected, 1e-5));
    }
  }
}
