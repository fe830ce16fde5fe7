package io.github.tiderule.engine.timeline;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** What smears and ultrasound say of ovulation. */
final class OvulationEvidence {

  private static final Nodes SHIFT = Nodes.of(13, 3);
  private static final Nodes DIOESTRUS = Nodes.of(13, 3.5);

  private final double scanError;
  private final double scanSd;
  private final double smearShiftSd;
  private final double smearRiseCentre;
  private final double smearRiseScale;
  private final double smearReadingSd;
  private final double smearDioestrusLag;
  private final double smearDioestrusSd;
  private final double earlyCornified;
  private final double fullCornified;
  private final double dioestrusCornified;
  private final double dioestrusCornifiedSd;
  private final double dioestrusEdge;
  private final double stray;
  private final Model model;
  private final Evidence evidence;

  OvulationEvidence(Model model, Evidence evidence) {
    scanError = model.value("scan.error");
    scanSd = model.value("scan.sd");
    smearShiftSd = model.value("smear.shift-sd");
    smearRiseCentre = model.value("smear.rise-centre");
    smearRiseScale = model.value("smear.rise-scale");
    smearReadingSd = model.value("smear.reading-sd");
    smearDioestrusLag = model.value("smear.dioestrus-lag");
    smearDioestrusSd = model.value("smear.dioestrus-sd");
    earlyCornified = model.value("smear.early-cornified");
    fullCornified = model.value("smear.full-cornified");
    dioestrusCornified = model.value("smear.dioestrus-cornified");
    dioestrusCornifiedSd = model.value("smear.dioestrus-cornified-sd");
    dioestrusEdge = model.value("smear.dioestrus-edge");
    stray = model.value("smear.stray");
    this.model = model;
    this.evidence = evidence;
  }

  /** Likelihood on a lattice of ovulations. */
  double[] on(Lattice lattice) {
    double[] likelihood = new double[lattice.count()];
    for (int i = 0; i < likelihood.length; i++) {
      likelihood[i] = smears(lattice.at(i)) * scans(lattice.at(i));
    }
    return likelihood;
  }

  /** Likelihood of ultrasound alone. */
  double[] scansOn(Lattice lattice) {
    double[] likelihood = new double[lattice.count()];
    for (int i = 0; i < likelihood.length; i++) {
      likelihood[i] = scans(lattice.at(i));
    }
    return likelihood;
  }

  /**
   * How likely each of some smears to come is beside the others, by ovulation, given the smears
   * already seen.
   *
   * @param coming smears of one time
   */
  double[][] coming(Lattice lattice, List<Evidence.SmearSeen> coming) {
    double[][] chance = new double[coming.size()][lattice.count()];
    double day = coming.get(0).day();
    for (int i = 0; i < lattice.count(); i++) {
      double ovulation = lattice.at(i);
      double[][] joint = joint(ovulation);
      double[] stays = new double[SHIFT.count()];
      double turned = 0;
      for (int d = 0; d < DIOESTRUS.count(); d++) {
        double past = past(day - ovulation, d);
        for (int s = 0; s < stays.length; s++) {
          stays[s] += joint[d][s] * (1 - past);
          turned += joint[d][s] * past;
        }
      }
      double sum = 0;
      for (int r = 0; r < chance.length; r++) {
        Evidence.SmearSeen smear = coming.get(r);
        chance[r][i] = turned * after(smear);
        for (int s = 0; s < stays.length; s++) {
          chance[r][i] += stays[s] * before(smear, day - ovulation, s);
        }
        sum += chance[r][i];
      }
      for (double[] one : chance) {
        one[i] = sum > 0 ? one[i] / sum : 1.0 / chance.length;
      }
    }
    return chance;
  }

  /**
   * Where dioestrus begins, when ovulation is known to lie as a density says after these smears.
   */
  Turning turning(Density ovulation) {
    int lags = DIOESTRUS.count();
    double[] at = new double[ovulation.size() * lags];
    double[] weight = new double[at.length];
    double total = 0;
    for (int i = 0; i < ovulation.size(); i++) {
      double[][] joint = joint(ovulation.at(i));
      double[] byLag = new double[lags];
      double sum = 0;
      for (int d = 0; d < lags; d++) {
        for (double one : joint[d]) {
          byLag[d] += one;
        }
        sum += byLag[d];
      }
      for (int d = 0; d < lags; d++) {
        int place = i * lags + d;
        at[place] = ovulation.at(i) + smearDioestrusLag + DIOESTRUS.z()[d] * smearDioestrusSd;
        weight[place] = sum > 0 ? ovulation.value(i) * byLag[d] / sum : 0;
        total += weight[place];
      }
    }
    for (int p = 0; p < weight.length; p++) {
      weight[p] /= total;
    }
    return new Turning(at, weight);
  }

  /** Likelihood of ultrasound when she does not ovulate; smears tell when, and never whether. */
  double withoutOvulation() {
    double likelihood = 1;
    for (Evidence.Scan scan : evidence.scans()) {
      likelihood *= scan.ovulated() ? scanError : 1 - scanError;
    }
    return likelihood;
  }

  private double scans(double ovulation) {
    double likelihood = 1;
    double error = scanError;
    for (Evidence.Scan scan : evidence.scans()) {
      double past = Normal.quickCdf((scan.day() - ovulation) / scanSd);
      double seen = error + (1 - 2 * error) * past;
      likelihood *= scan.ovulated() ? seen : 1 - seen;
    }
    return likelihood;
  }

  private double smears(double ovulation) {
    if (evidence.smears().isEmpty()) {
      return 1;
    }
    double sum = 0;
    for (double[] row : joint(ovulation)) {
      for (double product : row) {
        sum += product;
      }
    }
    return sum;
  }

  /** Likelihood of all smears by her own lag to dioestrus and her own shift, with their weights. */
  private double[][] joint(double ovulation) {
    List<Evidence.SmearSeen> smears = evidence.smears();
    double[][] before = new double[SHIFT.count()][smears.size()];
    double[] after = new double[smears.size()];
    for (int m = 0; m < smears.size(); m++) {
      Evidence.SmearSeen smear = smears.get(m);
      after[m] = after(smear);
      for (int s = 0; s < SHIFT.count(); s++) {
        before[s][m] = before(smear, smear.day() - ovulation, s);
      }
    }
    double[][] joint = new double[DIOESTRUS.count()][SHIFT.count()];
    double[] past = new double[smears.size()];
    for (int d = 0; d < DIOESTRUS.count(); d++) {
      for (int m = 0; m < past.length; m++) {
        past[m] = past(smears.get(m).day() - ovulation, d);
      }
      for (int s = 0; s < SHIFT.count(); s++) {
        double product = DIOESTRUS.weight()[d] * SHIFT.weight()[s];
        for (int m = 0; m < past.length; m++) {
          product *= (1 - past[m]) * before[s][m] + past[m] * after[m];
        }
        joint[d][s] = product;
      }
    }
    return joint;
  }

  /** Probability that dioestrus has begun some days after ovulation, for one of her lags. */
  private double past(double days, int d) {
    double lag = smearDioestrusLag + DIOESTRUS.z()[d] * smearDioestrusSd;
    return Normal.quickCdf((days - lag) / dioestrusEdge);
  }

  private double after(Evidence.SmearSeen smear) {
    return cells(smear.cornifiedPercent(), dioestrusCornified, dioestrusCornifiedSd)
        * model.dioestrus.of(smear.neutrophils());
  }

  private double before(Evidence.SmearSeen smear, double days, int s) {
    double shifted = days - SHIFT.z()[s] * smearShiftSd;
    double risen = 1 / (1 + Math.exp(-(shifted - smearRiseCentre) / smearRiseScale));
    return cells(
            smear.cornifiedPercent(),
            earlyCornified + (fullCornified - earlyCornified) * risen,
            smearReadingSd)
        * ((1 - risen) * model.early.of(smear.neutrophils())
            + risen * model.oestrus.of(smear.neutrophils()));
  }

  private double cells(@Nullable Double percent, double mean, double sd) {
    if (percent == null) {
      return 1;
    }
    return (1 - stray) * Normal.density((percent - mean) / sd) / sd + stray / 100;
  }
}
