package org.airfit.network;

import org.airfit.flow.FlowElement;

/**
 * One branch as the solver sees it: its flow, and the law f(q, p1) of the pressure behind it.
 *
 * <p>Where friction jumps at Re 2300 the law is a vertical line: at that flow the branch has any loss between the
 * laminar and the turbulent one. Such a branch <em>stands</em>: its unknown is then the part of the way from the one
 * to the other. A check valve or a regulator that is shut is a vertical line as well, at no flow: any higher pressure may
 * stand behind it. Two lines in a row may stand together, and only the sum of their losses is determined; so the line
 * leans over by 10⁻¹² of the flow, which shares the loss out, or by more while the solver finds its way. Beyond choking
 * the pressure falls by 10¹² p/q instead of at once. Below 10⁻⁷ of the whole flow, or of the largest the branch passes,
 * the law is a straight line.
 */
final class SolverBranch {

  private static final double STEEP = 1.0e12;
  private static final double SMALL = 1.0e-7;

  /** By how much of the flow a vertical line leans over, and how near to a jump or a largest flow is there [-]. */
  static final double JUST = 1.0e-12;

  /** A jump by less than this part of the largest pressure is none [-]. */
  private static final double LEAST_JUMP = 1.0e-12;

  /** The step for a difference, as a part of the pressure in front [-]. */
  private static final double STEP = 1.0e-6;

  final int from;
  final int to;
  final boolean oneWay; // lets air through from the one to the other alone

  double flow; // from the one to the other
  boolean stands; // at a jump of its law

  double left; // r, what is left of the branch's equation
  double slope; // −f_q > 0
  double byInlet; // f_p

  private final FlowElement element;
  private final double kelvins;
  private final double viscosity;
  private final double jumpFlow; // infinite where there is no jump
  private double standingPart; // of the way from the pressure before the jump to that behind it
  private double lean = JUST;
  private double small;

  SolverBranch(
      FlowElement element, boolean oneWay, int from, int to, double kelvins, double viscosity) {
    this.element = element;
    this.oneWay = oneWay;
    this.from = from;
    this.to = to;
    this.kelvins = kelvins;
    this.viscosity = viscosity;
    this.jumpFlow = element.nextJump(0.0, viscosity);
  }

  /** Begins anew with a flow [kg/s]. */
  void start(double begin, Scales scales) {
    flow = begin;
    stands = false;
    lean = scales.lean();
    small = SMALL * Math.min(scales.flow(), passing(scales));
  }

  /** The largest flow it passes, or the largest of the network where that passes: it costs less to try. */
  private double passing(Scales scales) {
    return Double.isNaN(behind(scales.flow(), scales.pressure()))
        ? element.largest(scales.pressure(), kelvins, viscosity)
        : scales.flow();
  }

  /** Lets nothing through any more. */
  void stop() {
    flow = 0.0;
    stands = false;
  }

  boolean isForward() {
    return oneWay || flow >= 0.0;
  }

  /** Whether it lets nothing through, as more pressure stands behind than it leaves. */
  boolean isShut() {
    return oneWay && flow <= 0.0;
  }

  /** The node in front. */
  int inletNode() {
    return isForward() ? from : to;
  }

  /** The node behind. */
  int outletNode() {
    return isForward() ? to : from;
  }

  /** The flow [kg/s] from the node in front to that behind; below 0 where the line of a shut one leans over. */
  double along() {
    return isForward() ? flow : -flow;
  }

  private void flowAlong(double q) {
    flow = isForward() ? q : -q;
  }

  /**
   * What is large and small in a network.
   *
   * @param pressure the highest pressure of a supply [Pa]
   * @param flow the largest flow [kg/s]
   * @param lean by how much of its flow a vertical line leans over [-]
   */
  record Scales(double pressure, double flow, double lean) {

    /** How steeply the pressure rises along the line of what is shut: what flows back counts for nothing. */
    double shut() {
      return 1.0e3 * pressure / (flow * lean);
    }
  }

  /** Finds r, −f_q and f_p at its flow, in the direction of the flow. */
  void evaluate(double inlet, double outlet, Scales scales) {
    if (stands) {
      lean = scales.lean();
      flowAlong(jumpFlow * (1.0 + lean * standingPart));
      double before = before(inlet);
      double spread = before - orNothing(after(inlet));
      if (spread > LEAST_JUMP * scales.pressure()) {
        slope = spread / (lean * jumpFlow);
        byInlet = 1.0;
        left = before - standingPart * spread - outlet;
        return;
      }
      leave(Double.isNaN(before) ? -1.0 : 2.0);
    }
    double none = still(inlet);
    if (none == 0.0) {
      flow = Math.min(flow, 0.0); // what is in front does not open it
    }
    double q = along();
    if (isShut()) {
      slope = scales.shut();
      byInlet = byInlet(0.0, inlet, none);
      left = none - slope * q - outlet;
      return;
    }
    double measured = behind(Math.max(q, small), inlet);
    if (Double.isNaN(measured)) {
      double limit = limit(inlet);
      double atLimit = behind(limit, inlet);
      // a higher pressure behind asks for less than the largest flow: a valve goes back along the
      // chord; pipes and parts come back by themselves, and on wide rings the chord leads them in
      // circles (by trial)
      slope = oneWay && outlet > atLimit
          ? Math.max(least(scales), (none - atLimit) / limit)
          : STEEP * inlet / limit;
      byInlet = (atLimit + slope * limit) / inlet;
      left = atLimit - slope * (Math.max(q, small) - limit) - outlet;
    } else if (q < small) {
      slope = Math.max(least(scales), (none - measured) / small);
      byInlet = byInlet(0.0, inlet, none);
      left = none - outlet - slope * q;
    } else {
      double straight = straightSlope(q, inlet, none, measured);
      boolean chokes = isBeyond(q, inlet, measured - outlet, straight, scales);
      slope = Math.max(least(scales), chokes ? chord(q, inlet, measured, outlet) : straight);
      byInlet = chokes ? byInletAlike(q, inlet, measured) : byInlet(q, inlet, measured);
      // a drop below the last digit of the pressure counts still: only it stops what flows between
      // supplies alike
      left = !oneWay && measured == none ? none - outlet - straight * q : measured - outlet;
    }
  }

  /**
   * Whether the way along the tangent leads to a larger flow than passes. That of a regulator which holds its pressure
   * is level and leads nowhere: the rest of the network finds its flow.
   */
  private boolean isBeyond(double q, double p1, double more, double straight, Scales scales) {
    return more > 0.0 && straight > least(scales) && Double.isNaN(behind(q + more / straight, p1));
  }

  /** No line is drawn flatter, so that Newton's step stays finite: our choice, by trial. */
  private static double least(Scales scales) {
    return 1.0e-12 * scales.pressure() / scales.flow();
  }

  /**
   * f_p. The laws of pipes and parts keep their form where flow and pressures grow alike, friction factor apart:
   * f_p = (p2 − q f_q)/p1; those of check valves and regulators do not, and it is found from a difference.
   */
  private double byInlet(double q, double p1, double behind) {
    if (!oneWay) {
      return byInletAlike(q, p1, behind);
    }
    double step = STEP * p1;
    return (orNothing(behind(q, p1 + step)) - orNothing(behind)) / step;
  }

  /** f_p of a law that keeps its form where flow and pressures grow alike. */
  private double byInletAlike(double q, double p1, double behind) {
    return (behind + q * slope) / p1;
  }

  /**
   * −f_q where the way along the tangent leads beyond the corner at which the branch chokes: the slope of the chord round
   * the corner to the pressure behind.
   */
  private double chord(double q, double p1, double behind, double outlet) {
    double limit = limit(p1);
    double atLimit = behind(limit, p1);
    double ahead = Math.max(0.0, limit - q);
    return outlet < atLimit
        ? (behind - outlet) / (ahead + (atLimit - outlet) * limit / (STEEP * p1))
        : (behind - atLimit) / ahead;
  }

  /**
   * No drop grows more slowly than in a straight line; where it has no digits left in the pressure, or two edges leave
   * no room for a difference, this is what counts.
   */
  private double straightSlope(double q, double p1, double none, double behind) {
    double straight = (none - behind) / q;
    double falls = -element.slope(q, p1, kelvins, viscosity);
    return falls > straight ? falls : straight;
  }

  /** A flow just below that at which the branch chokes. */
  private double limit(double p1) {
    return element.largest(p1, kelvins, viscosity) * (1.0 - JUST);
  }

  /** The pressure [Pa] behind, or NaN where the flow does not pass. */
  private double behind(double q, double p1) {
    return element.outlet(q, p1, kelvins, viscosity);
  }

  private static double orNothing(double pascals) {
    return Double.isNaN(pascals) ? 0.0 : pascals;
  }

  private double before(double p1) {
    return behind(jumpFlow * (1.0 - JUST), p1);
  }

  private double after(double p1) {
    return behind(jumpFlow * (1.0 + lean + 2.0 * JUST), p1);
  }

  /** Takes a step: the changes of the pressures in front and behind, and how much of what is left is made up for. */
  void advance(double inlet, double outlet, double damping, boolean stopsAtJump) {
    double change = (damping * left + byInlet * inlet - outlet) / slope;
    if (stands) {
      standingPart += change / (lean * jumpFlow);
      if (standingPart >= 0.0 && standingPart <= 1.0) {
        flowAlong(jumpFlow * (1.0 + lean * standingPart));
      } else {
        leave(standingPart);
      }
      return;
    }
    double before = along();
    double after = before + change;
    if (oneWay && before > 0.0) {
      after = Math.max(0.0, after); // first no flow, then it is shut
    }
    boolean lands = after >= jumpFlow && after < jumpFlow * (1.0 + lean);
    boolean passes = after > 0.0 && (before < jumpFlow) != (after < jumpFlow);
    flowAlong(after);
    if (lands || (stopsAtJump && passes)) {
      stands = true;
      standingPart = lands ? (after / jumpFlow - 1.0) / lean : 0.5;
      flowAlong(jumpFlow * (1.0 + lean * standingPart));
    }
  }

  /** Goes on from a jump, to the smaller flows where the part is below 0. */
  private void leave(double part) {
    stands = false;
    flowAlong(jumpFlow * (part < 0.0 ? 1.0 - JUST : 1.0 + lean + 2.0 * JUST));
  }

  /** The pressure [Pa] that it leaves behind of a pressure in front while nothing flows. */
  double still(double inlet) {
    return orNothing(behind(0.0, inlet));
  }

  /**
   * How far [Pa] the pressure behind lies from the law at its flow, where a flow of which a few last digits differ
   * counts as the same: 0 at a jump between the two losses, below the pressure at which it chokes, and above that which
   * it leaves while it is shut.
   */
  double miss(double inlet, double outlet, double digits) {
    double q = Math.max(0.0, along());
    double most = behind(q * (1.0 - digits), inlet);
    double least = behind(q * (1.0 + digits), inlet);
    double above = isShut() ? 0.0 : outlet - orNothing(most);
    return Math.max(0.0, Math.max(above, Double.isNaN(least) ? 0.0 : least - outlet));
  }

  /** Whether it lets no more through however low the pressure behind it, which is lower than the law says. */
  boolean chokes(double inlet, double outlet) {
    double q = along();
    return q > small
        && Double.isNaN(behind(q * (1.0 + 1.0e-9), inlet))
        && outlet < behind(limit(inlet), inlet);
  }
}
