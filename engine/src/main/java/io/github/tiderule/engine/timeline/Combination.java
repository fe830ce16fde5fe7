package io.github.tiderule.engine.timeline;

import org.jspecify.annotations.Nullable;

/**
 * Joins all evidence on a lattice of LH peaks and the lattice of ovulations that follow them.
 *
 * <p>With w(λ) the weight of a peak from prior, progesterone, LH, folds and signs, k the lag and
 * e(ω) the likelihood of smears and scans: the posterior of ovulation is in proportion to {@code
 * e(ω) Σ w(λ) k(ω − λ)}, that of the peak to {@code w(λ) Σ k(ω − λ) e(ω)}. Whether she ovulates is
 * weighed with ultrasound alone in e.
 */
final class Combination {

  private final Model model;
  private final Lattice peaks;
  private final double[] prior;
  private final Evidence evidence;
  private final double[] peakLikelihood;
  private final Lattice ovulations;
  private final double[] ovulationLikelihood;
  private final double[] lag;
  private final double[] back;
  private final double[] backWithoutSmears;
  private final double sideWithoutOvulation;

  Combination(Model model, Lattice peaks, double[] prior, Evidence evidence) {
    this(model, peaks, prior, evidence, null);
  }

  /**
   * @param known one with other evidence over the same peaks, of which what speaks of ovulation is
   *     taken over where it is the same; null where there is none
   */
  private Combination(
      Model model, Lattice peaks, double[] prior, Evidence evidence, @Nullable Combination known) {
    this.model = model;
    this.peaks = peaks;
    this.prior = prior;
    this.evidence = evidence;
    PeakEvidence peakEvidence = new PeakEvidence(model, evidence);
    OvulationEvidence ovulationEvidence = new OvulationEvidence(model, evidence);
    peakLikelihood = peakEvidence.on(peaks);
    sideWithoutOvulation = peakEvidence.withoutOvulation() * ovulationEvidence.withoutOvulation();
    lag = known == null ? new Lag(model).kernel(peaks.step()) : known.lag;
    ovulations = new Lattice(peaks.first(), peaks.count() + lag.length - 1, peaks.step());
    if (known != null
        && evidence.smears().equals(known.evidence.smears())
        && evidence.scans().equals(known.evidence.scans())) {
      ovulationLikelihood = known.ovulationLikelihood;
      back = known.back;
      backWithoutSmears = known.backWithoutSmears;
    } else {
      ovulationLikelihood = ovulationEvidence.on(ovulations);
      back = back(peaks, lag, ovulationLikelihood);
      backWithoutSmears =
          evidence.smears().isEmpty()
              ? back
              : back(peaks, lag, ovulationEvidence.scansOn(ovulations));
    }
  }

  /** The same with other evidence beside progesterone. */
  Combination with(Evidence other) {
    return new Combination(model, peaks, prior, other, this);
  }

  private static double[] back(Lattice peaks, double[] lag, double[] ovulationLikelihood) {
    double[] sum = new double[peaks.count()];
    for (int i = 0; i < sum.length; i++) {
      for (int l = 0; l < lag.length; l++) {
        sum[i] += lag[l] * ovulationLikelihood[i + l];
      }
    }
    return sum;
  }

  /**
   * Weight of each course at each place, progesterone included, in proportion.
   *
   * @param logs by course on which she ovulates, then by place
   */
  double[][] outline(double[][] logs) {
    double most = Double.NEGATIVE_INFINITY;
    for (double[] log : logs) {
      for (int i = 0; i < prior.length; i++) {
        if (prior[i] > 0) {
          most = Math.max(most, log[i]);
        }
      }
    }
    double[] priors = model.courseWeights();
    double[][] outline = new double[logs.length][prior.length];
    double sum = 0;
    for (int i = 0; i < prior.length; i++) {
      double side = prior[i] * peakLikelihood[i] * back[i];
      for (int c = 0; c < logs.length; c++) {
        outline[c][i] = side * priors[c] * Math.exp(logs[c][i] - most);
        sum += outline[c][i];
      }
    }
    for (double[] one : outline) {
      for (int i = 0; i < one.length; i++) {
        one[i] /= sum;
      }
    }
    return outline;
  }

  /**
   * The posterior.
   *
   * @param logs log likelihoods of the progesterone results, by course on which she ovulates, then
   *     by place
   * @param logsWithout the same if her season breaks off, and if she stays low
   */
  Result combine(double[][] logs, double[] logsWithout) {
    double most = Math.max(logsWithout[0], logsWithout[1]);
    for (double[] log : logs) {
      for (int i = 0; i < prior.length; i++) {
        if (prior[i] > 0) {
          most = Math.max(most, log[i]);
        }
      }
    }
    int n = prior.length;
    double[] priors = model.courseWeights();
    double[][] weight = new double[logs.length][n];
    double[] share = new double[logs.length];
    double[] peak = new double[n];
    double[] ovulation = new double[ovulations.count()];
    double total = 0;
    double withoutSmears = 0;
    for (int i = 0; i < n; i++) {
      double side = prior[i] * peakLikelihood[i];
      double sum = 0;
      for (int c = 0; c < logs.length; c++) {
        double one = priors[c] * side * Math.exp(logs[c][i] - most);
        weight[c][i] = one * back[i];
        share[c] += weight[c][i] * peaks.step();
        sum += one;
      }
      for (int l = 0; l < lag.length; l++) {
        ovulation[i + l] += sum * lag[l];
      }
      peak[i] = sum * back[i];
      total += peak[i] * peaks.step();
      withoutSmears += sum * backWithoutSmears[i] * peaks.step();
    }
    double smears = total / withoutSmears;
    for (int j = 0; j < ovulation.length; j++) {
      ovulation[j] *= ovulationLikelihood[j];
    }
    double[] without = {model.brokenOffWeight, model.noOvulationWeight};
    for (int c = 0; c < without.length; c++) {
      without[c] *= smears * sideWithoutOvulation * Math.exp(logsWithout[c] - most);
      total += without[c];
    }
    for (int c = 0; c < share.length; c++) {
      share[c] /= total;
    }
    for (int c = 0; c < without.length; c++) {
      without[c] /= total;
    }
    return new Result(
        Density.of(peaks, peak),
        Density.of(ovulations, ovulation),
        share,
        without,
        weight,
        peaks.step() / total);
  }

  /**
   * A posterior.
   *
   * @param share probabilities of the courses on which she ovulates
   * @param without probabilities that her season breaks off, and that she stays low
   * @param weight by course on which she ovulates, weight of each peak; times {@code unit} they are
   *     probabilities
   */
  record Result(
      Density peak,
      Density ovulation,
      double[] share,
      double[] without,
      double[][] weight,
      double unit) {

    /** Posterior mean of something known for each course and peak, and for either without. */
    double average(double[][] over, double[] overWithout) {
      double sum = 0;
      for (int c = 0; c < weight.length; c++) {
        for (int i = 0; i < weight[c].length; i++) {
          sum += weight[c][i] * over[c][i];
        }
      }
      return sum * unit + without[0] * overWithout[0] + without[1] * overWithout[1];
    }

    Estimate.Courses courses() {
      return new Estimate.Courses(share[0], share[1], share[2], share[3], without[0], without[1]);
    }

    double median() {
      return ovulation.quantile(0.5);
    }

    /** Width of the 90 % interval of ovulation, days. */
    double width() {
      return ovulation.quantile(0.95) - ovulation.quantile(0.05);
    }
  }
}
