package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.parameter.Parameters;
import org.junit.jupiter.api.Test;

/** An LH test to come, alone or with a number, beside the mean over the peaks that lead there. */
class LhAheadTest {

  private static final Series RIA = Series.of("A", Method.RIA);

  private final Model model = new Model(Parameters.load());
  private final Timeline timeline = Timeline.of(Parameters.load());

  /** Chance of a positive test, of peaks weighed by the prior and other LH tests alone. */
  private double positive(Evidence evidence, double day, double ovulation, double step) {
    PeakEvidence tests = new PeakEvidence(model, evidence);
    Lattice peaks = new Lattice(0, (int) Math.round(40 / step), step);
    double[] prior = model.onset.on(peaks, evidence);
    double[] side = tests.on(peaks);
    double[] lag = new Lag(model).kernel(step);
    double sum = 0;
    double total = 0;
    for (int i = 0; i < peaks.count(); i++) {
      int l = (int) Math.round(ovulation / step) - i;
      if (l >= 0 && l < lag.length) {
        double weight = prior[i] * side[i] * lag[l];
        total += weight;
        sum += weight * tests.positive(day - peaks.at(i));
      }
    }
    return sum / total;
  }

  /** When she ovulates is given, so what speaks of ovulation alone cannot matter. */
  @Test
  void itIsTheMeanOverThePeaks() {
    PlainEvidence[] seasons = {
      new PlainEvidence(),
      new PlainEvidence().scan(12.4, true).smear(9.4, 80.0, Neutrophils.FEW),
      new PlainEvidence().lh(8.4, false)
    };
    for (PlainEvidence season : seasons) {
      Evidence evidence = season.evidence();
      Estimate known = timeline.estimate(evidence);
      Foresight foresight = timeline.foresight(evidence, known);
      Outlook lh = foresight.lh(9.375);
      double step = evidence.lhTests().isEmpty() ? 0.25 : 0.125;
      Outlook both = foresight.valueWithLh(RIA, 9.375).betweenWithLh(2);
      assertThat(lh.results(), is(2));
      assertThat(both.results(), is(4));
      for (double ovulation = 8.5; ovulation <= 14; ovulation += 0.5) {
        double positive = positive(evidence, 9.375, ovulation, step);
        String where = evidence.items() + ", ovulation " + ovulation;
        assertThat(where, lh.chance(0, ovulation), closeTo(positive, 0.002));
        assertThat(where, lh.chance(1, ovulation), closeTo(1 - positive, 0.002));
        double withValue = positive(evidence, 9.375, ovulation, 0.25);
        assertThat(
            where,
            both.chance(2, ovulation) + both.chance(3, ovulation),
            closeTo(withValue, 0.002));
        assertThat(
            where,
            both.chance(0, ovulation) + both.chance(1, ovulation),
            closeTo(1 - withValue, 0.002));
      }
    }
  }

  /** A lattice for both tests is as fine as one for LH. */
  @Test
  void withLhTheStepsAreFiner() {
    Evidence evidence = new PlainEvidence().value(RIA, 7.4, 0.7).evidence();
    Foresight foresight = timeline.foresight(evidence, timeline.estimate(evidence));
    double[] alone = foresight.value(RIA, 9.4).ovulations();
    double[] both = foresight.valueWithLh(RIA, 9.4).ovulations();
    assertThat(alone[1] - alone[0], closeTo(0.5, 1e-12));
    assertThat(both[1] - both[0], closeTo(0.25, 1e-12));
  }
}
