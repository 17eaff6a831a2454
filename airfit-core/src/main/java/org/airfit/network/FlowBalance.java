package org.airfit.network;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Pressures and flows of a network, and the linear system that a step of Newton's method solves for them.
 *
 * <pre>
 *   branch a → b:  f(q, pa) − pb = 0        node i:  Σ q in − Σ q out + s − d(pi) = 0
 *   δq = (r + f_p δpa − δpb)/(−f_q)         r what is left of the branch's equation
 * </pre>
 *
 * <p>The flows are eliminated, so that the pressures alone are unknown. s is what a {@link SolverSupply} gives, d what
 * the tools take.
 */
final class FlowBalance {

  private static final double LITTLE_FLOW = 1.0e-12;

  final double[] pascals;
  final SolverBranch[] branches;
  final SolverSupply[] supplies;

  private final double atmosphere;
  private final SolverTools tools;
  private final NodeOrder order;
  private final @Nullable SolverSupply[] supplyAt;
  private final int[] unknown; // −1 where a supply holds the pressure
  private final SparseSystem system;
  private final int[][] places;
  private final double[] right;
  private final double[] sums;
  private final double[] diagonal;
  private final double pressureScale;
  private final double rated;
  private final int[] island; // by node: the least node that branches join it to
  private final double[] highest; // by island: the highest pressure of a supply
  private double lean = SolverBranch.JUST;
  private SolverBranch.Scales scales;

  FlowBalance(
      double atmosphere,
      int nodes,
      SolverSupply[] supplies,
      SolverTools tools,
      NodeOrder order,
      SolverBranch[] branches) {
    this.atmosphere = atmosphere;
    this.supplies = supplies;
    this.tools = tools;
    this.order = order;
    this.branches = branches;
    this.pascals = new double[nodes];
    this.sums = new double[nodes];
    this.supplyAt = new SolverSupply[nodes];
    this.pressureScale =
        Arrays.stream(supplies).mapToDouble(SolverSupply::still).max().orElse(atmosphere);
    this.rated = tools.rated();
    this.island = islands(nodes, branches);
    this.highest = new double[nodes];
    for (SolverSupply supply : supplies) {
      int here = island[supply.node];
      highest[here] = Math.max(highest[here], supply.still());
    }
    this.scales = new SolverBranch.Scales(pressureScale, rated, 0.5 * atmosphere, lean);
    boolean[] fixed = new boolean[nodes];
    for (SolverSupply supply : supplies) {
      supplyAt[supply.node] = supply;
      // no other drives air into the highest, whether it has a non-return valve or not
      fixed[supply.node] = supply.holds() && (supply.letsBack || isHighest(supply));
    }
    this.unknown = new int[nodes];
    int count = 0;
    for (int i = 0; i < nodes; i++) {
      unknown[i] = fixed[i] ? -1 : count++;
    }
    int[] one = Arrays.stream(branches).mapToInt(b -> unknown[b.from]).toArray();
    int[] other = Arrays.stream(branches).mapToInt(b -> unknown[b.to]).toArray();
    this.system = new SparseSystem(count, one, other);
    this.places = new int[branches.length][];
    for (int k = 0; k < branches.length; k++) {
      int a = one[k];
      int b = other[k];
      places[k] =
          a >= 0 && b >= 0 ? new int[] {system.place(a, b), system.place(b, a)} : new int[0];
    }
    this.right = new double[count];
    this.diagonal = new double[count];
  }

  private static int[] islands(int nodes, SolverBranch[] branches) {
    int[] root = new int[nodes];
    for (int i = 0; i < nodes; i++) {
      root[i] = i;
    }
    for (SolverBranch branch : branches) {
      int a = root(root, branch.from);
      int b = root(root, branch.to);
      root[Math.max(a, b)] = Math.min(a, b);
    }
    for (int i = 0; i < nodes; i++) {
      root[i] = root(root, i);
    }
    return root;
  }

  private static int root(int[] root, int node) {
    int at = node;
    while (root[at] != at) {
      root[at] = root[root[at]];
      at = root[at];
    }
    return at;
  }

  /** Whether no supply that branches join to it has a higher pressure. */
  boolean isHighest(SolverSupply supply) {
    return supply.still() >= highest[island[supply.node]];
  }

  /** The highest pressure of a supply [Pa]. */
  double pressureScale() {
    return pressureScale;
  }

  /** What all tools are rated at [kg/s], or the largest flow of a branch where that is more. */
  double flowScale() {
    return scales.flow();
  }

  /** By how much of the flow a jump of a branch's law leans over [-]; little more than nothing in an answer. */
  void lean(double part) {
    lean = part;
    scales = new SolverBranch.Scales(pressureScale, scales.flow(), 0.5 * atmosphere, lean);
  }

  /** Whether jumps lean over so far that it counts. */
  boolean leans() {
    return lean > SolverBranch.JUST;
  }

  /** Whether a branch stands at a jump. */
  boolean anyStands() {
    boolean any = false;
    for (SolverBranch branch : branches) {
      any |= branch.stands;
    }
    return any;
  }

  private void measureFlows() {
    double flow = rated;
    for (SolverBranch branch : branches) {
      flow = Math.max(flow, Math.abs(branch.flow));
    }
    scales = new SolverBranch.Scales(pressureScale, flow, 0.5 * atmosphere, lean);
  }

  private boolean isFixed(int node) {
    return unknown[node] < 0;
  }

  /** Flows along a tree of shortest ways from the supplies, pressures a little below theirs. */
  void start() {
    int n = pascals.length;
    double least = pressureScale;
    for (SolverSupply supply : supplies) {
      least = supply.idle ? least : Math.min(least, supply.still());
    }
    double[] through = new double[n];
    for (int i = 0; i < n; i++) {
      SolverSupply supply = supplyAt[i];
      through[i] = tools.flow(i, Math.max(atmosphere, 0.9 * least));
      pascals[i] = supply != null && !supply.idle ? supply.still() : 0.95 * least;
      if (supply != null) {
        supply.flow = 0.0;
      }
    }
    scales = new SolverBranch.Scales(pressureScale, rated, 0.5 * atmosphere, lean);
    for (SolverBranch branch : branches) {
      branch.start(0.01 * rated, scales);
    }
    int[] fed = order.fed();
    for (int at = n - 1; at >= 0; at--) {
      int node = fed[at];
      SolverSupply supply = supplyAt[node];
      if (order.feeding(node) >= 0) {
        SolverBranch branch = branches[order.feeding(node)];
        int parent = branch.from == node ? branch.to : branch.from;
        branch.flow = branch.to == node ? through[node] : -through[node];
        through[parent] += through[node];
      } else if (supply != null && !supply.idle) {
        supply.flow = through[node];
      }
    }
  }

  /** Finds what is left of every equation at the flows as they are, and the slopes. */
  void evaluate() {
    measureFlows();
    for (SolverBranch branch : branches) {
      branch.evaluate(pascals[branch.inletNode()], pascals[branch.outletNode()], scales);
    }
    for (SolverSupply supply : supplies) {
      if (!supply.idle && !isFixed(supply.node)) {
        supply.evaluate(pascals[supply.node], scales.flow());
      }
    }
  }

  /** Finds the flows that follow from the pressures, every law with a little more loss, and the slopes. */
  void invert(double more) {
    for (SolverBranch branch : branches) {
      branch.invert(pascals[branch.from], pascals[branch.to], more, scales);
    }
    for (SolverSupply supply : supplies) {
      if (!supply.idle && !isFixed(supply.node)) {
        supply.invert(pascals[supply.node], more, scales.flow());
      }
    }
  }

  /**
   * Solves for the changes of the unknown pressures.
   *
   * @param shift what is added to the diagonal, as a part of it [-]: 0 for Newton's step, more for a shorter one
   */
  void solve(double shift) {
    system.clear();
    Arrays.fill(diagonal, rated / pressureScale);
    for (int i = 0; i < pascals.length; i++) {
      int row = unknown[i];
      if (row >= 0) {
        // −(Σ in − Σ out + s − d) with the sign turned, so that the diagonal is positive
        right[row] = -tools.flow(i, pascals[i]);
        hold(row, tools.slope(i, pascals[i]));
        SolverSupply supply = supplyAt[i];
        if (supply != null && !supply.idle) {
          right[row] += supply.flow + supply.left / supply.slope;
          hold(row, 1.0 / supply.slope);
        }
      }
    }
    for (int k = 0; k < branches.length; k++) {
      add(branches[k], places[k]);
    }
    if (shift > 0.0) {
      for (int row = 0; row < right.length; row++) {
        system.hold(row, shift * diagonal[row]);
      }
    }
    system.solve(right);
  }

  private void hold(int row, double value) {
    system.hold(row, value);
    diagonal[row] += value;
  }

  private void add(SolverBranch branch, int[] at) {
    boolean forward = branch.isForward();
    int a = unknown[branch.inletNode()];
    int b = unknown[branch.outletNode()];
    double g = 1.0 / branch.slope;
    double flow = Math.abs(branch.flow) + g * branch.left;
    if (a >= 0) {
      right[a] -= flow;
      diagonal[a] += g * branch.byInlet;
    }
    if (b >= 0) {
      right[b] += flow;
      diagonal[b] += g;
    }
    if (a >= 0 && b >= 0) {
      system.couple(at[forward ? 0 : 1], -g); // row a, column b
      system.couple(at[forward ? 1 : 0], -g * branch.byInlet); // row b, column a
    } else if (a >= 0) {
      system.hold(a, g * branch.byInlet);
    } else if (b >= 0) {
      system.hold(b, g);
    }
  }

  /** What the shift takes off the step's promise: Σ shift × diagonal × change [kg/s]. */
  double promised(double shift) {
    double sum = 0.0;
    for (int row = 0; row < right.length; row++) {
      sum += shift * diagonal[row] * Math.abs(right[row]);
    }
    return sum;
  }

  /** Makes the changes smaller by a factor. */
  void damp(double damping) {
    for (int row = 0; row < right.length; row++) {
      right[row] *= damping;
    }
  }

  /**
   * No pressure ends below the atmosphere, where tools take nothing, or above the highest supply: steps beyond are cut
   * short.
   */
  void confine() {
    for (int i = 0; i < pascals.length; i++) {
      if (!isFixed(i)) {
        double to = pascals[i] + right[unknown[i]];
        double within = Math.min(Math.max(to, atmosphere), pressureScale * (1.0 + 1.0e-9));
        if (within != to) { // a step kept keeps its digits
          right[unknown[i]] = within - pascals[i];
        }
      }
    }
  }

  /** Takes the step in the flows, and then in the pressures. */
  void advanceFlows(double damping, boolean stopsAtJumps) {
    for (SolverBranch branch : branches) {
      branch.advance(
          change(branch.inletNode()), change(branch.outletNode()), damping, stopsAtJumps);
    }
    for (SolverSupply supply : supplies) {
      if (!supply.idle && !isFixed(supply.node)) {
        supply.advance(change(supply.node), damping);
      }
    }
    advancePressures(1.0);
  }

  /** Takes a part of the step in the pressures alone. */
  void advancePressures(double part) {
    for (int i = 0; i < pascals.length; i++) {
      pascals[i] += part * change(i);
    }
  }

  private double change(int node) {
    return isFixed(node) ? 0.0 : right[unknown[node]];
  }

  /** Whether all flows are numbers still. */
  boolean isFinite() {
    double sum = 0.0;
    for (SolverBranch branch : branches) {
      sum += Math.abs(branch.flow) + Math.abs(branch.left) + branch.slope;
    }
    return sum < Double.POSITIVE_INFINITY;
  }

  /** Whether nothing is left of any equation of a branch or a supply but a last digit of a pressure or a flow. */
  boolean isSettled() {
    return isSettled(1.0e-15);
  }

  /** Whether nothing that counts is left of any equation of a branch or a supply. */
  boolean isNearlySettled() {
    return isSettled(1.0e-10);
  }

  private boolean isSettled(double little) {
    boolean settled = true;
    for (SolverBranch branch : branches) {
      settled &= isLittle(branch.left, branch.slope, little);
    }
    for (SolverSupply supply : supplies) {
      if (!supply.idle && !isFixed(supply.node)) {
        settled &= isLittle(supply.left, supply.slope, little);
      }
    }
    return settled;
  }

  private boolean isLittle(double left, double slope, double little) {
    return Math.abs(left) <= little * pressureScale
        || Math.abs(left) / slope <= LITTLE_FLOW * scales.flow();
  }

  /** The largest of what nodes gain or lose, over all that is supplied [-]. Supplies that hold give what is missing. */
  double imbalance() {
    add();
    double whole = 1.0e-6 * rated;
    double worst = 0.0;
    for (int i = 0; i < sums.length; i++) {
      SolverSupply supply = supplyAt[i];
      if (supply != null && isFixed(i)) {
        supply.flow = supply.letsBack ? -sums[i] : Math.max(0.0, -sums[i]);
        sums[i] += supply.flow;
      }
      worst = Math.max(worst, Math.abs(sums[i]));
      if (supply != null && !supply.idle) {
        whole += Math.max(0.0, supply.flow);
      }
    }
    return worst / whole;
  }

  /** By island, whether air flows there: a tool takes some, or a supply has no non-return valve. */
  private boolean[] moves() {
    boolean[] moves = new boolean[pascals.length];
    for (int i = 0; i < moves.length; i++) {
      SolverSupply supply = supplyAt[i];
      moves[island[i]] |= tools.any(i) || (supply != null && supply.letsBack);
    }
    return moves;
  }

  /** Whether all air in it stands. */
  boolean stands() {
    for (boolean moves : moves()) {
      if (moves) {
        return false;
      }
    }
    return true;
  }

  /** Takes away what Newton's method left of a flow where there can be none; returns where, by branch. */
  boolean[] stopDeadLegs() {
    boolean[] moves = moves();
    boolean[] active = new boolean[pascals.length];
    for (int i = 0; i < active.length; i++) {
      int here = island[i];
      SolverSupply supply = supplyAt[i];
      if (!moves[here]) {
        pascals[i] = highest[here];
        if (supply != null) {
          supply.flow = 0.0;
          supply.idle = !isHighest(supply);
        }
      }
      active[i] = tools.any(i) || (supply != null && (supply.letsBack || supply.flow > 0.0));
    }
    boolean[] dead = DeadLegs.of(active, branches);
    for (int k = 0; k < dead.length; k++) {
      if (dead[k]) {
        branches[k].stop();
      }
    }
    return dead;
  }

  /** What nodes gain or lose, summed up [kg/s]. */
  double imbalances() {
    add();
    double sum = 0.0;
    for (int i = 0; i < sums.length; i++) {
      sum += isFixed(i) ? 0.0 : Math.abs(sums[i]);
    }
    return sum;
  }

  private void add() {
    for (int i = 0; i < sums.length; i++) {
      sums[i] = -tools.flow(i, pascals[i]);
    }
    for (SolverBranch branch : branches) {
      sums[branch.from] -= branch.flow;
      sums[branch.to] += branch.flow;
    }
    for (SolverSupply supply : supplies) {
      if (!supply.idle && !isFixed(supply.node)) {
        sums[supply.node] += supply.flow;
      }
    }
  }

  /**
   * How far the flows and pressures are from what a network obeys: each law of a branch or a supply, as a part of the
   * highest pressure, and each balance of a node, as a part of all that is supplied; the largest of them [-].
   */
  double residual(double digits) {
    double most = 0.0;
    for (SolverBranch branch : branches) {
      most = Math.max(
          most, branch.miss(pascals[branch.inletNode()], pascals[branch.outletNode()], digits));
    }
    for (SolverSupply supply : supplies) {
      most = Math.max(most, supply.miss(pascals[supply.node], digits));
    }
    double residual = Math.max(most / pressureScale, imbalance());
    return Double.isNaN(residual) ? Double.POSITIVE_INFINITY : residual;
  }
}
