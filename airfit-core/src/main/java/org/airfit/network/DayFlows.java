package org.airfit.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.internal.RootFinder;
import org.airfit.plant.WallHeat;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.run.Run;
import org.airfit.run.ToolDemand;
import org.jspecify.annotations.Nullable;

/**
 * The flows of a plant at one moment, on plain doubles in SI: what every receiver gains, what every user takes.
 *
 * <p>The state of n receivers is their masses [kg], then their inner energies [J] where the walls give no heat. With it
 * go sums over time: air made, then of each user what it took, took too much and missed, then of each compressor the
 * energy it took loaded. The pipes hold no air of their own and follow at once. Air flows through a join either way;
 * where the two pressures differ by less than {@value #LEVEL} Pa the flow is taken in proportion to the difference.
 */
final class DayFlows {

  /** So near are two pressures alike [Pa]: no gauge of a plant shows it. */
  static final double LEVEL = 10.0;

  /** Within this above the atmosphere a user without a drop is starved in proportion [Pa]: our choice. */
  private static final double NEARLY_EMPTY = 1.0e3;

  private static final double TIGHT = 1.0e-13;
  private static final double JUST = 1.0e-12;

  /** More than any join carries [kg/s]. */
  private static final double MOST = 1.0e6;

  /** What the searches for a flow leave open of a pressure [-]. */
  private static final double LEFT_OPEN = 1.0e-9;

  private static final double HEAT_AT_PRESSURE =
      AirState.HEAT_CAPACITY_RATIO / (AirState.HEAT_CAPACITY_RATIO - 1.0) * AirState.GAS_CONSTANT;

  private static final double WORK_EXPONENT =
      (AirState.HEAT_CAPACITY_RATIO - 1.0) / AirState.HEAT_CAPACITY_RATIO;

  final int receivers;
  final int users;
  final int compressors;

  /** How many numbers of the state feed back: masses, and energies where heat counts. */
  final int dynamic;

  private final boolean insulated;
  private final double kelvins;
  private final double viscosity;
  private final double atmosphere;
  private final double[] volumes;
  private final List<@Nullable FlowElement> joins = new ArrayList<>();
  private final @Nullable FlowElement regulator;
  private final List<@Nullable FlowElement> drops = new ArrayList<>();
  private final List<ToolDemand> tools = new ArrayList<>();
  private final double[] needs; // Pa, NaN where none is told
  private final double[] wanted; // kg/s at full load: of a tool that follows, at its need
  private final double[] loads;
  private final double[] deliveries;
  private final double[] watts; // per r^0.2857 − 1
  private final boolean[] loaded;

  /** What the last evaluation found. */
  final double[] flows;

  final double[] atTool;
  double header;

  DayFlows(DayPlan day) {
    AirState air = AirState.of(day.atmosphere(), day.temperature());
    receivers = day.receivers().size();
    users = day.uses().size();
    compressors = day.compressors().size();
    insulated = day.walls() == WallHeat.NONE;
    dynamic = insulated ? 2 * receivers : receivers;
    kelvins = day.temperature().kelvins();
    viscosity = air.viscosity().pascalSeconds();
    atmosphere = day.atmosphere().pascals();
    volumes = day.receivers().stream()
        .mapToDouble(receiver -> receiver.volume().cubicMetres())
        .toArray();
    day.receivers().forEach(receiver -> joins.add(element(receiver.join().orElse(null))));
    regulator = day.regulator().map(element -> (FlowElement) element).orElse(null);
    needs = new double[users];
    wanted = new double[users];
    loads = new double[users];
    flows = new double[users];
    atTool = new double[users];
    for (int i = 0; i < users; i++) {
      TimedUse use = day.uses().get(i);
      drops.add(element(use.drop().orElse(null)));
      tools.add(use.tool());
      needs[i] = use.need()
          .map(need -> need.absolute(day.atmosphere()))
          .map(AbsolutePressure::pascals)
          .orElse(Double.NaN);
      wanted[i] = Double.isNaN(needs[i]) && isFollowing(i)
          ? Double.NaN
          : use.tool().flow(needs[i], atmosphere);
    }
    deliveries = day.compressors().stream()
        .mapToDouble(machine -> machine.delivery().massFlow().kilogramsPerSecond())
        .toArray();
    watts = day.compressors().stream()
        .mapToDouble(machine -> machine.loadedPower().watts()
            / work(machine.ratedAt().absolute(day.atmosphere()).pascals()))
        .toArray();
    loaded = new boolean[compressors];
  }

  private static @Nullable FlowElement element(@Nullable Run run) {
    return run == null ? null : run.element();
  }

  /** r^0.2857 − 1, to which the work of adiabatic compression in one stage is in proportion. */
  private double work(double pascals) {
    return Math.expm1(WORK_EXPONENT * Math.log(Math.max(1.0, pascals / atmosphere)));
  }

  private boolean isFollowing(int user) {
    return tools.get(user).ratedInlet().isPresent();
  }

  /** How many numbers the state has, sums over time included. */
  int size() {
    return dynamic + 1 + 3 * users + compressors;
  }

  int made() {
    return dynamic;
  }

  int taken(int user) {
    return dynamic + 1 + 3 * user;
  }

  int tooMuch(int user) {
    return taken(user) + 1;
  }

  int missed(int user) {
    return taken(user) + 2;
  }

  int energy(int compressor) {
    return dynamic + 1 + 3 * users + compressor;
  }

  /** The state in which the day begins. */
  double[] start(DayPlan day) {
    double[] state = new double[size()];
    for (int j = 0; j < receivers; j++) {
      double pascals = day.receivers().get(j).start().absolute(day.atmosphere()).pascals();
      state[j] = pascals * volumes[j] / (AirState.GAS_CONSTANT * kelvins);
      if (insulated) {
        state[receivers + j] = pascals * volumes[j] / (AirState.HEAT_CAPACITY_RATIO - 1.0);
      }
    }
    return state;
  }

  /** The air in all receivers [kg]. */
  double stored(double[] state) {
    double sum = 0.0;
    for (int j = 0; j < receivers; j++) {
      sum += state[j];
    }
    return sum;
  }

  /** The pressure in a receiver [Pa]. */
  double pascals(double[] state, int receiver) {
    double value = insulated
        ? (AirState.HEAT_CAPACITY_RATIO - 1.0) * state[receivers + receiver] / volumes[receiver]
        : state[receiver] * AirState.GAS_CONSTANT * kelvins / volumes[receiver];
    return Math.max(0.0, value);
  }

  private double kelvins(double[] state, int receiver) {
    return insulated
        ? Math.max(
            1.0,
            pascals(state, receiver)
                * volumes[receiver]
                / (AirState.GAS_CONSTANT * Math.max(1.0e-12, state[receiver])))
        : kelvins;
  }

  void load(int compressor, boolean delivers) {
    loaded[compressor] = delivers;
  }

  /** The electric power [W] of a compressor loaded at a pressure. */
  double loadedWatts(int compressor, double pascals) {
    return watts[compressor] * work(pascals);
  }

  /** Sets the part of its flow that a user takes from now on. */
  void load(int user, double part) {
    loads[user] = part;
  }

  boolean runs(int user) {
    return loads[user] > 0.0;
  }

  double part(int user) {
    return loads[user];
  }

  /**
   * By how much more a user has than it needs [Pa], as the last evaluation found; what is less than is left open by its
   * search counts as nothing, and so does the need of what needs none or does not run.
   */
  double above(int user) {
    return Double.isNaN(needs[user]) || !runs(user)
        ? Double.NaN
        : atTool[user] - needs[user] * (1.0 - LEFT_OPEN);
  }

  /** What flows from one pressure to another through a join [kg/s]; below 0 where it flows back. */
  private double through(FlowElement join, double from, double to, double warm, double warmBehind) {
    if (from < to) {
      return -through(join, to, from, warmBehind, warm);
    }
    double drop = from - to;
    return drop < LEVEL
        ? drop / LEVEL * steep(join, from, Math.max(0.0, from - LEVEL), warm)
        : steep(join, from, to, warm);
  }

  private double steep(FlowElement join, double from, double to, double warm) {
    if (!(from > 0.0) || !(join.outlet(0.0, from, warm, viscosity) > to)) {
      return 0.0;
    }
    double largest = Math.min(MOST, join.largest(from, warm, viscosity)) * (1.0 - JUST);
    double atLargest = to - join.outlet(largest, from, warm, viscosity);
    return atLargest <= 0.0
        ? largest
        : RootFinder.find(
            flow -> to - join.outlet(flow, from, warm, viscosity), 0.0, largest, TIGHT * largest);
  }

  /** What a user takes [kg/s] from the header; notes what it has at its inlet. */
  private double taken(int user, double pascals, double warm) {
    double part = loads[user];
    if (part == 0.0 || !(pascals > atmosphere)) {
      atTool[user] = Math.max(atmosphere, orNothing(pascals));
      return 0.0;
    }
    FlowElement drop = drops.get(user);
    ToolDemand tool = tools.get(user);
    if (drop == null) {
      atTool[user] = pascals;
      double flow = part * tool.flow(pascals, atmosphere);
      return isFollowing(user) ? flow : flow * Math.min(1.0, (pascals - atmosphere) / NEARLY_EMPTY);
    }
    if (!isFollowing(user)) {
      double flow = part * tool.flow(pascals, atmosphere);
      double behind = drop.outlet(flow, pascals, warm, viscosity);
      if (behind >= atmosphere) {
        atTool[user] = behind;
        return flow;
      }
      atTool[user] = atmosphere;
      return drop.outlet(0.0, pascals, warm, viscosity) > atmosphere
          ? RootFinder.find(
              q -> atmosphere - drop.outlet(q, pascals, warm, viscosity), 0.0, flow, TIGHT * flow)
          : 0.0;
    }
    double most = part * tool.flow(pascals, atmosphere);
    double flow =
        most - part * tool.flow(drop.outlet(most, pascals, warm, viscosity), atmosphere) <= 0.0
            ? most
            : RootFinder.find(
                q -> q - part * tool.flow(drop.outlet(q, pascals, warm, viscosity), atmosphere),
                0.0,
                most,
                TIGHT * most);
    atTool[user] = Math.max(atmosphere, orNothing(drop.outlet(flow, pascals, warm, viscosity)));
    return flow;
  }

  private static double orNothing(double pascals) {
    return pascals > 0.0 ? pascals : 0.0;
  }

  private double all(double pascals, double warm) {
    double sum = 0.0;
    for (int i = 0; i < users; i++) {
      flows[i] = taken(i, pascals, warm);
      sum += flows[i];
    }
    return sum;
  }

  /** What all users take from a last receiver [kg/s]; finds the pressure in the header. */
  private double outOf(double pascals, double warm) {
    FlowElement held = regulator;
    if (held == null || !(pascals > 0.0)) {
      header = pascals;
      return all(pascals, warm);
    }
    header = orNothing(held.outlet(0.0, pascals, warm, viscosity));
    double most = all(header, warm);
    double behind = held.outlet(most, pascals, warm, viscosity);
    if (behind == header) {
      return most;
    }
    if (behind > 0.0 && all(behind, warm) >= most) { // fixed flows take as much at less pressure
      header = behind;
      return most;
    }
    double flow = RootFinder.find(
        q -> {
          double p = held.outlet(q, pascals, warm, viscosity);
          return Double.isNaN(p) ? p : q - all(p, warm);
        },
        0.0,
        most,
        TIGHT * most);
    header = orNothing(held.outlet(flow, pascals, warm, viscosity));
    return all(header, warm);
  }

  /** Finds how fast everything changes. */
  void evaluate(double[] state, double[] change) {
    Arrays.fill(change, 0.0);
    double first = pascals(state, 0);
    for (int c = 0; c < compressors; c++) {
      if (loaded[c]) {
        change[made()] += deliveries[c];
        change[energy(c)] = loadedWatts(c, first);
      }
    }
    gain(change, 0, change[made()], kelvins);
    for (int j = 1; j < receivers; j++) {
      FlowElement join = joins.get(j);
      if (join == null) {
        continue; // refused by the plant: every receiver but the first has a join
      }
      double warm = kelvins(state, j - 1);
      double warmBehind = kelvins(state, j);
      double flow = through(join, pascals(state, j - 1), pascals(state, j), warm, warmBehind);
      double carried = flow >= 0.0 ? warm : warmBehind;
      gain(change, j - 1, -flow, carried);
      gain(change, j, flow, carried);
    }
    int last = receivers - 1;
    double warm = kelvins(state, last);
    outOf(pascals(state, last), warm);
    for (int i = 0; i < users; i++) {
      double flow = flows[i];
      gain(change, last, -flow, warm);
      change[taken(i)] = flow;
      double base = loads[i] * wanted[i];
      if (!Double.isNaN(base)) {
        change[tooMuch(i)] = isFollowing(i) ? Math.max(0.0, flow - base) : 0.0;
        change[missed(i)] = Math.max(0.0, base - flow);
      }
    }
  }

  private void gain(double[] change, int receiver, double flow, double warm) {
    change[receiver] += flow;
    if (insulated) {
      change[receivers + receiver] += HEAT_AT_PRESSURE * warm * flow;
    }
  }
}
