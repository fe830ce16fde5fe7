package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.parameter.Parameters;
import java.util.ArrayList;
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

  /** Weights this far below the largest, in logs, are not looked at more closely. */
  private static final double DEPTH = 12;

  /**
   * Below this share of a plateau, with and without any result, a third of its points serves; those
   * may find it ten times too unlikely.
   */
  private static final double UNLIKELY = 0.003;

  private final Model model;
  private final double step;
  private final double depth;

  private Timeline(Model model, double step, double depth) {
    this.model = model;
    this.step = step;
    this.depth = depth;
  }

  /** An estimator with the given numbers. */
  public static Timeline of(Parameters parameters) {
    return new Timeline(new Model(parameters), FINE, DEPTH);
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
    return new Timeline(model, days, depth);
  }

  /** The same with nothing cut off, to see that what is cut off does not matter. */
  Timeline whole() {
    return new Timeline(model, step, Double.POSITIVE_INFINITY);
  }

  /**
   * The posterior.
   *
   * @param evidence evidence that says something
   */
  public Estimate estimate(Evidence evidence) {
    ProgesteroneLikelihood progesterone = new ProgesteroneLikelihood(model, evidence);
    progesterone.thorough(false);
    Lattice lattice = narrow(evidence, progesterone);
    // only a plateau has a beginning sharp enough to be seen between such steps
    double smooth = progesterone.plateauMatters() ? step : 2 * step;
    CourseWeights weights = CourseWeights.between(lattice, smooth, progesterone);
    double[] onset = model.onset.on(lattice, evidence);
    Mixture none = progesterone.mixture();
    progesterone.none(none);

    Combination all = new Combination(model, lattice, onset, evidence);
    Combination.Result with =
        all.combine(weights.ordinary().log(), weights.plateau().log(), none.log());
    double median = with.median();
    double width = with.width();
    List<Estimate.Pull> pulls = new ArrayList<>();
    for (Evidence.Item item : evidence.items()) {
      int r = progesterone.ids().indexOf(item.id());
      Combination rest = r >= 0 ? all : all.with(evidence.without(item.id()));
      Combination.Result without =
          rest.combine(
              weights.ordinary().but(r),
              weights.plateau().but(r),
              r < 0 ? none.log() : none.logWithout(r));
      double odd =
          r >= 0 && r < progesterone.values()
              ? with.average(
                  weights.ordinary().odd()[r], weights.plateau().odd()[r], none.oddShare(r))
              : 0;
      pulls.add(
          new Estimate.Pull(
              item.id(), item.day(), median - without.median(), width - without.width(), odd));
    }
    return new Estimate(
        with.peak(),
        with.ovulation(),
        new Estimate.Courses(with.ordinary(), with.plateau(), 0, 0, 0, with.none()),
        progesterone.values() == 0
            ? 1
            : with.average(weights.ordinary().fit(), weights.plateau().fit(), none.fit()),
        List.copyOf(pulls));
  }

  /**
   * The part of the lattice where weight lies: with all evidence, with progesterone alone, and
   * without any one progesterone result, as seen on a coarse lattice.
   */
  private Lattice narrow(Evidence evidence, ProgesteroneLikelihood progesterone) {
    double[] span = model.onset.span(evidence);
    Lattice coarse = Lattice.covering(span[0], span[1], COARSE);
    CourseWeights weights = CourseWeights.on(coarse, progesterone);
    double[] onset = model.onset.on(coarse, evidence);
    Combination all = new Combination(model, coarse, onset, evidence);
    List<double[]> outlines = new ArrayList<>();
    boolean plateau = false;
    for (int r = -1; r < progesterone.ids().size(); r++) {
      double[] ordinaryLog = weights.ordinary().but(r);
      double[] plateauLog = weights.plateau().but(r);
      outlines.add(all.outline(ordinaryLog, plateauLog));
      plateau |= all.plateauShare(ordinaryLog, plateauLog) > UNLIKELY;
    }
    outlines.add(
        all.with(evidence.progesteroneOnly())
            .outline(weights.ordinary().log(), weights.plateau().log()));
    progesterone.thorough(true);
    if (!plateau) {
      progesterone.plateauUnlikely();
    }
    int first = coarse.count() - 1;
    int last = 0;
    for (double[] outline : outlines) {
      double most = Double.NEGATIVE_INFINITY;
      for (double log : outline) {
        most = Math.max(most, log);
      }
      for (int i = 0; i < outline.length; i++) {
        if (outline[i] >= most - depth) {
          first = Math.min(first, i);
          last = Math.max(last, i);
        }
      }
    }
    // an LH surge begins within hours: its edges want a finer lattice than anything else
    return Lattice.covering(
        Math.max(span[0], coarse.at(first) - COARSE),
        Math.min(span[1], coarse.at(last) + COARSE),
        evidence.lhTests().isEmpty() ? step : step / 2);
  }
}
