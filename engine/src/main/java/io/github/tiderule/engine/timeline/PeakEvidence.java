package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.observation.Folds;
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
  private final double lhBurstFirst;
  private final double lhBurstLast;
  private final double lhBurstEdge;
  private final double lhRiseEdge;
  private final double lhFallEdge;
  private final double standEdge;
  private final double standEnd;
  private final double standEndSd;
  private final double standsBefore;
  private final double standsDuring;
  private final double refusesBefore;
  private final double refusesDuring;
  private final double flagsBefore;
  private final double flagsDuring;
  private final double vulvaBefore;
  private final double vulvaAfter;
  private final double foldsMisread;
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
    lhBurstFirst = model.value("lh.burst-first");
    lhBurstLast = model.value("lh.burst-last");
    lhBurstEdge = model.value("lh.burst-edge");
    lhRiseEdge = model.value("lh.rise-edge");
    lhFallEdge = model.value("lh.fall-edge");
    standEdge = model.value("signs.stand-edge");
    standEnd = model.value("signs.stand-end");
    standEndSd = model.value("signs.stand-end-sd");
    standsBefore = model.value("signs.stands-before");
    standsDuring = model.value("signs.stands-during");
    refusesBefore = model.value("signs.refuses-before");
    refusesDuring = model.value("signs.refuses-during");
    flagsBefore = model.value("signs.flags-before");
    flagsDuring = model.value("signs.flags-during");
    vulvaBefore = model.value("signs.vulva-before");
    vulvaAfter = model.value("signs.vulva-after");
    foldsMisread = model.value("folds.misread");
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
        Normal.quickCdf((days + lhSurgeBefore) / lhRiseEdge)
            - Normal.quickCdf((days - lhSurgeAfter) / lhFallEdge);
    double early =
        Normal.quickCdf((days + lhBurstFirst) / lhBurstEdge)
            - Normal.quickCdf((days + lhBurstLast) / lhBurstEdge);
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
      likelihood *= (1 - foldsMisread) * chance + foldsMisread / Folds.values().length;
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
    double accepts =
        Normal.quickCdf((days - first) / standEdge)
            * (1 - Normal.quickCdf((days - standEnd) / standEndSd));
    double chance =
        switch (seen.sign()) {
          case STANDS -> between(standsBefore, standsDuring, accepts);
          case REFUSES -> between(refusesBefore, refusesDuring, accepts);
          case FLAGS -> between(flagsBefore, flagsDuring, accepts);
          case VULVA_SOFTENS ->
              between(
                  vulvaBefore, vulvaAfter, Normal.quickCdf((days - signsVulvaMean) / signsVulvaSd));
          // the others date nothing
          default -> 0.5;
        };
    return seen.present() ? chance : 1 - chance;
  }

  private static double between(double before, double during, double share) {
    return before + (during - before) * share;
  }
}
