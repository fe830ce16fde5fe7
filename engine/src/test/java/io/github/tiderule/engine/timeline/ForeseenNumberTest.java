package io.github.tiderule.engine.timeline;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A number foreseen from the others, peak by peak, beside the density of all of them together. What
 * is foreseen times how likely the others are is that density.
 */
class ForeseenNumberTest {

  private static final Lattice PEAKS = new Lattice(8, 6, 1);

  private final Model model = new Model(Parameters.load());

  private static Normals[] foresee(
      ProgesteroneLikelihood progesterone, int number, double... courses) {
    Normals[] foreseen = new Normals[PEAKS.count()];
    Arrays.setAll(foreseen, place -> new Normals());
    progesterone.foresee(number, PEAKS, courses, foreseen);
    return foreseen;
  }

  private static Series series(Method method) {
    return Series.of("A", method);
  }

  private static PlainEvidence rising(Method method) {
    return new PlainEvidence()
        .value(series(method), 6.4, 0.55)
        .value(series(method), 8.4, 0.9)
        .value(series(method), 10.3, 2.1)
        .value(series(method), 11.4, 3.8);
  }

  private void compare(Evidence evidence, int number, double tolerance, double... courses) {
    PlainValues plain = new PlainValues(model, evidence, model.plateaus);
    ProgesteroneLikelihood progesterone = new ProgesteroneLikelihood(model, evidence);
    progesterone.thorough(true);
    compare(progesterone, plain, number, tolerance, courses);
  }

  /** Logs of what the others weigh within a part of the tolerance, densities within all of it. */
  private void compare(
      ProgesteroneLikelihood progesterone,
      PlainValues plain,
      int number,
      double tolerance,
      double... courses) {
    double[] logs = plain.logs();
    boolean[] others = new boolean[logs.length];
    Arrays.fill(others, true);
    others[number] = false;
    double[] at = new double[31];
    Arrays.setAll(at, x -> -1.5 + 0.15 * x);
    Normals[] foreseen = foresee(progesterone, number, courses);
    for (int place = 0; place < foreseen.length; place++) {
      double peak = PEAKS.at(place);
      double log = foreseen[place].settle(model.oddSd);
      String where = "number " + number + ", peak " + peak;
      double apart = plain.density(peak, logs, others, courses);
      assertThat(where, log, closeTo(Math.log(apart), 0.75 * tolerance));
      double[] together = plain.density(peak, number, at, courses);
      for (int x = 0; x < at.length; x++) {
        assertThat(
            where + ", log " + at[x],
            foreseen[place].density(at[x], 0),
            closeTo(together[x] / apart, tolerance));
      }
    }
  }

  @Test
  void everyNumberOfARise() {
    Evidence evidence = rising(Method.RIA).evidence();
    for (int number = 0; number < 4; number++) {
      compare(evidence, number, 0.02, 0.9, 0.08, 0, 0);
    }
  }

  /** Two ways to read, one of them no straight multiple of the level. */
  @Test
  void aMethodThatReadsInTwoWays() {
    compare(rising(Method.CLIA).evidence(), 3, 0.02, 0.9, 0.08, 0, 0);
  }

  @Test
  void aCourseAlone() {
    compare(rising(Method.RIA).evidence(), 2, 0.02, 1, 0, 0, 0);
    compare(rising(Method.RIA).evidence(), 2, 0.02, 0, 1, 0, 0);
    compare(rising(Method.RIA).evidence(), 2, 0.02, 0, 0, 1, 0);
  }

  @Test
  void besideAnEarlyFall() {
    Evidence fallen = rising(Method.RIA).value(series(Method.RIA), 20.4, 9).evidence();
    compare(fallen, 4, 0.02, 0.5, 0, 0, 0.5);
    compare(fallen, 3, 0.05, 0.5, 0, 0, 0.5);
  }

  /** The slip must be set aside, or all that is foreseen goes astray with it. */
  @Test
  void besideASlip() {
    Evidence slip = rising(Method.RIA).value(series(Method.RIA), 12.3, 0.5).evidence();
    compare(slip, 3, 0.05, 0.9, 0.08, 0, 0);
    compare(slip, 4, 0.05, 0.9, 0.08, 0, 0);
    compare(slip, 0, 0.05, 0.9, 0.08, 0, 0);
  }

  /** So must two of them. */
  @Test
  void besideTwoSlips() {
    Evidence slips =
        rising(Method.RIA)
            .value(series(Method.RIA), 12.3, 0.4)
            .value(series(Method.RIA), 13.4, 9)
            .value(series(Method.RIA), 14.4, 0.9)
            .evidence();
    compare(slips, 3, 0.05, 0.9, 0.08, 0.01, 0.01);
    compare(slips, 5, 0.05, 0.9, 0.08, 0.01, 0.01);
  }

  @Test
  void besideALimit() {
    Evidence limit = rising(Method.RIA).below(series(Method.RIA), 5.4, 0.5).evidence();
    PlainValues plain = new PlainValues(model, limit, model.plateaus);
    ProgesteroneLikelihood progesterone = new ProgesteroneLikelihood(model, limit);
    progesterone.thorough(true);
    boolean[] others = {true, true, true, false};
    Normals[] foreseen = foresee(progesterone, 3, 0.9, 0.08, 0, 0);
    for (int place = 0; place < foreseen.length; place++) {
      double peak = PEAKS.at(place);
      double apart = plain.density(peak, plain.logs(), others, 0.9, 0.08, 0, 0);
      assertThat(
          "peak " + peak, foreseen[place].settle(model.oddSd), closeTo(Math.log(apart), 0.03));
    }
  }

  /** With a plateau unlikely every third serves, in the place of its neighbours too. */
  @Test
  void everyThirdPlateauStandsForThree() {
    Evidence evidence = rising(Method.RIA).evidence();
    List<Model.Plateau> thirds = new ArrayList<>();
    double share = 0;
    for (int i = 1; i < model.plateaus.size(); i += 3) {
      share += Math.exp(model.plateaus.get(i).logShare());
    }
    for (int i = 1; i < model.plateaus.size(); i += 3) {
      Model.Plateau one = model.plateaus.get(i);
      thirds.add(new Model.Plateau(one.curve(), one.days(), one.logShare() - Math.log(share)));
    }
    ProgesteroneLikelihood progesterone = new ProgesteroneLikelihood(model, evidence);
    progesterone.thorough(true);
    assertThat(progesterone.plateauMatters(), is(true));
    progesterone.plateauUnlikely();
    assertThat(progesterone.plateauMatters(), is(false));
    compare(progesterone, new PlainValues(model, evidence, thirds), 3, 0.02, 0.9, 0.08, 0, 0);
    compare(progesterone, new PlainValues(model, evidence, thirds), 3, 0.02, 0, 1, 0, 0);
  }
}
