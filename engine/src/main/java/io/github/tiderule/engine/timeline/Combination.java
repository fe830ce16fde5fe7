package io.github.tiderule.engine.timeline;

import org.jspecify.annotations.Nullable;

/**
 * Joins all evidence on a lattice of LH peaks and the lattice of ovulations that follow them.
 *
 * <p>With w(λ) the weight of a peak from prior, progesterone, LH, folds and signs, k the lag and
 * e(ω) the likelihood of smears and scans: the posterior of ovulation is in proportion to {@code
 * e(ω) Σ w(λ) k(ω − λ)}, that of the peak to {@code w(λ) Σ k(ω − λ) e(ω)}.
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
    } else {
      ovulationLikelihood = ovulationEvidence.on(ovulations);
      back = back(peaks, lag, ovulationLikelihood);
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

  /** Log of the evidence for a peak at each place, progesterone included. */
  double[] outline(double[] logOrdinary, double[] logPlateau) {
    double[] outline = new double[prior.length];
    for (int i = 0; i < outline.length; i++) {
      outline[i] =
          Math.log(prior[i] * peakLikelihood[i] * back[i])
              + Math.max(logOrdinary[i], logPlateau[i]);
    }
    return outline;
  }

  /** Share of a plateau among seasons that ovulate. */
  double plateauShare(double[] logOrdinary, double[] logPlateau) {
    double[] outline = outline(logOrdinary, logPlateau);
    double most = Double.NEGATIVE_INFINITY;
    for (double log : outline) {
      most = Math.max(most, log);
    }
    double ordinary = 0;
    double plateau = 0;
    for (int i = 0; i < outline.length; i++) {
      double side = outline[i] - Math.max(logOrdinary[i], logPlateau[i]) - most;
      ordinary += Math.exp(side + logOrdinary[i]);
      plateau += Math.exp(side + logPlateau[i]);
    }
    double weighed = model.plateauWeight * plateau;
    return weighed / (weighed + (1 - model.plateauWeight) * ordinary);
  }

  /** The posterior. */
  Result combine(double[] logOrdinary, double[] logPlateau, double logNone) {
    double most = logNone;
    for (int i = 0; i < prior.length; i++) {
      if (prior[i] > 0) {
        most = Math.max(most, Math.max(logOrdinary[i], logPlateau[i]));
      }
    }
    int n = prior.length;
    double usual = 1 - model.plateauWeight - model.noOvulationWeight;
    double[] ordinary = new double[n];
    double[] plateau = new double[n];
    double[] peak = new double[n];
    double[] ovulation = new double[ovulations.count()];
    double ordinaryMass = 0;
    double plateauMass = 0;
    for (int i = 0; i < n; i++) {
      double side = prior[i] * peakLikelihood[i];
      double a = usual * side * Math.exp(logOrdinary[i] - most);
      double b = model.plateauWeight * side * Math.exp(logPlateau[i] - most);
      for (int l = 0; l < lag.length; l++) {
        ovulation[i + l] += (a + b) * lag[l];
      }
      ordinary[i] = a * back[i];
      plateau[i] = b * back[i];
      peak[i] = ordinary[i] + plateau[i];
      ordinaryMass += ordinary[i];
      plateauMass += plateau[i];
    }
    for (int j = 0; j < ovulation.length; j++) {
      ovulation[j] *= ovulationLikelihood[j];
    }
    ordinaryMass *= peaks.step();
    plateauMass *= peaks.step();
    double noneMass = model.noOvulationWeight * sideWithoutOvulation * Math.exp(logNone - most);
    double total = ordinaryMass + plateauMass + noneMass;
    return new Result(
        Density.of(peaks, peak),
        Density.of(ovulations, ovulation),
        ordinaryMass / total,
        plateauMass / total,
        noneMass / total,
        ordinary,
        plateau,
        peaks.step() / total);
  }

  /**
   * A posterior.
   *
   * @param ordinaryWeight weight of each peak with the ordinary course; times {@code unit} they are
   *     probabilities
   */
  record Result(
      Density peak,
      Density ovulation,
      double ordinary,
      double plateau,
      double none,
      double[] ordinaryWeight,
      double[] plateauWeight,
      double unit) {

    /** Posterior mean of something known for each peak and course. */
    double average(double[] overOrdinary, double[] overPlateau, double overNone) {
      double sum = 0;
      for (int i = 0; i < ordinaryWeight.length; i++) {
        sum += ordinaryWeight[i] * overOrdinary[i] + plateauWeight[i] * overPlateau[i];
      }
      return sum * unit + none * overNone;
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
