package org.airfit.network;

import java.util.Arrays;

/**
 * The branches of a network through which no air can flow, as nothing beyond them gives or takes any.
 *
 * <p>Air flows through a branch where a way leads over it from one node that gives or takes to another, and over no
 * node twice. Let one more node be joined to all that give or take: such a branch then lies with that node in one
 * biconnected component. These are found by a search in depth, J. Hopcroft, R. E. Tarjan, Commun. ACM 16 (1973)
 * 372-378, without recursion.
 */
final class DeadLegs {

  private final int[][] joins; // by node: the joins at it
  private final int[] one;
  private final int[] other;
  private final int branches;

  private DeadLegs(boolean[] active, SolverBranch[] branches) {
    int n = active.length;
    this.branches = branches.length;
    int count = branches.length;
    for (boolean node : active) {
      count += node ? 1 : 0;
    }
    one = new int[count];
    other = new int[count];
    int at = 0;
    for (SolverBranch branch : branches) {
      one[at] = branch.from;
      other[at++] = branch.to;
    }
    for (int i = 0; i < n; i++) {
      if (active[i]) {
        one[at] = i;
        other[at++] = n;
      }
    }
    int[] degree = new int[n + 1];
    for (int k = 0; k < count; k++) {
      degree[one[k]]++;
      degree[other[k]]++;
    }
    joins = new int[n + 1][];
    for (int i = 0; i <= n; i++) {
      joins[i] = new int[degree[i]];
    }
    for (int k = 0; k < count; k++) {
      joins[one[k]][--degree[one[k]]] = k;
      joins[other[k]][--degree[other[k]]] = k;
    }
  }

  /**
   * Finds them.
   *
   * @param active by node, whether a supply gives or a tool takes air there
   * @param branches the branches
   * @return by branch, whether no air flows through it
   */
  static boolean[] of(boolean[] active, SolverBranch[] branches) {
    return new DeadLegs(active, branches).search();
  }

  /** Searches from the node that was added: what lies in a component with it is marked alive. */
  private boolean[] search() {
    int root = joins.length - 1;
    boolean[] dead = new boolean[branches];
    Arrays.fill(dead, true);
    int[] number = new int[joins.length];
    int[] low = new int[joins.length];
    int[] next = new int[joins.length];
    int[] way = new int[joins.length]; // the nodes from the root to where the search stands
    int[] over = new int[joins.length]; // the join that led to each of them
    int[] stack = new int[one.length];
    int depth = 0;
    int stacked = 0;
    int count = 1;
    way[0] = root;
    over[root] = -1;
    number[root] = count++;
    low[root] = 1;
    while (depth >= 0) {
      int node = way[depth];
      if (next[node] < joins[node].length) {
        int join = joins[node][next[node]++];
        int there = one[join] == node ? other[join] : one[join];
        if (number[there] == 0) {
          stack[stacked++] = join;
          over[there] = join;
          number[there] = count++;
          low[there] = number[there];
          way[++depth] = there;
        } else if (join != over[node] && number[there] < number[node]) {
          stack[stacked++] = join;
          low[node] = Math.min(low[node], number[there]);
        }
        continue;
      }
      depth--;
      if (depth >= 0) {
        int parent = way[depth];
        low[parent] = Math.min(low[parent], low[node]);
        if (low[node] >= number[parent]) {
          int join;
          do {
            join = stack[--stacked];
            if (parent == root && join < branches) {
              dead[join] = false;
            }
          } while (join != over[node]);
        }
      }
    }
    return dead;
  }
}
