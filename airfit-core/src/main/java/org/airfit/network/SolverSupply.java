package org.airfit.network;

import org.airfit.plant.Supply;

/**
 * One supply as the solver sees it: what it gives, and the law of its pressure.
 *
 * <p>A non-return valve that has shut makes it idle: it gives nothing, whatever the pressure at its node. Whether it is
 * shut is not decided here; while it is not, its law goes on in a straight line below a flow of 0, and the solver shuts
 * a supply that would take air back.
 */
final class SolverSupply {

  private static final double STEEP = 1.0e12;

  /** The slope of a pressure that holds is taken as this part of the pressure over the whole flow [-]. */
  private static final double LEVEL = 1.0e-9;

  final int node;
  final boolean letsBack; // has no non-return valve

  double flow;
  boolean idle;

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
  void evaluate(double pascals, double flowScale) {
    double level = LEVEL * still() / flowScale;
    if (flow < 0.0) {
      slope = Math.max(level, -supply.slope(0.0));
      left = still() - slope * flow - pascals;
      return;
    }
    double p = supply.pascals(flow);
    if (Double.isNaN(p)) {
      double most = supply.largest();
      slope = STEEP * still() / flowScale;
      left = atMost() - slope * (flow - most) - pascals;
    } else {
      slope = Math.max(level, -supply.slope(flow));
      left = p - pascals;
    }
  }

  private double atMost() {
    double last = supply.pascals(supply.largest());
    return Double.isNaN(last) ? 0.0 : last;
  }

  /** Takes a step: the change of the pressure at its node, and how much of what is left is made up for. */
  void advance(double change, double damping) {
    flow += (damping * left - change) / slope;
  }

  /**
   * Finds what it gives at a pressure, by its law with a little more loss, in proportion to the flow, and the slope.
   *
   * @param pascals the pressure at its node [Pa]
   * @param more the further loss [Pa/(kg/s)], above 0
   */
  void invert(double pascals, double more, double flowScale) {
    left = 0.0;
    double still = still();
    if (pascals >= still || holds()) {
      slope = more + Math.max(0.0, -supply.slope(0.0));
      flow = (still - pascals) / slope;
      return;
    }
    // the pressure falls with the flow: halve until no digit is left
    double low = 0.0;
    double high = flowScale;
    while (supply.pascals(high) - more * high >= pascals) {
      low = high;
      high *= 2.0;
    }
    for (int i = 0; i < 100 && high - low > Math.ulp(high); i++) {
      double middle = 0.5 * (low + high);
      if (supply.pascals(middle) - more * middle >= pascals) {
        low = middle;
      } else {
        high = middle;
      }
    }
    flow = low;
    double excess = supply.pascals(low) - more * low - pascals;
    slope = excess > 1.0e-9 * still
        ? STEEP * still / flowScale
        : more + Math.max(0.0, -supply.slope(low));
  }

  /**
   * How far [Pa] the pressure at its node lies from its law, as {@link SolverBranch#miss} has it; 0 while it takes air
   * back that its non-return valve will stop.
   */
  double miss(double pascals, double digits) {
    if (takesBack()) {
      return 0.0;
    }
    if (idle) {
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

  /** Whether air flows back into it through what should be a non-return valve. */
  boolean takesBack() {
    return !letsBack && flow < 0.0;
  }

  /** Whether it gives all it can. */
  boolean exhausted() {
    return !idle && Double.isNaN(supply.pascals(flow * (1.0 + 1.0e-9)));
  }
}
