package io.github.tiderule.cases.pairs;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.cases.cohort.Draws;
import io.github.tiderule.engine.LaboratoryScale;
import io.github.tiderule.engine.LaboratoryScale.Outcome;
import io.github.tiderule.engine.LaboratoryScale.Pair;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Simulated laboratories are learned from eight sera that radioimmunoassay measured too. */
class LearnedLaboratoryTest {

  private static final Parameters PARAMETERS = RuleBase.load().parameters();
  private static final int LABORATORIES = 400;
  private static final int PAIRS = 8;

  private static List<Pair> pairs(double scale, double cv, Draws draws) {
    List<Pair> pairs = new ArrayList<>();
    while (pairs.size() < PAIRS) {
      double blood = draws.logNormal(6, 0.7);
      if (blood > 2.6 && blood < 30) {
        double value = scale * blood * (1 + cv * draws.normal(0, 1));
        pairs.add(new Pair(value, blood * (1 + 0.07 * draws.normal(0, 1))));
      }
    }
    return pairs;
  }

  @ParameterizedTest
  @CsvSource({
    "CLIA, 0.85, 0.05",
    "CLIA, 0.45, 0.05",
    "ELFA, 1, 0.08",
    "ELFA, 1.5, 0.08",
    "FLUORESCENCE, 0.85, 0.10",
    "DRY_SLIDE, 0.7, 0.10",
    "DRY_SLIDE, 1, 0.10"
  })
  void eightPairsBringALaboratoryWithinEightPercent(Method method, double usual, double cv) {
    int near = 0;
    int held = 0;
    for (int number = 0; number < LABORATORIES; number++) {
      Draws draws = Draws.of(7, number);
      double scale = draws.logNormal(usual, 0.1);
      LaboratoryScale learned =
          LaboratoryScale.of(PARAMETERS, method, Method.RIA, pairs(scale, cv, draws));
      double error = Math.abs(Math.log(learned.factor() / scale));
      near += error <= Math.log(1.08) ? 1 : 0;
      held += error <= 1.645 * learned.logSd() ? 1 : 0;
    }
    assertThat(near / (double) LABORATORIES, is(greaterThanOrEqualTo(0.9)));
    // the other laboratory's own scale is in the spread and not in these draws, so it holds more
    assertThat(held / (double) LABORATORIES, is(greaterThanOrEqualTo(0.88)));
  }

  @Test
  void aMistakenSampleIsLeftOutAndNamed() {
    List<Pair> pairs = new ArrayList<>();
    for (double blood : new double[] {3, 4, 5, 6, 8, 10, 12, 15, 20}) {
      pairs.add(new Pair(0.85 * blood, blood));
    }
    pairs.add(3, new Pair(2, 14));
    pairs.add(new Pair(0.4, 0.6));
    LaboratoryScale scale = LaboratoryScale.of(PARAMETERS, Method.CLIA, Method.RIA, pairs);
    assertThat(scale.outcome(), is(Outcome.PROPOSED));
    assertThat(scale.factor(), is(closeTo(0.85, 0.01)));
    assertThat(scale.odd(), contains(3));
    assertThat(scale.low(), contains(10));
    assertThat(scale.changes().get(0).parameter(), is("reading.factor.clia"));
    assertThat(scale.changes().get(1).parameter(), is("timeline.laboratory.clia-log-sd"));
  }

  @Test
  void againstAMethodOfTwoScalesBothAreCarried() {
    List<Pair> pairs = new ArrayList<>();
    for (double blood : new double[] {3, 4, 5, 6, 8, 10, 12, 15, 20}) {
      pairs.add(new Pair(1.82 * blood, blood));
    }
    LaboratoryScale scale = LaboratoryScale.of(PARAMETERS, Method.ELFA, Method.CLIA, pairs);
    // nearly 1.55 with chemiluminescence at 0.85, some of 0.85 with it at 0.45
    assertThat(scale.logSd(), is(greaterThanOrEqualTo(0.1)));
    assertThat(scale.logSd(), is(lessThan(0.35)));
  }

  @Test
  void fewPairsAndAnotherUnitProposeNothing() {
    List<Pair> few = List.of(new Pair(4, 5), new Pair(8, 10));
    LaboratoryScale scale = LaboratoryScale.of(PARAMETERS, Method.CLIA, Method.RIA, few);
    assertThat(scale.outcome(), is(Outcome.TOO_FEW));
    assertThat(scale.changes(), is(empty()));
    List<Pair> unit = new ArrayList<>();
    for (double blood : new double[] {3, 4, 5, 6, 8, 10, 12, 15, 20}) {
      unit.add(new Pair(2.7 * blood, blood));
    }
    assertThat(
        LaboratoryScale.of(PARAMETERS, Method.CLIA, Method.RIA, unit).outcome(),
        is(Outcome.BEYOND_RANGE));
    assertThat(LaboratoryScale.learns(Method.RIA), is(false));
  }
}
