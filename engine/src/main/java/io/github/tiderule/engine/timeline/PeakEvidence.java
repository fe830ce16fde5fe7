package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Folds;
import java.util.List;

/** What LH tests, vaginal folds and signs say of the LH peak. */
final class PeakEvidence {

  private static final Nodes ACCEPTANCE = Nodes.of(9, 2.8);

  private final Model model;
  private final Evidence evidence;

  PeakEvidence(Model model, Evidence evidence) {
    this.model = model;
    this.evidence = evidence;
  }

  /** Likelihood on a lattice of LH peaks. */
  double[] on(Lattice lattice) {
    double[] likelihood = new double[lattice.count()];
    for (int i = 0; i < likelihood.length; i++) {
      double peak = lattice.at(i);
      likelihood[i] = lhTests(peak) * folds(peak) * signs(peak);
    }
    return likelihood;
  }

  /** Likelihood of the same observations when she does not ovulate. */
  double withoutOvulation() {
    double likelihood = 1;
    double stray = model.value("lh.false-positive") + model.value("lh.burst") / 2;
    for (Evidence.Lh test : evidence.lhTests()) {
      likelihood *= test.positive() ? stray : 1 - stray;
    }
    likelihood *= Math.pow(1.0 / Folds.values().length, evidence.folds().size());
    return likelihood * Math.pow(0.5, evidence.signs().size());
  }

  private double lhTests(double peak) {
    double likelihood = 1;
    for (Evidence.Lh test : evidence.lhTests()) {
      double positive = positive(test.day() - peak);
      likelihood *= test.positive() ? positive : 1 - positive;
    }
    return likelihood;
  }

  /** Chance of a positive LH test some days after the peak. */
  private double positive(double days) {
    double surge =
        Normal.cdf((days + model.value("lh.surge-before")) / 0.15)
            - Normal.cdf((days - model.value("lh.surge-after")) / 0.25);
    double early = Normal.cdf((days + 9.5) / 0.5) - Normal.cdf((days + 3) / 0.5);
    return Math.min(
        0.99,
        model.value("lh.false-positive")
            + model.value("lh.burst") * early
            + model.value("lh.sensitivity") * surge);
  }

  private double folds(double peak) {
    double likelihood = 1;
    for (Evidence.FoldsSeen seen : evidence.folds()) {
      double days = seen.day() - peak;
      double chance =
          switch (seen.folds()) {
            case SWOLLEN -> 1 - reached("shrinking", days);
            case SHRINKING -> reached("shrinking", days) - reached("angular", days);
            case ANGULAR -> reached("angular", days) - reached("rounding", days);
            case ROUNDING -> reached("rounding", days) - reached("flat", days);
            case FLAT -> reached("flat", days);
          };
      likelihood *= 0.9 * chance + 0.1 / Folds.values().length;
    }
    return likelihood;
  }

  /** Chance that the folds have come to a state some days after the peak. */
  private double reached(String state, double days) {
    return Normal.cdf((days - model.value("folds." + state)) / model.value("folds.sd"));
  }

  private double signs(double peak) {
    List<Evidence.SignSeen> signs = evidence.signs();
    if (signs.isEmpty()) {
      return 1;
    }
    double sum = 0;
    for (int a = 0; a < ACCEPTANCE.count(); a++) {
      double product = ACCEPTANCE.weight()[a];
      for (Evidence.SignSeen sign : signs) {
        product *= sign(sign, sign.day() - peak, ACCEPTANCE.z()[a]);
      }
      sum += product;
    }
    return sum;
  }

  private double sign(Evidence.SignSeen seen, double days, double z) {
    double first = z * model.value("signs.stand-sd");
    double accepts = Normal.cdf((days - first) / 0.5) * (1 - Normal.cdf((days - 9) / 2));
    double chance =
        switch (seen.sign()) {
          case STANDS -> 0.05 + 0.87 * accepts;
          case REFUSES -> 0.95 - 0.87 * accepts;
          case FLAGS -> 0.15 + 0.65 * accepts;
          case VULVA_SOFTENS ->
              0.1
                  + 0.8
                      * Normal.cdf(
                          (days - model.value("signs.vulva-mean")) / model.value("signs.vulva-sd"));
          case BLEEDING_STOPS, FOUL_DISCHARGE, UNWELL -> 0.5;
        };
    return seen.present() ? chance : 1 - chance;
  }
}
