package org.airfit.network;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.run.Element;
import org.airfit.run.ToolDemand;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/** What becomes of a network: a steady flow everywhere, or no solution and why. */
public sealed interface NetworkResult extends Worked {

  /**
   * Handles both cases.
   *
   * @param <R> what is made of them
   * @param solved what to make of a steady flow
   * @param none what to make of no solution
   * @return what was made
   */
  <R> R fold(
      Function<? super Solved, ? extends R> solved, Function<? super NoSolution, ? extends R> none);

  /** {@return the warnings that go with it} */
  List<Caution> cautions();

  /**
   * The flow through one branch.
   *
   * @param name the branch
   * @param from the node the air comes from
   * @param to the node it goes to
   * @param massFlow the flow
   * @param inlet the pressure in front
   * @param outlet the pressure behind
   * @param chokes whether it lets no more through however low the pressure behind it
   * @param unsettled whether its flow stands at Re 2300, with a drop between the laminar and the turbulent one
   * @param warnings where its model is near or outside what it holds for
   * @param reached works out how the pressure behind follows from the flow
   */
  record BranchFlow(
      String name,
      String from,
      String to,
      MassFlow massFlow,
      AbsolutePressure inlet,
      AbsolutePressure outlet,
      boolean chokes,
      boolean unsettled,
      List<String> warnings,
      Worked reached) {

    private static final double LEAST_FLOW = 1.0e-30;

    static BranchFlow of(
        NetworkSolver.Branch branch, List<String> nodes, double[] pascals, AirState air) {
      boolean forward = branch.flow >= 0.0;
      int from = forward ? branch.from : branch.to;
      int to = forward ? branch.to : branch.from;
      // a drop below the last digit of the pressure may come out negative
      double behind = Math.min(pascals[to], pascals[from]);
      AbsolutePressure inlet = AbsolutePressure.ofPascals(pascals[from]);
      // what Newton leaves of no flow may be too small to have a friction factor
      double left = Math.abs(branch.flow) < LEAST_FLOW ? 0.0 : Math.abs(branch.flow);
      MassFlow flow = MassFlow.ofKilogramsPerSecond(left);
      Element.Outcome outcome = branch.element.solve(flow, air.at(inlet));
      return new BranchFlow(
          branch.element.name(),
          nodes.get(from),
          nodes.get(to),
          flow,
          inlet,
          AbsolutePressure.ofPascals(behind),
          branch.chokes,
          branch.held,
          outcome.warnings(),
          outcome.working());
    }

    /** {@return the pressure it takes} */
    public PressureDrop drop() {
      return inlet.dropTo(outlet);
    }
  }

  /**
   * What one supply gives.
   *
   * @param node its node
   * @param supply the supply
   * @param kilogramsPerSecond what it gives [kg/s]; negative where air runs back into it from a higher supply
   * @param exhausted whether it gives all it can
   */
  record SupplyFlow(String node, Supply supply, double kilogramsPerSecond, boolean exhausted) {}

  /**
   * What one tool gets.
   *
   * @param node its node
   * @param tool the tool
   * @param wanted the flow it wants: the part of its rated flow that it runs at
   * @param massFlow the flow it gets
   * @param atTool the pressure at its inlet as a gauge shows it
   */
  record ToolFlow(
      String node, ToolDemand tool, MassFlow wanted, MassFlow massFlow, GaugePressure atTool) {

    static ToolFlow of(
        String node,
        ToolDemand tool,
        double part,
        double flow,
        double pascals,
        AbsolutePressure atmosphere) {
      return new ToolFlow(
          node,
          tool,
          tool.rated().massFlow().times(part),
          MassFlow.ofKilogramsPerSecond(Math.max(0.0, flow)),
          GaugePressure.of(AbsolutePressure.ofPascals(pascals), atmosphere));
    }

    /** {@return whether it gets less than it wants, by more than a millionth} */
    public boolean isStarved() {
      return massFlow.kilogramsPerSecond() < wanted.kilogramsPerSecond() * (1.0 - 1.0e-6);
    }
  }

  /**
   * A steady flow.
   *
   * @param atmosphere the pressure against which gauges read
   * @param pressures the pressure at every node, by name
   * @param branches the flow through every branch, in the order they were added
   * @param supplies what every supply gives
   * @param tools what every tool gets, in the order they were added
   * @param imbalance the most that a node gains or loses over all that the tools take [-]
   * @param iterations the steps it took
   * @param cautions the warnings that go with it
   */
  record Solved(
      AbsolutePressure atmosphere,
      Map<String, AbsolutePressure> pressures,
      List<BranchFlow> branches,
      List<SupplyFlow> supplies,
      List<ToolFlow> tools,
      double imbalance,
      int iterations,
      List<Caution> cautions)
      implements NetworkResult {

    private static final Source BALANCE = Source.derived("balance of mass at a node");

    /**
     * Copies the collections.
     *
     * @param atmosphere the pressure against which gauges read
     * @param pressures the pressure at every node, by name
     * @param branches the flow through every branch, in the order they were added
     * @param supplies what every supply gives
     * @param tools what every tool gets, in the order they were added
     * @param imbalance the most that a node gains or loses over all that the tools take [-]
     * @param iterations the steps it took
     * @param cautions the warnings that go with it
     */
    public Solved {
      pressures = Collections.unmodifiableMap(new LinkedHashMap<>(pressures));
      branches = List.copyOf(branches);
      supplies = List.copyOf(supplies);
      tools = List.copyOf(tools);
      cautions = List.copyOf(cautions);
    }

    /**
     * Obtains the pressure at a node.
     *
     * @param node its name
     * @return the pressure
     * @throws IllegalArgumentException if there is no such node
     */
    public AbsolutePressure at(String node) {
      AbsolutePressure pressure = pressures.get(node);
      if (pressure == null) {
        throw new IllegalArgumentException("node must be one of the network, was \"" + node + "\"");
      }
      return pressure;
    }

    /**
     * Obtains the flow through a branch.
     *
     * @param name its name
     * @return the flow
     * @throws IllegalArgumentException if there is no such branch
     */
    public BranchFlow through(String name) {
      return branches.stream()
          .filter(branch -> branch.name().equals(name))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException(
              "branch must be one of the network, was \"" + name + "\""));
    }

    /** {@return the tools that get less than they want} */
    public List<ToolFlow> starved() {
      return tools.stream().filter(ToolFlow::isStarved).toList();
    }

    /** {@return the branches that choke} */
    public List<BranchFlow> choking() {
      return branches.stream().filter(BranchFlow::chokes).toList();
    }

    /** {@return all that the tools take} */
    public MassFlow taken() {
      return MassFlow.ofKilogramsPerSecond(tools.stream()
          .mapToDouble(tool -> tool.massFlow().kilogramsPerSecond())
          .sum());
    }

    @Override
    public <R> R fold(
        Function<? super Solved, ? extends R> solved,
        Function<? super NoSolution, ? extends R> none) {
      return solved.apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      Working.Builder working = Working.titled("Steady flow in the network")
          .note("Flows and pressures were found together by Newton's method in " + iterations
              + " steps; mass is out of balance by " + Digits.significant(imbalance, 2)
              + " of the whole flow. They are checked branch by branch and node by node.");
      supplies.forEach(supply -> {
        if (supply.kilogramsPerSecond() >= 0.0) {
          working.include(supply
              .supply()
              .working(MassFlow.ofKilogramsPerSecond(supply.kilogramsPerSecond()), units));
        }
      });
      for (BranchFlow branch : branches) {
        working.note(branch.name() + ": from " + branch.from() + " at "
            + branch.inlet().format(units.pressureUnit()) + " to " + branch.to() + " at "
            + branch.outlet().format(units.pressureUnit()));
        working.include(branch.reached().working(units));
        if (branch.chokes()) {
          working.note(branch.name() + " chokes: the pressure behind it lies lower.");
        }
        if (branch.unsettled()) {
          working.note(
              branch.name()
                  + " stands at Re 2300, where friction jumps: its drop lies between the laminar and the turbulent one.");
        }
      }
      pressures.keySet().forEach(node -> balance(working, node, units));
      return working.build();
    }

    private void balance(Working.Builder working, String node, UnitSystem units) {
      List<BranchFlow> in =
          branches.stream().filter(branch -> branch.to().equals(node)).toList();
      if (in.isEmpty() || supplies.stream().anyMatch(supply -> supply.node().equals(node))) {
        return;
      }
      List<Double> out = new ArrayList<>();
      branches.stream()
          .filter(branch -> branch.from().equals(node))
          .forEach(branch -> out.add(branch.massFlow().kilogramsPerSecond()));
      tools.stream()
          .filter(tool -> tool.node().equals(node))
          .forEach(tool -> out.add(tool.massFlow().kilogramsPerSecond()));
      if (out.isEmpty()) {
        return;
      }
      List<Term> given = new ArrayList<>();
      for (BranchFlow branch : in) {
        given.add(flow(given.size() + 1, branch.massFlow().kilogramsPerSecond(), 14, units));
      }
      String plus =
          given.stream().map(term -> "⟨" + term.symbol() + "⟩").collect(Collectors.joining(" + "));
      StringBuilder minus = new StringBuilder();
      double result = out.get(out.size() - 1);
      for (double other : out.subList(0, out.size() - 1)) {
        given.add(flow(given.size() + 1, other, 14, units));
        minus.append(" − ⟨").append(given.get(given.size() - 1).symbol()).append('⟩');
      }
      Term last = flow(given.size() + 1, result, 4, units);
      working.step(
          "Mass at " + node + ": what comes in, less what goes out before, is what goes out last",
          "⟨" + last.symbol() + "⟩ = " + plus + minus,
          "⟨" + last.symbol() + "⟩ = " + (plus + minus).replace('−', '-'),
          given,
          last,
          BALANCE);
    }

    private static Term flow(int number, double kilogramsPerSecond, int digits, UnitSystem units) {
      return units.massFlow("ṁ" + number, "\\dot m_{" + number + "}", kilogramsPerSecond, digits);
    }
  }

  /**
   * There is no steady flow, or none was found.
   *
   * @param reason why, in one sentence
   * @param nodes the nodes concerned, if any
   */
  record NoSolution(String reason, List<String> nodes) implements NetworkResult {

    /**
     * Copies the list.
     *
     * @param reason why, in one sentence
     * @param nodes the nodes concerned, if any
     */
    public NoSolution {
      nodes = List.copyOf(nodes);
    }

    @Override
    public <R> R fold(
        Function<? super Solved, ? extends R> solved,
        Function<? super NoSolution, ? extends R> none) {
      return none.apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("No steady flow in the network").note(reason).build();
    }

    @Override
    public List<Caution> cautions() {
      return List.of();
    }
  }
}
