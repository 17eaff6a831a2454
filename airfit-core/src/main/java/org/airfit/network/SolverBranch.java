package org.airfit.network;

import org.airfit.flow.FlowElement;

/**
 * One branch as the solver sees it: its flow, and the law f(q, p1) of the pressure behind it with three edges made
 * passable.
 *
 * <p>Beyond choking the pressure falls by 10¹⁰ p/q instead of at once; below 10⁻⁷ of the whole flow the law is a
 * straight line; and where
 * friction jumps at Re 2300, a ramp leads from the laminar to the turbulent value.
 */
final class SolverBranch {

  private static final double STEEP = 1.0e10;
  private static final double STEP = 1.0e-6;
  private static final double SMALL = 1.0e-7;

  /** The flow [kg/s] is taken just before and just behind a jump, and just below choking, by this part of it [-]. */
  private static final double JUST = 1.0e-12;

  final int from;
  final int to;

  double flow;
  boolean chokes;
  boolean held; // on the ramp

  double left; // r, what is left of the branch's equation
  double slope; // −f_q > 0
  double byInlet; // f_p

  private final FlowElement element;
  private final double kelvins;
  private final double viscosity;
  private final double jumpFlow; // infinite where there is no jump

  SolverBranch(FlowElement element, int from, int to, double kelvins, double viscosity) {
    this.element = element;
    this.from = from;
    this.to = to;
    this.kelvins = kelvins;
    this.viscosity = viscosity;
    this.jumpFlow = element.nextJump(0.0, viscosity);
  }

  boolean isForward() {
    return flow >= 0.0;
  }

  /** The node in front. */
  int inletNode() {
    return isForward() ? from : to;
  }

  /** The node behind. */
  int outletNode() {
    return isForward() ? to : from;
  }

  /** Finds r, −f_q and f_p at its flow, in the direction of the flow. */
  void evaluate(double inlet, double outlet, Scales scales) {
    double q = Math.abs(flow);
    double p1 = Math.max(inlet, scales.floor());
    double least = 1.0e-7 * scales.pressure() / scales.flow();
    double small = SMALL * scales.flow();
    double measured = Math.max(q, small);
    double atMeasured = behind(measured, p1, scales.width());
    double behind;
    chokes = false;
    if (Double.isNaN(atMeasured)) {
      double limit = limit(p1);
      double atLimit = behind(limit, p1, scales.width());
      slope = STEEP * p1 / limit;
      behind = atLimit - slope * (measured - limit);
      byInlet = 1.0 + slope * limit / p1;
      chokes = true;
    } else if (q < small) {
      slope = Math.max(least, (p1 - atMeasured) / small);
      behind = p1 - (p1 - atMeasured) * q / small;
      byInlet = 1.0;
    } else {
      behind = atMeasured;
      slope = Math.max(least, slope(q, p1, behind, outlet, scales.width()));
      byInlet = isOnRamp(q, scales.width()) ? 1.0 : Math.max(0.1, (behind + q * slope) / p1);
    }
    left = behind - (p1 - inlet) - outlet;
  }

  /**
   * What is large and small in a network.
   *
   * @param pressure the highest pressure of a supply [Pa]
   * @param flow the largest flow [kg/s]
   * @param floor the lowest pressure that is tried in front of a branch [Pa]
   * @param width the width of the ramp over the flow at which friction jumps [-]
   */
  record Scales(double pressure, double flow, double floor, double width) {}

  /** −f_q of a flow that passes. */
  private double slope(double q, double p1, double behind, double outlet, double width) {
    if (isOnRamp(q, width)) {
      double turbulent = turbulent(p1, width);
      if (!Double.isNaN(turbulent)) {
        return (laminar(p1) - turbulent) / (width * jumpFlow);
      }
    }
    if (Double.isNaN(behind(q * (1.0 + STEP), p1, width))) {
      return slopeToLimit(q, p1, behind, outlet, width);
    }
    // no drop grows more slowly than in a straight line; where it has no digits left in the
    // pressure, or two edges leave no room for a difference, this is what counts
    double straight = (p1 - behind) / q;
    double falls = -element.slope(q, p1, kelvins, viscosity);
    return falls > straight ? falls : straight;
  }

  /**
   * The slope of the chord to the pressure behind, round the corner where the branch chokes, which lies ahead by less
   * than a step.
   */
  private double slopeToLimit(double q, double p1, double behind, double outlet, double width) {
    double limit = limit(p1);
    double steep = STEEP * p1 / limit;
    double ahead = Math.max(0.0, limit - q);
    double atLimit = behind(limit, p1, width);
    chokes = outlet < atLimit && ahead < 1.0e-9 * q;
    return outlet < atLimit
        ? (behind - outlet) / (ahead + (atLimit - outlet) / steep)
        : ahead > 1.0e-13 * q ? (behind - atLimit) / ahead : steep;
  }

  /** A flow just below that at which the branch chokes. */
  private double limit(double p1) {
    return element.largest(p1, kelvins, viscosity) * (1.0 - JUST);
  }

  /** The pressure [Pa] behind, on the ramp where there is one, or NaN where the flow does not pass. */
  private double behind(double q, double p1, double width) {
    if (isOnRamp(q, width)) {
      double laminar = laminar(p1);
      double turbulent = turbulent(p1, width);
      if (!Double.isNaN(turbulent)) {
        return laminar - (laminar - turbulent) * (q / jumpFlow - 1.0) / width;
      }
    }
    return passed(q, p1);
  }

  private double passed(double q, double p1) {
    return element.outlet(q, p1, kelvins, viscosity);
  }

  private boolean isOnRamp(double q, double width) {
    return q > jumpFlow && q < jumpFlow * (1.0 + width);
  }

  /** The pressure [Pa] where the ramp begins, or NaN where the flow does not pass. */
  private double laminar(double p1) {
    return passed(jumpFlow * (1.0 - JUST), p1);
  }

  /** The pressure [Pa] where the ramp ends, or NaN where the flow does not pass. */
  private double turbulent(double p1, double width) {
    return passed(jumpFlow * (1.0 + width) * (1.0 + JUST), p1);
  }

  /** Notes whether its flow stands on the ramp. */
  void hold(double width) {
    held = isOnRamp(Math.abs(flow), width);
  }

  /** Puts a flow that stood on the ramp where a narrower one has the same pressure behind. */
  void narrow(double inlet, double outlet, Scales scales) {
    double p1 = Math.max(scales.floor(), inlet);
    double laminar = laminar(p1);
    double turbulent = turbulent(p1, scales.width());
    double part = (laminar - outlet) / (laminar - turbulent);
    if (part >= 0.0 && part <= 1.0) {
      putOnRamp(part, scales.width());
    }
  }

  /** Puts the flow on the ramp, a part of the way up. */
  void putOnRamp(double part, double width) {
    flow = Math.copySign(jumpFlow * (1.0 + part * width), flow);
  }

  /** Whether a step led over the whole ramp, where the slope on neither side tells of it. */
  boolean isOver(double before, double width) {
    double least = Math.min(Math.abs(before), Math.abs(flow));
    double most = Math.max(Math.abs(before), Math.abs(flow));
    return before * flow > 0.0 && least <= jumpFlow && most >= jumpFlow * (1.0 + width);
  }
}
