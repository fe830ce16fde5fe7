package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The estimator: evidence in, a posterior over LH peak and ovulation out.
 *
 * <p>Immutable and safe for use by many threads. No random numbers: the same evidence gives the
 * same estimate to the last bit.
 */
public final class Timeline {

  private static final double FINE = 0.25;
  private static final double COARSE = 1.0;

  /** So much of all weight may lie at either end of what is looked at more closely. */
  private static final double LOST = 1e-7;

  private static final int PLATEAU = 1;
  private static final int FAILING = 3;

  /**
   * Below this share of a plateau or an early fall, with and without any result, a third of its
   * points serves; those may find it ten times too unlikely.
   */
  private static final double UNLIKELY = 0.01;

  private final Model model;
  private final double step;
  private final double lost;

  private Timeline(Model model, double step, double lost) {
    this.model = model;
    this.step = step;
    this.lost = lost;
  }

  /** An estimator with the given numbers. */
  public static Timeline of(Parameters parameters) {
    return new Timeline(new Model(parameters), FINE, LOST);
  }

  /**
   * A progesterone number of a bitch of ordinary course of whom nothing is known but her LH peak.
   *
   * @param daysAfterPeak negative before it
   */
  public ComingValue afterPeak(Series series, double daysAfterPeak) {
    return ComingValue.afterPeak(model, series, daysAfterPeak);
  }

  /** What further tests could bring, seen from what is known. */
  public Foresight foresight(Evidence evidence, Estimate known) {
    return new Foresight(model, evidence, known);
  }

  /** Where dioestrus begins, by the smears and what is known of ovulation. */
  public Turning turning(Evidence evidence, Estimate known) {
    return new OvulationEvidence(model, evidence).turning(known.ovulation());
  }

  /** The same on another grid, to see that the grid does not matter. */
  Timeline withStep(double days) {
    return new Timeline(model, days, lost);
  }

  /** The same with nothing cut off, to see that what is cut off does not matter. */
  Timeline whole() {
    return new Timeline(model, step, -1);
  }

  /**
   * The posterior.
   *
   * @param evidence evidence that says something
   */
  public Estimate estimate(Evidence evidence) {
    ProgesteroneLikelihood progesterone = new ProgesteroneLikelihood(model, evidence);
    progesterone.thorough(false);
    Narrowed narrowed = narrow(evidence, progesterone);
    Lattice lattice = narrowed.both();
    CourseWeights weights =
        CourseWeights.between(lattice, narrowed.unrested(), narrowed.rested(), step, progesterone);
    double[] onset = model.onset.on(lattice, evidence);
    Mixture broken = progesterone.mixture();
    progesterone.brokenOff(broken);
    Mixture silent = progesterone.mixture();
    progesterone.silent(silent);

    Combination all = new Combination(model, lattice, onset, evidence);
    Combination.Result with =
        all.combine(weights.but(-1), new double[] {broken.log(), silent.log()});
    double median = with.median();
    double width = with.width();
    List<Estimate.Pull> pulls = new ArrayList<>();
    for (Evidence.Item item : evidence.items()) {
      int r = progesterone.ids().indexOf(item.id());
      Combination rest = r >= 0 ? all : all.with(evidence.without(item.id()));
      double[] logsWithout =
          r < 0
              ? new double[] {broken.log(), silent.log()}
              : new double[] {broken.logWithout(r), silent.logWithout(r)};
      Combination.Result without = rest.combine(weights.but(r), logsWithout);
      double odd =
          r < 0
              ? 0
              : with.average(weights.odd(r), new double[] {broken.oddShare(r), silent.oddShare(r)});
      pulls.add(
          new Estimate.Pull(
              item.id(), item.day(), median - without.median(), width - without.width(), odd));
    }
    Estimate.Courses courses = with.courses();
    double fit =
        progesterone.values() == 0
            ? 1
            : with.average(weights.fit(), new double[] {broken.fit(), silent.fit()})
                / (1 - courses.irregular());
    return new Estimate(with.peak(), with.ovulation(), courses, fit, List.copyOf(pulls));
  }

  /**
   * The part of the lattice where weight lies: with all evidence, with progesterone alone, and
   * without any one progesterone result, as seen on a coarse lattice.
   */
  private Narrowed narrow(Evidence evidence, ProgesteroneLikelihood progesterone) {
    double[] span = model.onset.span(evidence);
    Lattice coarse = Lattice.covering(span[0], span[1], COARSE);
    CourseWeights weights = CourseWeights.on(coarse, progesterone);
    double[] onset = model.onset.on(coarse, evidence);
    Combination all = new Combination(model, coarse, onset, evidence);
    List<double[][]> outlines = new ArrayList<>();
    for (int r = -1; r < progesterone.ids().size(); r++) {
      outlines.add(all.outline(weights.but(r)));
    }
    outlines.add(all.with(evidence.progesteroneOnly()).outline(weights.but(-1)));
    Reach unrested = new Reach(coarse);
    Reach rested = new Reach(coarse);
    boolean plateau = false;
    boolean failing = false;
    for (double[][] outline : outlines) {
      for (int c = 0; c < outline.length; c++) {
        (c == PLATEAU ? rested : unrested).widen(outline[c], lost);
      }
      plateau |= sum(outline[PLATEAU]) > UNLIKELY;
      failing |= sum(outline[FAILING]) > UNLIKELY;
    }
    progesterone.thorough(true);
    if (!plateau) {
      progesterone.plateauUnlikely();
    }
    if (!failing) {
      progesterone.failingUnlikely();
    }
    // an LH surge begins within hours: its edges want a finer lattice than anything else
    double fine = evidence.lhTests().isEmpty() ? step : step / 2;
    return new Narrowed(unrested.lattice(span, fine), rested.lattice(span, fine));
  }

  private static double sum(double[] values) {
    return Arrays.stream(values).sum();
  }

  /** Where weight lies on courses without a rest before the surge, and on those with one. */
  private record Narrowed(Lattice unrested, Lattice rested) {

    Lattice both() {
      int first = Math.min(unrested.first(), rested.first());
      int end = Math.max(unrested.first() + unrested.count(), rested.first() + rested.count());
      return new Lattice(first, end - first, unrested.step());
    }
  }

  /** The places of a lattice beyond which next to nothing lies. */
  private static final class Reach {

    private final Lattice lattice;
    private int first;
    private int last;

    Reach(Lattice lattice) {
      this.lattice = lattice;
      first = lattice.count() - 1;
    }

    /** Takes in all but so much of the weights at either end. */
    void widen(double[] weight, double lost) {
      double sum = 0;
      for (int i = 0; i < first; i++) {
        sum += weight[i];
        if (sum > lost) {
          first = i;
        }
      }
      sum = 0;
      for (int i = weight.length - 1; i > last; i--) {
        sum += weight[i];
        if (sum > lost) {
          last = i;
        }
      }
    }

    /** So far and one place more, on a finer lattice within a span. */
    Lattice lattice(double[] span, double step) {
      int from = Math.min(first, last);
      return Lattice.covering(
          Math.max(span[0], lattice.at(from) - lattice.step()),
          Math.min(span[1], lattice.at(last) + lattice.step()),
          step);
    }
  }
}
