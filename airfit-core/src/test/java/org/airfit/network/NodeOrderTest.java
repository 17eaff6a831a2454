package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.airfit.flow.FlowCapacity;
import org.airfit.quantity.SonicConductance;
import org.junit.jupiter.api.Test;

/** Which nodes are fed on which way, and through which branches nothing flows, against plain searches. */
class NodeOrderTest {

  private static SolverBranch branch(int from, int to) {
    return new SolverBranch(
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.3)
            .element(),
        false,
        from,
        to,
        293.15,
        1.8e-5);
  }

  private static SolverBranch[] branches(int[][] ends) {
    return Arrays.stream(ends).map(pair -> branch(pair[0], pair[1])).toArray(SolverBranch[]::new);
  }

  /** 0 is a supply; 1 and 2 hang on it, 3 on both, 4 on 3; 5 and 6 are joined to each other alone. */
  @Test
  void nodes_are_fed_from_the_supply_outwards_on_the_shortest_way() {
    SolverBranch[] branches =
        branches(new int[][] {{0, 1}, {2, 0}, {1, 3}, {3, 2}, {4, 3}, {5, 6}});
    NodeOrder order =
        new NodeOrder(new boolean[] {true, false, false, false, false, false, false}, branches);
    assertThat(order.fed()).hasSize(5).startsWith(0).endsWith(3, 4);
    assertThat(order.feeding(0)).isNegative();
    assertThat(order.feeding(1)).isZero();
    assertThat(order.feeding(2)).isEqualTo(1);
    assertThat(order.feeding(3)).isIn(2, 3);
    assertThat(order.feeding(4)).isEqualTo(4);
    for (int node = 0; node < 7; node++) {
      assertThat(order.isFed(node)).isEqualTo(node < 5);
    }
    assertThat(order.feeding(5)).isNegative();
    NodeOrder two =
        new NodeOrder(new boolean[] {true, false, false, false, true, false, false}, branches);
    assertThat(two.fed()).hasSize(5).startsWith(0, 4);
    assertThat(two.feeding(3)).as("nearer to the second supply").isEqualTo(4);
  }

  /** A branch is alive where a way leads over it from one active node to another, over no node twice: tried out. */
  private static boolean isAlive(int branch, boolean[] active, int[][] ends) {
    for (int start = 0; start < active.length; start++) {
      boolean[] passed = new boolean[active.length];
      if (active[start] && leads(start, false, branch, active, ends, passed)) {
        return true;
      }
    }
    return false;
  }

  private static boolean leads(
      int node, boolean over, int branch, boolean[] active, int[][] ends, boolean[] passed) {
    if (over && active[node]) {
      return true;
    }
    passed[node] = true;
    boolean found = false;
    for (int k = 0; k < ends.length && !found; k++) {
      int other = ends[k][0] == node ? ends[k][1] : ends[k][1] == node ? ends[k][0] : -1;
      found = other >= 0
          && !passed[other]
          && leads(other, over || k == branch, branch, active, ends, passed);
    }
    passed[node] = false;
    return found;
  }

  @Test
  void no_air_flows_where_no_way_leads_from_one_active_node_to_another() {
    Random random = new Random(4);
    int dead = 0;
    int alive = 0;
    for (int drawn = 0; drawn < 150; drawn++) {
      int nodes = 2 + random.nextInt(6);
      int[][] ends = new int[1 + random.nextInt(9)][];
      for (int k = 0; k < ends.length; k++) {
        int from = random.nextInt(nodes);
        ends[k] = new int[] {from, (from + 1 + random.nextInt(nodes - 1)) % nodes};
      }
      boolean[] active = new boolean[nodes];
      for (int i = 0; i < nodes; i++) {
        active[i] = random.nextInt(3) == 0;
      }
      boolean[] found = DeadLegs.of(active, branches(ends));
      assertThat(found).hasSize(ends.length);
      for (int k = 0; k < ends.length; k++) {
        assertThat(found[k])
            .as("%s, active %s, branch %s", Arrays.deepToString(ends), Arrays.toString(active), k)
            .isEqualTo(!isAlive(k, active, ends));
        dead += found[k] ? 1 : 0;
        alive += found[k] ? 0 : 1;
      }
    }
    assertThat(dead).isGreaterThan(100);
    assertThat(alive).isGreaterThan(100);
  }
}
