package io.github.tiderule.engine.timeline;

import java.util.List;

/**
 * How well all progesterone results fit an LH peak at a given time.
 *
 * <p>Log values are jointly normal about the population curve: see the package page for the model.
 * Speed and plateau are summed over their points; level, baseline, scales and swing are integrated
 * in closed form; at most one value is the odd one out. Not safe for use by several threads.
 */
final class ProgesteroneLikelihood {

  private static final Nodes RATES = Nodes.of(9, 3);

  private static final int SPARSE = 3;

  private final Model model;
  private final ProgesteroneData data;
  private final GaussianTerm term;
  private final double[] rates;
  private final double[] logRateWeights;
  private double logRatePart;
  private int stride = 1;
  private int plateauStride = 1;

  ProgesteroneLikelihood(Model model, Evidence evidence) {
    this.model = model;
    this.data = ProgesteroneData.of(model, evidence);
    this.term = new GaussianTerm(model, data);
    rates = new double[RATES.count()];
    logRateWeights = new double[RATES.count()];
    for (int i = 0; i < rates.length; i++) {
      rates[i] = Math.exp(model.rateSd * RATES.z()[i]);
      logRateWeights[i] = Math.log(RATES.weight()[i]);
    }
  }

  /**
   * Says whether to sum over all points of speed and plateau. Without, a third of the points, made
   * to weigh as much as all, serves to see where weight lies.
   */
  void thorough(boolean thorough) {
    stride = thorough ? 1 : SPARSE;
    plateauStride = stride;
    double sum = 0;
    for (int r = stride / 2; r < rates.length; r += stride) {
      sum += RATES.weight()[r];
    }
    logRatePart = -Math.log(sum);
  }

  /** Says that a plateau is so unlikely that a third of its points serves. */
  void plateauUnlikely() {
    plateauStride = SPARSE;
  }

  /** Whether a plateau may matter. */
  boolean plateauMatters() {
    return plateauStride == 1;
  }

  /** An empty sum of the right size. */
  Mixture mixture() {
    return new Mixture(data.values(), data.count());
  }

  /** Ids of all results, the numbers first. */
  List<String> ids() {
    return data.ids();
  }

  /** How many results are numbers. */
  int values() {
    return data.values();
  }

  /** The ordinary course, with the LH peak at {@code peak}. */
  void ordinary(double peak, Mixture into) {
    into.clear();
    for (int r = stride / 2; r < rates.length; r += stride) {
      place(rates[r], peak);
      term.addTo(into, logRateWeights[r] + logRatePart);
    }
  }

  /**
   * A plateau before the surge, with the LH peak at each place of a lattice: plateau by plateau, so
   * that only one curve at a time has to be near at hand.
   *
   * @param into as many as the lattice has places
   */
  void plateaus(Lattice peaks, Mixture[] into) {
    for (Mixture mixture : into) {
      mixture.clear();
    }
    for (int p = plateauStride / 2; p < model.plateaus.size(); p += plateauStride) {
      Model.Plateau plateau = model.plateaus.get(p);
      double logWeight = plateau.logShare() + logPlateauPart();
      for (int i = 0; i < into.length; i++) {
        place(plateau, peaks.at(i));
        term.addTo(into[i], logWeight);
      }
    }
  }

  /** No ovulation this time. */
  void none(Mixture into) {
    into.clear();
    for (int i = 0; i < data.count(); i++) {
      term.place(i, Math.log(model.noOvulationLevel), model.noOvulationSd, 0);
    }
    term.addTo(into, 0);
  }

  /**
   * Foresees number i from all other results, with the LH peak at each place of a lattice, if she
   * ovulates.
   *
   * @param usual prior weight of the ordinary course
   * @param resting prior weight of a plateau
   * @param into as many as the lattice has places
   */
  void foresee(int i, Lattice peaks, double usual, double resting, Normals[] into) {
    for (int r = stride / 2; r < rates.length; r += stride) {
      double logWeight = Math.log(usual) + logRateWeights[r] + logRatePart;
      for (int j = 0; j < into.length; j++) {
        place(rates[r], peaks.at(j));
        term.foresee(i, logWeight, into[j]);
      }
    }
    for (int p = plateauStride / 2; p < model.plateaus.size(); p += plateauStride) {
      Model.Plateau plateau = model.plateaus.get(p);
      double logWeight = Math.log(resting) + plateau.logShare() + logPlateauPart();
      for (int j = 0; j < into.length; j++) {
        place(plateau, peaks.at(j));
        term.foresee(i, logWeight, into[j]);
      }
    }
  }

  private void place(double rate, double peak) {
    for (int i = 0; i < data.count(); i++) {
      place(i, model.curve, onCurve(rate, data.day(i) - peak));
    }
  }

  private void place(Model.Plateau plateau, double peak) {
    for (int i = 0; i < data.count(); i++) {
      place(i, plateau.curve(), data.day(i) - peak);
    }
  }

  /** Where on the population's curve a bitch of some speed is, some days after the peak. */
  private double onCurve(double rate, double days) {
    return model.ratePivot + rate * (days - model.ratePivot);
  }

  /** What makes up for the points passed over. */
  private double logPlateauPart() {
    return plateauStride == 1 ? 0 : model.logSparsePlateaus;
  }

  private void place(int i, PopulationCurve curve, double days) {
    double base = curve.baseShare(days);
    double late = Math.min(Math.max((days - 4) / 4, 0), 1);
    term.place(
        i,
        curve.logMean(days),
        model.baselineSd * base,
        model.riseSd * (1 - base) * (1 + model.lutealGrowth * late));
  }
}
