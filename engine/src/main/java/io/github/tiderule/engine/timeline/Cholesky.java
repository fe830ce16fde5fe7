package io.github.tiderule.engine.timeline;

/** The Cholesky factor of a small symmetric positive definite matrix. */
final class Cholesky {

  private final double[][] lower;

  private Cholesky(double[][] lower) {
    this.lower = lower;
  }

  /**
   * Factors a matrix.
   *
   * @throws IllegalArgumentException if it is not positive definite
   */
  static Cholesky of(double[][] matrix) {
    int n = matrix.length;
    double[][] lower = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = matrix[i][j];
        for (int k = 0; k < j; k++) {
          sum -= lower[i][k] * lower[j][k];
        }
        if (i == j) {
          if (!(sum > 0)) {
            throw new IllegalArgumentException("not positive definite at row " + i);
          }
          lower[i][i] = Math.sqrt(sum);
        } else {
          lower[i][j] = sum / lower[j][j];
        }
      }
    }
    return new Cholesky(lower);
  }

  double logDeterminant() {
    double sum = 0;
    for (int i = 0; i < lower.length; i++) {
      sum += Math.log(lower[i][i]);
    }
    return 2 * sum;
  }

  double[][] inverse() {
    int n = lower.length;
    double[][] inverse = new double[n][n];
    double[] column = new double[n];
    for (int c = 0; c < n; c++) {
      for (int i = 0; i < n; i++) {
        double sum = i == c ? 1 : 0;
        for (int k = 0; k < i; k++) {
          sum -= lower[i][k] * column[k];
        }
        column[i] = sum / lower[i][i];
      }
      for (int i = n - 1; i >= 0; i--) {
        double sum = column[i];
        for (int k = i + 1; k < n; k++) {
          sum -= lower[k][i] * inverse[k][c];
        }
        inverse[i][c] = sum / lower[i][i];
      }
    }
    return inverse;
  }
}
