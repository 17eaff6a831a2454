package org.airfit.network;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.LossModels;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.run.ToolDemand;

/**
 * A network kept beside what is built of it, so that an answer can be held against every law without the solver: each
 * branch by {@link org.airfit.line.LossModel#loss} or {@link FlowCapacity#passage} at the flow and the pressure in
 * front that the answer states, each node by its sum, each supply and each tool by its own law.
 */
final class NetworkLaws {

  /** Flows as near as this count as the same: at the jump of friction and where a branch chokes [-]. */
  private static final double DIGITS = 1.0e-11;

  private final AbsolutePressure atmosphere;
  private final Network.Builder builder;
  private final Map<String, Conduit> lines = new LinkedHashMap<>();
  private final Map<String, FlowCapacity> parts = new LinkedHashMap<>();
  private double highest;

  NetworkLaws(AbsolutePressure atmosphere) {
    this.atmosphere = atmosphere;
    this.builder = Network.at(atmosphere);
  }

  NetworkLaws supply(String node, Supply supply) {
    builder.supply(node, supply);
    highest = Math.max(highest, supply.pascals(0.0));
    return this;
  }

  NetworkLaws line(String name, String from, String to, Conduit conduit) {
    builder.line(name, from, to, conduit);
    lines.put(name, conduit);
    return this;
  }

  NetworkLaws part(String name, String from, String to, FlowCapacity capacity) {
    builder.part(name, from, to, capacity);
    parts.put(name, capacity);
    return this;
  }

  NetworkLaws tool(String node, ToolDemand tool) {
    builder.tool(node, tool);
    return this;
  }

  Network build() {
    return builder.build();
  }

  /** The pressure [Pa] behind a branch at a flow [kg/s], 0 where it does not pass. */
  private double behind(String name, double flow, AirState inlet) {
    if (flow == 0.0) {
      return inlet.pressure().pascals();
    }
    MassFlow passing = MassFlow.ofKilogramsPerSecond(flow);
    Conduit conduit = lines.get(name);
    return conduit != null
        ? LossModels.isothermal()
            .loss(conduit, passing, inlet)
            .<Double>fold(flowing -> flowing.outlet().pressure().pascals(), choked -> 0.0)
        : Objects.requireNonNull(parts.get(name))
            .passage(passing, inlet)
            .<Double>fold(passed -> passed.outlet().pascals(), choked -> 0.0);
  }

  /** The largest miss of any law: pressures over the highest supply's, balances over all that is given [-]. */
  double miss(NetworkResult.Solved solved) {
    double most = 0.0;
    Map<String, Double> sums = new LinkedHashMap<>();
    solved.pressures().keySet().forEach(node -> sums.put(node, 0.0));
    double given = 0.0;
    for (BranchFlow branch : solved.branches()) {
      double flow = branch.massFlow().kilogramsPerSecond();
      AirState inlet = solved.supplies().get(0).supply().still().at(solved.at(branch.from()));
      double outlet = solved.at(branch.to()).pascals();
      double above = behind(branch.name(), flow * (1.0 - DIGITS), inlet);
      double below = behind(branch.name(), flow * (1.0 + DIGITS), inlet);
      most = Math.max(most, Math.max(outlet - above, below - outlet) / highest);
      sums.merge(branch.from(), -flow, Double::sum);
      sums.merge(branch.to(), flow, Double::sum);
    }
    for (SupplyFlow supply : solved.supplies()) {
      double flow = supply.given().kilogramsPerSecond();
      double node = solved.at(supply.node()).pascals();
      double own = supply.supply().pascals(flow);
      most = Math.max(most, (flow > 0.0 ? Math.abs(own - node) : own - node) / highest);
      sums.merge(supply.node(), flow, Double::sum);
      given += flow;
    }
    for (ToolFlow tool : solved.tools()) {
      double flow = tool.massFlow().kilogramsPerSecond();
      double wanted = tool.tool().flowAt(solved.at(tool.node()), atmosphere).kilogramsPerSecond();
      // within a thousandth of a bar of the atmosphere a tool starves: it takes what there is
      if (solved.at(tool.node()).pascals() > atmosphere.pascals() + 100.0) {
        most = Math.max(most, Math.abs(flow - wanted) / Math.max(wanted, 1.0e-30));
      }
      sums.merge(tool.node(), -flow, Double::sum);
    }
    for (double sum : sums.values()) {
      most = Math.max(most, Math.abs(sum) / Math.max(given, 1.0e-9));
    }
    return most;
  }
}
