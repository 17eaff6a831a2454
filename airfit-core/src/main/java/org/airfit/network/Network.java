package org.airfit.network;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Digits;
import org.airfit.line.Conduit;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.Supply;
import org.airfit.plant.SupplyRange;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.Run;
import org.airfit.run.ToolDemand;
import org.airfit.safety.Medium;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;
import org.jspecify.annotations.Nullable;

/**
 * Supplies, lines, parts and tools joined at nodes: a header with branches, a ring, or any mixture.
 *
 * <p>A branch obeys the same law as an element of a {@link Run}. The flow settles where mass is conserved at every
 * node and
 * every branch has the drop of its flow. Lines and parts let air through in either direction, check valves and
 * regulators in one: where more stands behind such a one than it leaves, it is shut. The air has the
 * temperature of the supply everywhere; a line by an adiabatic model begins with it again.
 *
 * <p>Supplies have non-return valves unless told otherwise: one whose node is above its pressure gives nothing, and the
 * result says that it is idle.
 *
 * <p>A tool that is fed from a node with less than it wants takes what there is, down to the atmosphere: the result
 * says that it starves.
 *
 * <p>One branch closed, and what is then left:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.Wall;
 * import org.airfit.network.Network;
 * import org.airfit.network.NetworkResult;
 * import org.airfit.plant.Supply;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.run.ToolDemand;
 * import org.airfit.working.UnitSystem;
 *
 * class BranchClosed {
 *   public static void main(String[] args) {
 *     AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
 *     AirState supply = AirState.of(
 *         GaugePressure.parse("7 bar(g)").absolute(atmosphere), Temperature.parse("20 °C"));
 *     Conduit main = Conduit.of(Length.parse("1 in"), Length.parse("30 m"), Wall.COMMERCIAL_STEEL);
 *     Network ring = Network.at(atmosphere)
 *         .supply("compressor", Supply.fixed(supply))
 *         .line("north", "compressor", "bench", main)
 *         .line("south", "compressor", "bench", main)
 *         .tool("bench", ToolDemand.fixed("sander", FreeAirFlow.parse("40 L/s ANR")))
 *         .build();
 *     NetworkResult.Solved whole = (NetworkResult.Solved) ring.solve();
 *     NetworkResult.Solved half = (NetworkResult.Solved) ring.without("south").solve();
 *     System.out.println(UnitSystem.SI.say(whole.at("bench").dropTo(half.at("bench")))); // 0.10 bar
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Network {

  private final NetworkPlan plan;

  private Network(NetworkPlan plan) {
    this.plan = plan;
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
    return plan.nodes();
  }

  /** {@return the safety rules by which the work in it is judged} */
  public SafetyRules rules() {
    return plan.judged().rules();
  }

  /** {@return what its pipes, tubes and hoses hold, which stores air as a receiver does} */
  public Volume pipeVolume() {
    return Volume.ofCubicMetres(plan.branches().stream()
        .filter(Branch.Line.class::isInstance)
        .map(Branch.Line.class::cast)
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
    Objects.requireNonNull(name, "name");
    List<Branch> others =
        plan.branches().stream().filter(branch -> !branch.name().equals(name)).toList();
    if (others.size() == plan.branches().size()) {
      throw new IllegalArgumentException(
          "name must be that of a branch of this network, was \"" + name + "\"");
    }
    return new Network(plan.with(others));
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
    Objects.requireNonNull(conduit, "conduit");
    return replacing(
        name,
        "line",
        branch -> branch instanceof Branch.Line line
            ? new Branch.Line(name, line.from(), line.to(), conduit, line.model())
            : null);
  }

  /**
   * Obtains this network with another coupling, valve, filter or the like in the place of one.
   *
   * @param name the name of a branch that is a part or a check valve
   * @param capacity what to put in its place; without cracking pressure where it is a part
   * @return this with {@code capacity}
   * @throws IllegalArgumentException if no part and no check valve has that name, or a part would get a cracking
   *     pressure
   */
  public Network replacing(String name, FlowCapacity capacity) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(capacity, "capacity");
    return replacing(name, "part", branch -> {
      if (branch instanceof Branch.CheckValve valve) {
        return new Branch.CheckValve(name, valve.from(), valve.to(), capacity);
      }
      if (branch instanceof Branch.Part part) {
        requireNoCheckValve(name, capacity);
        return new Branch.Part(name, part.from(), part.to(), capacity);
      }
      return null;
    });
  }

  /**
   * Obtains this network with another regulator in the place of one, or with the same set otherwise.
   *
   * @param name the name of a branch that is a regulator
   * @param regulator what to put in its place
   * @return this with {@code regulator}
   * @throws IllegalArgumentException if no regulator has that name
   */
  public Network replacing(String name, RegulatorElement regulator) {
    Objects.requireNonNull(regulator, "regulator");
    return replacing(
        name,
        "regulator",
        branch -> branch instanceof Branch.Reducer old
            ? new Branch.Reducer(name, old.from(), old.to(), regulator)
            : null);
  }

  /**
   * Obtains this network with another supply in the place of one, such as a compressor that holds more. A non-return
   * valve stays where there is one.
   *
   * @param node the node of a supply
   * @param supply what to put in its place, at the temperature of the others
   * @param highest the highest pressure that can occur with it anywhere in the network, such as its cut-out, by which
   *     the work is judged
   * @return this with {@code supply}
   * @throws IllegalArgumentException if no supply is at that node, if it is not above the atmosphere, if its
   * temperature
   *     differs, if it has no non-return valve and {@code supply} does not hold its pressure, or if {@code highest} is
   *     below the pressure of a supply
   */
  public Network replacing(String node, Supply supply, GaugePressure highest) {
    Objects.requireNonNull(node, "node");
    Objects.requireNonNull(supply, "supply");
    Objects.requireNonNull(highest, "highest");
    if (!plan.supplies().containsKey(node)) {
      throw new IllegalArgumentException(
          "node must be that of a supply of this network, was \"" + node + "\"");
    }
    Builder checked = at(plan.atmosphere()).highest(highest);
    plan.supplies().forEach((at, old) -> {
      Supply there = at.equals(node) ? supply : old;
      if (plan.open().contains(at)) {
        checked.supplyWithoutNonReturnValve(at, there);
      } else {
        checked.supply(at, there);
      }
    });
    return new Network(plan.with(
        checked.build().plan.supplies(),
        Situation.describe().linePressure(highest).build()));
  }

  /** {@return the supplies by their nodes, in the order they were added} */
  public Map<String, Supply> supplies() {
    return plan.supplies();
  }

  /** What becomes of a branch; null where it is not of the kind asked for. */
  private interface Exchange {
    @Nullable
    Branch of(Branch branch);
  }

  private Network replacing(String name, String kind, Exchange exchange) {
    Objects.requireNonNull(name, "name");
    List<Branch> others = new ArrayList<>();
    boolean found = false;
    for (Branch branch : plan.branches()) {
      Branch other = branch.name().equals(name) ? exchange.of(branch) : null;
      found |= other != null;
      others.add(other != null ? other : branch);
    }
    if (!found) {
      throw new IllegalArgumentException(
          "name must be that of a " + kind + " of this network, was \"" + name + "\"");
    }
    return new Network(plan.with(others));
  }

  private static void requireNoCheckValve(String name, FlowCapacity capacity) {
    Objects.requireNonNull(capacity, "capacity");
    if (capacity.crackingPressure().pascals() > 0.0) {
      throw new IllegalArgumentException("cracking pressure of " + name
          + " must be 0 Pa where air goes either way, was "
          + capacity.crackingPressure().shown()
          + "; say checkValve(…)");
    }
  }

  /**
   * Finds the steady flow with every tool running at once.
   *
   * @return the flow everywhere, or why there is none
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public NetworkResult solve() {
    return SteadyFlow.of(plan, ToolDemand::load);
  }

  /** The same with the vertical lines of laws drawn out at first, which {@link #solve} does where it has to. */
  NetworkResult solveLeaning() {
    double[] loads =
        plan.outlets().stream().mapToDouble(outlet -> outlet.tool().load()).toArray();
    return new SteadyFlow(plan).with(loads, 1);
  }

  /**
   * Finds the steady flow with every tool taking its mean flow: load times duty.
   *
   * <p>The mean of the pressures is lower than the pressure at the mean flows, as losses grow with the square of the
   * flow; {@link #simulate} shows by how much.
   *
   * @return the flow everywhere, or why there is none
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public NetworkResult solveMean() {
    return SteadyFlow.of(plan, ToolDemand::useFactor);
  }

  /**
   * Draws at random which tools run, each with its duty, and solves again and again.
   *
   * <p>Tools run independently of each other. The same seed gives the same answer.
   *
   * <p>Tools that ran together before are not solved again (the first 10,000 such sets are kept), and n tools make at
   * most 2ⁿ sets. On one core of 2026 100,000 trials took 0.3 s of CPU time in a ring of 6 drops, and 29 s in one of 20
   * with a duty of 0.4, where most sets are new; the time of a set grows with the number of branches.
   *
   * @param seed where the random numbers begin
   * @param trials how often, in [1, 100000]
   * @return what came of it
   * @throws IllegalArgumentException if {@code trials} is out of range
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public NetworkSimulation simulate(long seed, int trials) {
    if (trials < 1 || trials > 100_000) {
      throw new IllegalArgumentException("trials must be in [1, 100000], was " + trials);
    }
    return NetworkSimulation.of(plan, seed, trials);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Network that && plan.equals(that.plan);
  }

  @Override
  public int hashCode() {
    return plan.hashCode();
  }

  /** {@return the network in one line, such as "3 nodes, 2 branches, 1 supply, 1 tool at 1 bar(a)"} */
  @Override
  public String toString() {
    return nodes().size() + " nodes, " + plan.branches().size() + " branches, "
        + plan.supplies().size() + " supplies, " + plan.outlets().size() + " tools at "
        + plan.atmosphere().format(PressureUnit.BAR);
  }

  /** Collects the parts of a network. Not thread-safe. */
  public static final class Builder {

    /** Where an element is asked what it loses without flow [Pa]. */
    private static final double ATMOSPHERES = 8.0e5;

    private static final AirState ROOM =
        AirState.of(AbsolutePressure.ofPascals(ATMOSPHERES), Temperature.ofCelsius(20.0));

    private static final Situation NOTHING = Situation.describe().build();

    private final AbsolutePressure atmosphere;
    private final Map<String, Supply> supplies = new LinkedHashMap<>();
    private final Set<String> open = new HashSet<>();
    private final List<Branch> branches = new ArrayList<>();
    private final List<NetworkPlan.Outlet> outlets = new ArrayList<>();
    private final Set<String> names = new HashSet<>();
    private final Map<String, SupplyRange> ranges = new LinkedHashMap<>();
    private SafetyRules rules = SafetyRules.usFederal();
    private Situation line = NOTHING;
    private @Nullable GaugePressure highest;

    private Builder(AbsolutePressure atmosphere) {
      this.atmosphere = atmosphere;
    }

    /**
     * Tells what the network carries. It is compressed air for tools: nothing of a network is computed for anything
     * else.
     *
     * @param medium what it carries
     * @return this builder
     * @throws IllegalArgumentException with the reason if it is anything but compressed air
     */
    public Builder carrying(Medium medium) {
      Objects.requireNonNull(medium, "medium").requireCompressedAir();
      return this;
    }

    /**
     * Adds a supply with a non-return valve: where the node is above its pressure it gives nothing.
     *
     * @param node the node it feeds
     * @param supply the supply, at the temperature of the others
     * @return this builder
     * @throws IllegalArgumentException if the node has one, it or the cut-in of a compressor is not above the
     *     atmosphere, or its temperature differs
     */
    public Builder supply(String node, Supply supply) {
      requireName("node", "node", node);
      AirState still = Objects.requireNonNull(supply, "supply").still();
      if (still.pressure().compareTo(atmosphere) <= 0) {
        throw new IllegalArgumentException(
            "supply pressure at " + node + " must be above the atmosphere " + atmosphere.shown()
                + ", was " + still.pressure().shown());
      }
      Optional<Supply> first = supplies.values().stream().findFirst();
      if (first.isPresent()
          && !first.orElseThrow().still().temperature().equals(still.temperature())) {
        throw new IllegalArgumentException("temperature of the supply at " + node
            + " must be that of the others, "
            + first.orElseThrow().still().temperature().shown()
            + ", was " + still.temperature().shown());
      }
      SupplyRange range = SupplyRange.of(supply, atmosphere);
      if (supplies.putIfAbsent(node, supply) != null) {
        throw new IllegalArgumentException("supplies at " + node + " must be at most 1, was 2");
      }
      ranges.put(node, range);
      return this;
    }

    /**
     * Adds a supply without a non-return valve: where the node would be above its pressure, air flows back into it, and
     * the node has its pressure all the same.
     *
     * @param node the node it feeds
     * @param supply the supply, at the temperature of the others; one whose pressure holds whatever flows
     * @return this builder
     * @throws IllegalArgumentException if the pressure of {@code supply} depends on the flow, as what flows back is not
     *     on its curve; and as {@link #supply}
     */
    public Builder supplyWithoutNonReturnValve(String node, Supply supply) {
      if (!Objects.requireNonNull(supply, "supply").holds()) {
        throw new IllegalArgumentException("supply without a non-return valve at " + node
            + " must hold its pressure whatever flows, was " + supply + "; say supply(…)");
      }
      supply(node, supply);
      open.add(node);
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
      return branch(new Branch.Line(
          requireName("name", "branch", name),
          requireName("from", "node", from),
          requireName("to", "node", to),
          Objects.requireNonNull(conduit, "conduit"),
          Objects.requireNonNull(model, "model")));
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
      requireNoCheckValve(requireName("name", "branch", name), capacity);
      return branch(new Branch.Part(
          name, requireName("from", "node", from), requireName("to", "node", to), capacity));
    }

    /**
     * Adds an element of one's own, such as the table of a filter's sheet.
     *
     * @param name what to call it, different from other branches
     * @param from the node at one end
     * @param to the node at the other end
     * @param element what it does to the air, in both directions alike; without a cracking pressure
     * @return this builder
     * @throws IllegalArgumentException if the name is taken, the ends are one, or a pressure is lost without flow
     */
    public Builder element(String name, String from, String to, FlowElement element) {
      requireName("name", "branch", name);
      if (element instanceof RegulatorElement) {
        throw new IllegalArgumentException("element " + name
            + " must let air through either way, was a regulator; say regulator(…)");
      }
      double lost = ATMOSPHERES
          - Objects.requireNonNull(element, "element")
              .outlet(
                  0.0,
                  ATMOSPHERES,
                  ROOM.temperature().kelvins(),
                  ROOM.viscosity().pascalSeconds());
      if (lost != 0.0) {
        throw new IllegalArgumentException("pressure lost by " + name
            + " without flow must be 0 Pa where air goes either way, was " + Digits.told(lost)
            + " Pa; say checkValve(…) or regulator(…)");
      }
      return branch(new Branch.Own(
          name, requireName("from", "node", from), requireName("to", "node", to), element));
    }

    /**
     * Adds a check valve: air goes from the one node to the other, once what it loses is above the cracking pressure,
     * and never back.
     *
     * @param name what to call it, different from other branches
     * @param from the node air may come from
     * @param to the node it may go to
     * @param capacity how much it lets through, and its cracking pressure
     * @return this builder
     * @throws IllegalArgumentException if the name is taken or the ends are one
     */
    public Builder checkValve(String name, String from, String to, FlowCapacity capacity) {
      return branch(new Branch.CheckValve(
          requireName("name", "branch", name),
          requireName("from", "node", from),
          requireName("to", "node", to),
          Objects.requireNonNull(capacity, "capacity")));
    }

    /**
     * Adds a regulator: behind it stands at most what it is set to, less its droop, or what its open valve leaves of
     * the pressure in front where that is less. Where more stands behind it, it is shut: no air goes back.
     *
     * <p>A regulator may fail open, so the work behind it is judged by the highest pressure of all supplies.
     *
     * @param name what to call it, different from other branches
     * @param from the node in front
     * @param to the node behind
     * @param regulator what it is set to, its droop, and what its valve lets through
     * @return this builder
     * @throws IllegalArgumentException if the name is taken or the ends are one
     */
    public Builder regulator(String name, String from, String to, RegulatorElement regulator) {
      return branch(new Branch.Reducer(
          requireName("name", "branch", name),
          requireName("from", "node", from),
          requireName("to", "node", to),
          Objects.requireNonNull(regulator, "regulator")));
    }

    private Builder branch(Branch branch) {
      if (branch.from().equals(branch.to())) {
        throw new IllegalArgumentException(
            "ends of " + branch.name() + " must be two nodes, was \"" + branch.from() + "\" twice");
      }
      if (!names.add(branch.name())) {
        throw new IllegalArgumentException(
            "name of a branch must differ from the others, was \"" + branch.name() + "\" again");
      }
      branches.add(branch);
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
      return tool(node, tool, NOTHING);
    }

    /**
     * Adds a tool of which more is known than what it takes: that it paints, blasts, hammers, cleans, hangs on a hose.
     *
     * <p>The safety rules judge that; the result has the warnings, with the name of the tool. What holds for every tool
     * is told once, with {@link #situation}.
     *
     * @param node the node that feeds it
     * @param tool what it takes
     * @param work what is known of the work there
     * @return this builder
     * @throws IllegalArgumentException if {@code node} is blank
     */
    public Builder tool(String node, ToolDemand tool, Situation work) {
      outlets.add(new NetworkPlan.Outlet(
          requireName("node", "node", node),
          Objects.requireNonNull(tool, "tool"),
          Objects.requireNonNull(work, "work")));
      return this;
    }

    /**
     * Tells what holds for the whole network, such as quick couplers, a lubricated line, a mine.
     *
     * @param known what is known of it; its highest pressure is known already
     * @return this builder
     */
    public Builder situation(Situation known) {
      line = Objects.requireNonNull(known, "known");
      return this;
    }

    /**
     * Tells by which safety rules to judge the work, where not by US federal law alone.
     *
     * @param judging such as {@code SafetyRules.usFederal().with(SafetyRules.ofTable(own))}
     * @return this builder
     */
    public Builder rules(SafetyRules judging) {
      rules = Objects.requireNonNull(judging, "judging");
      return this;
    }

    /**
     * Tells the highest pressure that can occur, by which the work is judged. Where it is not told, that is the highest
     * of all supplies: the cut-out of a compressor, and what can stand in front of a regulator, which may fail open.
     *
     * @param pressure such as the setting of the relief valve
     * @return this builder
     */
    public Builder highest(GaugePressure pressure) {
      highest = Objects.requireNonNull(pressure, "pressure");
      return this;
    }

    private static String requireName(String parameter, String what, String name) {
      if (Objects.requireNonNull(name, parameter).isBlank()) {
        throw new IllegalArgumentException("name of a " + what + " must say which, was blank");
      }
      return name;
    }

    /**
     * Obtains the network.
     *
     * @return the network
     * @throws IllegalArgumentException if it has no supply, or the highest pressure that was told is below that of one;
     *     or if something is known of the work, and the pressure in front of a regulator was not told
     */
    public Network build() {
      if (supplies.isEmpty()) {
        throw new IllegalArgumentException(
            "supplies of a network must be at least 1, was 0; say supply(…)");
      }
      Situation known = highestOfAll()
          .map(pressure -> Situation.describe().linePressure(pressure).build().with(line))
          .orElse(line);
      return new Network(new NetworkPlan(
          atmosphere,
          supplies,
          open,
          branches,
          outlets.stream()
              .map(outlet -> new NetworkPlan.Outlet(
                  outlet.node(), outlet.tool(), known.with(outlet.situation())))
              .toList(),
          new NetworkPlan.Judged(rules, known)));
    }

    /** The highest pressure that can occur; empty where nobody asks for it and it is not known. */
    private Optional<GaugePressure> highestOfAll() {
      Optional<GaugePressure> most = Optional.empty();
      for (Map.Entry<String, SupplyRange> each : ranges.entrySet()) {
        SupplyRange range =
            highest == null ? each.getValue() : each.getValue().withHighest(highest);
        if (!range.isWhole()) {
          if (line.equals(NOTHING)
              && outlets.stream().allMatch(outlet -> outlet.situation().equals(NOTHING))) {
            return Optional.empty();
          }
          throw new IllegalArgumentException("pressure in front of the regulator at "
              + each.getKey() + " must be told where the work is judged, was missing;"
              + " say highest(…), or give it to the regulator");
        }
        GaugePressure pressure = range.highest();
        most = most.filter(other -> other.compareTo(pressure) >= 0).or(() -> Optional.of(pressure));
      }
      return most;
    }
  }
}
