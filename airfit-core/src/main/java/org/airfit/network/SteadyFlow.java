package org.airfit.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.run.ToolDemand;

/** Finds the steady flow of a plan: numbers its nodes for the {@link NetworkSolver}, and names what that finds. */
final class SteadyFlow {

  private final NetworkPlan plan;
  private final List<String> nodes;
  private final Map<String, Integer> numbers = new HashMap<>();
  private final int[] outletAt; // by outlet: its node
  private final AirState air;
  private final NodeOrder order;
  private final FlowLayout layout;

  /** Works out once what hangs on the plan alone. */
  SteadyFlow(NetworkPlan plan) {
    this.plan = plan;
    this.nodes = plan.nodes();
    nodes.forEach(node -> numbers.put(node, numbers.size()));
    this.outletAt =
        plan.outlets().stream().mapToInt(outlet -> number(outlet.node())).toArray();
    this.air = plan.supplies().values().iterator().next().still();
    SolverSupply[] supplies = supplies();
    SolverBranch[] branches = branches();
    boolean[] supplied = new boolean[nodes.size()];
    for (SolverSupply supply : supplies) {
      supplied[supply.node] = true;
    }
    this.order = new NodeOrder(supplied, branches);
    this.layout = new FlowLayout(nodes.size(), supplies, branches);
  }

  /** The steady flow with each tool taking a part of its rated flow. */
  static NetworkResult of(NetworkPlan plan, ToDoubleFunction<ToolDemand> partOfRated) {
    return new SteadyFlow(plan)
        .with(plan.outlets().stream()
            .map(NetworkPlan.Outlet::tool)
            .mapToDouble(partOfRated)
            .toArray());
  }

  private int number(String node) {
    return Objects.requireNonNull(numbers.get(node));
  }

  private SolverSupply[] supplies() {
    List<SolverSupply> supplies = new ArrayList<>();
    plan.supplies()
        .forEach((node, supply) ->
            supplies.add(new SolverSupply(number(node), supply, plan.open().contains(node))));
    return supplies.toArray(SolverSupply[]::new);
  }

  private SolverBranch[] branches() {
    double kelvins = air.temperature().kelvins();
    double viscosity = air.viscosity().pascalSeconds();
    return plan.branches().stream()
        .map(branch -> new SolverBranch(
            branch.element(),
            branch.isOneWay(),
            number(branch.from()),
            number(branch.to()),
            kelvins,
            viscosity))
        .toArray(SolverBranch[]::new);
  }

  /** The steady flow with the tools taking parts of their rated flows, outlet by outlet. */
  NetworkResult with(double[] parts) {
    return with(parts, 0);
  }

  /** The same, beginning with one of the solver's leans. */
  NetworkResult with(double[] parts, int first) {
    List<String> unfed =
        nodes.stream().filter(node -> !order.isFed(number(node))).toList();
    if (!unfed.isEmpty()) {
      return new NetworkResult.NoSolution(
          "No way leads from a supply to " + String.join(", ", unfed) + ".", unfed, plan);
    }
    List<List<ToolDemand>> toolsAt = new ArrayList<>();
    nodes.forEach(node -> toolsAt.add(new ArrayList<>()));
    for (int i = 0; i < parts.length; i++) {
      toolsAt.get(outletAt[i]).add(plan.outlets().get(i).tool().withLoad(parts[i]));
    }
    SolverTools tools = new SolverTools(plan.atmosphere().pascals(), toolsAt);
    NetworkSolver solver = new NetworkSolver(
        new FlowBalance(plan.atmosphere().pascals(), layout, supplies(), tools, order, branches()),
        first);
    return solver.solve()
        ? solved(solver, tools, parts)
        : new NetworkResult.NoSolution(
            "The search for a steady flow came to no end; the flows and pressures that it reached "
                + "miss the laws of the network by "
                + Digits.significant(solver.residual, 2) + " of the whole.",
            List.of(),
            plan);
  }

  private NetworkResult solved(NetworkSolver solver, SolverTools tools, double[] parts) {
    FlowBalance found = solver.balance;
    Map<String, AbsolutePressure> pressures = new LinkedHashMap<>();
    nodes.forEach(
        node -> pressures.put(node, AbsolutePressure.ofPascals(found.pascals[number(node)])));
    List<BranchFlow> flows = new ArrayList<>();
    for (int k = 0; k < found.branches.length; k++) {
      flows.add(BranchFlow.of(
          plan.branches().get(k),
          found.branches[k],
          solver.dead[k],
          found.waiting[k],
          nodes,
          found.pascals,
          air));
    }
    List<SupplyFlow> given = new ArrayList<>();
    for (SolverSupply supply : found.supplies) {
      String node = nodes.get(supply.node);
      given.add(SupplyFlow.of(node, Objects.requireNonNull(plan.supplies().get(node)), supply));
    }
    List<ToolFlow> taken = new ArrayList<>();
    int[] next = new int[nodes.size()];
    for (int i = 0; i < parts.length; i++) {
      int node = outletAt[i];
      taken.add(ToolFlow.of(
          plan,
          i,
          parts[i],
          tools.flow(node, next[node]++, found.pascals[node]),
          found.pascals[node]));
    }
    return new NetworkResult.Solved(
        plan,
        pressures,
        flows,
        given,
        taken,
        new NetworkResult.Solved.Search(
            solver.residual, found.imbalance(), solver.iterations, solver.lean));
  }
}
