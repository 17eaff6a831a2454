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

  /** What nodes gain or lose over all that is supplied, where lines lean over [-]. */
  private static final double BALANCED = 1.0e-11;

  /**
   * The same as a part of the lean [-]: what flows back through lines that lean may find no way out, and it goes where
   * the lines are drawn upright. Our choice.
   */
  private static final double LEAKING = 0.01;

  /** What may be left of an equation at an answer, by far, over the highest pressure or the largest flow [-]. */
  private static final double NEAR = 1.0e-6;

  final double[] pascals;
  final SolverBranch[] branches;
  final SolverSupply[] supplies;

  /** By branch, whether no air flows through it only because the supply beyond is idle. */
  boolean[] waiting = new boolean[0];

  private final double atmosphere;
  private final SolverTools tools;
  private final NodeOrder order;
  private final @Nullable SolverSupply[] supplyAt;
  private final FlowLayout layout;
  private final int[] unknown;
  private final SparseSystem system;
  private final double[] right;
  private final double[] sums;
  private final double pressureScale;
  private final double rated;
  private final int[] island;
  private double lean = SolverBranch.JUST;
  private SolverBranch.Scales scales;

  FlowBalance(
      double atmosphere,
      FlowLayout layout,
      SolverSupply[] supplies,
      SolverTools tools,
      NodeOrder order,
      SolverBranch[] branches) {
    this.atmosphere = atmosphere;
    this.layout = layout;
    this.supplies = supplies;
    this.tools = tools;
    this.order = order;
    this.branches = branches;
    this.unknown = layout.unknown();
    this.island = layout.island();
    this.system = new SparseSystem(layout.elimination());
    this.right = new double[layout.elimination().unknowns()];
    int nodes = unknown.length;
    this.pascals = new double[nodes];
    this.sums = new double[nodes];
    this.supplyAt = new SolverSupply[nodes];
    for (SolverSupply supply : supplies) {
      supplyAt[supply.node] = supply;
    }
    this.pressureScale =
        Arrays.stream(supplies).mapToDouble(SolverSupply::still).max().orElse(atmosphere);
    this.rated = tools.rated();
    this.scales = new SolverBranch.Scales(pressureScale, rated, lean);
  }

  /** By how much of the flow the vertical lines of the laws lean over [-]; next to nothing in an answer. */
  void lean(double part) {
    lean = part;
    scales = new SolverBranch.Scales(pressureScale, scales.flow(), lean);
  }

  /** Whether the lines lean over so far that it counts. */
  boolean leans() {
    return lean > SolverBranch.JUST;
  }

  private void measureFlows() {
    double flow = rated;
    for (SolverBranch branch : branches) {
      flow = Math.max(flow, Math.abs(branch.flow));
    }
    scales = new SolverBranch.Scales(pressureScale, flow, lean);
  }

  private boolean isFixed(int node) {
    return unknown[node] < 0;
  }

  /** Flows along a tree of shortest ways from the supplies, pressures a little below theirs. */
  void start() {
    int n = pascals.length;
    double least = pressureScale;
    for (SolverSupply supply : supplies) {
      least = Math.min(least, supply.still());
    }
    double[] through = new double[n];
    for (int i = 0; i < n; i++) {
      SolverSupply supply = supplyAt[i];
      through[i] = tools.flow(i, Math.max(atmosphere, 0.9 * least));
      pascals[i] = supply != null ? supply.still() : 0.95 * least;
      if (supply != null) {
        supply.flow = 0.0;
      }
    }
    scales = new SolverBranch.Scales(pressureScale, rated, lean);
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
      } else if (supply != null) {
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
      if (!isFixed(supply.node)) {
        supply.evaluate(pascals[supply.node], scales);
      }
    }
  }

  /** Solves for the changes of the unknown pressures. */
  void solve() {
    system.clear();
    for (int i = 0; i < pascals.length; i++) {
      int row = unknown[i];
      if (row >= 0) {
        // −(Σ in − Σ out + s − d) with the sign turned, so that the diagonal is positive
        right[row] = -tools.flow(i, pascals[i]);
        system.hold(row, tools.slope(i, pascals[i]));
        SolverSupply supply = supplyAt[i];
        if (supply != null) {
          right[row] += supply.flow + supply.left / supply.slope;
          system.hold(row, 1.0 / supply.slope);
        }
      }
    }
    for (int k = 0; k < branches.length; k++) {
      add(branches[k], k);
    }
    system.solve(right);
  }

  private void add(SolverBranch branch, int number) {
    boolean forward = branch.isForward();
    int a = unknown[branch.inletNode()];
    int b = unknown[branch.outletNode()];
    double g = 1.0 / branch.slope;
    double flow = branch.along() + g * branch.left;
    if (a >= 0) {
      right[a] -= flow;
    }
    if (b >= 0) {
      right[b] += flow;
    }
    if (a >= 0 && b >= 0) {
      system.couple(layout.place(number, forward), -g); // row a, column b
      system.couple(layout.place(number, !forward), -g * branch.byInlet); // row b, column a
    } else if (a >= 0) {
      system.hold(a, g * branch.byInlet);
    } else if (b >= 0) {
      system.hold(b, g);
    }
  }

  /** Makes the step in the pressures smaller by a factor. */
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

  /** Takes the step in the flows, which make up for a part of what is left, and in the pressures. */
  void advance(double damping, boolean stopsAtJumps) {
    for (SolverBranch branch : branches) {
      branch.advance(
          change(branch.inletNode()), change(branch.outletNode()), damping, stopsAtJumps);
    }
    for (SolverSupply supply : supplies) {
      if (!isFixed(supply.node)) {
        supply.advance(change(supply.node), damping);
      }
    }
    for (int i = 0; i < pascals.length; i++) {
      pascals[i] += change(i);
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
    return isSettled(1.0e-15, LITTLE_FLOW);
  }

  /** Whether a solution that is accepted may be here; where not, its residual need not be evaluated. */
  boolean isNearAnswer() {
    return isSettled(NEAR, NEAR);
  }

  /** Whether nothing that counts is left of any equation. */
  boolean isNearlySettled() {
    return isSettled(1.0e-10, LITTLE_FLOW) && imbalance() <= Math.max(BALANCED, LEAKING * lean);
  }

  /** Whether no more is left of any equation than a part of the highest pressure, or of the largest flow. */
  private boolean isSettled(double ofPressure, double ofFlow) {
    boolean settled = true;
    for (SolverBranch branch : branches) {
      settled &= isLittle(branch.left, branch.slope, ofPressure, ofFlow);
    }
    for (SolverSupply supply : supplies) {
      if (!isFixed(supply.node)) {
        settled &= isLittle(supply.left, supply.slope, ofPressure, ofFlow);
      }
    }
    return settled;
  }

  private boolean isLittle(double left, double slope, double ofPressure, double ofFlow) {
    return Math.abs(left) <= ofPressure * pressureScale
        || Math.abs(left) / slope <= ofFlow * scales.flow();
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
      if (supply != null) {
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

  /** Takes away what is left of a flow where there can be none; returns where, by branch. */
  boolean[] stopDeadLegs() {
    boolean[] moves = moves();
    for (SolverSupply supply : supplies) {
      supply.shut();
      if (!moves[island[supply.node]]) {
        supply.flow = 0.0;
        supply.idle = !layout.isHighest(supply);
      }
    }
    boolean[] active = new boolean[pascals.length];
    for (int i = 0; i < active.length; i++) {
      SolverSupply supply = supplyAt[i];
      active[i] = tools.any(i) || (supply != null && (supply.letsBack || supply.flow > 0.0));
      if (!moves[island[i]]) {
        pascals[i] = supply == null ? 0.0 : supply.still();
      }
    }
    SolverBranch[] open =
        Arrays.stream(branches).filter(branch -> !branch.isShut()).toArray(SolverBranch[]::new);
    boolean[] deadOpen = DeadLegs.of(active, open);
    for (SolverSupply supply : supplies) {
      active[supply.node] |= supply.idle;
    }
    boolean[] beyondAll = DeadLegs.of(active, open);
    boolean[] dead = new boolean[branches.length];
    waiting = new boolean[branches.length];
    int at = 0;
    for (int k = 0; k < dead.length; k++) {
      SolverBranch branch = branches[k];
      if (!branch.isShut()) {
        dead[k] = deadOpen[at];
        waiting[k] = deadOpen[at] && !beyondAll[at];
        at++;
      }
      if (dead[k] || branch.isShut()) {
        branch.stop();
      }
    }
    spread(moves);
    return dead;
  }

  /** Where all air stands, every node has the highest pressure that comes to it from a supply. */
  private void spread(boolean[] moves) {
    boolean rises = true;
    while (rises) {
      rises = false;
      for (SolverBranch branch : branches) {
        if (!moves[island[branch.from]]) {
          rises |= raise(branch.to, branch.still(pascals[branch.from]));
          rises |= !branch.oneWay && raise(branch.from, branch.still(pascals[branch.to]));
        }
      }
    }
  }

  private boolean raise(int node, double to) {
    boolean rises = to > pascals[node];
    pascals[node] = Math.max(to, pascals[node]);
    return rises;
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
      if (!isFixed(supply.node)) {
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
