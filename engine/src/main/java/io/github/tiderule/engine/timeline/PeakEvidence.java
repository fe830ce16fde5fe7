package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Folds;
import java.util.List;

/** What LH tests, vaginal folds and signs say of the LH peak. */
final class PeakEvidence {

  private static final Nodes ACCEPTANCE = Nodes.of(9, 2.8);

  private final double lhFalsePositive;
  private final double lhBurst;
  private final double lhSensitivity;
  private final double lhSurgeBefore;
  private final double lhSurgeAfter;
  private final double signsStandSd;
  private final double signsVulvaMean;
  private final double signsVulvaSd;
  private final double foldsSd;
  private final double foldsShrinking;
  private final double foldsAngular;
  private final double foldsRounding;
  private final double foldsFlat;
  private final Evidence evidence;

  PeakEvidence(Model model, Evidence evidence) {
    lhFalsePositive = model.value("lh.false-positive");
    lhBurst = model.value("lh.burst");
    lhSensitivity = model.value("lh.sensitivity");
    lhSurgeBefore = model.value("lh.surge-before");
    lhSurgeAfter = model.value("lh.surge-after");
    signsStandSd = model.value("signs.stand-sd");
    signsVulvaMean = model.value("signs.vulva-mean");
    signsVulvaSd = model.value("signs.vulva-sd");
    foldsSd = model.value("folds.sd");
    foldsShrinking = model.value("folds.shrinking");
    foldsAngular = model.value("folds.angular");
    foldsRounding = model.value("folds.rounding");
    foldsFlat = model.value("folds.flat");
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
    double stray = lhFalsePositive + lhBurst / 2;
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
  double positive(double days) {
    double surge =
        Normal.quickCdf((days + lhSurgeBefore) / 0.15)
            - Normal.quickCdf((days - lhSurgeAfter) / 0.25);
    double early = Normal.quickCdf((days + 9.5) / 0.5) - Normal.quickCdf((days + 3) / 0.5);
    return Math.min(0.99, lhFalsePositive + lhBurst * early + lhSensitivity * surge);
  }

  private double folds(double peak) {
    double likelihood = 1;
    for (Evidence.FoldsSeen seen : evidence.folds()) {
      double days = seen.day() - peak;
      double chance =
          switch (seen.folds()) {
            case SWOLLEN -> 1 - reached(foldsShrinking, days);
            case SHRINKING -> reached(foldsShrinking, days) - reached(foldsAngular, days);
            case ANGULAR -> reached(foldsAngular, days) - reached(foldsRounding, days);
            case ROUNDING -> reached(foldsRounding, days) - reached(foldsFlat, days);
            case FLAT -> reached(foldsFlat, days);
          };
      likelihood *= 0.9 * chance + 0.1 / Folds.values().length;
    }
    return likelihood;
  }

  /** Chance that the folds have come to a state some days after the peak. */
  private double reached(double state, double days) {
    return Normal.quickCdf((days - state) / foldsSd);
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
    double first = z * signsStandSd;
    double accepts = Normal.quickCdf((days - first) / 0.5) * (1 - Normal.quickCdf((days - 9) / 2));
    double chance =
        switch (seen.sign()) {
          case STANDS -> 0.05 + 0.87 * accepts;
          case REFUSES -> 0.95 - 0.87 * accepts;
          case FLAGS -> 0.15 + 0.65 * accepts;
          case VULVA_SOFTENS -> 0.1 + 0.8 * Normal.quickCdf((days - signsVulvaMean) / signsVulvaSd);
          case BLEEDING_STOPS, FOUL_DISCHARGE, UNWELL -> 0.5;
        };
    return seen.present() ? chance : 1 - chance;
  }
}
