package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.assay.Series;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import java.util.ArrayList;
import java.util.List;

/**
 * What tests to come could bring, from the posterior and the same likelihoods the estimate uses.
 *
 * <p>Everything is told by when she ovulates, given that she does. Immutable.
 */
public final class Foresight {

  /** Cornified cells a smear to come is thought to show, per cent. */
  private static final double[] CORNIFIED = {20, 40, 55, 65, 75, 85, 95};

  /** Days between the ovulations a smear is foreseen for. */
  private static final double STEP = 0.5;

  /** Days about the likely peaks that are looked at for a number to come. */
  private static final double AHEAD = 2;

  /** The same where a number is left out. */
  private static final double WITHOUT = 5;

  private final Model model;
  private final Evidence evidence;
  private final Estimate known;

  Foresight(Model model, Evidence evidence, Estimate known) {
    this.model = model;
    this.evidence = evidence;
    this.known = known;
  }

  /**
   * A progesterone number to come.
   *
   * @param day when it is drawn, days after the anchor
   */
  public ComingValue value(Series series, double day) {
    return ComingValue.of(model, evidence, series, day, known, AHEAD, false);
  }

  /**
   * A progesterone number to come whose blood is tested for LH too.
   *
   * @param day when it is drawn, days after the anchor
   */
  public ComingValue valueWithLh(Series series, double day) {
    return ComingValue.of(model, evidence, series, day, known, AHEAD, true);
  }

  /**
   * A progesterone number that is known, as all the rest would have foreseen it.
   *
   * @throws IllegalArgumentException if the evidence holds no such number
   */
  public ComingValue again(String id) {
    Evidence.Value value =
        evidence.values().stream()
            .filter(one -> one.id().equals(id))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no number " + id));
    return ComingValue.of(
        model, evidence.without(id), value.series(), value.day(), known, WITHOUT, false);
  }

  /** An LH test to come: positive, negative. */
  public Outlook lh(double day) {
    Lattice peaks = known.peak().lattice();
    double[] lag = new Lag(model).kernel(peaks.step());
    double[] seen =
        new OvulationEvidence(model, evidence)
            .on(new Lattice(peaks.first(), peaks.count() + lag.length - 1, peaks.step()));
    PeakEvidence tests = new PeakEvidence(model, evidence);
    double[] weight = new double[peaks.count()];
    double[][] chance = new double[2][weight.length];
    for (int i = 0; i < weight.length; i++) {
      double back = 0;
      for (int l = 0; l < lag.length; l++) {
        back += lag[l] * seen[i + l];
      }
      // the posterior of the peak holds what smears and scans say of ovulation; here it must not
      weight[i] = back > 0 ? known.peak().value(i) / back : 0;
      chance[0][i] = tests.positive(day - peaks.at(i));
      chance[1][i] = 1 - chance[0][i];
    }
    return Outlook.over(peaks, lag, weight, chance);
  }

  /** A smear to come: cornified cells from few to many, each with no, few and many neutrophils. */
  public Outlook smear(double day) {
    Lattice fine = known.ovulation().lattice();
    Lattice ovulations = Lattice.covering(fine.at(0), fine.at(fine.count() - 1), STEP);
    List<Evidence.SmearSeen> smears = new ArrayList<>();
    for (double cornified : CORNIFIED) {
      for (Neutrophils white : Neutrophils.values()) {
        smears.add(new Evidence.SmearSeen("", day, cornified, white));
      }
    }
    return new Outlook(
        ovulations, new OvulationEvidence(model, evidence).coming(ovulations, smears));
  }
}
