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
  private double[][] inverse = new double[0][0];
  private double[] alpha = new double[0];

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

  /** Conditions on the numbers with none of them odd. */
  void given(
      ProgesteroneData.Reading reading,
      double[][] inverse,
      double[] alpha,
      double[] u,
      double[] v) {
    this.inverse = inverse;
    this.alpha = alpha;
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

  /** Probability of all limits. */
  double all() {
    return probability(-1, 0, -1);
  }

  /** Probability of all limits but one. */
  double allBut(int q) {
    return probability(-1, 0, q);
  }

  /**
   * Probability of all limits when number j has an inflated variance.
   *
   * @param variance added variance; infinite to leave the number out
   * @param unchanged the probability of all limits as things are
   */
  double withOdd(int j, double variance, double unchanged) {
    double freed = 1 / (1 / variance + inverse[j][j]);
    boolean moved = false;
    for (int q = 0; q < k; q++) {
      double spread = noise[q] + shared[q][q];
      double shift = weight[q][j] * alpha[j] * freed;
      moved |= shift * shift > UNMOVED * UNMOVED * spread;
      moved |= weight[q][j] * weight[q][j] * freed > UNMOVED * spread;
    }
    return moved ? probability(j, freed, -1) : unchanged;
  }

  private double probability(int odd, double freed, int leftOut) {
    int m = 0;
    for (int q = 0; q < k; q++) {
      if (q != leftOut) {
        which[m++] = q;
      }
    }
    for (int a = 0; a < m; a++) {
      int q = which[a];
      centre[a] = mean[q] - (odd < 0 ? 0 : weight[q][odd] * alpha[odd] * freed);
      for (int b = 0; b < m; b++) {
        rest[a][b] =
            shared[q][which[b]] + (odd < 0 ? 0 : weight[q][odd] * weight[which[b]][odd] * freed);
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
