package org.airfit.network;

import java.util.Arrays;

/**
 * What of a {@link FlowBalance} hangs on the branches and supplies of a network alone, whatever its tools take: which
 * pressures are unknown, and where each branch couples them.
 */
final class FlowLayout {

  private final int[] island;
  private final double[] highest; // by island: the highest pressure of a supply
  private final int[] unknown;
  private final EliminationOrder elimination;
  private final int[]
      forth; // by branch: the place of row from and column to; -1 where only one is unknown
  private final int[] back;

  FlowLayout(int nodes, SolverSupply[] supplies, SolverBranch[] branches) {
    island = islands(nodes, branches);
    highest = new double[nodes];
    for (SolverSupply supply : supplies) {
      int here = island[supply.node];
      highest[here] = Math.max(highest[here], supply.still());
    }
    boolean[] fixed = new boolean[nodes];
    for (SolverSupply supply : supplies) {
      // no other drives air into the highest, whether it has a non-return valve or not
      fixed[supply.node] = supply.holds() && (supply.letsBack || isHighest(supply));
    }
    unknown = new int[nodes];
    int count = 0;
    for (int i = 0; i < nodes; i++) {
      unknown[i] = fixed[i] ? -1 : count++;
    }
    int[] one = Arrays.stream(branches).mapToInt(branch -> unknown[branch.from]).toArray();
    int[] other = Arrays.stream(branches).mapToInt(branch -> unknown[branch.to]).toArray();
    elimination = new EliminationOrder(count, one, other);
    forth = new int[branches.length];
    back = new int[branches.length];
    for (int k = 0; k < branches.length; k++) {
      boolean couples = one[k] >= 0 && other[k] >= 0;
      forth[k] = couples ? elimination.place(one[k], other[k]) : -1;
      back[k] = couples ? elimination.place(other[k], one[k]) : -1;
    }
  }

  private static int[] islands(int nodes, SolverBranch[] branches) {
    int[] root = new int[nodes];
    for (int i = 0; i < nodes; i++) {
      root[i] = i;
    }
    for (SolverBranch branch : branches) {
      int a = root(root, branch.from);
      int b = root(root, branch.to);
      root[Math.max(a, b)] = Math.min(a, b);
    }
    for (int i = 0; i < nodes; i++) {
      root[i] = root(root, i);
    }
    return root;
  }

  private static int root(int[] root, int node) {
    int at = node;
    while (root[at] != at) {
      root[at] = root[root[at]];
      at = root[at];
    }
    return at;
  }

  /** By node: the least node that branches join it to. */
  int[] island() {
    return island;
  }

  /** By node: the number of its pressure, or −1 where a supply holds that. */
  int[] unknown() {
    return unknown;
  }

  EliminationOrder elimination() {
    return elimination;
  }

  /** Where a branch couples the pressure in front with the balance behind: with it, or against it. */
  int place(int branch, boolean with) {
    return with ? forth[branch] : back[branch];
  }

  /** Whether no supply that branches join to it has a higher pressure. */
  boolean isHighest(SolverSupply supply) {
    return supply.still() >= highest[island[supply.node]];
  }
}
