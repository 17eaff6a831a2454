package org.airfit.network;

import java.util.Arrays;

/** The nodes of a network from its supplies outwards, and the branch that feeds each on the shortest way. */
final class NodeOrder {

  /** What feeds a node where a supply does. */
  private static final int SUPPLY = -1;

  /** What feeds a node where nothing does. */
  private static final int NOTHING = -2;

  private final int[] order;
  private final int[] feeding;

  NodeOrder(boolean[] supplied, SolverBranch[] branches) {
    int n = supplied.length;
    int[][] at = branchesAt(n, branches);
    feeding = new int[n];
    Arrays.fill(feeding, NOTHING);
    int[] sequence = new int[n];
    int known = 0;
    for (int i = 0; i < n; i++) {
      if (supplied[i]) {
        feeding[i] = SUPPLY;
        sequence[known++] = i;
      }
    }
    for (int done = 0; done < known; done++) {
      for (int k : at[sequence[done]]) {
        boolean with = branches[k].from == sequence[done];
        int next = with ? branches[k].to : branches[k].from;
        if (feeding[next] == NOTHING && (with || !branches[k].oneWay)) {
          feeding[next] = k;
          sequence[known++] = next;
        }
      }
    }
    order = Arrays.copyOf(sequence, known);
  }

  private static int[][] branchesAt(int n, SolverBranch[] branches) {
    int[][] at = new int[n][];
    int[] degree = new int[n];
    for (SolverBranch branch : branches) {
      degree[branch.from]++;
      degree[branch.to]++;
    }
    for (int i = 0; i < n; i++) {
      at[i] = new int[degree[i]];
    }
    for (int k = 0; k < branches.length; k++) {
      at[branches[k].from][--degree[branches[k].from]] = k;
      at[branches[k].to][--degree[branches[k].to]] = k;
    }
    return at;
  }

  /** The nodes that are fed, those of the supplies first. */
  int[] fed() {
    return order;
  }

  /** The branch that feeds a node, or a negative number where a supply or nothing does. */
  int feeding(int node) {
    return feeding[node];
  }

  /** Whether a way leads to a node from a supply. */
  boolean isFed(int node) {
    return feeding[node] != NOTHING;
  }
}
