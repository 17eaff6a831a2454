package org.airfit.network;

/**
 * Steady flow in a network: Newton's method on flows and pressures at once, and where that comes to no end a search in
 * the pressures alone.
 *
 * <p>Newton's method is quick and nearly always arrives; but the laws of branches have corners, and jumps, round
 * which it may run in circles. The search does not: every flow follows from the pressures at its ends, rises with the
 * one and falls with the other, so that a step short enough never adds to what the nodes gain and lose in all. It
 * begins with steps of Newton's method, shortens them as long as they do not help, and lengthens them again. With the
 * state of every branch known from it, Newton's method finds the last digits.
 *
 * <p>A solution is accepted when every law and every balance has been evaluated at it.
 */
final class NetworkSolver {

  /** The largest residual with which a solution is accepted [-]. */
  static final double ACCEPTED = 1.0e-9;

  /** Flows that differ by less than this part are the same [-]: at a jump, and where a branch chokes. */
  static final double DIGITS = 1.0e-11;

  /** The jumps lean over by this part of their flow at first, where Newton's method finds its way [-]. */
  private static final double[] WIDEST = {0.3, 1.0, 0.05};

  private static final int QUICK_STEPS = 30;
  private static final int NEWTON_STEPS = 60;
  private static final int WHOLE_STEPS = 30;
  private static final int STRAIGHT = 5;
  /** Steps from an answer that is accepted to one with all its digits, which rounding may keep off. */
  private static final int LAST_STEPS = 3;

  private static final int SEARCH_STEPS = 400;

  private static final double BALANCED = 1.0e-11;
  private static final double MORE = 1.0e-10;

  final FlowBalance balance;

  int iterations;
  static int SEARCHES, LEANS;
  double residual;
  boolean[] dead = new boolean[0]; // by branch

  NetworkSolver(FlowBalance balance) {
    this.balance = balance;
  }

  /** Solves; false where it came to no end. */
  boolean solve() {
    balance.start();
    boolean settled = balance.stands() || settle();
    while (settled && !balance.stands() && shut()) {
      settled = settle();
    }
if (FlowBalance.DEBUG) System.out.println("its " + iterations + " searches " + SEARCHES);
    dead = balance.stopDeadLegs();
    residual = balance.residual(DIGITS);
    return settled && residual <= ACCEPTED;
  }

  /**
   * Shuts the non-return valve of every supply that takes air back; false where none does. With less taken back the
   * pressures rise everywhere, so that none that is shut opens again.
   */
  private boolean shut() {
    boolean any = false;
    for (SolverSupply supply : balance.supplies) {
      if (supply.takesBack()) {
        supply.idle = !balance.isHighest(supply); // what rounding took from the highest is none
        any |= supply.idle;
        supply.flow = 0.0;
      }
    }
    return any;
  }

  private boolean settle() {
    if (newton(STRAIGHT, QUICK_STEPS)) {
      return true;
    }
    LEANS++;
    for (double widest : WIDEST) {
      balance.lean(widest);
      balance.start();
      if (upright(widest)) {
        return true;
      }
    }
    for (double widest : WIDEST) {
      if (search(widest)) {
        return true;
      }
    }
    return false;
  }

  /** Draws the jumps upright, each answer leading to the next, until what stands at one stands on its line. */
  private boolean upright(double widest) {
    for (double lean = widest; lean > SolverBranch.JUST; ) {
      balance.lean(lean);
      if (!newton(STRAIGHT, NEWTON_STEPS)) {
        return false;
      }
      lean = balance.anyStands() ? 0.1 * lean : 0.0;
    }
    balance.lean(SolverBranch.JUST);
    return newton(0, NEWTON_STEPS);
  }

  /** Newton's method from the flows and pressures as they are; false where it came to no end. */
  private boolean newton(int straight, int most) {
    int accepted = 0;
    for (int step = 1; step <= most; step++) {
      iterations++;
      balance.evaluate();
      if (balance.isNearlySettled() && balance.imbalance() <= BALANCED) {
        if (balance.leans()) {
          return true;
        }
        if (balance.residual(DIGITS) <= ACCEPTED) {
          accepted++;
          if (balance.isSettled() || accepted > LAST_STEPS) {
            return true;
          }
        }
      }
      if (!balance.isFinite()) {
        return false;
      }
      balance.solve(0.0);
      double damping = step > WHOLE_STEPS && step % 4 != 0 ? 0.5 : 1.0;
      balance.damp(damping);
      balance.confine();
      balance.advanceFlows(damping, step > straight);
    }
    return false;
  }

  /** The search in the pressures. */
  private boolean search(double widest) {
    SEARCHES++;
    balance.lean(widest);
    balance.start();
    double more = MORE * balance.pressureScale() / balance.flowScale();
    balance.invert(more);
    double before = balance.imbalances();
    double shift = 0.1;
    double enough = 1.0e-5 * balance.flowScale();
    double[] kept = balance.pascals.clone();
    for (int step = 0; step < SEARCH_STEPS; step++) {
      iterations++;
      balance.solve(shift);
      balance.confine();
      double promised = balance.promised(shift);
      balance.advancePressures();
      balance.invert(more);
      double now = balance.imbalances();
      if (FlowBalance.DEBUG) System.out.println("step " + step + " shift " + shift + " before " + before + " now " + now + " promised " + promised + " enough " + enough);
      boolean better = now <= before - 0.1 * Math.max(0.0, before - promised);
      if (better) {
        System.arraycopy(balance.pascals, 0, kept, 0, kept.length);
        before = now;
        shift = shift < 1.0e-3 ? 0.0 : 0.1 * shift;
      } else {
        shift = Math.max(1.0e-2, 10.0 * shift);
      }
      if (before <= enough || shift > 1.0e12) {
        restore(kept, more);
        if (upright(widest)) {
          return true;
        }
        if (shift > 1.0e12) {
          return false;
        }
        balance.lean(widest);
        restore(kept, more);
        enough = 0.1 * before;
      } else if (!better) {
        restore(kept, more);
      }
    }
    return false;
  }

  private void restore(double[] kept, double more) {
    System.arraycopy(kept, 0, balance.pascals, 0, kept.length);
    balance.invert(more);
  }
}
