package org.airfit.network;

import java.util.Arrays;
import java.util.PriorityQueue;

/**
 * In which order the unknowns of a {@link SparseSystem} are eliminated, and where its entries stand: worked out once
 * for a network, whatever its tools take.
 *
 * <p>The next is always one with the fewest neighbours that are left, and of those the first. What is eliminated joins
 * its neighbours to each other. So trees fill nothing in, and rings and meshes little. A heap holds what each unknown
 * last had; what it had before is passed over.
 */
final class EliminationOrder {

  private final int[] order;
  private final int[] rank; // the step in which each is eliminated
  private final int[][] neighbours; // of each when it is eliminated, all eliminated later, rising
  private final int[]
      lowerAt; // place of the first (neighbour, it); (it, neighbour) lies behind all of these
  private final int[][] targets; // where the product of each pair of neighbours goes
  private final int entries;

  /** Works out the order for unknowns 0 … n − 1 coupled in pairs; a pair with a negative number couples nothing. */
  EliminationOrder(int n, int[] one, int[] other) {
    order = new int[n];
    rank = new int[n];
    lowerAt = new int[n];
    neighbours = coupled(n, one, other);
    entries = eliminate();
    targets = new int[n][];
    for (int i = 0; i < n; i++) {
      targets[i] = pairs(neighbours[i]);
    }
  }

  /** What each is coupled with, rising, each once. */
  private static int[][] coupled(int n, int[] one, int[] other) {
    int[] count = new int[n];
    for (int k = 0; k < one.length; k++) {
      if (one[k] >= 0 && other[k] >= 0 && one[k] != other[k]) {
        count[one[k]]++;
        count[other[k]]++;
      }
    }
    int[][] coupled = new int[n][];
    for (int i = 0; i < n; i++) {
      coupled[i] = new int[count[i]];
    }
    for (int k = 0; k < one.length; k++) {
      if (one[k] >= 0 && other[k] >= 0 && one[k] != other[k]) {
        coupled[one[k]][--count[one[k]]] = other[k];
        coupled[other[k]][--count[other[k]]] = one[k];
      }
    }
    for (int i = 0; i < n; i++) {
      coupled[i] = Arrays.stream(coupled[i]).sorted().distinct().toArray();
    }
    return coupled;
  }

  private int eliminate() {
    PriorityQueue<Long> least = new PriorityQueue<>();
    for (int i = 0; i < order.length; i++) {
      rank[i] = order.length;
      least.add(key(i));
    }
    int size = 0;
    int step = 0;
    while (step < order.length) {
      long key = least.remove();
      int next = (int) key;
      if (rank[next] < order.length || key != key(next)) {
        continue; // it was eliminated, or its neighbours have changed
      }
      rank[next] = step;
      order[step++] = next;
      lowerAt[next] = size;
      int[] left = neighbours[next];
      size += 2 * left.length;
      for (int neighbour : left) {
        neighbours[neighbour] = joined(neighbours[neighbour], left, next, neighbour);
        least.add(key(neighbour));
      }
    }
    return size;
  }

  /** The number of neighbours of an unknown, then its own: the least comes first. */
  private long key(int unknown) {
    return ((long) neighbours[unknown].length << Integer.SIZE) | unknown;
  }

  /** Two rising lists as one, each number once, without two of them. */
  private static int[] joined(int[] one, int[] other, int without, int self) {
    int[] all = new int[one.length + other.length];
    int size = 0;
    int i = 0;
    int j = 0;
    while (i < one.length || j < other.length) {
      int next;
      if (j == other.length || (i < one.length && one[i] < other[j])) {
        next = one[i++];
      } else {
        next = other[j++];
        i += i < one.length && one[i] == next ? 1 : 0;
      }
      if (next != without && next != self) {
        all[size++] = next;
      }
    }
    return Arrays.copyOf(all, size);
  }

  private int[] pairs(int[] left) {
    int[] found = new int[left.length * left.length];
    for (int i = 0; i < left.length; i++) {
      for (int j = 0; j < left.length; j++) {
        found[i * left.length + j] = i == j ? -1 : place(left[i], left[j]);
      }
    }
    return found;
  }

  /** Where the entry of a row and a column stands, for {@link SparseSystem#couple}. */
  int place(int row, int column) {
    boolean isRowFirst = rank[row] < rank[column];
    int[] left = neighbours[isRowFirst ? row : column];
    int at = Arrays.binarySearch(left, isRowFirst ? column : row);
    if (at < 0) {
      throw new IllegalArgumentException(
          "entry must couple two unknowns given as a pair, was " + row + ", " + column);
    }
    return isRowFirst ? lowerAt[row] + left.length + at : lowerAt[column] + at;
  }

  int unknowns() {
    return order.length;
  }

  /** How many entries stand off the diagonal. */
  int entries() {
    return entries;
  }

  /** The unknown that is eliminated in a step. */
  int at(int step) {
    return order[step];
  }

  int[] neighbours(int unknown) {
    return neighbours[unknown];
  }

  int lowerAt(int unknown) {
    return lowerAt[unknown];
  }

  int[] targets(int unknown) {
    return targets[unknown];
  }
}
