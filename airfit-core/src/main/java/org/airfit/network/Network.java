package org.airfit.network;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Volume;
import org.airfit.run.Element;
import org.airfit.run.Run;
import org.airfit.run.ToolDemand;
import org.airfit.safety.Caution;
import org.jspecify.annotations.Nullable;

/**
 * Supplies, lines, parts and tools joined at nodes: a header with branches, a ring, or any mixture.
 *
 * <p>A branch obeys the same law as an {@link Element} of a {@link Run}. The flow settles where mass is conserved at every node and every branch has the drop of its flow. Lines and parts let
 * air through in either direction. The air has the temperature of the supply everywhere; a line by an adiabatic model begins with it again.
 *
 * <p>A tool that is fed from a node with less than it wants takes what there is, down to the atmosphere: the result says that it starves.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Network {

  private record Joint(String from, String to, Element element) {}

  private record Outlet(String node, ToolDemand tool) {}

  private final AbsolutePressure atmosphere;
  private final Map<String, Supply> supplies;
  private final List<Joint> joints;
  private final List<Outlet> outlets;
  private final List<String> nodes;

  private Network(Builder builder) {
    atmosphere = builder.atmosphere;
    supplies = new LinkedHashMap<>(builder.supplies);
    joints = List.copyOf(builder.joints);
    outlets = List.copyOf(builder.outlets);
    Set<String> all = new LinkedHashSet<>(supplies.keySet());
    joints.forEach(joint -> {
      all.add(joint.from);
      all.add(joint.to);
    });
    outlets.forEach(outlet -> all.add(outlet.node));
    nodes = List.copyOf(all);
  }

  /**
   * Starts a network.
   *
   * @param atmosphere the pressure against which gauges read and into which tools let their air out
   * @return a builder without branches
   */
  public static Builder at(AbsolutePressure atmosphere) {
    return new Builder(Objects.requireNonNull(atmosphere, "atmosphere"));
  }

  /** {@return the names of the nodes, those of the supplies first} */
  public List<String> nodes() {
    return nodes;
  }

  /** {@return what its pipes, tubes and hoses hold, which stores air as a receiver does} */
  public Volume pipeVolume() {
    return Volume.ofCubicMetres(joints.stream()
        .map(Joint::element)
        .filter(Element.Line.class::isInstance)
        .map(Element.Line.class::cast)
        .mapToDouble(line ->
            line.conduit().area().squareMetres() * line.conduit().length().metres())
        .sum());
  }

  /**
   * Obtains this network with a branch closed off.
   *
   * @param name the name of a branch
   * @return this without it
   * @throws IllegalArgumentException if no branch has that name
   */
  public Network without(String name) {
    Builder builder = new Builder(atmosphere);
    builder.supplies.putAll(supplies);
    joints.stream()
        .filter(joint -> !joint.element.name().equals(name))
        .forEach(builder.joints::add);
    builder.outlets.addAll(outlets);
    if (builder.joints.size() == joints.size()) {
      throw new IllegalArgumentException(
          "name must be that of a branch of this network, was \"" + name + "\"");
    }
    return new Network(builder);
  }

  /**
   * Obtains this network with another pipe, tube or hose in the place of one.
   *
   * @param name the name of a branch that is a line
   * @param conduit what to put in its place, by the same model
   * @return this with {@code conduit}
   * @throws IllegalArgumentException if no line has that name
   */
  public Network replacing(String name, Conduit conduit) {
    return replacing(
        name,
        "line",
        element -> element instanceof Element.Line line
            ? Optional.of(new Element.Line(name, conduit, line.model()))
            : Optional.empty());
  }

  /**
   * Obtains this network with another coupler, valve, filter or the like in the place of one.
   *
   * @param name the name of a branch that is a part
   * @param capacity what to put in its place; without cracking pressure
   * @return this with {@code capacity}
   * @throws IllegalArgumentException if no part has that name, or it is a check valve
   */
  public Network replacing(String name, FlowCapacity capacity) {
    requireNoCheckValve(name, capacity);
    return replacing(
        name,
        "part",
        element -> element instanceof Element.Part
            ? Optional.of(new Element.Part(name, capacity))
            : Optional.empty());
  }

  private Network replacing(String name, String kind, Function<Element, Optional<Element>> other) {
    Builder builder = new Builder(atmosphere);
    builder.supplies.putAll(supplies);
    builder.outlets.addAll(outlets);
    boolean found = false;
    for (Joint joint : joints) {
      Optional<Element> instead =
          joint.element.name().equals(name) ? other.apply(joint.element) : Optional.empty();
      found |= instead.isPresent();
      builder.joints.add(new Joint(joint.from, joint.to, instead.orElse(joint.element)));
    }
    if (!found) {
      throw new IllegalArgumentException(
          "name must be that of a " + kind + " of this network, was \"" + name + "\"");
    }
    return new Network(builder);
  }

  private static void requireNoCheckValve(String name, FlowCapacity capacity) {
    if (capacity.crackingPressure().pascals() > 0.0) {
      throw new IllegalArgumentException("cracking pressure of " + name
          + " must be 0 Pa in a network, was " + capacity.crackingPressure()
          + "; check valves are not solved for");
    }
  }

  /**
   * Finds the steady flow with every tool running at once.
   *
   * @return the flow everywhere, or why there is none
   */
  public NetworkResult solve() {
    return solve(ToolDemand::load);
  }

  /**
   * Finds the steady flow with every tool taking its mean flow: load times duty.
   *
   * <p>The mean of the pressures is lower than the pressure at the mean flows, as losses grow with the square of the flow; {@link #simulate} shows by how much.
   *
   * @return the flow everywhere, or why there is none
   */
  public NetworkResult solveMean() {
    return solve(ToolDemand::useFactor);
  }

  /**
   * Draws at random which tools run, each with its duty, and solves again and again.
   *
   * <p>Tools run independently of each other. The same seed gives the same answer.
   *
   * @param seed where the random numbers begin
   * @param trials how often, in [1, 100000]
   * @return what came of it
   * @throws IllegalArgumentException if {@code trials} is out of range
   */
  public NetworkSimulation simulate(long seed, int trials) {
    if (trials < 1 || trials > 100_000) {
      throw new IllegalArgumentException("trials must be in [1, 100000], was " + trials);
    }
    Random random = new Random(seed);
    NetworkSimulation.Tally tally = new NetworkSimulation.Tally(seed, outlets.size());
    for (int i = 0; i < trials; i++) {
      boolean[] runs = new boolean[outlets.size()];
      IdentityHashMap<ToolDemand, Double> parts = new IdentityHashMap<>();
      for (int k = 0; k < runs.length; k++) {
        ToolDemand tool = outlets.get(k).tool;
        runs[k] = random.nextDouble() < tool.duty();
        parts.put(tool, runs[k] ? tool.load() : 0.0);
      }
      tally.add(runs, solve(parts::get));
    }
    return tally.finished();
  }

  private NetworkResult solve(ToDoubleFunction<ToolDemand> partOfRated) {
    Map<String, Integer> numbers = new LinkedHashMap<>();
    nodes.forEach(node -> numbers.put(node, numbers.size()));
    @Nullable Supply[] supplyAt = new Supply[nodes.size()];
    supplies.forEach((node, supply) -> supplyAt[number(numbers, node)] = supply);
    List<List<ToolDemand>> toolsAt = new ArrayList<>();
    nodes.forEach(node -> toolsAt.add(new ArrayList<>()));
    outlets.forEach(outlet -> toolsAt.get(number(numbers, outlet.node)).add(outlet.tool));
    double[][] parts = toolsAt.stream()
        .map(tools -> tools.stream().mapToDouble(partOfRated).toArray())
        .toArray(double[][]::new);
    AirState air = supplies.values().iterator().next().still();
    NetworkSolver.Branch[] branches = joints.stream()
        .map(joint -> new NetworkSolver.Branch(
            joint.element, number(numbers, joint.from), number(numbers, joint.to), air))
        .toArray(NetworkSolver.Branch[]::new);
    NetworkSolver solver = new NetworkSolver(air, atmosphere, supplyAt, toolsAt, parts, branches);
    List<String> unfed = unfed(solver);
    if (!unfed.isEmpty()) {
      return new NetworkResult.NoSolution(
          "No way leads from a supply to " + String.join(", ", unfed) + ".", unfed);
    }
    if (!solver.solve()) {
      return new NetworkResult.NoSolution(
          "The search for a steady flow came to no end; mass is out of balance by a share of "
              + solver.imbalance + " of the flow.",
          List.of());
    }
    return solved(solver, air, toolsAt, parts);
  }

  private static int number(Map<String, Integer> numbers, String node) {
    return Objects.requireNonNull(numbers.get(node));
  }

  private List<String> unfed(NetworkSolver solver) {
    int[] feeding = new int[nodes.size()];
    solver.sequence(feeding);
    List<String> unfed = new ArrayList<>();
    for (int i = 0; i < feeding.length; i++) {
      if (feeding[i] == -2) {
        unfed.add(nodes.get(i));
      }
    }
    return unfed;
  }

  private NetworkResult solved(
      NetworkSolver solver, AirState air, List<List<ToolDemand>> toolsAt, double[][] parts) {
    Map<String, AbsolutePressure> pressures = new LinkedHashMap<>();
    for (int i = 0; i < nodes.size(); i++) {
      pressures.put(nodes.get(i), AbsolutePressure.ofPascals(solver.pascals[i]));
    }
    List<NetworkResult.BranchFlow> flows = new ArrayList<>();
    for (NetworkSolver.Branch branch : solver.branches) {
      flows.add(NetworkResult.BranchFlow.of(branch, nodes, solver.pascals, air));
    }
    List<NetworkResult.SupplyFlow> given = new ArrayList<>();
    List<NetworkResult.ToolFlow> taken = new ArrayList<>();
    Map<String, Integer> next = new LinkedHashMap<>();
    Map<String, Integer> numbers = new LinkedHashMap<>();
    nodes.forEach(node -> numbers.put(node, numbers.size()));
    supplies.forEach((node, supply) -> {
      int i = number(numbers, node);
      given.add(
          new NetworkResult.SupplyFlow(node, supply, solver.supplied[i], solver.exhausted[i]));
    });
    for (Outlet outlet : outlets) {
      int i = number(numbers, outlet.node);
      int k = next.merge(outlet.node, 1, Integer::sum) - 1;
      taken.add(NetworkResult.ToolFlow.of(
          outlet.node,
          toolsAt.get(i).get(k),
          parts[i][k],
          solver.demand(i, k),
          solver.pascals[i],
          atmosphere));
    }
    return new NetworkResult.Solved(
        atmosphere,
        pressures,
        flows,
        given,
        taken,
        solver.imbalance,
        solver.iterations,
        List.of(Caution.MORE_SUPPLY_PRESSURE));
  }

  /** {@return the network in one line, such as "3 nodes, 2 branches, 1 supply, 1 tool at 1 bar(a)"} */
  @Override
  public String toString() {
    return nodes.size() + " nodes, " + joints.size() + " branches, " + supplies.size()
        + " supplies, " + outlets.size() + " tools at " + atmosphere.format(PressureUnit.BAR);
  }

  /** Collects the parts of a network. Not thread-safe. */
  public static final class Builder {

    private final AbsolutePressure atmosphere;
    private final Map<String, Supply> supplies = new LinkedHashMap<>();
    private final List<Joint> joints = new ArrayList<>();
    private final List<Outlet> outlets = new ArrayList<>();
    private final Set<String> names = new HashSet<>();

    private Builder(AbsolutePressure atmosphere) {
      this.atmosphere = atmosphere;
    }

    /**
     * Adds a supply.
     *
     * @param node the node it feeds
     * @param supply the supply, at the temperature of the others
     * @return this builder
     * @throws IllegalArgumentException if the node has one, it is not above the atmosphere, or its temperature differs
     */
    public Builder supply(String node, Supply supply) {
      requireName("node", node);
      AirState still = supply.still();
      if (still.pressure().compareTo(atmosphere) <= 0) {
        throw new IllegalArgumentException("supply pressure at " + node
            + " must be above the atmosphere " + atmosphere + ", was " + still.pressure());
      }
      Optional<Supply> first = supplies.values().stream().findFirst();
      if (first.isPresent()
          && !first.orElseThrow().still().temperature().equals(still.temperature())) {
        throw new IllegalArgumentException("temperature of the supply at " + node
            + " must be that of the others, " + first.orElseThrow().still().temperature()
            + ", was " + still.temperature());
      }
      if (supplies.putIfAbsent(node, supply) != null) {
        throw new IllegalArgumentException("supplies at " + node + " must be at most 1, was 2");
      }
      return this;
    }

    /**
     * Adds a pipe, tube or hose with the isothermal model.
     *
     * @param name what to call it, different from other branches
     * @param from the node at one end
     * @param to the node at the other end
     * @param conduit the pipe, tube or hose
     * @return this builder
     * @throws IllegalArgumentException if the name is taken or the ends are one
     */
    public Builder line(String name, String from, String to, Conduit conduit) {
      return line(name, from, to, conduit, LossModels.isothermal());
    }

    /**
     * Adds a pipe, tube or hose.
     *
     * @param name what to call it, different from other branches
     * @param from the node at one end
     * @param to the node at the other end
     * @param conduit the pipe, tube or hose
     * @param model how its loss is found
     * @return this builder
     * @throws IllegalArgumentException if the name is taken or the ends are one
     */
    public Builder line(String name, String from, String to, Conduit conduit, LossModel model) {
      return branch(from, to, new Element.Line(name, conduit, model));
    }

    /**
     * Adds a coupler, valve, filter or the like.
     *
     * @param name what to call it, different from other branches
     * @param from the node at one end
     * @param to the node at the other end
     * @param capacity how much it lets through, in both directions alike; without cracking pressure
     * @return this builder
     * @throws IllegalArgumentException if the name is taken, the ends are one, or it is a check valve
     */
    public Builder part(String name, String from, String to, FlowCapacity capacity) {
      requireNoCheckValve(name, capacity);
      return branch(from, to, new Element.Part(name, capacity));
    }

    private Builder branch(String from, String to, Element element) {
      requireName("branch", element.name());
      requireName("node", from);
      requireName("node", to);
      if (from.equals(to)) {
        throw new IllegalArgumentException(
            "ends of " + element.name() + " must be two nodes, was \"" + from + "\" twice");
      }
      if (!names.add(element.name())) {
        throw new IllegalArgumentException(
            "name of a branch must differ from the others, was \"" + element.name() + "\" again");
      }
      joints.add(new Joint(from, to, element));
      return this;
    }

    /**
     * Adds a tool.
     *
     * @param node the node that feeds it
     * @param tool what it takes
     * @return this builder
     * @throws IllegalArgumentException if {@code node} is blank
     */
    public Builder tool(String node, ToolDemand tool) {
      requireName("node", node);
      // a tool of one's own for every outlet, so that two alike can be told apart
      outlets.add(new Outlet(node, tool.withDuty(tool.duty())));
      return this;
    }

    private static void requireName(String what, String name) {
      if (name.isBlank()) {
        throw new IllegalArgumentException("name of a " + what + " must say which, was blank");
      }
    }

    /**
     * Obtains the network.
     *
     * @return the network
     * @throws IllegalArgumentException if it has no supply
     */
    public Network build() {
      if (supplies.isEmpty()) {
        throw new IllegalArgumentException(
            "supplies of a network must be at least 1, was 0; say supply(…)");
      }
      return new Network(this);
    }
  }
}
