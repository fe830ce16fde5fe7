package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.assay.Series;
import java.util.Arrays;
import java.util.stream.Stream;

/**
 * A progesterone number as the full model foresees it from all other evidence: for every LH peak, a
 * mixture of normals on the log over course, speed, how the laboratories read and which of the
 * other numbers may be odd.
 *
 * <p>Its own error is taken at a guess of its level; beyond that the only thing left out is how a
 * limit or band bears on the number other than through peak and course.
 */
public final class ComingValue {

  /** Days between the peaks looked at; half of it where the edges of an LH surge matter. */
  private static final double STEP = 0.5;

  private static final double TAIL = 0.001;

  /**
   * Below this share of a plateau a third of its points serves: a value to come can make it ten
   * times likelier.
   */
  private static final double UNLIKELY = 0.001;

  /** Below this share an irregular course or an early fall is taken as ordinary. */
  private static final double SELDOM = 0.05;

  /** LH peaks of less weight than this beside the likeliest are not looked at for a result. */
  private static final double SLIGHT = 1e-8;

  /** Logs of results, ng/mL, that quantiles are looked for between, either way from 0. */
  private static final double WIDEST = 7;

  private static final double CLOSE = 1e-4;

  private final Model model;
  private final Lattice peaks;
  private final double[] lag;
  private final double[] weight;
  private final Normals[] nodes;
  private final Lattice ovulations;
  private final double[] seen;
  private final double[] mass;
  private final double heaviest;
  private final Evidence evidence;
  private final double day;

  private ComingValue(
      Model model, Evidence evidence, double day, Lattice peaks, double[] weight, Normals[] nodes) {
    this.model = model;
    this.peaks = peaks;
    this.weight = weight;
    this.nodes = nodes;
    lag = new Lag(model).kernel(peaks.step());
    ovulations = new Lattice(peaks.first(), peaks.count() + lag.length - 1, peaks.step());
    seen = new OvulationEvidence(model, evidence).on(ovulations);
    this.evidence = evidence;
    this.day = day;
    mass = new double[weight.length];
    for (int i = 0; i < mass.length; i++) {
      for (int l = 0; l < lag.length; l++) {
        mass[i] += weight[i] * lag[l] * seen[i + l];
      }
    }
    heaviest = Arrays.stream(mass).max().orElse(0);
  }

  /**
   * A number of a series at some time.
   *
   * @param evidence everything else
   * @param known the estimate with it or without it
   * @param margin days about its likely peaks that are looked at too, so that a surprise finds its
   *     place
   * @param withLh whether the same blood is tested for LH
   */
  static ComingValue of(
      Model model,
      Evidence evidence,
      Series series,
      double day,
      Estimate known,
      double margin,
      boolean withLh) {
    Density peak = known.peak();
    double level = Math.exp(model.curve.logMean(day - peak.quantile(0.5)));
    Evidence all = evidence.with(new Evidence.Value("", day, level, series, false, false));
    ProgesteroneLikelihood progesterone = new ProgesteroneLikelihood(model, all);
    progesterone.thorough(true);
    if (known.plateau() < UNLIKELY) {
      progesterone.plateauUnlikely();
    }
    double[] courses = model.courseWeights();
    if (known.courses().irregular() < SELDOM) {
      courses[0] += courses[2];
      courses[2] = 0;
    }
    if (known.courses().failing() < SELDOM) {
      courses[0] += courses[3];
      courses[3] = 0;
    }
    int coming = progesterone.ids().indexOf("");
    Lattice peaks =
        Lattice.covering(
            peak.quantile(TAIL) - margin,
            peak.quantile(1 - TAIL) + margin,
            evidence.lhTests().isEmpty() && !withLh ? STEP : STEP / 2);
    double[] prior = model.onset.on(peaks, evidence);
    double[] side = new PeakEvidence(model, evidence).on(peaks);
    Normals[] nodes = Stream.generate(Normals::new).limit(peaks.count()).toArray(Normals[]::new);
    progesterone.foresee(coming, peaks, courses, nodes);
    double[] weight = new double[nodes.length];
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < nodes.length; i++) {
      weight[i] = nodes[i].settle(model.oddSd);
      most = Math.max(most, weight[i]);
    }
    double heaviest = 0;
    for (int i = 0; i < weight.length; i++) {
      weight[i] = prior[i] * side[i] * Math.exp(weight[i] - most);
      heaviest = Math.max(heaviest, weight[i]);
    }
    for (int i = 0; i < weight.length; i++) {
      weight[i] = weight[i] < SLIGHT * heaviest ? 0 : weight[i];
    }
    return new ComingValue(model, evidence, day, peaks, weight, nodes);
  }

  /** A number of a bitch of ordinary course of whom only the LH peak, at 0, is known. */
  static ComingValue afterPeak(Model model, Series series, double day) {
    double level = Math.exp(model.curve.logMean(day));
    Evidence alone =
        Evidence.NOTHING.with(new Evidence.Value("", day, level, series, false, false));
    ProgesteroneLikelihood progesterone = new ProgesteroneLikelihood(model, alone);
    Lattice here = new Lattice(0, 1, STEP);
    Normals[] sink = {new Normals()};
    progesterone.foresee(0, here, new double[] {1, 0, 0, 0}, sink);
    sink[0].settle(model.oddSd);
    return new ComingValue(model, Evidence.NOTHING, day, here, new double[] {1}, sink);
  }

  /**
   * Probability of a result below a level.
   *
   * @param ngPerMl positive, on the scale of the series
   */
  public double below(double ngPerMl) {
    double log = Math.log(ngPerMl);
    double sum = 0;
    double total = 0;
    for (int i = 0; i < mass.length; i++) {
      if (mass[i] > SLIGHT * heaviest) {
        total += mass[i];
        sum += mass[i] * nodes[i].below(log, model.oddWeight);
      }
    }
    return sum / total;
  }

  /**
   * The result below which a share lies, ng/mL on the scale of the series, to one part in ten
   * thousand; between a thousandth and a thousandfold of 1 ng/mL.
   *
   * @param share 0–1, exclusive
   */
  public double quantile(double share) {
    double low = -WIDEST;
    double high = WIDEST;
    while (high - low > CLOSE) {
      double middle = (low + high) / 2;
      if (below(Math.exp(middle)) <= share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return Math.exp((low + high) / 2);
  }

  /**
   * How likely a result between each two neighbouring edges is; the first and the last reach to
   * zero and to infinity.
   *
   * @param edges ng/mL on the scale of the series, rising, at least one
   */
  public Outlook between(double... edges) {
    return Outlook.over(peaks, lag, weight, chances(edges));
  }

  /**
   * The same where the blood is tested for LH too: every result with LH negative, then every one
   * with LH positive. At each LH peak the two tests err independently.
   *
   * @param edges ng/mL on the scale of the series, rising, at least one
   */
  public Outlook betweenWithLh(double... edges) {
    PeakEvidence tests = new PeakEvidence(model, evidence);
    double[][] value = chances(edges);
    double[][] chance = new double[2 * value.length][peaks.count()];
    for (int i = 0; i < peaks.count(); i++) {
      double positive = tests.positive(day - peaks.at(i));
      for (int c = 0; c < value.length; c++) {
        chance[c][i] = value[c][i] * (1 - positive);
        chance[value.length + c][i] = value[c][i] * positive;
      }
    }
    return Outlook.over(peaks, lag, weight, chance);
  }

  private double[][] chances(double... edges) {
    double[][] chance = new double[edges.length + 1][peaks.count()];
    for (int i = 0; i < peaks.count(); i++) {
      if (weight[i] == 0) {
        continue;
      }
      double before = 0;
      for (int c = 0; c < edges.length; c++) {
        double until = nodes[i].below(Math.log(edges[c]), model.oddWeight);
        chance[c][i] = until - before;
        before = until;
      }
      chance[edges.length][i] = 1 - before;
    }
    return chance;
  }

  /** The ovulations {@link #after} speaks of, days after the anchor. */
  public double[] ovulations() {
    double[] days = new double[ovulations.count()];
    for (int i = 0; i < days.length; i++) {
      days[i] = ovulations.at(i);
    }
    return days;
  }

  /** Probabilities of the ovulations without this number. */
  public double[] before() {
    return ovulation(new double[0]);
  }

  /**
   * Probabilities of the ovulations once this number is known.
   *
   * @param ngPerMl positive, on the scale of the series
   */
  public double[] after(double ngPerMl) {
    double log = Math.log(ngPerMl);
    double[] density = new double[peaks.count()];
    for (int i = 0; i < density.length; i++) {
      density[i] = weight[i] == 0 ? 0 : nodes[i].density(log, model.oddWeight);
    }
    return ovulation(density);
  }

  private double[] ovulation(double[] likelihood) {
    double[] sum = new double[ovulations.count()];
    for (int i = 0; i < peaks.count(); i++) {
      double part = likelihood.length == 0 ? weight[i] : weight[i] * likelihood[i];
      for (int l = 0; l < lag.length; l++) {
        sum[i + l] += part * lag[l];
      }
    }
    double total = 0;
    for (int j = 0; j < sum.length; j++) {
      sum[j] *= seen[j];
      total += sum[j];
    }
    for (int j = 0; j < sum.length; j++) {
      sum[j] /= total;
    }
    return sum;
  }
}
