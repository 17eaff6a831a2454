package org.airfit.network;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
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

  /**
   * {@return the warnings that go with it: those of supplies and branches, then those of the line and of the tools,
   * with the names of the tools that they speak of, or "every tool"; last, that codes and makers come first}
   */
  default List<Caution> cautions() {
    return cautions(UnitSystem.SI);
  }

  /**
   * Tells the same warnings with their numbers in other units.
   *
   * @param units the units
   * @return the warnings
   */
  List<Caution> cautions(UnitSystem units);

  /**
   * A steady flow.
   *
   * <p>This class is immutable, thread-safe and value-based.
   */
  final class Solved implements NetworkResult {

    /** What laws are missed by below this is rounding, other on every machine; it is not told. */
    private static final double ROUNDING = 1.0e-12;

    private static final Source BALANCE = Source.derived("balance of mass at a node");

    /** Below this part of all that the tools take, a flow is as small as what the solver leaves out of balance [-]. */
    private static final double LEAST_SHARE = 1.0e-6;

    private record Values(
        NetworkPlan plan,
        Map<String, AbsolutePressure> pressures,
        List<BranchFlow> branches,
        List<SupplyFlow> supplies,
        List<ToolFlow> tools,
        Search search) {}

    /**
     * How the solution was found.
     *
     * @param residual how far it is from what a network obeys [-]
     * @param imbalance the most that a node gains or loses [-]
     * @param iterations the steps it took
     * @param lean by how much vertical lines leaned over at first [-]
     */
    record Search(double residual, double imbalance, int iterations, double lean) {}

    private final Values values;

    Solved(
        NetworkPlan plan,
        Map<String, AbsolutePressure> pressures,
        List<BranchFlow> branches,
        List<SupplyFlow> supplies,
        List<ToolFlow> tools,
        Search search) {
      this.values = new Values(
          plan,
          Collections.unmodifiableMap(new LinkedHashMap<>(pressures)),
          List.copyOf(branches),
          List.copyOf(supplies),
          List.copyOf(tools),
          search);
    }

    /** {@return the pressure against which gauges read} */
    public AbsolutePressure atmosphere() {
      return values.plan.atmosphere();
    }

    /** {@return the pressure at every node, by name} */
    public Map<String, AbsolutePressure> pressures() {
      return values.pressures;
    }

    /** {@return the flow through every branch, in the order they were added} */
    public List<BranchFlow> branches() {
      return values.branches;
    }

    /** {@return what every supply gives} */
    public List<SupplyFlow> supplies() {
      return values.supplies;
    }

    /** {@return what every tool gets, in the order they were added} */
    public List<ToolFlow> tools() {
      return values.tools;
    }

    /**
     * Tells how far the answer is from what a network obeys, evaluated at the answer: the largest of all misses.
     *
     * <p>Of a branch: the pressure behind it against its law at its flow, over the highest pressure of a supply. At Re
     * 2300, where friction jumps, every loss between the laminar and the turbulent one obeys the law, where a branch
     * chokes every pressure behind below that at which it does, and where a check valve or a regulator is shut every
     * pressure behind above that which it leaves; flows that differ by 1e-11 count as the same. Of a
     * supply: its pressure against its law, likewise. Of a node: what it gains or loses, over all that is supplied.
     *
     * @return the residual [-], at most 1e-9
     */
    public double residual() {
      return values.search.residual;
    }

    /** {@return the most that a node gains or loses over all that is supplied [-]} */
    public double imbalance() {
      return values.search.imbalance;
    }

    /** {@return the steps it took} */
    public int iterations() {
      return values.search.iterations;
    }

    /** {@return by how much of a flow the vertical lines of laws leaned over at first, on the way to it [-]} */
    double lean() {
      return values.search.lean;
    }

    /** {@return the supplies that give nothing because a higher one keeps their non-return valves shut} */
    public List<SupplyFlow> idleSupplies() {
      return values.supplies.stream().filter(SupplyFlow::idle).toList();
    }

    /**
     * {@return the branches without flow, beyond which lies no tool that runs and no supply: the air in them stands,
     * water collects there, and where they are no longer needed they are best cut off}
     */
    public List<BranchFlow> deadLegs() {
      return values.branches.stream().filter(BranchFlow::dead).toList();
    }

    /** {@return the branches without flow that lead to a supply which is idle} */
    public List<BranchFlow> standingBy() {
      return values.branches.stream().filter(BranchFlow::standsBy).toList();
    }

    /** {@return the check valves and regulators that are shut} */
    public List<BranchFlow> shut() {
      return values.branches.stream().filter(BranchFlow::shut).toList();
    }

    @Override
    public List<Caution> cautions(UnitSystem units) {
      Set<Caution> all = new LinkedHashSet<>();
      all.add(Caution.MORE_SUPPLY_PRESSURE);
      values.supplies.forEach(supply -> supply.supply().still().caution(units).ifPresent(all::add));
      values.branches.forEach(branch -> all.addAll(branch.cautions()));
      all.addAll(WorkCautions.of(values.plan, units));
      return List.copyOf(all);
    }

    /**
     * Obtains the pressure at a node.
     *
     * @param node its name
     * @return the pressure
     * @throws IllegalArgumentException if there is no such node
     */
    public AbsolutePressure at(String node) {
      AbsolutePressure pressure = values.pressures.get(Objects.requireNonNull(node, "node"));
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
      Objects.requireNonNull(name, "name");
      return values.branches.stream()
          .filter(branch -> branch.name().equals(name))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException(
              "branch must be one of the network, was \"" + name + "\""));
    }

    /** {@return the tools that get less than they want} */
    public List<ToolFlow> starved() {
      return values.tools.stream().filter(ToolFlow::isStarved).toList();
    }

    /** {@return the branches that choke} */
    public List<BranchFlow> choking() {
      return values.branches.stream().filter(BranchFlow::chokes).toList();
    }

    /** {@return all that the tools take} */
    public MassFlow taken() {
      return MassFlow.ofKilogramsPerSecond(values.tools.stream()
          .mapToDouble(tool -> tool.massFlow().kilogramsPerSecond())
          .sum());
    }

    @Override
    public <R> R fold(
        Function<? super Solved, ? extends R> solved,
        Function<? super NoSolution, ? extends R> none) {
      Objects.requireNonNull(none, "none");
      return Objects.requireNonNull(solved, "solved").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      Working.Builder working = Working.titled("Steady flow of air in the network", units)
          .note("Flows and pressures were found together by Newton's method in "
              + values.search.iterations
              + " steps. Evaluated at the answer, no branch misses its law and no node its balance by more than "
              + Digits.significant(Math.max(values.search.residual, ROUNDING), 2)
              + " of the whole.");
      for (SupplyFlow supply : values.supplies) {
        if (supply.idle()) {
          working.note(supply.node() + " gives nothing: its node stands at "
              + at(supply.node()).format(units.pressureUnit())
              + ", not below its own pressure, and its non-return valve is shut.");
        } else if (supply.takenBack().kilogramsPerSecond() > 0.0) {
          working.note(supply.node() + " has no non-return valve: "
              + supply.takenBack().format(units.massFlowUnit()) + " flow back into it.");
        } else {
          working.include(supply.supply().working(supply.given(), units));
        }
      }
      if (!deadLegs().isEmpty()) {
        working.note("No air flows through "
            + String.join(", ", deadLegs().stream().map(BranchFlow::name).toList())
            + ": no tool that runs and no supply lies beyond (dead legs).");
      }
      if (!standingBy().isEmpty()) {
        working.note("No air flows through "
            + String.join(", ", standingBy().stream().map(BranchFlow::name).toList())
            + ": the supply beyond is idle.");
      }
      for (BranchFlow branch : values.branches) {
        if (branch.dead() || branch.standsBy()) {
          continue;
        }
        if (branch.shut()) {
          working.note(branch.name() + " is shut: behind it, at " + branch.to() + ", stand "
              + branch.outlet().format(units.pressureUnit()) + ", and in front "
              + branch.inlet().format(units.pressureUnit()) + ".");
          continue;
        }
        working.note(branch.name() + ": from " + branch.from() + " at "
            + branch.inlet().format(units.pressureUnit()) + " to " + branch.to() + " at "
            + branch.outlet().format(units.pressureUnit()));
        working.include(branch.working(units));
        if (branch.chokes()) {
          working.note(branch.name() + " chokes: the pressure behind it lies lower.");
        }
        if (branch.unsettled()) {
          working.note(branch.name()
              + " stands at Re 2300, where friction jumps: its drop lies between the laminar"
              + " and the turbulent one.");
        }
      }
      values.pressures.keySet().forEach(node -> balance(working, node, units));
      return working
          .answer("The flow is steady: the tools take " + taken().format(units.massFlowUnit())
              + " together.")
          .build();
    }

    /** Mass at a node without a supply: what comes in, less what goes out before, is the largest flow that goes out. */
    private void balance(Working.Builder working, String node, UnitSystem units) {
      if (values.supplies.stream().anyMatch(supply -> supply.node().equals(node))) {
        return;
      }
      List<Double> in = flows(values.branches.stream()
          .filter(branch -> branch.to().equals(node))
          .map(BranchFlow::massFlow));
      List<Double> out = flows(Stream.concat(
          values.branches.stream()
              .filter(branch -> branch.from().equals(node))
              .map(BranchFlow::massFlow),
          values.tools.stream().filter(tool -> tool.node().equals(node)).map(ToolFlow::massFlow)));
      if (in.isEmpty()
          || out.isEmpty()
          || out.get(0) <= LEAST_SHARE * taken().kilogramsPerSecond()) {
        return;
      }
      Working.Builder mass = Working.titled("Mass at " + node, units);
      List<Symbol> symbols = new ArrayList<>();
      symbols.add(flow(in.size() + out.size()));
      StringBuilder sum = new StringBuilder();
      for (int i = 0; i < in.size() + out.size() - 1; i++) {
        Symbol symbol = flow(i + 1);
        symbols.add(symbol);
        sum.append(i == 0 ? "" : i < in.size() ? " + " : " − ")
            .append('⟨')
            .append(symbol.text())
            .append('⟩');
        mass.given(symbol, i < in.size() ? in.get(i) : out.get(i - in.size() + 1), 4);
      }
      working.include(mass.step(
              Formula.of(
                  "What comes in, less the other flows that go out, is the largest that goes out",
                  "⟨" + symbols.get(0).text() + "⟩ = " + sum,
                  BALANCE,
                  symbols.toArray(Symbol[]::new)),
              out.get(0),
              4)
          .answer(symbols.get(0))
          .build());
    }

    /** The largest first. */
    private static List<Double> flows(Stream<MassFlow> flows) {
      return flows
          .map(MassFlow::kilogramsPerSecond)
          .sorted(Comparator.reverseOrder())
          .toList();
    }

    private static Symbol flow(int number) {
      return Symbol.of("ṁ" + number, "\\dot m_{" + number + "}", ValueKind.MASS_FLOW);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Solved that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
      return values.hashCode();
    }

    /** {@return the answer in one line, such as "steady flow of 0.05 kg/s to 3 tools"} */
    @Override
    public String toString() {
      return "steady flow of " + taken().format(MassFlowUnit.KILOGRAM_PER_SECOND) + " to "
          + values.tools.size() + " tools";
    }
  }

  /**
   * There is no steady flow, or none was found.
   *
   * <p>This class is immutable, thread-safe and value-based.
   */
  final class NoSolution implements NetworkResult {

    private final String reason;
    private final List<String> nodes;
    private final NetworkPlan plan;

    NoSolution(String reason, List<String> nodes, NetworkPlan plan) {
      this.reason = reason;
      this.nodes = List.copyOf(nodes);
      this.plan = plan;
    }

    /** {@return why, in one sentence} */
    public String reason() {
      return reason;
    }

    /** {@return the nodes concerned, if any} */
    public List<String> nodes() {
      return nodes;
    }

    @Override
    public <R> R fold(
        Function<? super Solved, ? extends R> solved,
        Function<? super NoSolution, ? extends R> none) {
      Objects.requireNonNull(solved, "solved");
      return Objects.requireNonNull(none, "none").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("No steady flow of air in the network", units)
          .answer(reason)
          .build();
    }

    @Override
    public List<Caution> cautions(UnitSystem units) {
      return WorkCautions.of(plan, units);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof NoSolution that
          && reason.equals(that.reason)
          && nodes.equals(that.nodes)
          && plan.equals(that.plan);
    }

    @Override
    public int hashCode() {
      return Objects.hash(reason, nodes, plan);
    }

    /** {@return why there is none} */
    @Override
    public String toString() {
      return reason;
    }
  }
}
