package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Neutrophils;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What smears and ultrasound say of ovulation. */
final class OvulationEvidence {

  private static final Nodes SHIFT = Nodes.of(9, 3);
  private static final Nodes DIOESTRUS = Nodes.of(13, 3.5);

  private static final double BLUR = 0.25;
  private static final double STRAY = 0.03;

  private final Model model;
  private final Evidence evidence;

  OvulationEvidence(Model model, Evidence evidence) {
    this.model = model;
    this.evidence = evidence;
  }

  boolean isEmpty() {
    return evidence.smears().isEmpty() && evidence.scans().isEmpty();
  }

  /** Likelihood on a lattice of ovulations. */
  double[] on(Lattice lattice) {
    double[] likelihood = new double[lattice.count()];
    for (int i = 0; i < likelihood.length; i++) {
      likelihood[i] = smears(lattice.at(i)) * scans(lattice.at(i));
    }
    return likelihood;
  }

  /** Likelihood of the same observations when she does not ovulate. */
  double withoutOvulation() {
    double likelihood = 1;
    for (Evidence.SmearSeen smear : evidence.smears()) {
      if (smear.cornifiedPercent() != null) {
        likelihood *= 0.01;
      }
      if (smear.neutrophils() != null) {
        likelihood *=
            switch (smear.neutrophils()) {
              case NONE -> 0.5;
              case FEW -> 0.27;
              case MANY -> 0.23;
            };
      }
    }
    for (Evidence.Scan scan : evidence.scans()) {
      likelihood *= scan.ovulated() ? model.value("scan.error") : 1 - model.value("scan.error");
    }
    return likelihood;
  }

  private double scans(double ovulation) {
    double likelihood = 1;
    double error = model.value("scan.error");
    for (Evidence.Scan scan : evidence.scans()) {
      double past = Normal.cdf((scan.day() - ovulation) / model.value("scan.sd"));
      double seen = error + (1 - 2 * error) * past;
      likelihood *= scan.ovulated() ? seen : 1 - seen;
    }
    return likelihood;
  }

  private double smears(double ovulation) {
    List<Evidence.SmearSeen> smears = evidence.smears();
    if (smears.isEmpty()) {
      return 1;
    }
    double[][] before = new double[SHIFT.count()][smears.size()];
    double[] after = new double[smears.size()];
    for (int m = 0; m < smears.size(); m++) {
      Evidence.SmearSeen smear = smears.get(m);
      double days = smear.day() - ovulation;
      after[m] = cells(smear.cornifiedPercent(), 30, 20) * white(smear.neutrophils(), AFTER);
      for (int s = 0; s < SHIFT.count(); s++) {
        double shifted = days - SHIFT.z()[s] * model.value("smear.shift-sd");
        double risen =
            1
                / (1
                    + Math.exp(
                        -(shifted - model.value("smear.rise-centre"))
                            / model.value("smear.rise-scale")));
        before[s][m] =
            cells(smear.cornifiedPercent(), 15 + 80 * risen, model.value("smear.reading-sd"))
                * ((1 - risen) * white(smear.neutrophils(), EARLY)
                    + risen * white(smear.neutrophils(), OESTRUS));
      }
    }
    double sum = 0;
    for (int d = 0; d < DIOESTRUS.count(); d++) {
      double lag =
          model.value("smear.dioestrus-lag") + DIOESTRUS.z()[d] * model.value("smear.dioestrus-sd");
      for (int s = 0; s < SHIFT.count(); s++) {
        double product = DIOESTRUS.weight()[d] * SHIFT.weight()[s];
        for (int m = 0; m < smears.size(); m++) {
          double past = Normal.cdf((smears.get(m).day() - ovulation - lag) / BLUR);
          product *= (1 - past) * before[s][m] + past * after[m];
        }
        sum += product;
      }
    }
    return sum;
  }

  private static double cells(@Nullable Double percent, double mean, double sd) {
    if (percent == null) {
      return 1;
    }
    return (1 - STRAY) * Normal.density((percent - mean) / sd) / sd + STRAY / 100;
  }

  /** Chances of no, few and many neutrophils: early in the season, in oestrus, in dioestrus. */
  private static final double[] EARLY = {0.3, 0.4, 0.3};

  private static final double[] OESTRUS = {0.85, 0.12, 0.03};
  private static final double[] AFTER = {0.08, 0.27, 0.65};

  private static double white(@Nullable Neutrophils neutrophils, double[] chances) {
    if (neutrophils == null) {
      return 1;
    }
    return switch (neutrophils) {
      case NONE -> chances[0];
      case FEW -> chances[1];
      case MANY -> chances[2];
    };
  }
}
