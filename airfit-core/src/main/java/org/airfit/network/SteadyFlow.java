package org.airfit.network;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.airfit.air.AirState;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.run.ToolDemand;
import org.jspecify.annotations.Nullable;

/** Finds the steady flow of a plan: numbers its nodes for the {@link NetworkSolver}, and names what that finds. */
final class SteadyFlow {

  private final NetworkPlan plan;
  private final double[] parts; // of the rated flow, by outlet
  private final List<String> nodes;
  private final Map<String, Integer> numbers = new LinkedHashMap<>();
  private final AirState air;

  private SteadyFlow(NetworkPlan plan, double[] parts) {
    this.plan = plan;
    this.parts = parts;
    this.nodes = plan.nodes();
    nodes.forEach(node -> numbers.put(node, numbers.size()));
    this.air = plan.supplies().values().iterator().next().still();
  }

  /** The steady flow with each tool taking a part of its rated flow. */
  static NetworkResult of(NetworkPlan plan, ToDoubleFunction<ToolDemand> partOfRated) {
    return of(
        plan,
        plan.outlets().stream()
            .map(NetworkPlan.Outlet::tool)
            .mapToDouble(partOfRated)
            .toArray());
  }

  /** The same with the parts given outlet by outlet. */
  static NetworkResult of(NetworkPlan plan, double[] parts) {
    return new SteadyFlow(plan, parts).solve();
  }

  private int number(String node) {
    return Objects.requireNonNull(numbers.get(node));
  }

  private NetworkResult solve() {
    @Nullable Supply[] supplyAt = new Supply[nodes.size()];
    boolean[] supplied = new boolean[nodes.size()];
    plan.supplies().forEach((node, supply) -> {
      supplyAt[number(node)] = supply;
      supplied[number(node)] = true;
    });
    List<List<ToolDemand>> toolsAt = new ArrayList<>();
    nodes.forEach(node -> toolsAt.add(new ArrayList<>()));
    for (int i = 0; i < parts.length; i++) {
      NetworkPlan.Outlet outlet = plan.outlets().get(i);
      toolsAt.get(number(outlet.node())).add(outlet.tool().withLoad(parts[i]));
    }
    double kelvins = air.temperature().kelvins();
    double viscosity = air.viscosity().pascalSeconds();
    SolverBranch[] branches = plan.branches().stream()
        .map(branch -> new SolverBranch(
            branch.element(), number(branch.from()), number(branch.to()), kelvins, viscosity))
        .toArray(SolverBranch[]::new);
    NodeOrder order = new NodeOrder(supplied, branches);
    List<String> unfed =
        nodes.stream().filter(node -> !order.isFed(number(node))).toList();
    if (!unfed.isEmpty()) {
      return new NetworkResult.NoSolution(
          "No way leads from a supply to " + String.join(", ", unfed) + ".", unfed);
    }
    NetworkSolver solver =
        new NetworkSolver(plan.atmosphere().pascals(), supplyAt, toolsAt, order, branches);
    return solver.solve()
        ? solved(solver)
        : new NetworkResult.NoSolution(
            "The search for a steady flow came to no end; mass is out of balance by a share of "
                + solver.imbalance + " of the flow.",
            List.of());
  }

  private NetworkResult solved(NetworkSolver solver) {
    Map<String, AbsolutePressure> pressures = new LinkedHashMap<>();
    nodes.forEach(
        node -> pressures.put(node, AbsolutePressure.ofPascals(solver.pascals[number(node)])));
    List<BranchFlow> flows = new ArrayList<>();
    for (int k = 0; k < solver.branches.length; k++) {
      flows.add(
          BranchFlow.of(plan.branches().get(k), solver.branches[k], nodes, solver.pascals, air));
    }
    List<SupplyFlow> given = new ArrayList<>();
    plan.supplies()
        .forEach((node, supply) -> given.add(SupplyFlow.of(
            node, supply, solver.supplied[number(node)], solver.exhausted[number(node)])));
    List<ToolFlow> taken = new ArrayList<>();
    int[] next = new int[nodes.size()];
    for (int i = 0; i < parts.length; i++) {
      NetworkPlan.Outlet outlet = plan.outlets().get(i);
      int node = number(outlet.node());
      taken.add(ToolFlow.of(
          outlet,
          parts[i],
          solver.demand(node, next[node]++),
          solver.pascals[node],
          plan.atmosphere()));
    }
    return new NetworkResult.Solved(
        plan.atmosphere(), pressures, flows, given, taken, solver.imbalance, solver.iterations);
  }
}
