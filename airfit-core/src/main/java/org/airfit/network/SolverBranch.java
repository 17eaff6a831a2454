package org.airfit.network;

import org.airfit.flow.FlowElement;
import org.airfit.internal.RootFinder;

/**
 * One branch as the solver sees it: its flow, and the law f(q, p1) of the pressure behind it.
 *
 * <p>Where friction jumps at Re 2300 the law is a vertical line: at that flow the branch has any loss between the
 * laminar and the turbulent one. Such a branch <em>stands</em>: its unknown is then the part of the way from the one
 * to the other. Two lines in a row may stand together, and only the sum of their losses is determined; so the line
 * leans over by 10⁻¹² of the flow, which shares the loss out, or by more while the solver finds its way. Beyond choking
 * the pressure falls by 10¹² p/q instead of at once. Below 10⁻⁷ of the whole flow, or of the largest the branch passes,
 * the law is a straight line.
 */
final class SolverBranch {

  private static final double STEEP = 1.0e12;
  private static final double STEP = 1.0e-6;
  private static final double SMALL = 1.0e-7;

  /** By how much of the flow a vertical line leans over, and how near to a jump or a largest flow is there [-]. */
  static final double JUST = 1.0e-12;

  /** A jump by less than this part of the largest pressure is none [-]. */
  private static final double LEAST_JUMP = 1.0e-12;

  final int from;
  final int to;

  double flow;
  boolean stands; // at a jump of its law

  double left; // r, what is left of the branch's equation
  double slope; // −f_q > 0
  double byInlet; // f_p

  private final FlowElement element;
  private final double kelvins;
  private final double viscosity;
  private final double jumpFlow; // infinite where there is no jump
  private double standingFlow; // where it stands, or last stood
  private double standingPart; // of the way from the pressure before the jump to that behind it
  private double lean = JUST;
  private double small;

  SolverBranch(FlowElement element, int from, int to, double kelvins, double viscosity) {
    this.element = element;
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
    small = SMALL * Math.min(scales.flow(), element.largest(scales.pressure(), kelvins, viscosity));
  }

  /** Lets nothing through any more. */
  void stop() {
    flow = 0.0;
    stands = false;
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

  /**
   * What is large and small in a network.
   *
   * @param pressure the highest pressure of a supply [Pa]
   * @param flow the largest flow [kg/s]
   * @param floor the lowest pressure that is tried in front of a branch [Pa]
   * @param lean by how much of its flow a jump leans over [-]
   */
  record Scales(double pressure, double flow, double floor, double lean) {}

  /** Finds r, −f_q and f_p at its flow, in the direction of the flow. */
  void evaluate(double inlet, double outlet, Scales scales) {
    double p1 = Math.max(inlet, scales.floor());
    if (stands) {
      lean = scales.lean();
      flow = Math.copySign(standingFlow * (1.0 + lean * standingPart), flow);
      double before = before(p1);
      double spread = before - orNothing(after(p1));
      if (spread > LEAST_JUMP * scales.pressure()) {
        slope = spread / (lean * standingFlow);
        byInlet = standingByInlet(p1, before - standingPart * spread);
        left = before - standingPart * spread - (p1 - inlet) - outlet;
        return;
      }
      leave(Double.isNaN(before) ? -1.0 : 2.0);
    }
    double q = Math.abs(flow);
    double measured = Math.max(q, small);
    double atMeasured = behind(measured, p1);
    double limit = Double.isNaN(atMeasured) ? limit(p1) : 0.0;
    double atLimit = Double.isNaN(atMeasured) ? behind(limit, p1) : 0.0;
    if (outlet > atLimit && Double.isNaN(atMeasured)) {
      q = limit * (1.0 - STEP); // the way back leads along the curve
      flow = Math.copySign(q, flow);
      measured = q;
      atMeasured = behind(q, p1);
    }
    double behind;
    if (Double.isNaN(atMeasured)) {
      slope = STEEP * p1 / limit;
      behind = atLimit - slope * (measured - limit);
      byInlet = 1.0 + slope * limit / p1;
    } else if (q < small) {
      slope = Math.max(least(scales), (p1 - atMeasured) / small);
      behind = p1 - (p1 - atMeasured) * q / small;
      byInlet = 1.0;
    } else {
      behind = atMeasured;
      slope = Math.max(least(scales), slope(q, p1, behind, outlet));
      byInlet = Math.max(0.1, (behind + q * slope) / p1);
    }
    left = behind - (p1 - inlet) - outlet;
  }

  private static double least(Scales scales) {
    return 1.0e-7 * scales.pressure() / scales.flow();
  }

  /** −f_q of a flow that passes. */
  private double slope(double q, double p1, double behind, double outlet) {
    if (Double.isNaN(behind(q * (1.0 + STEP), p1))) {
      return slopeToLimit(q, p1, behind, outlet);
    }
    return straightSlope(q, p1, behind);
  }

  /**
   * No drop grows more slowly than in a straight line; where it has no digits left in the pressure, or two edges leave
   * no room for a difference, this is what counts.
   */
  private double straightSlope(double q, double p1, double behind) {
    double straight = (p1 - behind) / q;
    double falls = -element.slope(q, p1, kelvins, viscosity);
    return falls > straight ? falls : straight;
  }

  /**
   * The slope of the chord to the pressure behind, round the corner where the branch chokes, which lies ahead by less
   * than a step.
   */
  private double slopeToLimit(double q, double p1, double behind, double outlet) {
    double limit = limit(p1);
    double steep = STEEP * p1 / limit;
    double ahead = Math.max(0.0, limit - q);
    double atLimit = behind(limit, p1);
    return outlet < atLimit
        ? (behind - outlet) / (ahead + (atLimit - outlet) / steep)
        : ahead > 1.0e-13 * q ? (behind - atLimit) / ahead : steep;
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
    return behind(standingFlow * (1.0 - JUST), p1);
  }

  private double after(double p1) {
    return behind(standingFlow * (1.0 + lean + 2.0 * JUST), p1);
  }

  /** How the pressure behind follows from that in front while it stands, from a difference. */
  private double standingByInlet(double p1, double behind) {
    double higher = p1 * (1.0 + STEP);
    double before = before(higher);
    double moved = before - standingPart * (before - orNothing(after(higher)));
    double by = (moved - behind) / (STEP * p1);
    return by >= 0.1 && by < 100.0 ? by : 1.0;
  }

  /** Takes a step: the changes of the pressures in front and behind, and how much of what is left is made up for. */
  void advance(double inlet, double outlet, double damping, boolean stopsAtJump) {
    double change = (damping * left + byInlet * inlet - outlet) / slope;
    if (stands) {
      standingPart += change / (lean * standingFlow);
      if (standingPart >= 0.0 && standingPart <= 1.0) {
        flow = Math.copySign(standingFlow * (1.0 + lean * standingPart), flow);
      } else {
        leave(standingPart);
      }
      return;
    }
    double before = flow;
    flow += isForward() ? change : -change;
    double least = Math.min(Math.abs(before), Math.abs(flow));
    double most = Math.max(Math.abs(before), Math.abs(flow));
    double q = Math.abs(flow);
    boolean lands = q >= jumpFlow && q < jumpFlow * (1.0 + lean);
    boolean passes = before * flow > 0.0 && least < jumpFlow && most >= jumpFlow * (1.0 + lean);
    if (lands || (stopsAtJump && passes)) {
      stand(jumpFlow, lands ? (q / jumpFlow - 1.0) / lean : 0.5);
      flow = Math.copySign(jumpFlow * (1.0 + lean * standingPart), flow);
    }
  }

  private void stand(double at, double part) {
    stands = true;
    standingFlow = at;
    standingPart = part;
  }

  /** Goes on from a jump, to the smaller flows where the part is below 0. */
  private void leave(double part) {
    stands = false;
    flow = Math.copySign(standingFlow * (part < 0.0 ? 1.0 - JUST : 1.0 + lean + 2.0 * JUST), flow);
  }

  /**
   * Finds the flow between two pressures, by the law with a little more loss, in proportion to the flow, and how it
   * follows from them.
   *
   * @param atFrom the pressure at one end [Pa]
   * @param atTo the pressure at the other end [Pa]
   * @param more the further loss [Pa/(kg/s)], above 0
   */
  void invert(double atFrom, double atTo, double more, Scales scales) {
    boolean forward = atFrom >= atTo;
    double p1 = Math.max(atFrom, atTo);
    double p2 = Math.min(atFrom, atTo);
    double sign = forward ? 1.0 : -1.0;
    left = 0.0;
    stands = false;
    lean = scales.lean();
    double atSmall = p1 - orNothing(behind(small, p1)) + more * small;
    if (p1 - p2 <= atSmall) {
      flow = sign * small * (p1 - p2) / atSmall;
      slope = atSmall / small;
      byInlet = 1.0;
      return;
    }
    double within = small;
    double beyond = Double.POSITIVE_INFINITY;
    if (jumpFlow < Double.POSITIVE_INFINITY) {
      double low = jumpFlow * (1.0 - JUST);
      double high = jumpFlow * (1.0 + lean + 2.0 * JUST);
      double above = behind(low, p1) - more * low - p2;
      double below = behind(high, p1) - more * high - p2;
      if (above >= 0.0 && !(below >= 0.0)) {
        standAt(jumpFlow, sign, p1, p2, above, Double.isNaN(below) ? -p2 : below, scales);
        return;
      }
      within = above >= 0.0 ? Math.max(within, high) : within;
      beyond = above >= 0.0 ? beyond : low;
    }
    double found = found(p1, p2, more, within, beyond);
    double behind = behind(found, p1);
    flow = sign * found;
    double above = behind - more * found - p2;
    double ahead = behind(found * (1.0 + 4.0 * JUST), p1);
    if (Double.isNaN(ahead)) {
      slope = STEEP * p1 / found;
      byInlet = 1.0 + STEEP;
    } else if (above > 1.0e-9 * scales.pressure()) {
      standAt(found, sign, p1, p2, above, ahead - more * found - p2, scales);
    } else {
      slope = straightSlope(found, p1, behind) + more;
      byInlet = byInlet(found, p1, behind);
    }
  }

  private void standAt(
      double at, double sign, double p1, double p2, double above, double below, Scales scales) {
    double spread = Math.max(above - below, LEAST_JUMP * scales.pressure());
    stand(at, Math.min(1.0, above / spread));
    flow = sign * at * (1.0 + lean * standingPart);
    slope = spread / (lean * at);
    byInlet = standingByInlet(p1, p2);
  }

  /** The largest flow between two, at the smaller of which at least p2 is left behind, that leaves as much. */
  private double found(double p1, double p2, double more, double within, double beyond) {
    double low = within;
    double high = beyond;
    double last = Math.abs(flow);
    double guess = last < Double.POSITIVE_INFINITY ? last : within;
    guess = Math.min(Math.max(guess, 1.5 * low), Math.max(1.5 * low, 0.9 * high));
    while (guess < high) {
      boolean passes = behind(guess, p1) - more * guess >= p2;
      if (passes) {
        low = guess;
        guess *= 4.0;
        if (high < beyond) {
          break;
        }
      } else {
        high = guess;
        guess *= 0.25;
        if (low > within || guess <= low) {
          break;
        }
      }
    }
    return RootFinder.find(q -> p2 - (behind(q, p1) - more * q), low, high, 1.0e-15 * low);
  }

  private double byInlet(double q, double p1, double behind) {
    double step = 1.0e-6 * p1;
    double higher = (behind(q, p1 + step) - behind) / step;
    return higher >= 0.01 ? higher : 0.01;
  }

  /**
   * How far [Pa] the pressure behind lies from the law at its flow, where a flow of which a few last digits differ
   * counts as the same: 0 at a jump between the two losses, and below the pressure at which it chokes.
   */
  double miss(double inlet, double outlet, double digits) {
    double q = Math.abs(flow);
    double most = behind(q * (1.0 - digits), inlet);
    double least = behind(q * (1.0 + digits), inlet);
    return Math.max(
        0.0, Math.max(outlet - orNothing(most), Double.isNaN(least) ? 0.0 : least - outlet));
  }

  /** Whether it lets no more through however low the pressure behind it, which is lower than the law says. */
  boolean chokes(double inlet, double outlet) {
    double q = Math.abs(flow);
    return q > small
        && Double.isNaN(behind(q * (1.0 + 1.0e-9), inlet))
        && outlet < behind(limit(inlet), inlet);
  }
}
