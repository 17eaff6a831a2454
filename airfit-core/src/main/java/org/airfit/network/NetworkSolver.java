package org.airfit.network;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.flow.AirKernel;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LineLoss;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.run.Element;
import org.airfit.run.RunKernel;
import org.airfit.run.ToolDemand;
import org.jspecify.annotations.Nullable;

/**
 * Steady flow in a network, by Newton's method on flows and pressures at once, with the flows eliminated before each linear solution.
 *
 * <pre>
 *   branch a → b:  f(q, pa) − pb = 0        node i:  Σ q in − Σ q out − d(pi) = 0
 *   δq = (r + f_p δpa − δpb)/(−f_q)         r what is left of the branch's equation
 * </pre>
 *
 * <p>f is what {@link Element} gives, the same as in a run. Three edges of it are made passable, so narrow that no answer can show them: beyond choking the pressure falls by 10¹⁰
 * p/q instead of at once; below 10⁻⁷ of the whole flow the law is a straight line; and where friction jumps at Re = 2300, a ramp leads from the laminar to the turbulent value. The ramp is wide at first, a third
 * of that flow, where Newton finds its way, and is drawn in by tens to 10⁻⁹ of it, each answer leading to the next: a branch whose drop lies between the two values ends on it.
 */
final class NetworkSolver {

  private static final int MAX_ITERATIONS = 500;
  private static final double STEEP = 1.0e10;
  private static final double STEP = 1.0e-6;
  private static final int STRAIGHT = 5;
  private static final double WIDEST = 0.3;
  private static final double NARROWEST = 1.0e-9;
  private static final double RAMP_PASCALS = 100.0;

  /** One branch as the solver sees it. */
  static final class Branch {
    final Element element;
    final AirKernel kernel;
    final int from;
    final int to;
    final double jumpFlow; // of friction at Re 2300; 0 for a part

    double flow;
    boolean chokes;
    boolean held; // on the ramp

    double left; // r
    double slope; // −f_q > 0
    double byInlet; // f_p

    Branch(Element element, int from, int to, AirState air) {
      this.element = element;
      this.kernel = element.kernel();
      this.from = from;
      this.to = to;
      this.jumpFlow = element instanceof Element.Line line
          ? 0.25
              * FrictionLaw.LAMINAR_BELOW
              * Math.PI
              * line.conduit().bore().metres()
              * air.viscosity().pascalSeconds()
          : 0.0;
    }
  }

  private final AirState air;
  private final AbsolutePressure atmosphere;
  private final double floor;
  private final @Nullable Supply[] supplyAt; // by node
  private final List<List<ToolDemand>> toolsAt; // by node
  private final double[][] parts; // of the rated flow, by node and tool
  final Branch[] branches;

  final double[] pascals;
  final double[] supplied;
  final boolean[] exhausted;
  double imbalance;
  int iterations;

  private final double[] behind = new double[AirKernel.SIZE];
  private int steps; // with this width
  private double width; // of the ramp, over the flow at which friction jumps
  private double demanded;
  private double damping;
  private double flowScale;
  private double pressureScale;

  NetworkSolver(
      AirState air,
      AbsolutePressure atmosphere,
      @Nullable Supply[] supplyAt,
      List<List<ToolDemand>> toolsAt,
      double[][] parts,
      Branch[] branches) {
    this.air = air;
    this.atmosphere = atmosphere;
    this.floor = 0.5 * atmosphere.pascals();
    this.supplyAt = supplyAt;
    this.toolsAt = toolsAt;
    this.parts = parts;
    this.branches = branches;
    this.pascals = new double[supplyAt.length];
    this.supplied = new double[supplyAt.length];
    this.exhausted = new boolean[supplyAt.length];
  }

  /** What the tools at a node take [kg/s]. Below 100 Pa of gauge pressure it goes in a straight line to nothing, and on. */
  double demand(int node, double p) {
    double whole = Math.max(p, atmosphere.pascals() + RAMP_PASCALS);
    double sum = 0.0;
    for (int i = 0; i < toolsAt.get(node).size(); i++) {
      sum += toolsAt.get(node).get(i).flowAt(whole, atmosphere, parts[node][i]);
    }
    return p >= whole ? sum : sum * (p - atmosphere.pascals()) / RAMP_PASCALS;
  }

  /** What one tool at a node takes [kg/s] at the pressure found. */
  double demand(int node, int tool) {
    double whole = Math.max(pascals[node], atmosphere.pascals() + RAMP_PASCALS);
    double full = toolsAt.get(node).get(tool).flowAt(whole, atmosphere, parts[node][tool]);
    return pascals[node] >= whole
        ? full
        : full * (pascals[node] - atmosphere.pascals()) / RAMP_PASCALS;
  }

  private double demandSlope(int node, double p) {
    double corner = atmosphere.pascals() + RAMP_PASCALS;
    if (p < corner) {
      return demand(node, corner) / RAMP_PASCALS;
    }
    double h = STEP * pressureScale;
    return (demand(node, p + h) - demand(node, p)) / h;
  }

  private static boolean isFixed(@Nullable Supply supply) {
    return supply instanceof Supply.Fixed;
  }

  /** Solves; false where it came to no end. Steps are whole at first, and halved where these run in a circle. */
  boolean solve() {
    return solve(40) || solve(4);
  }

  private boolean solve(int undamped) {
    int n = pascals.length;
    start();
    int[] unknown = new int[n];
    int count = 0;
    for (int i = 0; i < n; i++) {
      unknown[i] = isFixed(supplyAt[i]) ? -1 : count++;
    }
    int[] one = Arrays.stream(branches).mapToInt(b -> unknown[b.from]).toArray();
    int[] other = Arrays.stream(branches).mapToInt(b -> unknown[b.to]).toArray();
    SparseSystem system = new SparseSystem(count, one, other);
    int[][] places = new int[branches.length][];
    for (int k = 0; k < branches.length; k++) {
      int a = one[k];
      int b = other[k];
      places[k] =
          a >= 0 && b >= 0 ? new int[] {system.place(a, b), system.place(b, a)} : new int[0];
    }
    double[] right = new double[count];
    width = WIDEST;
    steps = 0;
    for (iterations = 1; iterations <= MAX_ITERATIONS; iterations++) {
      steps++;
      flowScale = demanded;
      for (Branch branch : branches) {
        flowScale = Math.max(flowScale, Math.abs(branch.flow));
      }
      for (Branch branch : branches) {
        evaluate(branch);
      }
      assemble(system, places, unknown, right);
      system.solve(right);
      if (steps > undamped && steps % undamped != 0) {
        for (int i = 0; i < count; i++) {
          right[i] *= 0.5;
        }
        damping = 0.5;
      } else {
        damping = 1.0;
      }
      confine(unknown, right);
      boolean settled = advance(unknown, right);
      imbalance = imbalance();
      if (settled && imbalance <= 1.0e-11) {
        if (!narrow()) {
          return true;
        }
        steps = 0;
      }
    }
    return false;
  }

  /** Draws the ramp in, and the flows on it with their drops kept; false where none is on it any more, or it is narrow enough. */
  private boolean narrow() {
    boolean any = false;
    for (Branch branch : branches) {
      branch.held = isOnRamp(branch, Math.abs(branch.flow));
      any |= branch.held;
    }
    if (!any || width <= NARROWEST) {
      return false;
    }
    width = Math.max(NARROWEST, 0.1 * width);
    for (Branch branch : branches) {
      if (!branch.held) {
        continue;
      }
      boolean forward = branch.flow >= 0.0;
      double p1 = Math.max(floor, pascals[forward ? branch.from : branch.to]);
      double p2 = pascals[forward ? branch.to : branch.from];
      double laminar = laminar(branch, p1);
      double turbulent = turbulent(branch, p1);
      double part = (laminar - p2) / (laminar - turbulent);
      if (part >= 0.0 && part <= 1.0) {
        branch.flow = Math.copySign(branch.jumpFlow * (1.0 + part * width), branch.flow);
      }
    }
    return true;
  }

  /** Whether a step led over the whole ramp, where the slope on neither side tells of it. */
  private boolean isOver(Branch branch, double before) {
    double least = Math.min(Math.abs(before), Math.abs(branch.flow));
    double most = Math.max(Math.abs(before), Math.abs(branch.flow));
    return before * branch.flow > 0.0
        && least <= branch.jumpFlow
        && most >= branch.jumpFlow * (1.0 + width);
  }

  private boolean isOnRamp(Branch branch, double flow) {
    return flow > branch.jumpFlow && flow < branch.jumpFlow * (1.0 + width);
  }

  /** The pressure [Pa] where the ramp begins, or −1 where the flow does not pass. */
  private double laminar(Branch branch, double p1) {
    return passed(branch, branch.jumpFlow * (1.0 - 1.0e-12), p1);
  }

  /** The pressure [Pa] where the ramp ends, or −1 where the flow does not pass. */
  private double turbulent(Branch branch, double p1) {
    return passed(branch, branch.jumpFlow * (1.0 + width) * (1.0 + 1.0e-12), p1);
  }

  /** Flows along a tree of shortest ways from the supplies, pressures a little below theirs. */
  private void start() {
    int n = pascals.length;
    double least = Double.POSITIVE_INFINITY;
    for (Supply supply : supplyAt) {
      if (supply != null) {
        pressureScale = Math.max(pressureScale, supply.still().pressure().pascals());
        least = Math.min(least, supply.still().pressure().pascals());
      }
    }
    double[] through = new double[n];
    for (int i = 0; i < n; i++) {
      through[i] = demand(i, 0.9 * least);
      pascals[i] = supplyAt[i] != null ? still(i) : 0.95 * least;
    }
    demanded = rated();
    flowScale = demanded;
    int[] feeding = new int[n];
    int[] sequence = sequence(feeding);
    for (Branch branch : branches) {
      branch.flow = 0.01 * flowScale;
    }
    for (int at = n - 1; at >= 0; at--) {
      int node = sequence[at];
      if (feeding[node] >= 0) {
        Branch branch = branches[feeding[node]];
        int parent = branch.from == node ? branch.to : branch.from;
        branch.flow = branch.to == node ? through[node] : -through[node];
        through[parent] += through[node];
      } else {
        supplied[node] = through[node];
      }
    }
  }

  /** What all tools are rated at together [kg/s], running or not: the measure of a small flow. */
  private double rated() {
    double sum = 0.0;
    for (List<ToolDemand> tools : toolsAt) {
      for (ToolDemand tool : tools) {
        sum += tool.rated().massFlow().kilogramsPerSecond();
      }
    }
    return sum > 0.0 ? sum : 1.0e-3;
  }

  private double still(int node) {
    Supply supply = Objects.requireNonNull(supplyAt[node]);
    return supply
        .at(MassFlow.ofKilogramsPerSecond(0.0))
        .orElse(supply.still())
        .pressure()
        .pascals();
  }

  /** The nodes from the supplies outwards, and the branch that feeds each; −1 for those of the supplies. */
  int[] sequence(int[] feeding) {
    int n = pascals.length;
    int[][] at = new int[n][];
    int[] degree = new int[n];
    for (Branch branch : branches) {
      degree[branch.from]++;
      degree[branch.to]++;
    }
    for (int i = 0; i < n; i++) {
      at[i] = new int[degree[i]];
    }
    for (int k = 0; k < branches.length; k++) {
      at[branches[k].from][--degree[branches[k].from]] = k;
      at[branches[k].to][--degree[branches[k].to]] = k;
    }
    Arrays.fill(feeding, -2);
    int[] sequence = new int[n];
    int known = 0;
    for (int i = 0; i < n; i++) {
      if (supplyAt[i] != null) {
        feeding[i] = -1;
        sequence[known++] = i;
      }
    }
    for (int done = 0; done < known; done++) {
      for (int k : at[sequence[done]]) {
        int next = branches[k].from == sequence[done] ? branches[k].to : branches[k].from;
        if (feeding[next] == -2) {
          feeding[next] = k;
          sequence[known++] = next;
        }
      }
    }
    return Arrays.copyOf(sequence, known);
  }

  /** Finds r, −f_q and f_p of a branch at its flow, in the direction of the flow. */
  private void evaluate(Branch branch) {
    boolean forward = branch.flow >= 0.0;
    double inlet = pascals[forward ? branch.from : branch.to];
    double outlet = pascals[forward ? branch.to : branch.from];
    double flow = Math.abs(branch.flow);
    double p1 = Math.max(inlet, floor);
    double least = 1.0e-7 * pressureScale / flowScale;
    double behind;
    branch.chokes = false;
    double small = 1.0e-7 * flowScale;
    double measured = Math.max(flow, small);
    double atMeasured = behind(branch, measured, p1);
    if (atMeasured < 0.0) {
      double limit = limit(branch, p1);
      double atLimit = behind(branch, limit, p1);
      branch.slope = STEEP * p1 / limit;
      behind = atLimit - branch.slope * (measured - limit);
      branch.byInlet = 1.0 + branch.slope * limit / p1;
      branch.chokes = true;
    } else if (flow < small) {
      branch.slope = Math.max(least, (p1 - atMeasured) / small);
      behind = p1 - (p1 - atMeasured) * flow / small;
      branch.byInlet = 1.0;
    } else {
      behind = atMeasured;
      branch.slope = Math.max(least, slope(branch, flow, p1, behind, outlet));
      branch.byInlet =
          isOnRamp(branch, flow) ? 1.0 : Math.max(0.1, (behind + flow * branch.slope) / p1);
    }
    branch.left = behind - (p1 - inlet) - outlet;
  }

  /** −f_q of a flow that passes. */
  private double slope(Branch branch, double flow, double p1, double behind, double outlet) {
    if (isOnRamp(branch, flow)) {
      double turbulent = turbulent(branch, p1);
      if (turbulent >= 0.0) {
        return (laminar(branch, p1) - turbulent) / (width * branch.jumpFlow);
      }
    }
    // a small drop has few digits left in the pressure behind: the step is to move it by more than
    // these
    double step = Math.min(1.0e-2, Math.max(STEP, Math.sqrt(2.0e-16 * p1 / (p1 - behind))));
    boolean overTheJump = flow <= branch.jumpFlow && flow * (1.0 + step) > branch.jumpFlow;
    if (overTheJump) {
      step = -step;
    }
    double further = behind(branch, flow * (1.0 + step), p1);
    return further >= 0.0
        ? (behind - further) / (step * flow)
        : slopeToLimit(branch, flow, p1, behind, outlet);
  }

  /** The slope of the chord to the pressure behind, round the corner where the branch chokes, which lies ahead by less than a step. */
  private double slopeToLimit(Branch branch, double flow, double p1, double behind, double outlet) {
    double limit = limit(branch, p1);
    double steep = STEEP * p1 / limit;
    double ahead = Math.max(0.0, limit - flow);
    double atLimit = behind(branch, limit, p1);
    branch.chokes = outlet < atLimit && ahead < 1.0e-9 * flow;
    return outlet < atLimit
        ? (behind - outlet) / (ahead + (atLimit - outlet) / steep)
        : ahead > 1.0e-13 * flow ? (behind - atLimit) / ahead : steep;
  }

  /** The pressure [Pa] behind a branch, on the ramp where there is one, or −1 where the flow does not pass. */
  private double behind(Branch branch, double flow, double p1) {
    if (isOnRamp(branch, flow)) {
      double laminar = laminar(branch, p1);
      double turbulent = turbulent(branch, p1);
      if (turbulent >= 0.0) {
        return laminar - (laminar - turbulent) * (flow / branch.jumpFlow - 1.0) / width;
      }
    }
    return passed(branch, flow, p1);
  }

  private double passed(Branch branch, double flow, double p1) {
    RunKernel.put(air, behind);
    behind[AirKernel.PASCALS] = p1;
    return branch.kernel.pass(flow, behind) ? behind[AirKernel.PASCALS] : -1.0;
  }

  /** A flow just below that at which a branch chokes. */
  private double limit(Branch branch, double p1) {
    AirState inlet = air.at(AbsolutePressure.ofPascals(p1));
    double largest;
    if (branch.element instanceof Element.Part part) {
      FlowCapacity capacity = part.capacity();
      largest = capacity.chokedFlow(inlet).kilogramsPerSecond();
    } else {
      Element.Line line = (Element.Line) branch.element;
      LineLoss loss =
          line.model().loss(line.conduit(), MassFlow.ofKilogramsPerSecond(1.0e6), inlet);
      largest = loss.fold(
          flowing -> flowing.massFlow().kilogramsPerSecond(),
          choked -> choked.largest().kilogramsPerSecond());
    }
    return largest * (1.0 - 1.0e-12);
  }

  /** What a supply holds at a flow, and how fast that falls. */
  private double[] law(int node) {
    Supply supply = Objects.requireNonNull(supplyAt[node]);
    double flow = supplied[node];
    double p0 = still(node);
    double steep = STEEP * p0 / flowScale;
    exhausted[node] = false;
    if (flow < 0.0) {
      return new double[] {p0 - steep * flow, steep};
    }
    double p = at(supply, flow);
    if (p < 0.0) {
      double low = 0.0;
      double high = flow;
      for (int i = 0; i < 200 && high - low > 1.0e-14 * high; i++) {
        double middle = 0.5 * (low + high);
        if (at(supply, middle) < 0.0) {
          high = middle;
        } else {
          low = middle;
        }
      }
      exhausted[node] = true;
      return new double[] {at(supply, low) - steep * (flow - low), steep};
    }
    double h = STEP * Math.max(flow, 1.0e-3 * flowScale);
    double before = at(supply, Math.max(0.0, flow - h));
    double slope = flow >= h ? (before - p) / h : 0.0;
    return new double[] {p, Math.max(1.0e-9 * p0 / flowScale, slope)};
  }

  private static double at(Supply supply, double flow) {
    return supply
        .at(MassFlow.ofKilogramsPerSecond(flow))
        .map(given -> given.pressure().pascals())
        .orElse(-1.0);
  }

  private void assemble(SparseSystem system, int[][] places, int[] unknown, double[] right) {
    system.clear();
    for (int i = 0; i < pascals.length; i++) {
      int row = unknown[i];
      if (row < 0) {
        continue;
      }
      // −(Σ in − Σ out − d) with the sign turned, so that the diagonal is positive
      right[row] = -demand(i, pascals[i]);
      system.hold(row, demandSlope(i, pascals[i]));
      if (supplyAt[i] != null) {
        double[] law = law(i);
        right[row] += supplied[i] + (law[0] - pascals[i]) / law[1];
        system.hold(row, 1.0 / law[1]);
      }
    }
    for (int k = 0; k < branches.length; k++) {
      Branch branch = branches[k];
      boolean forward = branch.flow >= 0.0;
      int a = unknown[forward ? branch.from : branch.to];
      int b = unknown[forward ? branch.to : branch.from];
      double g = 1.0 / branch.slope;
      double flow = Math.abs(branch.flow) + g * branch.left;
      if (a >= 0) {
        right[a] -= flow;
      }
      if (b >= 0) {
        right[b] += flow;
      }
      if (a >= 0 && b >= 0) {
        system.couple(places[k][forward ? 0 : 1], -g); // row a, column b
        system.couple(places[k][forward ? 1 : 0], -g * branch.byInlet); // row b, column a
      } else if (a >= 0) {
        system.hold(a, g * branch.byInlet);
      } else if (b >= 0) {
        system.hold(b, g);
      }
    }
  }

  /** No pressure ends below the atmosphere, where tools take nothing, or above the highest supply: steps beyond are cut short. */
  private void confine(int[] unknown, double[] step) {
    for (int i = 0; i < pascals.length; i++) {
      if (unknown[i] >= 0) {
        double to = pascals[i] + step[unknown[i]];
        double within =
            Math.min(Math.max(to, atmosphere.pascals()), pressureScale * (1.0 + 1.0e-9));
        if (within != to) { // a step kept keeps its digits
          step[unknown[i]] = within - pascals[i];
        }
      }
    }
  }

  /** Takes the step; true where nothing that counts was left of any equation. */
  private boolean advance(int[] unknown, double[] step) {
    boolean settled = true;
    double pressureAllowed = 1.0e-10 * pressureScale;
    double flowAllowed = 1.0e-12 * flowScale;
    for (Branch branch : branches) {
      boolean forward = branch.flow >= 0.0;
      double a = change(unknown, step, forward ? branch.from : branch.to);
      double b = change(unknown, step, forward ? branch.to : branch.from);
      double change = (damping * branch.left + branch.byInlet * a - b) / branch.slope;
      settled &= Math.abs(branch.left) <= pressureAllowed
          || Math.abs(branch.left) / branch.slope <= flowAllowed;
      double before = branch.flow;
      branch.flow += forward ? change : -change;
      if (steps > STRAIGHT && isOver(branch, before)) {
        branch.flow = Math.copySign(branch.jumpFlow * (1.0 + 0.5 * width), branch.flow);
      }
    }
    for (int i = 0; i < pascals.length; i++) {
      Supply supply = supplyAt[i];
      if (supply != null && !isFixed(supply)) {
        double[] law = law(i);
        supplied[i] += (damping * (law[0] - pascals[i]) - change(unknown, step, i)) / law[1];
        settled &= Math.abs(law[0] - pascals[i]) <= pressureAllowed
            || Math.abs(law[0] - pascals[i]) / law[1] <= flowAllowed;
      }
      double change = change(unknown, step, i);
      pascals[i] += change;
    }
    return settled;
  }

  private static double change(int[] unknown, double[] step, int node) {
    return unknown[node] < 0 ? 0.0 : step[unknown[node]];
  }

  /** The largest of what nodes gain or lose, over all that is supplied. */
  private double imbalance() {
    double[] sums = new double[pascals.length];
    double whole = 1.0e-6 * demanded;
    for (Branch branch : branches) {
      sums[branch.from] -= branch.flow;
      sums[branch.to] += branch.flow;
    }
    double worst = 0.0;
    for (int i = 0; i < sums.length; i++) {
      double taken = demand(i, pascals[i]);
      if (isFixed(supplyAt[i])) {
        supplied[i] = taken - sums[i];
      } else {
        worst = Math.max(worst, Math.abs(sums[i] + supplied[i] - taken));
      }
      whole += Math.max(0.0, supplied[i]);
    }
    return worst / whole;
  }
}
