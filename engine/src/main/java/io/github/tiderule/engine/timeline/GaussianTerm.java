package io.github.tiderule.engine.timeline;

import io.github.tiderule.engine.patience.Patience;
import java.util.Arrays;
import java.util.List;

/**
 * The likelihood of all progesterone results for one course of the level: its log mean at each
 * result and how far a bitch's own baseline and rise move it there.
 *
 * <p>Numbers: normal with the errors' covariance plus two rank-one parts (baseline and rise),
 * solved by the Woodbury identity. One or two of them may be odd: their variance is inflated, each
 * such case follows from their part of the inverse covariance. Limits and bands: probability of
 * their interval given the numbers. Not safe for use by several threads.
 */
final class GaussianTerm {

  /** An odd value whose share is below this is passed over when limits are conditioned on. */
  private static final double MATTERS = 0.01;

  /**
   * Where all numbers together lie no further off than this, in squared standard deviations, two
   * odd ones explain them no better than none: to a part in a thousand.
   */
  private static final double FITTING = 3;

  /**
   * Log of how much likelier an odd value may be than a right one before it counts as certain: far
   * from where a double overflows, and far beyond where anything else has a part.
   */
  private static final double CERTAIN = 300;

  /**
   * Of more numbers than this, every two are tried for being odd together only where one of them is
   * among the {@link #STRONGEST} that look oddest alone; other two count as if each were odd on its
   * own. The package page says what that may cost.
   */
  static final int FEW = 20;

  private static final int STRONGEST = 8;

  /** Logs of ratios closer to 0 than this are raised by a cubic. */
  private static final double SMALL = 0.2;

  /** A ratio that changes by less than this share of it moves no pair it is in. */
  private static final double MOVED = 0.1;

  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private final double oddWeight;
  private final ProgesteroneData data;
  private final int n;
  private final int k;

  private final double[] logMean;
  private final double[] baseline;
  private final double[] rise;

  private final double[] residual;
  private final double[] u;
  private final double[] v;
  private final double[] alpha;
  private final double[] pu;
  private final double[] pv;
  private final double[][] inverse;
  private final double[] oddShare;
  private final double[] logWithout;
  private final double[] withoutFactor;
  private final double[] others;
  private final double[] othersPrecision;
  private final double[] limitsWithout;
  private final double[] limitsBut;
  private final double[] limitsFreed;
  private final IntervalProbability intervals;
  private final boolean many;
  private final int[] strongest;
  private final int[] rank;
  private final double[] ratios;
  private final double[] ratiosBut;
  private final double[] scaled;
  private final double[][] together;

  private double logNumbers;
  private double discrepancy;
  private double sum;
  private double limitsGood = 1;
  private double othersOdd;
  private boolean pairs;
  private boolean thorough = true;
  private final double allGood;
  private final double oneOdd;
  private final double twoOdd;
  private final double oddVariance;

  GaussianTerm(Model model, ProgesteroneData data) {
    this(model, data, FEW);
  }

  /**
   * @param few of so many numbers every two are tried for being odd together
   */
  GaussianTerm(Model model, ProgesteroneData data, int few) {
    oddWeight = model.oddWeight;
    this.data = data;
    n = data.values();
    k = data.count() - n;
    logMean = new double[n + k];
    baseline = new double[n + k];
    rise = new double[n + k];
    residual = new double[n];
    u = new double[n + k];
    v = new double[n + k];
    alpha = new double[n];
    pu = new double[n];
    pv = new double[n];
    inverse = new double[n][n];
    oddShare = new double[n + k];
    others = new double[n];
    othersPrecision = new double[n];
    limitsWithout = new double[k];
    limitsBut = new double[k];
    limitsFreed = new double[k];
    logWithout = new double[n + k];
    withoutFactor = new double[n + k];
    intervals = new IntervalProbability(n, k, oddWeight);
    many = n > few;
    strongest = new int[many ? Math.min(STRONGEST, n) : 0];
    rank = new int[n];
    ratios = new double[n];
    ratiosBut = new double[n];
    scaled = new double[n];
    together = new double[strongest.length][n];
    allGood = Math.pow(1 - oddWeight, n);
    oneOdd = allGood * oddWeight / (1 - oddWeight);
    twoOdd = oneOdd * oddWeight / (1 - oddWeight);
    oddVariance = model.oddSd * model.oddSd;
  }

  /** Says whether the fit is worked out, too. */
  void thorough(boolean thorough) {
    this.thorough = thorough;
  }

  /** Says where the course passes result i, and how far baseline and rise move it there. */
  void place(int i, double logMean, double baseline, double rise) {
    this.logMean[i] = logMean;
    this.baseline[i] = baseline;
    this.rise[i] = rise;
  }

  /**
   * Adds the likelihood of the placed course, for every way the laboratories may read, to several
   * sums.
   *
   * @param logWeights one for each sum; those of no weight are left alone
   */
  void addTo(Mixture[] into, double[] logWeights, List<ProgesteroneData.Reading> readings) {
    Patience.mustLast();
    for (ProgesteroneData.Reading reading : readings) {
      prepare(reading);
      double log = reading.logWeight() + combine();
      for (int m = 0; m < into.length; m++) {
        if (logWeights[m] > Double.NEGATIVE_INFINITY) {
          boolean seen = thorough && into[m].wouldSee(logWeights[m] + log);
          double tail = seen ? ChiSquare.above(n, discrepancy) : 0;
          into[m].add(logWeights[m] + log, oddShare, tail);
          double weight = logWeights[m] + reading.logWeight();
          for (int i = 0; i < n + k; i++) {
            into[m].addWithout(i, weight + logWithout[i], withoutFactor[i]);
          }
        }
      }
    }
  }

  /**
   * Foresees number i from the others on the placed course: for every way the laboratories may
   * read, and for every other number or two that may be odd, a normal distribution.
   */
  void foresee(int i, double logWeight, Normals into, List<ProgesteroneData.Reading> readings) {
    Patience.mustLast();
    for (ProgesteroneData.Reading reading : readings) {
      prepare(reading);
      if (many) {
        for (int j = 0; j < n; j++) {
          without(i, j, inverse[i][i]);
          ratios[j] = j == i ? 0 : oddRatio(others[j], othersPrecision[j]);
        }
        findStrongest();
      }
      leaveOut(i, true);
      double log =
          logWithout[i]
              + Math.log(Math.max(withoutFactor[i], Double.MIN_NORMAL))
              + logWeight
              + reading.logWeight();
      double own = inverse[i][i];
      double sum = othersOdd;
      double rest = 1;
      for (int j = 0; j < n; j++) {
        double share = j == i ? 0 : oneOdd / allGood * oddRatio(others[j], othersPrecision[j]);
        if (share <= MATTERS * sum) {
          rest += share;
        } else {
          double freed = oddVariance / (1 + oddVariance * inverse[j][j]);
          double precision = own - freed * inverse[i][j] * inverse[i][j];
          double miss = (alpha[i] - freed * inverse[i][j] * alpha[j]) / precision;
          into.add(log + Math.log(share / sum), data.log(i) - miss, 1 / Math.sqrt(precision));
        }
        for (int l = 0; pairs && l < j; l++) {
          boolean apart = many && rank[j] < 0 && rank[l] < 0;
          double ratio =
              apart ? ratios[j] * ratios[l] : j == i || l == i ? 0 : oddRatioBut(i, j, l);
          double both = twoOdd / allGood * ratio;
          if (apart || both <= MATTERS * sum) {
            rest += both;
          } else {
            foreseeFreeing(i, j, l, log + Math.log(both / sum), into);
          }
        }
      }
      into.add(log + Math.log(rest / sum), data.log(i) - alpha[i] / own, 1 / Math.sqrt(own));
    }
  }

  /** Number i foreseen from those but j and l, which are odd. */
  private void foreseeFreeing(int i, int j, int l, double logWeight, Normals into) {
    double one = inverse[j][j] + 1 / oddVariance;
    double other = inverse[l][l] + 1 / oddVariance;
    double both = inverse[j][l];
    double size = one * other - both * both;
    double byJ = (other * inverse[i][j] - both * inverse[i][l]) / size;
    double byL = (one * inverse[i][l] - both * inverse[i][j]) / size;
    double precision = inverse[i][i] - byJ * inverse[i][j] - byL * inverse[i][l];
    double miss = (alpha[i] - byJ * alpha[j] - byL * alpha[l]) / precision;
    into.add(logWeight, data.log(i) - miss, 1 / Math.sqrt(precision));
  }

  /** How much likelier the other numbers are if j and l of them are odd, i left out. */
  private double oddRatioBut(int i, int j, int l) {
    return oddRatio(
        others[j],
        others[l],
        othersPrecision[j],
        othersPrecision[l],
        inverse[j][l] - inverse[i][j] * inverse[i][l] / inverse[i][i]);
  }

  /** Leaves the log density of the numbers with none odd, and limits made ready for them. */
  private void prepare(ProgesteroneData.Reading reading) {
    for (int i = 0; i < n + k; i++) {
      Assay assay = reading.assay()[i];
      double expected = reading.shift()[i] + logMean[i];
      u[i] = baseline[i];
      v[i] = rise[i];
      if (!assay.proportional()) {
        double elasticity = assay.elasticity(logMean[i]);
        u[i] *= elasticity;
        v[i] *= elasticity;
        expected = reading.shift()[i] + assay.logReading(logMean[i]);
      }
      if (i < n) {
        residual[i] = data.log(i) - expected;
      } else {
        intervals.expect(i - n, data.logLow(i - n) - expected, data.logHigh(i - n) - expected);
      }
    }
    logNumbers = n == 0 ? 0 : solve(reading);
    if (k > 0) {
      intervals.given(reading, inverse, alpha, u, v);
      limitsGood = intervals.all();
    }
  }

  /**
   * Log density with no odd value; leaves the inverse covariance and its product with the residual.
   */
  private double solve(ProgesteroneData.Reading reading) {
    double[][] precision = reading.precision();
    double a = 1;
    double b = 0;
    double d = 1;
    double gu = 0;
    double gv = 0;
    double quadratic = 0;
    for (int i = 0; i < n; i++) {
      double sumResidual = 0;
      double sumU = 0;
      double sumV = 0;
      double[] row = precision[i];
      for (int j = 0; j < n; j++) {
        sumResidual += row[j] * residual[j];
        sumU += row[j] * u[j];
        sumV += row[j] * v[j];
      }
      alpha[i] = sumResidual;
      pu[i] = sumU;
      pv[i] = sumV;
      a += u[i] * sumU;
      b += u[i] * sumV;
      d += v[i] * sumV;
      gu += u[i] * sumResidual;
      gv += v[i] * sumResidual;
      quadratic += residual[i] * sumResidual;
    }
    double determinant = a * d - b * b;
    double hu = (d * gu - b * gv) / determinant;
    double hv = (a * gv - b * gu) / determinant;
    quadratic -= gu * hu + gv * hv;
    discrepancy = quadratic;
    for (int i = 0; i < n; i++) {
      alpha[i] -= pu[i] * hu + pv[i] * hv;
      double ru = (d * pu[i] - b * pv[i]) / determinant;
      double rv = (a * pv[i] - b * pu[i]) / determinant;
      for (int j = 0; j < n; j++) {
        inverse[i][j] = precision[i][j] - ru * pu[j] - rv * pv[j];
      }
    }
    return -0.5 * (quadratic + reading.logDeterminant() + Math.log(determinant))
        - n * Normal.LOG_ROOT_TWO_PI;
  }

  /**
   * How much likelier the numbers are if value j is odd, from its place in the inverse covariance:
   * the ratio of its leave-one-out density with an inflated variance to that without.
   */
  private double oddRatio(double alphaJ, double precisionJ) {
    double growth = 1 + oddVariance * precisionJ;
    double log = 0.5 * alphaJ * alphaJ * oddVariance / growth;
    return Math.exp(Math.min(log, CERTAIN)) / Math.sqrt(growth);
  }

  /** The same if two values are, with their place in the inverse covariance. */
  private double oddRatio(
      double alphaJ, double alphaL, double precisionJ, double precisionL, double both) {
    double growthJ = 1 + oddVariance * precisionJ;
    double growthL = 1 + oddVariance * precisionL;
    double shared = oddVariance * both;
    double growth = growthJ * growthL - shared * shared;
    double log =
        0.5
            * oddVariance
            * (alphaJ * alphaJ * growthL - 2 * shared * alphaJ * alphaL + alphaL * alphaL * growthJ)
            / growth;
    return Math.exp(Math.min(log, CERTAIN)) / Math.sqrt(growth);
  }

  /** Log of the likelihood of all results; leaves how odd each looks, and what is without it. */
  private double combine() {
    Arrays.fill(oddShare, 0);
    sum = allGood * limitsGood;
    intervals.allButEach(limitsBut);
    for (int q = 0; q < k; q++) {
      limitsWithout[q] = allGood * limitsBut[q];
    }
    for (int j = 0; j < n; j++) {
      ratios[j] = oddRatio(alpha[j], inverse[j][j]);
      scaled[j] = oddVariance / (1 + oddVariance * inverse[j][j]);
      oddShare[j] = withOdd(oneOdd * ratios[j], j, -1);
    }
    if (many) {
      combineMany();
    } else if (discrepancy > FITTING) {
      for (int j = 1; j < n; j++) {
        for (int l = 0; l < j; l++) {
          double ratio = oddRatio(alpha[j], alpha[l], inverse[j][j], inverse[l][l], inverse[j][l]);
          double part = withOdd(twoOdd * ratio, j, l);
          oddShare[j] += part;
          oddShare[l] += part;
        }
      }
    }
    for (int i = 0; i < n; i++) {
      oddShare[i] /= sum;
      leaveOut(i, many && rank[i] >= 0);
    }
    for (int q = 0; q < k; q++) {
      logWithout[n + q] = logNumbers;
      withoutFactor[n + q] = limitsWithout[q];
      oddShare[n + q] = Math.min(1, oddWeight / 2 * limitsWithout[q] / sum);
    }
    return logNumbers + Math.log(sum);
  }

  /** Adds every two of many numbers. */
  private void combineMany() {
    findStrongest();
    double all = 0;
    for (int j = 0; j < n; j++) {
      all += rank[j] < 0 ? ratios[j] : 0;
    }
    double apart = 0;
    for (int j = 0; j < n; j++) {
      if (rank[j] < 0) {
        double part = twoOdd * ratios[j] * (all - ratios[j]);
        oddShare[j] += part * limitsGood;
        apart += part / 2;
      }
    }
    sum += apart * limitsGood;
    for (int q = 0; q < k; q++) {
      limitsWithout[q] += apart * limitsBut[q];
    }
    for (int s = 0; s < strongest.length; s++) {
      int j = strongest[s];
      for (int l = 0; l < n; l++) {
        together[s][l] = 0;
        if (isFirstOf(s, l)) {
          double ratio = oddRatio(alpha[j], alpha[l], inverse[j][j], inverse[l][l], inverse[j][l]);
          together[s][l] = ratio / Math.max(ratios[j] * ratios[l], Double.MIN_NORMAL);
          double part = withOdd(twoOdd * ratio, j, l);
          oddShare[j] += part;
          oddShare[l] += part;
        }
      }
    }
  }

  /** Whether number l is another than the s-th of the strongest, and no stronger. */
  private boolean isFirstOf(int s, int l) {
    return rank[l] < 0 || rank[l] > s;
  }

  private void findStrongest() {
    Arrays.fill(rank, -1);
    for (int s = 0; s < strongest.length; s++) {
      int most = -1;
      for (int j = 0; j < n; j++) {
        if (rank[j] < 0 && (most < 0 || ratios[j] > ratios[most])) {
          most = j;
        }
      }
      strongest[s] = most;
      rank[most] = s;
    }
  }

  /** Adds what the numbers weigh with one or two odd, limits counted; returns it. */
  private double withOdd(double part, int one, int other) {
    if (k == 0) {
      sum += part;
      return part;
    }
    double limits = limitsGood;
    // an unlikely oddity changes what the limits say by next to nothing
    boolean matters = part > MATTERS * allGood * limitsGood;
    if (matters) {
      free(one, other);
      matters = intervals.moved();
      limits = matters ? intervals.all() : limitsGood;
      if (matters) {
        intervals.allButEach(limitsFreed);
      }
    }
    double[] but = matters ? limitsFreed : limitsBut;
    for (int q = 0; q < k; q++) {
      limitsWithout[q] += part * but[q];
    }
    sum += part * limits;
    return part * limits;
  }

  private void free(int one, int other) {
    double first = inverse[one][one] + 1 / oddVariance;
    if (other < 0) {
      intervals.free(one, -1, 1 / first, 0, 0);
      return;
    }
    double second = inverse[other][other] + 1 / oddVariance;
    double both = inverse[one][other];
    double size = first * second - both * both;
    intervals.free(one, other, second / size, -both / size, first / size);
  }

  /**
   * The likelihood of all other results, without number i.
   *
   * @param exact whether they are reckoned anew where they are many, not from what they are with it
   */
  private void leaveOut(int i, boolean exact) {
    double own = inverse[i][i];
    othersOdd = many ? oddAmongMany(i, own, exact) : oddAmongFew(i, own);
    double rest = 1;
    if (k > 0) {
      intervals.free(i, -1, 1 / own, 0, 0);
      rest = intervals.moved() ? intervals.all() : limitsGood;
    }
    logWithout[i] = logNumbers + 0.5 * alpha[i] * alpha[i] / own;
    withoutFactor[i] = allGood / (1 - oddWeight) * othersOdd * rest * ROOT_TWO_PI / Math.sqrt(own);
  }

  /** What the others without number i weigh with up to two odd, beside none. */
  private double oddAmongFew(int i, double own) {
    double odd = 0;
    for (int j = 0; j < n; j++) {
      if (j != i) {
        without(i, j, own);
        odd += oddRatio(others[j], othersPrecision[j]);
      }
    }
    pairs = discrepancy - alpha[i] * alpha[i] / own > FITTING;
    double two = 0;
    for (int j = 1; pairs && j < n; j++) {
      for (int l = 0; l < j; l++) {
        if (j != i && l != i) {
          two += oddRatioBut(i, j, l);
        }
      }
    }
    return 1 + odd * oneOdd / allGood + two * twoOdd / allGood;
  }

  /** Number j as the others but i leave it. */
  private void without(int i, int j, double own) {
    double share = inverse[i][j] / own;
    others[j] = alpha[j] - share * alpha[i];
    othersPrecision[j] = inverse[j][j] - share * inverse[i][j];
  }

  private double oddAmongMany(int i, double own, boolean exact) {
    pairs = true;
    double odd = 0;
    double weak = 0;
    double squares = 0;
    for (int j = 0; j < n; j++) {
      double ratio = 0;
      if (j != i) {
        without(i, j, own);
        ratio = exact ? oddRatio(others[j], othersPrecision[j]) : ratioNear(j);
      }
      ratiosBut[j] = ratio;
      odd += ratio;
      if (rank[j] < 0) {
        weak += ratio;
        squares += ratio * ratio;
      }
    }
    double two = (weak * weak - squares) / 2;
    boolean anew = exact || movesWhatLooksOdd();
    for (int s = 0; s < strongest.length; s++) {
      int j = strongest[s];
      if (j == i) {
        continue;
      }
      double with = 0;
      double[] row = together[s];
      if (anew) {
        for (int l = 0; l < n; l++) {
          with += l != i && isFirstOf(s, l) ? oddRatioBut(i, j, l) : 0;
        }
        two += with;
      } else {
        for (int l = 0; l < n; l++) {
          with += row[l] * ratiosBut[l];
        }
        two += ratiosBut[j] * with;
      }
    }
    return 1 + odd * oneOdd / allGood + two * twoOdd / allGood;
  }

  /** Whether what is left out bears on a number that may well be odd. */
  private boolean movesWhatLooksOdd() {
    for (int j : strongest) {
      double before = ratios[j];
      double after = ratiosBut[j];
      if (Math.max(before, after) * oneOdd > MATTERS * allGood
          && Math.abs(after - before) > MOVED * before) {
        return true;
      }
    }
    return false;
  }

  /** How much likelier the others are if j is odd, from how likely it was with all. */
  private double ratioNear(int j) {
    double freed = scaled[j];
    double firmer = freed * (othersPrecision[j] - inverse[j][j]);
    double growth = firmer * (1 - firmer / 2 * (1 - firmer / 1.5));
    double change =
        0.5 * (freed * (others[j] * others[j] / (1 + firmer) - alpha[j] * alpha[j]) - growth);
    return Math.abs(change) < SMALL && Math.abs(firmer) < SMALL
        ? ratios[j] * (1 + change * (1 + change / 2 * (1 + change / 3)))
        : oddRatio(others[j], othersPrecision[j]);
  }
}
