package org.airfit.run;

/** Numeric kernels of the judgement by gauges: symmetric matrices by rows in one array. Callers validate. */
final class GaugeKernels {

  private GaugeKernels() {}

  /**
   * Takes the root of a matrix, A = L Lᵀ (Cholesky), in its place below and on the diagonal.
   *
   * @param a the matrix, n by n, positive definite
   * @param n its size
   * @return half of the logarithm of its determinant
   */
  static double root(double[] a, int n) {
    double log = 0.0;
    for (int j = 0; j < n; j++) {
      for (int i = j; i < n; i++) {
        double sum = a[i * n + j];
        for (int k = 0; k < j; k++) {
          sum -= a[i * n + k] * a[j * n + k];
        }
        a[i * n + j] = i == j ? Math.sqrt(sum) : sum / a[j * n + j];
      }
      log += Math.log(a[j * n + j]);
    }
    return log;
  }

  /** Solves L x = b in the place of b. */
  static void solveForward(double[] root, int n, double[] b) {
    for (int i = 0; i < n; i++) {
      double sum = b[i];
      for (int k = 0; k < i; k++) {
        sum -= root[i * n + k] * b[k];
      }
      b[i] = sum / root[i * n + i];
    }
  }

  /** Σ aᵢ bᵢ. */
  static double product(double[] a, double[] b) {
    double sum = 0.0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
