package org.airfit.network;

import java.util.Arrays;

/**
 * A linear system whose unknowns are coupled along the branches of a network: factorised without exchange of rows, in
 * an {@link EliminationOrder}.
 *
 * <p>The matrix has a symmetric pattern, no positive entry off its diagonal, and columns whose sum, the excess, is
 * not negative, as flow between nodes has them. The excess is given instead of the
 * diagonal. Elimination then only ever adds numbers of one sign, and pivots keep their digits where conductances
 * differ by twenty powers of ten: W. K. Grassmann, M. I. Taksar, D. P. Heyman, Oper.
 * Res. 33 (1985) 1107-1116, for Markov chains. A factorisation is plain arithmetic on arrays.
 */
final class SparseSystem {

  private final EliminationOrder pattern;
  private final double[] values;
  private final double[] excess;
  private final double[] pivots;

  /** An empty system of a pattern. */
  SparseSystem(EliminationOrder pattern) {
    this.pattern = pattern;
    this.values = new double[pattern.entries()];
    this.excess = new double[pattern.unknowns()];
    this.pivots = new double[pattern.unknowns()];
  }

  void clear() {
    Arrays.fill(values, 0.0);
    Arrays.fill(excess, 0.0);
  }

  /** Adds to an entry off the diagonal, not above 0, and its opposite to the diagonal of the column. */
  void couple(int place, double value) {
    values[place] += value;
  }

  /** Adds to the diagonal alone, not below 0. */
  void hold(int unknown, double value) {
    excess[unknown] += value;
  }

  /** Puts the solution in the place of the right side, and destroys the matrix. */
  void solve(double[] right) {
    for (int step = 0; step < pivots.length; step++) {
      int k = pattern.at(step);
      int[] left = pattern.neighbours(k);
      int lower = pattern.lowerAt(k);
      int upper = lower + left.length;
      double pivot = excess[k];
      for (int i = 0; i < left.length; i++) {
        pivot -= values[lower + i];
      }
      pivots[k] = pivot;
      int[] to = pattern.targets(k);
      double share = excess[k] / pivot;
      for (int i = 0; i < left.length; i++) {
        double factor = values[lower + i] / pivot;
        right[left[i]] -= factor * right[k];
        excess[left[i]] -= share * values[upper + i];
        for (int j = 0; j < left.length; j++) {
          if (i != j) {
            values[to[i * left.length + j]] -= factor * values[upper + j];
          }
        }
      }
    }
    for (int step = pivots.length - 1; step >= 0; step--) {
      int k = pattern.at(step);
      int[] left = pattern.neighbours(k);
      int upper = pattern.lowerAt(k) + left.length;
      double sum = right[k];
      for (int j = 0; j < left.length; j++) {
        sum -= values[upper + j] * right[left[j]];
      }
      right[k] = sum / pivots[k];
    }
  }
}
