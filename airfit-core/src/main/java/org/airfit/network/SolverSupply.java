package org.airfit.network;

import org.airfit.plant.Supply;

/**
 * One supply as the solver sees it: what it gives, and the law of its pressure.
 *
 * <p>A non-return valve that is shut is a vertical line, as it is for a {@link SolverBranch}: at no flow any higher
 * pressure may stand at the node. It leans over a little, so that next to nothing flows back.
 */
final class SolverSupply {

  private static final double STEEP = 1.0e12;

  /** The slope of a pressure that holds is taken as this part of the pressure over the whole flow [-]. */
  private static final double LEVEL = 1.0e-9;

  final int node;
  final boolean letsBack; // has no non-return valve

  double flow;
  boolean idle; // its valve is shut

  double left; // what is left of its equation
  double slope; // how fast the pressure falls with the flow, above 0

  private final Supply supply;

  SolverSupply(int node, Supply supply, boolean letsBack) {
    this.node = node;
    this.supply = supply;
    this.letsBack = letsBack;
  }

  /** Whether its pressure is the same whatever it gives. */
  boolean holds() {
    return supply.holds();
  }

  /** Its pressure [Pa] without flow. */
  double still() {
    double none = supply.pascals(0.0);
    return none > 0.0 ? none : supply.still().pressure().pascals();
  }

  /** Finds what is left at its flow and a pressure at its node, and the slope. */
  void evaluate(double pascals, SolverBranch.Scales scales) {
    if (flow <= 0.0) {
      slope = scales.shut();
      left = still() - slope * flow - pascals;
      return;
    }
    double p = supply.pascals(flow);
    if (Double.isNaN(p)) {
      slope = STEEP * still() / scales.flow();
      left = atMost() - slope * (flow - supply.largest()) - pascals;
    } else {
      slope = Math.max(LEVEL * still() / scales.flow(), -supply.slope(flow));
      left = p - pascals;
    }
  }

  private double atMost() {
    double last = supply.pascals(supply.largest());
    return Double.isNaN(last) ? 0.0 : last;
  }

  /** Takes a step: the change of the pressure at its node, and how much of what is left is made up for. */
  void advance(double change, double damping) {
    double after = flow + (damping * left - change) / slope;
    flow = flow > 0.0 ? Math.max(0.0, after) : after; // at least no flow before it shuts
  }

  /** Takes away what the leaning line let back through the valve. */
  void shut() {
    idle = takesBack();
    flow = idle ? 0.0 : flow;
  }

  /** How far [Pa] the pressure at its node lies from its law, as {@link SolverBranch#miss} has it. */
  double miss(double pascals, double digits) {
    if (idle || takesBack()) {
      return Math.max(0.0, still() - pascals);
    }
    if (holds()) {
      return Math.abs(still() - pascals);
    }
    double most = supply.pascals(flow * (1.0 - digits));
    double least = supply.pascals(flow * (1.0 + digits));
    return Math.max(
        0.0,
        Math.max(
            pascals - (Double.isNaN(most) ? 0.0 : most),
            Double.isNaN(least) ? 0.0 : least - pascals));
  }

  /** Whether next to nothing flows back through a non-return valve. */
  private boolean takesBack() {
    return !letsBack && flow < 0.0;
  }

  /** Whether it gives all it can. */
  boolean exhausted() {
    return !idle && Double.isNaN(supply.pascals(flow * (1.0 + 1.0e-9)));
  }
}
