package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.ToolDemand;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * The measures of a network by hand: a supply of 8 bar at node 0, parts from it to 1, and from 1 to 2 and 3, a tool of
 * 0.003 kg/s at 2 and one of 0.001 kg/s at 3; apart from these a supply of 6 bar at node 4 with a part to 5, no tool.
 */
class FlowBalanceTest {

  private static final double ATMOSPHERE = 1.0e5;
  private static final double EIGHT = 8.0e5;
  private static final FlowCapacity PART =
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.3);

  private SolverBranch[] branches = new SolverBranch[0];
  private SolverSupply high = supply(0, EIGHT);
  private SolverSupply low = supply(4, 6.0e5);
  private FlowBalance balance = balance(1.0);

  private static SolverBranch part(int from, int to) {
    return new SolverBranch(PART.element(), false, from, to, 293.15, 1.8e-5);
  }

  private static SolverSupply supply(int node, double pascals) {
    AirState air = AirState.of(AbsolutePressure.ofPascals(pascals), Temperature.ofKelvins(293.15));
    return new SolverSupply(node, Supply.fixed(air), false);
  }

  private static List<ToolDemand> tool(double flow, double load) {
    return List.of(ToolDemand.fixed("gun", DrawnNetworks.air(flow)).withLoad(load));
  }

  /** The second part is drawn against the flow. */
  private FlowBalance balance(double load) {
    branches = new SolverBranch[] {part(0, 1), part(2, 1), part(1, 3), part(4, 5)};
    high = supply(0, EIGHT);
    low = supply(4, 6.0e5);
    SolverTools tools = new SolverTools(
        ATMOSPHERE,
        List.of(List.of(), List.of(), tool(0.003, load), tool(0.001, load), List.of(), List.of()));
    SolverSupply[] supplies = {high, low};
    return new FlowBalance(
        ATMOSPHERE,
        new FlowLayout(6, supplies, branches),
        supplies,
        tools,
        new NodeOrder(new boolean[] {true, false, false, false, true, false}, branches),
        branches);
  }

  @BeforeEach
  void anew() {
    balance = balance(1.0);
  }

  @Test
  void it_starts_with_the_flows_of_the_tools_along_the_tree_and_every_node_in_balance() {
    balance.start();
    double[] flows = {0.004, -0.003, 0.001, 0.0};
    for (int k = 0; k < 4; k++) {
      assertThat(branches[k].flow).isCloseTo(flows[k], within(1.0e-12));
    }
    assertThat(high.flow).isCloseTo(0.004, within(1.0e-12));
    assertThat(low.flow).isCloseTo(0.0, within(1.0e-15));
    assertThat(balance.imbalance()).isCloseTo(0.0, within(1.0e-12));
    assertThat(balance.pascals[0]).isEqualTo(EIGHT);
    assertThat(balance.pascals[4]).isEqualTo(6.0e5);
    // a little below the least of the supplies
    assertThat(balance.pascals[1]).isCloseTo(0.95 * 6.0e5, within(1.0));
  }

  /** The pressures that the laws give, one after the other; the laws of ISO 6358 are those of the parts themselves. */
  private void solveByHand() {
    balance.start();
    AirState air = AirState.of(AbsolutePressure.ofPascals(EIGHT), Temperature.ofKelvins(293.15));
    balance.pascals[1] = behind(air, EIGHT, 0.004);
    balance.pascals[2] = behind(air, balance.pascals[1], 0.003);
    balance.pascals[3] = behind(air, balance.pascals[1], 0.001);
    balance.pascals[5] = balance.pascals[4];
    balance.evaluate();
  }

  private static double behind(AirState air, double inlet, double flow) {
    return PART.passage(
            MassFlow.ofKilogramsPerSecond(flow), air.at(AbsolutePressure.ofPascals(inlet)))
        .<Double>fold(passed -> passed.outlet().pascals(), choked -> Double.NaN);
  }

  @Test
  void at_the_solution_nothing_is_missed_and_away_from_it_what_is_missed_is_said() {
    solveByHand();
    assertThat(balance.residual(1.0e-11)).isLessThan(1.0e-11);
    assertThat(balance.isNearlySettled()).isTrue();
    balance.pascals[3] += 8.0;
    balance.evaluate();
    assertThat(balance.residual(1.0e-11)).isCloseTo(8.0 / EIGHT, within(1.0e-9));
    assertThat(balance.isNearlySettled()).isFalse();
    assertThat(balance.isSettled()).isFalse();
    solveByHand();
    branches[2].flow += 0.0004;
    // a tenth of all that is supplied, into node 3 and out of node 1
    assertThat(balance.imbalance()).isCloseTo(0.1, within(1.0e-6));
    assertThat(balance.residual(1.0e-11)).isGreaterThanOrEqualTo(0.1 - 1.0e-6);
  }

  @Test
  void what_is_no_number_is_no_solution() {
    solveByHand();
    assertThat(balance.isFinite()).isTrue();
    branches[1].flow = Double.NaN;
    assertThat(balance.isFinite()).isFalse();
    assertThat(balance.residual(1.0e-11)).isEqualTo(Double.POSITIVE_INFINITY);
    solveByHand();
    branches[1].slope = Double.POSITIVE_INFINITY;
    assertThat(balance.isFinite()).isFalse();
  }

  /** From pressures 100 Pa off, a whole step of Newton's method leads back to within what curves leave of it. */
  @Test
  void a_step_of_newtons_method_leads_to_the_solution() {
    solveByHand();
    double[] right = balance.pascals.clone();
    for (int node : new int[] {1, 2, 3}) {
      balance.pascals[node] -= 100.0 * node;
    }
    balance.evaluate();
    balance.solve();
    balance.damp(1.0);
    balance.confine();
    balance.advance(1.0, true);
    for (int node = 0; node < 4; node++) {
      assertThat(balance.pascals[node]).isCloseTo(right[node], within(2.0));
    }
    assertThat(branches[0].flow).isCloseTo(0.004, within(1.0e-6));
    assertThat(branches[1].flow).isCloseTo(-0.003, within(1.0e-6));
  }

  @Test
  void half_a_step_goes_half_the_way() {
    solveByHand();
    balance.pascals[3] -= 100.0;
    double from = balance.pascals[3];
    balance.evaluate();
    double missing = branches[2].left;
    balance.solve();
    balance.damp(0.5);
    balance.advance(0.5, true);
    assertThat(balance.pascals[3] - from).isCloseTo(50.0, within(1.0));
    balance.evaluate();
    assertThat(branches[2].left).isCloseTo(0.5 * missing, within(1.0));
  }

  @Test
  void no_pressure_is_led_below_the_atmosphere_or_above_the_highest_supply() {
    solveByHand();
    balance.pascals[2] = EIGHT - 1.0;
    balance.pascals[3] = ATMOSPHERE + 1.0;
    balance.evaluate();
    balance.solve();
    balance.damp(1.0e3);
    balance.confine();
    balance.advance(1.0, true);
    for (double pascals : balance.pascals) {
      assertThat(pascals).isBetween(ATMOSPHERE - 1.0e-6, EIGHT * (1.0 + 2.0e-9));
    }
  }

  @Test
  void air_stands_where_no_tool_takes_any() {
    solveByHand();
    assertThat(balance.stands()).isFalse();
    assertThat(balance.stopDeadLegs()).containsExactly(false, false, false, true);
    assertThat(balance.pascals[5]).isEqualTo(6.0e5);
    assertThat(branches[0].flow).isCloseTo(0.004, within(1.0e-12));
    assertThat(low.idle).as("it is the highest of its own").isFalse();
    FlowBalance off = balance(0.0);
    off.start();
    assertThat(off.stands()).isTrue();
    assertThat(off.stopDeadLegs()).containsExactly(true, true, true, true);
    assertThat(off.pascals).containsExactly(EIGHT, EIGHT, EIGHT, EIGHT, 6.0e5, 6.0e5);
  }

  @Test
  void the_highest_of_those_that_branches_join_is_the_highest() {
    SolverSupply[] supplies = {high, low};
    FlowLayout apart = new FlowLayout(6, supplies, branches);
    assertThat(apart.isHighest(high)).isTrue();
    assertThat(apart.isHighest(low)).as("nothing joins it to the other").isTrue();
    SolverBranch join = part(3, 5);
    SolverBranch[] joined = {branches[0], branches[1], branches[2], branches[3], join};
    FlowLayout one = new FlowLayout(6, supplies, joined);
    assertThat(one.isHighest(high)).isTrue();
    assertThat(one.isHighest(low)).isFalse();
  }

  @Test
  void jumps_lean_over_only_when_told_to() {
    assertThat(balance.leans()).isFalse();
    balance.lean(0.3);
    assertThat(balance.leans()).isTrue();
    balance.lean(SolverBranch.JUST);
    assertThat(balance.leans()).isFalse();
  }
}
