package io.github.tiderule.engine.timeline;

/**
 * Probability that limits and bands hold, given the numbers.
 *
 * <p>Given the numbers, the log levels at the k limits are jointly normal through the shared
 * baseline, rise and scales; each has an own error besides. One limit: closed form. Several: the
 * shared part is taken along its pivoted Cholesky directions, the first two by quadrature, what
 * remains of it counts as own error. A limit is grossly wrong with a small probability.
 */
final class IntervalProbability {

  private static final Nodes ALONG = Nodes.of(9, 3.2);

  /** Shared variance below this share of the own one needs no quadrature. */
  private static final double NEGLIGIBLE = 1e-3;

  private final int n;
  private final int k;
  private final double oddWeight;
  private final double[] low;
  private final double[] high;
  private final double[][] weight;
  private final double[] mean;
  private final double[][] shared;
  private final double[] noise;
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
    double[][] cross = new double[k][n];
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
   */
  double withOdd(int j, double variance) {
    double freed = 1 / (1 / variance + inverse[j][j]);
    return probability(j, freed, -1);
  }

  private double probability(int odd, double freed, int leftOut) {
    int m = 0;
    int[] which = new int[k];
    for (int q = 0; q < k; q++) {
      if (q != leftOut) {
        which[m++] = q;
      }
    }
    double[] centre = new double[m];
    double[][] covariance = new double[m][m];
    double[] own = new double[m];
    for (int a = 0; a < m; a++) {
      int q = which[a];
      centre[a] = mean[q] - (odd < 0 ? 0 : weight[q][odd] * alpha[odd] * freed);
      own[a] = noise[q];
      for (int b = 0; b < m; b++) {
        covariance[a][b] =
            shared[q][which[b]] + (odd < 0 ? 0 : weight[q][odd] * weight[which[b]][odd] * freed);
      }
    }
    return along(which, m, centre, covariance, own, 0);
  }

  private double along(
      int[] which, int m, double[] centre, double[][] covariance, double[] own, int depth) {
    int pivot = -1;
    double most = 0;
    for (int a = 0; a < m; a++) {
      if (covariance[a][a] > NEGLIGIBLE * own[a] && covariance[a][a] > most) {
        most = covariance[a][a];
        pivot = a;
      }
    }
    if (m <= 1 || pivot < 0 || depth == 2) {
      double product = 1;
      for (int a = 0; a < m; a++) {
        product *= one(which[a], centre[a], own[a] + Math.max(0, covariance[a][a]));
      }
      return product;
    }
    double sd = Math.sqrt(most);
    double[] loading = new double[m];
    double[][] rest = new double[m][m];
    for (int a = 0; a < m; a++) {
      loading[a] = covariance[a][pivot] / sd;
    }
    for (int a = 0; a < m; a++) {
      for (int b = 0; b < m; b++) {
        rest[a][b] = covariance[a][b] - loading[a] * loading[b];
      }
    }
    double sum = 0;
    double[] moved = new double[m];
    for (int i = 0; i < ALONG.count(); i++) {
      for (int a = 0; a < m; a++) {
        moved[a] = centre[a] + loading[a] * ALONG.z()[i];
      }
      sum += ALONG.weight()[i] * along(which, m, moved, rest, own, depth + 1);
    }
    return sum;
  }

  private double one(int q, double centre, double variance) {
    double sd = Math.sqrt(variance);
    double inside =
        Normal.quickCdf((high[q] - centre) / sd) - Normal.quickCdf((low[q] - centre) / sd);
    return (1 - oddWeight) * inside + oddWeight / 2;
  }
}
