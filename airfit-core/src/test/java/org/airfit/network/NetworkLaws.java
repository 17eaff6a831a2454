package org.airfit.network;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.LossModels;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
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
  private final Map<String, RegulatorElement> regulators = new LinkedHashMap<>();
  private final Map<String, Double> droops = new LinkedHashMap<>(); // [Pa/(kg/s)]
  private final Set<String> oneWay = new HashSet<>();
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

  NetworkLaws checkValve(String name, String from, String to, FlowCapacity capacity) {
    builder.checkValve(name, from, to, capacity);
    parts.put(name, capacity);
    oneWay.add(name);
    return this;
  }

  /** A regulator with a valve, set to so much, that holds so much less for each kg/s. */
  NetworkLaws regulator(
      String name, String from, String to, FlowCapacity valve, AbsolutePressure set, double droop) {
    RegulatorElement held = RegulatorElement.of(valve, set)
        .withDroop(PressureDrop.ofPascals(0.01 * droop), DrawnNetworks.air(0.01));
    builder.regulator(name, from, to, held);
    parts.put(name, valve);
    regulators.put(name, held);
    droops.put(name, droop);
    oneWay.add(name);
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
    FlowCapacity part = parts.get(name);
    double open = part == null
        ? behindLine(name, flow, inlet)
        : Math.max(
            0.0,
            flow == 0.0
                ? inlet.pressure().pascals() - part.crackingPressure().pascals()
                : part.passage(MassFlow.ofKilogramsPerSecond(flow), inlet)
                    .<Double>fold(passed -> passed.outlet().pascals(), choked -> 0.0));
    RegulatorElement regulator = regulators.get(name);
    return regulator == null
        ? open
        : Math.min(
            open, regulator.set().pascals() - flow * Objects.requireNonNull(droops.get(name)));
  }

  private double behindLine(String name, double flow, AirState inlet) {
    return flow == 0.0
        ? inlet.pressure().pascals()
        : LossModels.isothermal()
            .loss(
                Objects.requireNonNull(lines.get(name)), MassFlow.ofKilogramsPerSecond(flow), inlet)
            .<Double>fold(flowing -> flowing.outlet().pressure().pascals(), choked -> 0.0);
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
      // what is shut may have any higher pressure behind it
      double over = oneWay.contains(branch.name()) && flow == 0.0 ? 0.0 : outlet - above;
      most = Math.max(most, Math.max(over, below - outlet) / highest);
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
