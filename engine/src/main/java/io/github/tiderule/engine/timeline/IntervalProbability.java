package io.github.tiderule.engine.timeline;

import java.util.Arrays;

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
  private final double[] own;
  private final double[] noise;
  private final double[][] cross;
  private final int[] which;
  private final double[] centre;
  private final double[] sd;
  private final double[] rest;
  private final double[] inside;
  private final double[] upTo;
  private final int[] pivots = new int[MOST_DIRECTIONS];
  private final double[][] loading;
  private double[] alpha = new double[0];
  private double[] u = new double[0];
  private double[] v = new double[0];
  private double[][] scale = new double[0][0];
  private int one;
  private int other;
  private double freedOne;
  private double freedBoth;
  private double freedOther;
  private int directions;

  IntervalProbability(int n, int k, double oddWeight) {
    this.n = n;
    this.k = k;
    this.oddWeight = oddWeight;
    low = new double[k];
    high = new double[k];
    weight = new double[k][n];
    mean = new double[k];
    own = new double[k];
    noise = new double[k];
    cross = new double[k][n];
    which = new int[k];
    centre = new double[k];
    sd = new double[k];
    rest = new double[k];
    inside = new double[k];
    upTo = new double[k + 1];
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
    this.u = u;
    this.v = v;
    this.scale = reading.scale();
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
      own[q] = shared(q, q);
    }
  }

  /** What two limits share, given the numbers, none of them set free. */
  private double shared(int q, int p) {
    double sum = u[n + q] * u[n + p] + v[n + q] * v[n + p] + scale[q][n + p];
    for (int i = 0; i < n; i++) {
      sum -= weight[q][i] * cross[p][i];
    }
    return sum;
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
      double spread = noise[q] + own[q];
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
    int m = take(leftOut);
    double sum = 0;
    for (int i = 0; i < along(0); i++) {
      double inner = 0;
      for (int j = 0; j < along(1); j++) {
        hold(m, z(0, i), z(1, j));
        inner += share(1, j) * upTo[m];
      }
      sum += share(0, i) * inner;
    }
    return sum;
  }

  /**
   * Probability of all limits but one, for each of them, in as many steps as there are limits: what
   * they share lies along the same directions without one that is none of these.
   */
  void allButEach(double[] into) {
    Arrays.fill(into, 0);
    int m = take(-1);
    for (int i = 0; i < along(0); i++) {
      for (int j = 0; j < along(1); j++) {
        hold(m, z(0, i), z(1, j));
        double after = share(0, i) * share(1, j);
        for (int q = m - 1; q >= 0; q--) {
          into[q] += upTo[q] * after;
          after *= inside[q];
        }
      }
    }
    int[] again = m > MOST_DIRECTIONS ? Arrays.copyOf(pivots, directions) : new int[] {0, 1};
    for (int q = 0; q < Math.min(m, again.length); q++) {
      into[again[q]] = allBut(again[q]);
    }
  }

  /** Takes all limits but one, conditioned; returns how many there are. */
  private int take(int leftOut) {
    int m = 0;
    for (int q = 0; q < k; q++) {
      if (q != leftOut) {
        which[m] = q;
        centre[m] = mean[q] - shift(q);
        rest[m] = own[q] + widening(q, q);
        m++;
      }
    }
    directions = 0;
    while (m > 1 && directions < MOST_DIRECTIONS && takeDirection(m)) {
      directions++;
    }
    for (int a = 0; a < m; a++) {
      sd[a] = Math.sqrt(noise[which[a]] + Math.max(0, rest[a]));
    }
    return m;
  }

  /** Takes one more pivoted Cholesky direction out of what the limits share, if any is worth it. */
  private boolean takeDirection(int m) {
    int pivot = -1;
    double most = 0;
    for (int a = 0; a < m; a++) {
      if (rest[a] > NEGLIGIBLE * noise[which[a]] && rest[a] > most) {
        most = rest[a];
        pivot = a;
      }
    }
    if (pivot < 0) {
      return false;
    }
    pivots[directions] = pivot;
    int p = which[pivot];
    for (int a = 0; a < m; a++) {
      int q = which[a];
      double left = shared(q, p) + widening(q, p);
      for (int d = 0; d < directions; d++) {
        left -= loading[d][a] * loading[d][pivot];
      }
      loading[directions][a] = left / Math.sqrt(most);
    }
    for (int a = 0; a < m; a++) {
      rest[a] -= loading[directions][a] * loading[directions][a];
    }
    return true;
  }

  private int along(int direction) {
    return direction < directions ? ALONG.count() : 1;
  }

  private double z(int direction, int i) {
    return direction < directions ? ALONG.z()[i] : 0;
  }

  private double share(int direction, int i) {
    return direction < directions ? ALONG.weight()[i] : 1;
  }

  /**
   * How likely each limit holds so many standard deviations along the directions, and all of them
   * up to it.
   */
  private void hold(int m, double first, double second) {
    upTo[0] = 1;
    for (int a = 0; a < m; a++) {
      double at = centre[a] + loading[0][a] * first + loading[1][a] * second;
      int q = which[a];
      double share =
          Normal.quickCdf((high[q] - at) / sd[a]) - Normal.quickCdf((low[q] - at) / sd[a]);
      inside[a] = (1 - oddWeight) * share + oddWeight / 2;
      upTo[a + 1] = upTo[a] * inside[a];
    }
  }
}
