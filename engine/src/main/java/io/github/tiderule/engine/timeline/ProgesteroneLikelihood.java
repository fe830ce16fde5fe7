package io.github.tiderule.engine.timeline;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How well all progesterone results fit an LH peak at a given time.
 *
 * <p>Log values are jointly normal about the population curve: see the package page for the model.
 * Speed, plateau and the day of an early fall are summed over their points; level, baseline, scales
 * and swing are integrated in closed form; up to two values are odd. Not safe for use by several
 * threads.
 */
final class ProgesteroneLikelihood {

  /** How many courses there are on which she ovulates, in the order of {@link CourseWeights}. */
  static final int COURSES = 4;

  private static final int ORDINARY = 0;
  private static final int PLATEAU = 1;
  private static final int IRREGULAR = 2;
  private static final int FAILING = 3;

  private static final Nodes RATES = Nodes.of(11, 3.75);

  /** The place of the speed that is the population's. */
  private static final int MIDDLE = 5;

  private static final int[] ALL_SPEEDS = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
  private static final int[] FEW_SPEEDS = {0, 2, 5, 8, 10};

  private static final double[] NO_PRIORS = new double[COURSES];

  private static final int SPARSE = 3;

  /** Days between two tops of a broken-off course, in widths of its bell. */
  private static final double TOP_STEP = 0.25;

  /** Widths of that bell from its top at which nothing of it is left. */
  private static final double BELL = 3;

  private final Model model;
  private final Evidence evidence;
  private final ProgesteroneData data;
  private final GaussianTerm term;
  private final double[] rates;
  private final double[] logRateWeights;
  private final double[] logWeights = new double[COURSES];
  private double logRatePart;
  private int[] speeds = ALL_SPEEDS;
  private int plateauStride = 1;
  private int failingStride = 1;
  private @Nullable Lattice putOffOn;
  private final Map<Double, double[]> putOff = new HashMap<>();

  ProgesteroneLikelihood(Model model, Evidence evidence) {
    this.model = model;
    this.evidence = evidence;
    this.data = ProgesteroneData.of(model, evidence);
    this.term = new GaussianTerm(model, data);
    rates = new double[RATES.count()];
    logRateWeights = new double[RATES.count()];
    double sum = 0;
    for (int i = 0; i < rates.length; i++) {
      rates[i] = Math.exp(model.rateSd * RATES.z()[i]);
      boolean end = i == 0 || i == rates.length - 1;
      logRateWeights[i] = rateWeight(model, RATES.z()[i]) / (end ? 2 : 1);
      sum += logRateWeights[i];
    }
    for (int i = 0; i < rates.length; i++) {
      logRateWeights[i] = Math.log(logRateWeights[i] / sum);
    }
  }

  private static double rateWeight(Model model, double z) {
    double wider = model.wideRateSd / model.rateSd;
    return (1 - model.wideRateWeight) * Normal.density(z)
        + model.wideRateWeight * Normal.density(z / wider) / wider;
  }

  /**
   * Says whether to sum over all points of speed, plateau and early fall. Without, a few of the
   * points, made to weigh as much as all, serve to see where weight lies.
   */
  void thorough(boolean thorough) {
    term.thorough(thorough);
    speeds = thorough ? ALL_SPEEDS : FEW_SPEEDS;
    plateauStride = thorough ? 1 : SPARSE;
    failingStride = plateauStride;
    double sum = 0;
    for (int r : speeds) {
      sum += Math.exp(logRateWeights[r]);
    }
    logRatePart = -Math.log(sum);
  }

  /** Says that a plateau is so unlikely that a third of its points serves. */
  void plateauUnlikely() {
    plateauStride = SPARSE;
  }

  /** Says that an early fall is so unlikely that a third of its points serves. */
  void failingUnlikely() {
    failingStride = SPARSE;
  }

  /** Whether a plateau may matter. */
  boolean plateauMatters() {
    return plateauStride == 1;
  }

  /** An empty sum of the right size. */
  Mixture mixture() {
    return new Mixture(data.count());
  }

  /** Ids of all results, the numbers first. */
  List<String> ids() {
    return data.ids();
  }

  /** How many results are numbers. */
  int values() {
    return data.values();
  }

  /** All courses on which she ovulates without a rest, with the LH peak at {@code peak}. */
  void unrested(double peak, Mixture[] into) {
    clear(into);
    unrested(
        peak,
        NO_PRIORS,
        (logs, irregular) ->
            term.addTo(into, logs, irregular ? data.irregular() : data.readings()));
  }

  /** A rest before the surge, with the LH peak at a place of a lattice. */
  void rested(Lattice peaks, int place, Mixture into) {
    into.clear();
    Mixture[] only = {into};
    double[] logWeight = new double[1];
    rested(
        peaks,
        place,
        0,
        (logs, irregular) -> {
          logWeight[0] = logs[PLATEAU];
          term.addTo(only, logWeight, data.readings());
        });
  }

  private static void clear(Mixture[] sums) {
    for (Mixture sum : sums) {
      sum.clear();
    }
  }

  /**
   * Foresees number i from all other results, with the LH peak at each place of a lattice, if she
   * ovulates.
   *
   * @param weights prior weights of the courses on which she ovulates
   * @param into as many as the lattice has places
   */
  void foresee(int i, Lattice peaks, double[] weights, Normals[] into) {
    double[] logs = Arrays.stream(weights).map(Math::log).toArray();
    for (int j = 0; j < into.length; j++) {
      Normals at = into[j];
      Placed placed =
          (course, irregular) -> {
            double log = logSum(course);
            if (log > Double.NEGATIVE_INFINITY) {
              term.foresee(i, log, at, irregular ? data.irregular() : data.readings());
            }
          };
      unrested(peaks.at(j), logs, placed);
      rested(peaks, j, logs[PLATEAU], placed);
    }
  }

  /** What is done with one placed course of the level. */
  private interface Placed {

    /**
     * @param logWeights logs of its weight as each course
     */
    void take(double[] logWeights, boolean irregular);
  }

  /**
   * Places one course of the level after the other, each once, with what it weighs as each course.
   */
  private void unrested(double peak, double[] logPriors, Placed placed) {
    double asOrdinary = 0;
    int first = failingStride / 2;
    double share = 1.0 / ((model.failing.size() - first - 1) / failingStride + 1);
    for (int f = first; f < model.failing.size(); f += failingStride) {
      PopulationCurve failing = model.failing.get(f);
      if (!differs(failing, peak)) {
        asOrdinary += share;
      } else if (logPriors[FAILING] > Double.NEGATIVE_INFINITY) {
        place(failing, 1, peak);
        placed.take(only(FAILING, logPriors[FAILING] + Math.log(share)), false);
      }
    }
    for (int r : speeds) {
      if (r != MIDDLE) {
        place(model.curve, rates[r], peak);
        placed.take(only(ORDINARY, logPriors[ORDINARY] + logRateWeights[r] + logRatePart), false);
      }
    }
    place(model.curve, 1, peak);
    only(ORDINARY, logPriors[ORDINARY] + logRateWeights[MIDDLE] + logRatePart);
    logWeights[FAILING] = logPriors[FAILING] + Math.log(asOrdinary);
    placed.take(logWeights, false);
    if (logPriors[IRREGULAR] > Double.NEGATIVE_INFINITY) {
      placed.take(only(IRREGULAR, logPriors[IRREGULAR]), true);
    }
  }

  private void rested(Lattice peaks, int place, double logPrior, Placed placed) {
    if (logPrior == Double.NEGATIVE_INFINITY) {
      return;
    }
    double peak = peaks.at(place);
    double asOrdinary = 0;
    for (int p = plateauStride / 2; p < model.plateaus.size(); p += plateauStride) {
      Model.Plateau plateau = model.plateaus.get(p);
      double logWeight = plateau.logShare() + logPlateauPart() + logPutOff(plateau, peaks, place);
      if (differs(plateau.curve(), peak)) {
        place(plateau.curve(), 1, peak);
        placed.take(only(PLATEAU, logPrior + logWeight), false);
      } else {
        asOrdinary += Math.exp(logWeight);
      }
    }
    if (asOrdinary > 0) {
      place(model.curve, 1, peak);
      placed.take(only(PLATEAU, logPrior + Math.log(asOrdinary)), false);
    }
  }

  private double logPutOff(Model.Plateau plateau, Lattice peaks, int place) {
    if (!peaks.equals(putOffOn)) {
      putOffOn = peaks;
      putOff.clear();
    }
    double[] ratio =
        putOff.computeIfAbsent(plateau.days(), days -> model.onset.putOff(peaks, days, evidence));
    return Math.log(ratio[place]);
  }

  private double[] only(int course, double logWeight) {
    Arrays.fill(logWeights, Double.NEGATIVE_INFINITY);
    logWeights[course] = logWeight;
    return logWeights;
  }

  private static double logSum(double[] logs) {
    double most = Arrays.stream(logs).max().orElseThrow();
    if (most == Double.NEGATIVE_INFINITY) {
      return most;
    }
    return most + Math.log(Arrays.stream(logs).map(log -> Math.exp(log - most)).sum());
  }

  /** The level stays low, and she does not ovulate this time. */
  void silent(Mixture into) {
    into.clear();
    for (int i = 0; i < data.count(); i++) {
      term.place(i, Math.log(model.noOvulationLevel), model.noOvulationSd, 0);
    }
    term.addTo(new Mixture[] {into}, new double[] {0}, data.readings());
  }

  /**
   * The level rises and falls back, and she does not ovulate this time.
   *
   * <p>Its top lies where the LH peak would.
   */
  void brokenOff(Mixture into) {
    into.clear();
    Mixture[] only = {into};
    double far = 0;
    double[] span = model.onset.span(evidence);
    for (double width : model.brokenOffDays) {
      Lattice tops = Lattice.covering(span[0], span[1], TOP_STEP * width);
      double[] density = model.onset.on(tops, evidence);
      for (int t = 0; t < tops.count(); t++) {
        double share = density[t] * tops.step() / model.brokenOffDays.length;
        if (!(share > 0)) {
          continue;
        }
        double top = tops.at(t);
        if (!reaches(top, BELL * width)) {
          far += share;
          continue;
        }
        for (double level : model.brokenOffLevels) {
          for (int i = 0; i < data.count(); i++) {
            double above = level * Math.exp(-0.5 * sq((data.day(i) - top) / width));
            double log = Math.log(model.basal + above);
            double base = model.basal / (model.basal + above);
            term.place(i, log, model.baselineSd * base, model.riseSd * (1 - base));
          }
          double log = Math.log(share / model.brokenOffLevels.length);
          term.addTo(only, new double[] {log}, data.readings());
        }
      }
    }
    for (int i = 0; i < data.count(); i++) {
      term.place(i, Math.log(model.basal), model.baselineSd, 0);
    }
    term.addTo(only, new double[] {Math.log(far)}, data.readings());
  }

  private boolean reaches(double top, double days) {
    for (int i = 0; i < data.count(); i++) {
      if (Math.abs(data.day(i) - top) < days) {
        return true;
      }
    }
    return false;
  }

  private boolean differs(PopulationCurve curve, double peak) {
    for (int i = 0; i < data.count(); i++) {
      if (curve.differsAt(data.day(i) - peak)) {
        return true;
      }
    }
    return false;
  }

  private void place(PopulationCurve curve, double rate, double peak) {
    for (int i = 0; i < data.count(); i++) {
      double since = data.day(i) - peak - model.ratePivot;
      double days = model.ratePivot + (since < 0 ? rate : model.rateAfter(rate)) * since;
      double base = curve.baseShare(days);
      double late = Math.min(Math.max((days - 4) / 4, 0), 1);
      term.place(
          i,
          curve.logMean(days),
          model.baselineSd * base,
          model.riseSd * (1 - base) * (1 + model.lutealGrowth * late));
    }
  }

  /** What makes up for the points passed over. */
  private double logPlateauPart() {
    return plateauStride == 1 ? 0 : model.logSparsePlateaus;
  }

  private static double sq(double x) {
    return x * x;
  }
}
