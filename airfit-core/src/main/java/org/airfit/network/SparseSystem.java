package org.airfit.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A linear system whose unknowns are coupled along the branches of a network: factorised without exchange of rows, in
 * the order of least degree.
 *
 * <p>The matrix has a symmetric pattern, no positive entry off its diagonal, and columns whose sum, the excess, is
 * not negative, as flow between nodes has them. The excess is given instead of the
 * diagonal. Elimination then only ever adds numbers of one sign, and pivots keep their digits where conductances
 * differ by twenty powers of ten: W. K. Grassmann, M. I. Taksar, D. P. Heyman, Oper.
 * Res. 33 (1985) 1107-1116, for Markov chains. The order and the places of all entries are worked out once; a
 * factorisation is then plain arithmetic on arrays.
 */
final class SparseSystem {

  private final int[] order;
  private final int[][] neighbours; // of each node when it is eliminated, all eliminated later
  private final int[]
      lowerAt; // place of the first (neighbour, node); (node, neighbour) lies behind all of these
  private final int[][] targets; // where the product of each pair of neighbours goes
  private final Map<Long, Integer> places = new HashMap<>();
  private final double[] values;
  private final double[] excess;

  /** Works out the order for unknowns 0 … n − 1 coupled in pairs; a pair with a negative number couples nothing. */
  SparseSystem(int n, int[] one, int[] other) {
    List<Set<Integer>> adjacent = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      adjacent.add(new HashSet<>());
    }
    for (int k = 0; k < one.length; k++) {
      if (one[k] >= 0 && other[k] >= 0 && one[k] != other[k]) {
        adjacent.get(one[k]).add(other[k]);
        adjacent.get(other[k]).add(one[k]);
      }
    }
    order = new int[n];
    neighbours = new int[n][];
    lowerAt = new int[n];
    targets = new int[n][];
    values = new double[eliminate(n, adjacent)];
    excess = new double[n];
    for (int i : order) {
      targets[i] = targets(neighbours[i]);
    }
  }

  private int eliminate(int n, List<Set<Integer>> adjacent) {
    boolean[] gone = new boolean[n];
    int size = 0;
    for (int step = 0; step < n; step++) {
      int least = -1;
      for (int i = 0; i < n; i++) {
        if (!gone[i]
            && (least < 0 || adjacent.get(i).size() < adjacent.get(least).size())) {
          least = i;
        }
      }
      gone[least] = true;
      order[step] = least;
      int[] left =
          adjacent.get(least).stream().mapToInt(Integer::intValue).sorted().toArray();
      neighbours[least] = left;
      lowerAt[least] = size;
      for (int m = 0; m < left.length; m++) {
        places.put(key(left[m], least), size + m);
        places.put(key(least, left[m]), size + left.length + m);
        Set<Integer> of = adjacent.get(left[m]);
        of.remove(least);
        for (int another : left) {
          if (another != left[m]) {
            of.add(another);
          }
        }
      }
      size += 2 * left.length;
    }
    return size;
  }

  private int[] targets(int[] left) {
    int[] found = new int[left.length * left.length];
    for (int i = 0; i < left.length; i++) {
      for (int j = 0; j < left.length; j++) {
        found[i * left.length + j] = i == j ? -1 : place(left[i], left[j]);
      }
    }
    return found;
  }

  private static long key(int row, int column) {
    return ((long) row << 32) | column;
  }

  /** Where the entry of a row and a column stands, for {@link #couple}. */
  int place(int row, int column) {
    Integer place = places.get(key(row, column));
    if (place == null) {
      throw new IllegalArgumentException(
          "entry must couple two unknowns given as a pair, was " + row + ", " + column);
    }
    return place;
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
    double[] pivots = new double[order.length];
    for (int k : order) {
      int[] left = neighbours[k];
      int lower = lowerAt[k];
      int upper = lower + left.length;
      double pivot = excess[k];
      for (int i = 0; i < left.length; i++) {
        pivot -= values[lower + i];
      }
      pivots[k] = pivot;
      int[] to = targets[k];
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
    for (int step = order.length - 1; step >= 0; step--) {
      int k = order[step];
      int[] left = neighbours[k];
      int upper = lowerAt[k] + left.length;
      double sum = right[k];
      for (int j = 0; j < left.length; j++) {
        sum -= values[upper + j] * right[left[j]];
      }
      right[k] = sum / pivots[k];
    }
  }
}
