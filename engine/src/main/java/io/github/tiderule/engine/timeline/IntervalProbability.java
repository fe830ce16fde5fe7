package io.github.tiderule.engine.timeline;

/**
 * Probability that limits and bands hold, given the numbers.
 *
 * <p>Given the numbers, the log levels at the k limits are jointly normal through the shared
 * baseline, rise and scales; each has an own error besides. One limit: closed form. Several: the
 * shared part is taken along its pivoted Cholesky directions, the first two by quadrature, what
 * remains of it counts as own error. A limit is grossly wrong with a small probability. Not safe
 * for use by several threads.
 */
final class IntervalProbability {

  private static final Nodes ALONG = Nodes.of(7, 3);

  private static final int MOST_DIRECTIONS = 2;

  /** Shared variance below this share of the own one needs no quadrature. */
  private static final double NEGLIGIBLE = 0.05;

  /** A limit whose centre moves by less than this share of its spread says the same as before. */
  private static final double UNMOVED = 0.05;

  private final int n;
  private final int k;
  private final double oddWeight;
  private final double[] low;
  private final double[] high;
  private final double[][] weight;
  private final double[] mean;
  private final double[][] shared;
  private final double[] noise;
  private final double[][] cross;
  private final int[] which;
  private final double[] centre;
  private final double[] sd;
  private final double[][] rest;
  private final double[][] loading;
  private double[] alpha = new double[0];
  private int one;
  private int other;
  private double freedOne;
  private double freedBoth;
  private double freedOther;

  IntervalProbability(int n, int k, double oddWeight) {
    this.n = n;
    this.k = k;
    this.oddWeight = oddWeight;
    low = new double[k];
    high = new double[k];
    weight = new double[k][n];
    mean = new double[k];
    shared = new double[k][k];
    noise = new double[k];
    cross = new double[k][n];
    which = new int[k];
    centre = new double[k];
    sd = new double[k];
    rest = new double[k][k];
    loading = new double[MOST_DIRECTIONS][k];
  }

  /** Sets the edges of limit q, in logs, less the expected log reading there. */
  void expect(int q, double low, double high) {
    this.low[q] = low;
    this.high[q] = high;
  }

  /** Conditions on the numbers with none of them odd and none set free. */
  void given(
      ProgesteroneData.Reading reading,
      double[][] inverse,
      double[] alpha,
      double[] u,
      double[] v) {
    this.alpha = alpha;
    free(-1, -1, 0, 0, 0);
    for (int q = 0; q < k; q++) {
      mean[q] = 0;
      noise[q] = reading.noise()[q];
      for (int i = 0; i < n; i++) {
        cross[q][i] = u[n + q] * u[i] + v[n + q] * v[i] + reading.scale()[q][i];
        mean[q] += cross[q][i] * alpha[i];
      }
      for (int i = 0; i < n; i++) {
        double sum = 0;
        for (int j = 0; j < n; j++) {
          sum += inverse[i][j] * cross[q][j];
        }
        weight[q][i] = sum;
      }
    }
    for (int q = 0; q < k; q++) {
      for (int p = 0; p < k; p++) {
        double sum = u[n + q] * u[n + p] + v[n + q] * v[n + p] + reading.scale()[q][n + p];
        for (int i = 0; i < n; i++) {
          sum -= weight[q][i] * cross[p][i];
        }
        shared[q][p] = sum;
      }
    }
  }

  /**
   * Sets up to two numbers free: a matrix, the inverse of their part of the inverse covariance with
   * what frees them added to its diagonal; one over the added variance, or 0 to leave them out.
   *
   * @param one a number, or -1
   * @param other another, or -1
   */
  void free(int one, int other, double freedOne, double freedBoth, double freedOther) {
    this.one = one;
    this.other = other;
    this.freedOne = freedOne;
    this.freedBoth = freedBoth;
    this.freedOther = freedOther;
  }

  /** Whether what is set free moves any limit. */
  boolean moved() {
    for (int q = 0; q < k; q++) {
      double spread = noise[q] + shared[q][q];
      double shift = shift(q);
      if (shift * shift > UNMOVED * UNMOVED * spread || widening(q, q) > UNMOVED * spread) {
        return true;
      }
    }
    return false;
  }

  /** How far what is set free takes the centre of limit q down. */
  private double shift(int q) {
    if (one < 0) {
      return 0;
    }
    double shift = weight[q][one] * freedOne * alpha[one];
    if (other >= 0) {
      shift += weight[q][one] * freedBoth * alpha[other];
      shift += weight[q][other] * (freedBoth * alpha[one] + freedOther * alpha[other]);
    }
    return shift;
  }

  /** What it adds to the covariance of two limits. */
  private double widening(int q, int p) {
    if (one < 0) {
      return 0;
    }
    double sum = weight[q][one] * freedOne * weight[p][one];
    if (other >= 0) {
      sum += weight[q][one] * freedBoth * weight[p][other];
      sum += weight[q][other] * (freedBoth * weight[p][one] + freedOther * weight[p][other]);
    }
    return sum;
  }

  /** Probability of all limits. */
  double all() {
    return allBut(-1);
  }

  /** Probability of all limits but one. */
  double allBut(int leftOut) {
    int m = 0;
    for (int q = 0; q < k; q++) {
      if (q != leftOut) {
        which[m++] = q;
      }
    }
    for (int a = 0; a < m; a++) {
      int q = which[a];
      centre[a] = mean[q] - shift(q);
      for (int b = 0; b < m; b++) {
        rest[a][b] = shared[q][which[b]] + widening(q, which[b]);
      }
    }
    int directions = m < 2 ? 0 : directions(m);
    for (int a = 0; a < m; a++) {
      sd[a] = Math.sqrt(noise[which[a]] + Math.max(0, rest[a][a]));
    }
    if (directions == 0) {
      return product(m, 0, 0);
    }
    double sum = 0;
    for (int i = 0; i < ALONG.count(); i++) {
      double inner = 0;
      if (directions == 1) {
        inner = product(m, ALONG.z()[i], 0);
      } else {
        for (int j = 0; j < ALONG.count(); j++) {
          inner += ALONG.weight()[j] * product(m, ALONG.z()[i], ALONG.z()[j]);
        }
      }
      sum += ALONG.weight()[i] * inner;
    }
    return sum;
  }

  /** Takes up to two pivoted Cholesky directions out of what the limits share. */
  private int directions(int m) {
    for (int taken = 0; taken < MOST_DIRECTIONS; taken++) {
      int pivot = -1;
      double most = 0;
      for (int a = 0; a < m; a++) {
        if (rest[a][a] > NEGLIGIBLE * noise[which[a]] && rest[a][a] > most) {
          most = rest[a][a];
          pivot = a;
        }
      }
      if (pivot < 0) {
        return taken;
      }
      for (int a = 0; a < m; a++) {
        loading[taken][a] = rest[a][pivot] / Math.sqrt(most);
      }
      for (int a = 0; a < m; a++) {
        for (int b = 0; b < m; b++) {
          rest[a][b] -= loading[taken][a] * loading[taken][b];
        }
      }
    }
    return MOST_DIRECTIONS;
  }

  /** Product of the limits' probabilities so many standard deviations along the directions. */
  private double product(int m, double first, double second) {
    double product = 1;
    for (int a = 0; a < m; a++) {
      double at = centre[a] + loading[0][a] * first + loading[1][a] * second;
      int q = which[a];
      double inside =
          Normal.quickCdf((high[q] - at) / sd[a]) - Normal.quickCdf((low[q] - at) / sd[a]);
      product *= (1 - oddWeight) * inside + oddWeight / 2;
    }
    return product;
  }
}
