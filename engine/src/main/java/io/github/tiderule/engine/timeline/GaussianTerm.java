package io.github.tiderule.engine.timeline;

/**
 * The likelihood of all progesterone results for one course of the level: its log mean at each
 * result and how far a bitch's own baseline and rise move it there.
 *
 * <p>Numbers: normal with the errors' covariance plus two rank-one parts (baseline and rise),
 * solved by the Woodbury identity. One of them may be odd: its variance is inflated, each such case
 * follows from the leave-one-out mean and variance that the inverse covariance holds. Limits and
 * bands: probability of their interval given the numbers. Not safe for use by several threads.
 */
final class GaussianTerm {

  /** An odd value whose share is below this is passed over when limits are conditioned on. */
  private static final double MATTERS = 0.02;

  /**
   * Log of how much likelier an odd value may be than a right one before it counts as certain: far
   * from where a double overflows, and far beyond where anything else has a part.
   */
  private static final double CERTAIN = 300;

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
  private final IntervalProbability intervals;

  private double logNumbers;
  private double discrepancy;
  private double determinant;
  private double shareU;
  private double shareUv;
  private double shareV;
  private final double allGood;
  private final double oneOdd;
  private final double oddVariance;

  GaussianTerm(Model model, ProgesteroneData data) {
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
    oddShare = new double[n];
    logWithout = new double[n + k];
    withoutFactor = new double[n + k];
    intervals = new IntervalProbability(n, k, oddWeight);
    allGood = Math.pow(1 - oddWeight, n);
    oneOdd = allGood * oddWeight / (1 - oddWeight);
    oddVariance = model.oddSd * model.oddSd;
  }

  /** Says where the course passes result i, and how far baseline and rise move it there. */
  void place(int i, double logMean, double baseline, double rise) {
    this.logMean[i] = logMean;
    this.baseline[i] = baseline;
    this.rise[i] = rise;
  }

  /** Adds the likelihood of the placed course, for every way the laboratories may read. */
  void addTo(Mixture mixture, double logWeight) {
    for (ProgesteroneData.Reading reading : data.readings()) {
      double weight = logWeight + reading.logWeight();
      double log = evaluate(reading);
      mixture.add(weight + log, oddShare, ChiSquare.above(n, discrepancy));
      for (int i = 0; i < n + k; i++) {
        mixture.addWithout(i, weight + logWithout[i], withoutFactor[i]);
      }
    }
  }

  /**
   * Foresees number i from the others on the placed course: for every way the laboratories may
   * read, and for every other number that may be the odd one out, a normal distribution.
   */
  void foresee(int i, double logWeight, Normals into) {
    for (ProgesteroneData.Reading reading : data.readings()) {
      prepare(reading);
      if (k == 0) {
        fillInverse(reading);
      }
      leaveOut(i, k == 0 ? 1 : intervals.all());
      double log =
          logWithout[i]
              + Math.log(Math.max(withoutFactor[i], Double.MIN_NORMAL))
              + logWeight
              + reading.logWeight();
      double own = inverse[i][i];
      double[] row = inverse[i];
      double sum = 1;
      for (int j = 0; j < n; j++) {
        oddShare[j] = j == i ? 0 : oneOdd / allGood * oddRatioBut(i, j);
        sum += oddShare[j];
      }
      double rest = 1;
      for (int j = 0; j < n; j++) {
        double share = oddShare[j] / sum;
        if (share <= MATTERS) {
          rest += oddShare[j];
        } else {
          double freed = oddVariance / (1 + oddVariance * inverse[j][j]);
          double precision = own - freed * row[j] * row[j];
          double miss = (alpha[i] - freed * row[j] * alpha[j]) / precision;
          into.add(log + Math.log(share), data.log(i) - miss, 1 / Math.sqrt(precision));
        }
      }
      into.add(log + Math.log(rest / sum), data.log(i) - alpha[i] / own, 1 / Math.sqrt(own));
    }
  }

  /** How much likelier the other numbers are if j of them is odd, i left out. */
  private double oddRatioBut(int i, int j) {
    double share = inverse[i][j] / inverse[i][i];
    return oddRatio(alpha[j] - share * alpha[i], inverse[j][j] - share * inverse[i][j]);
  }

  private double evaluate(ProgesteroneData.Reading reading) {
    prepare(reading);
    return combine(reading);
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
      fillInverse(reading);
      intervals.given(reading, inverse, alpha, u, v);
    }
  }

  /**
   * Log density with no odd value; leaves the diagonal of the inverse covariance and the product of
   * that inverse with the residual.
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
    determinant = a * d - b * b;
    shareU = a;
    shareUv = b;
    shareV = d;
    double hu = (d * gu - b * gv) / determinant;
    double hv = (a * gv - b * gu) / determinant;
    quadratic -= gu * hu + gv * hv;
    discrepancy = quadratic;
    for (int i = 0; i < n; i++) {
      alpha[i] -= pu[i] * hu + pv[i] * hv;
      double lost = d * pu[i] * pu[i] - 2 * b * pu[i] * pv[i] + a * pv[i] * pv[i];
      inverse[i][i] = precision[i][i] - lost / determinant;
    }
    return -0.5 * (quadratic + reading.logDeterminant() + Math.log(determinant))
        - n * Normal.LOG_ROOT_TWO_PI;
  }

  /** Completes the inverse covariance, of which {@link #solve} leaves the diagonal. */
  private void fillInverse(ProgesteroneData.Reading reading) {
    for (int i = 0; i < n; i++) {
      double ru = (shareV * pu[i] - shareUv * pv[i]) / determinant;
      double rv = (shareU * pv[i] - shareUv * pu[i]) / determinant;
      for (int j = 0; j < n; j++) {
        inverse[i][j] = reading.precision()[i][j] - ru * pu[j] - rv * pv[j];
      }
    }
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

  private double combine(ProgesteroneData.Reading reading) {
    double intervalsGood = k == 0 ? 1 : intervals.all();
    double sum = allGood * intervalsGood;
    for (int j = 0; j < n; j++) {
      double part = oneOdd * oddRatio(alpha[j], inverse[j][j]);
      if (k > 0) {
        // an unlikely oddity changes what the limits say by next to nothing
        boolean matters = part > MATTERS * allGood;
        part *= matters ? intervals.withOdd(j, oddVariance, intervalsGood) : intervalsGood;
      }
      oddShare[j] = part;
      sum += part;
    }
    for (int j = 0; j < n; j++) {
      oddShare[j] /= sum;
    }
    if (k == 0) {
      fillInverse(reading);
    }
    for (int i = 0; i < n; i++) {
      leaveOut(i, intervalsGood);
    }
    for (int q = 0; q < k; q++) {
      logWithout[n + q] = logNumbers;
      withoutFactor[n + q] = sum / Math.max(intervalsGood, 1e-300) * intervals.allBut(q);
    }
    return logNumbers + Math.log(sum);
  }

  /** The likelihood of all other results, without number i. */
  private void leaveOut(int i, double intervalsGood) {
    double own = inverse[i][i];
    double odd = 0;
    for (int j = 0; j < n; j++) {
      if (j != i) {
        odd += oddRatioBut(i, j);
      }
    }
    double sum = allGood / (1 - oddWeight) * (1 + odd * oddWeight / (1 - oddWeight));
    double rest = k == 0 ? 1 : intervals.withOdd(i, Double.POSITIVE_INFINITY, intervalsGood);
    logWithout[i] = logNumbers + 0.5 * alpha[i] * alpha[i] / own;
    withoutFactor[i] = sum * rest * ROOT_TWO_PI / Math.sqrt(own);
  }
}
