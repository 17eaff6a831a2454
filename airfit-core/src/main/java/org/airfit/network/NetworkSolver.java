package org.airfit.network;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.airfit.plant.Supply;
import org.airfit.run.ToolDemand;
import org.jspecify.annotations.Nullable;

/**
 * Steady flow in a network, by Newton's method on flows and pressures at once, with the flows eliminated before each
 * linear solution.
 *
 * <pre>
 *   branch a → b:  f(q, pa) − pb = 0        node i:  Σ q in − Σ q out − d(pi) = 0
 *   δq = (r + f_p δpa − δpb)/(−f_q)         r what is left of the branch's equation
 * </pre>
 *
 * <p>f is the law of a {@link SolverBranch}. Its ramp at Re 2300 is wide at first, a third of that flow, where Newton
 * finds its way,
 * and is drawn in by tens to 10⁻⁹ of it, each answer leading to the next: a branch whose drop lies between the two
 * values ends on it.
 */
final class NetworkSolver {

  private static final int MAX_ITERATIONS = 500;
  private static final double STEEP = 1.0e10;
  private static final int STRAIGHT = 5;
  private static final double WIDEST = 0.3;
  private static final double NARROWEST = 1.0e-9;
  private static final double RAMP_PASCALS = 100.0;

  private final double atmosphere;
  private final double floor;
  private final @Nullable Supply[] supplyAt; // by node
  private final List<List<ToolDemand>> toolsAt; // by node, at the load they run at
  private final NodeOrder order;
  final SolverBranch[] branches;

  final double[] pascals;
  final double[] supplied;
  final boolean[] exhausted;
  double imbalance;
  int iterations;

  private int steps; // with this width
  private double width; // of the ramp, over the flow at which friction jumps
  private double demanded;
  private double damping;
  private double flowScale;
  private double pressureScale;

  NetworkSolver(
      double atmosphere,
      @Nullable Supply[] supplyAt,
      List<List<ToolDemand>> toolsAt,
      NodeOrder order,
      SolverBranch[] branches) {
    this.atmosphere = atmosphere;
    this.floor = 0.5 * atmosphere;
    this.supplyAt = supplyAt;
    this.toolsAt = toolsAt;
    this.order = order;
    this.branches = branches;
    this.pascals = new double[supplyAt.length];
    this.supplied = new double[supplyAt.length];
    this.exhausted = new boolean[supplyAt.length];
  }

  /**
   * What the tools at a node take [kg/s]. Below 100 Pa of gauge pressure it goes in a straight line to nothing, and on.
   */
  private double demand(int node, double p) {
    double sum = 0.0;
    for (ToolDemand tool : toolsAt.get(node)) {
      sum += demand(tool, p);
    }
    return sum;
  }

  /** What one tool at a node takes [kg/s] at the pressure found. */
  double demand(int node, int tool) {
    return demand(toolsAt.get(node).get(tool), pascals[node]);
  }

  private double demand(ToolDemand tool, double p) {
    double whole = Math.max(p, atmosphere + RAMP_PASCALS);
    double full = tool.flow(whole, atmosphere);
    return p >= whole ? full : full * (p - atmosphere) / RAMP_PASCALS;
  }

  private double demandSlope(int node, double p) {
    double corner = atmosphere + RAMP_PASCALS;
    double sum = 0.0;
    for (ToolDemand tool : toolsAt.get(node)) {
      sum += p < corner ? tool.flow(corner, atmosphere) / RAMP_PASCALS : tool.slope(p, atmosphere);
    }
    return sum;
  }

  private static boolean isFixed(@Nullable Supply supply) {
    return supply != null && supply.holds();
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
      for (SolverBranch branch : branches) {
        flowScale = Math.max(flowScale, Math.abs(branch.flow));
      }
      SolverBranch.Scales scales = scales();
      for (SolverBranch branch : branches) {
        branch.evaluate(pascals[branch.inletNode()], pascals[branch.outletNode()], scales);
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

  private SolverBranch.Scales scales() {
    return new SolverBranch.Scales(pressureScale, flowScale, floor, width);
  }

  /**
   * Draws the ramp in, and the flows on it with their drops kept; false where none is on it any more, or it is narrow
   * enough.
   */
  private boolean narrow() {
    boolean any = false;
    for (SolverBranch branch : branches) {
      branch.hold(width);
      any |= branch.held;
    }
    if (!any || width <= NARROWEST) {
      return false;
    }
    width = Math.max(NARROWEST, 0.1 * width);
    for (SolverBranch branch : branches) {
      if (branch.held) {
        branch.narrow(pascals[branch.inletNode()], pascals[branch.outletNode()], scales());
      }
    }
    return true;
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
    for (SolverBranch branch : branches) {
      branch.flow = 0.01 * flowScale;
    }
    int[] fed = order.fed();
    for (int at = n - 1; at >= 0; at--) {
      int node = fed[at];
      if (order.feeding(node) >= 0) {
        SolverBranch branch = branches[order.feeding(node)];
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
    double none = supply.pascals(0.0);
    return none > 0.0 ? none : supply.still().pressure().pascals();
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
    double p = supply.pascals(flow);
    if (Double.isNaN(p)) {
      double most = supply.largest();
      double last = supply.pascals(most);
      exhausted[node] = true;
      return new double[] {(Double.isNaN(last) ? 0.0 : last) - steep * (flow - most), steep};
    }
    return new double[] {p, Math.max(1.0e-9 * p0 / flowScale, -supply.slope(flow))};
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
      SolverBranch branch = branches[k];
      boolean forward = branch.isForward();
      int a = unknown[branch.inletNode()];
      int b = unknown[branch.outletNode()];
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

  /**
   * No pressure ends below the atmosphere, where tools take nothing, or above the highest supply: steps beyond are cut
   * short.
   */
  private void confine(int[] unknown, double[] step) {
    for (int i = 0; i < pascals.length; i++) {
      if (unknown[i] >= 0) {
        double to = pascals[i] + step[unknown[i]];
        double within = Math.min(Math.max(to, atmosphere), pressureScale * (1.0 + 1.0e-9));
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
    for (SolverBranch branch : branches) {
      double a = change(unknown, step, branch.inletNode());
      double b = change(unknown, step, branch.outletNode());
      double change = (damping * branch.left + branch.byInlet * a - b) / branch.slope;
      settled &= Math.abs(branch.left) <= pressureAllowed
          || Math.abs(branch.left) / branch.slope <= flowAllowed;
      double before = branch.flow;
      branch.flow += branch.isForward() ? change : -change;
      if (steps > STRAIGHT && branch.isOver(before, width)) {
        branch.putOnRamp(0.5, width);
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
    for (SolverBranch branch : branches) {
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
