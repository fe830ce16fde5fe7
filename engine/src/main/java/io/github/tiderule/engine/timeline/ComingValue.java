package io.github.tiderule.engine.timeline;

import io.github.tiderule.rules.fact.Series;
import java.util.Arrays;

/**
 * A progesterone number as the full model foresees it from all other evidence: for every LH peak, a
 * mixture of normals on the log over speed, plateau, how the laboratories read and which of the
 * other numbers may be odd.
 *
 * <p>Its own error is taken at a guess of its level; beyond that the only thing left out is how a
 * limit or band bears on the number other than through peak and course.
 */
public final class ComingValue {

  /** Days between the peaks looked at; half of it where the edges of an LH surge matter. */
  private static final double STEP = 0.5;

  private static final double TAIL = 0.001;

  /** Parts of a mixture smaller than this are left out. */
  private static final double LEAST = 1e-5;

  /** LH peaks of less weight than this beside the likeliest are not looked at for a result. */
  private static final double SLIGHT = 1e-8;

  /** Logs of results, ng/mL, that quantiles are looked for between, either way from 0. */
  private static final double WIDEST = 7;

  private static final double CLOSE = 1e-4;

  private final Model model;
  private final Lattice peaks;
  private final double[] lag;
  private final double[] weight;
  private final Sink[] nodes;
  private final Lattice ovulations;
  private final double[] seen;
  private final double[] mass;
  private final Evidence evidence;
  private final double day;

  private ComingValue(
      Model model, Evidence evidence, double day, Lattice peaks, double[] weight, Sink[] nodes) {
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
  }

  /** The normals of one LH peak. */
  static final class Sink {

    private double[] log = new double[32];
    private double[] mean = new double[32];
    private double[] sd = new double[32];
    private int count;
    private double most = Double.NEGATIVE_INFINITY;
    private double middle;
    private double oddSd;

    void add(double logWeight, double mean, double sd) {
      if (count == log.length) {
        log = Arrays.copyOf(log, 2 * count);
        this.mean = Arrays.copyOf(this.mean, 2 * count);
        this.sd = Arrays.copyOf(this.sd, 2 * count);
      }
      log[count] = logWeight;
      this.mean[count] = mean;
      this.sd[count++] = sd;
      most = Math.max(most, logWeight);
    }

    /**
     * Log of the sum of all weights; from then on they sum to 1, and those that matter to nothing
     * are gone.
     *
     * @param spread log standard deviation an odd value has on top
     */
    private double settle(double spread) {
      double sum = 0;
      for (int i = 0; i < count; i++) {
        log[i] = Math.exp(log[i] - most);
        sum += log[i];
      }
      int kept = 0;
      double second = 0;
      for (int i = 0; i < count; i++) {
        double part = log[i] / sum;
        middle += part * mean[i];
        second += part * (mean[i] * mean[i] + sd[i] * sd[i]);
        if (part > LEAST) {
          log[kept] = part;
          mean[kept] = mean[i];
          sd[kept++] = sd[i];
        }
      }
      count = kept;
      oddSd = Math.sqrt(second - middle * middle + spread * spread);
      return most + Math.log(sum);
    }

    private double weight(int i) {
      return log[i];
    }
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
    // a value to come can make a plateau ten times likelier
    if (known.plateau() < Timeline.UNLIKELY / 10) {
      progesterone.plateauUnlikely();
    }
    int coming = all.values().size() - 1;
    Lattice peaks =
        Lattice.covering(
            peak.quantile(TAIL) - margin,
            peak.quantile(1 - TAIL) + margin,
            evidence.lhTests().isEmpty() && !withLh ? STEP : STEP / 2);
    double[] prior = model.onset.on(peaks, evidence);
    double[] side = new PeakEvidence(model, evidence).on(peaks);
    double usual = 1 - model.plateauWeight - model.noOvulationWeight;
    Sink[] nodes = new Sink[peaks.count()];
    double[] weight = new double[nodes.length];
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < nodes.length; i++) {
      nodes[i] = new Sink();
      progesterone.foresee(coming, peaks.at(i), usual, model.plateauWeight, nodes[i]);
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
    Sink sink = new Sink();
    progesterone.foresee(0, 0, 1, 0, sink);
    sink.settle(model.oddSd);
    return new ComingValue(
        model, Evidence.NOTHING, day, new Lattice(0, 1, STEP), new double[] {1}, new Sink[] {sink});
  }

  /**
   * Probability of a result below a level.
   *
   * @param ngPerMl positive, on the scale of the series
   */
  public double below(double ngPerMl) {
    return below(new double[] {ngPerMl})[0];
  }

  /**
   * Probabilities of a result below each of some levels.
   *
   * @param ngPerMl positive, on the scale of the series
   */
  public double[] below(double[] ngPerMl) {
    double most = 0;
    for (double one : mass) {
      most = Math.max(most, one);
    }
    double[] logs = Arrays.stream(ngPerMl).map(Math::log).toArray();
    double[] sum = new double[logs.length];
    double total = 0;
    for (int i = 0; i < mass.length; i++) {
      if (mass[i] > SLIGHT * most) {
        total += mass[i];
        for (int c = 0; c < logs.length; c++) {
          sum[c] += mass[i] * below(nodes[i], logs[c]);
        }
      }
    }
    for (int c = 0; c < sum.length; c++) {
      sum[c] /= total;
    }
    return sum;
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
        double until = below(nodes[i], Math.log(edges[c]));
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
    double[] density = new double[peaks.count()];
    for (int i = 0; i < density.length; i++) {
      density[i] = weight[i] == 0 ? 0 : density(nodes[i], Math.log(ngPerMl));
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

  private double below(Sink sink, double log) {
    double sum = 0;
    for (int k = 0; k < sink.count; k++) {
      sum += sink.weight(k) * Normal.quickCdf((log - sink.mean[k]) / sink.sd[k]);
    }
    double odd = Normal.quickCdf((log - sink.middle) / sink.oddSd);
    return (1 - model.oddWeight) * sum + model.oddWeight * odd;
  }

  private double density(Sink sink, double log) {
    double sum = 0;
    for (int k = 0; k < sink.count; k++) {
      sum += sink.weight(k) * Normal.density((log - sink.mean[k]) / sink.sd[k]) / sink.sd[k];
    }
    double odd = Normal.density((log - sink.middle) / sink.oddSd) / sink.oddSd;
    return (1 - model.oddWeight) * sum + model.oddWeight * odd;
  }
}
