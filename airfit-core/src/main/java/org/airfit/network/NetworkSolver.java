package org.airfit.network;

/**
 * Steady flow in a network, in three ways, each tried where the one before came to no end.
 *
 * <p><b>Newton's method</b> on flows and pressures at once is quick and nearly always arrives. But branches that stand at
 * Re 2300 cut a network into pieces that hardly feel each other, and between them it may run in circles.
 *
 * <p><b>Leaning jumps</b>: Newton's method with every jump drawn out over a part of its flow, so that the pieces hang
 * together; the jumps are then drawn upright by tens, each answer leading to the next.
 *
 * <p><b>A search in the pressures</b>: every flow follows from the pressures at its ends, rises with the one and falls
 * with the other, so that a step short enough never adds to what the nodes gain and lose in all (a flow of this kind is a
 * contraction in the sum of amounts: M. G. Crandall, T. M. Liggett, Am. J. Math. 93 (1971) 265-298; from memory). It
 * begins with steps of Newton's method, shortens them as long as they do not help, and lengthens them again; the way of
 * leaning jumps finds the last digits.
 *
 * <p>A solution is accepted when every law and every balance has been evaluated at it. Then the non-return valve of each
 * supply that would take air back is shut, and the search goes on until there is none. Where that comes to no end, the
 * search begins again with the highest supply alone and opens the valves of the others as they are needed.
 */
final class NetworkSolver {

  /** The ways to a solution, the quickest first. */
  enum Way {
    NEWTON,
    LEANING,
    SEARCH
  }

  /** The largest residual with which a solution is accepted [-]. */
  static final double ACCEPTED = 1.0e-9;

  /** Flows that differ by less than this part are the same [-]: at a jump, and where a branch chokes. */
  static final double DIGITS = 1.0e-11;

  /** The jumps lean over by this part of their flow at first [-]: our choice, by trial. */
  private static final double[] WIDEST = {0.3, 1.0, 0.05};

  private static final int QUICK_STEPS = 30;
  private static final int NEWTON_STEPS = 60;
  private static final int WHOLE_STEPS = 30;
  private static final int SEARCH_STEPS = 400;

  /** Steps in which a flow may pass a jump, before it has to stop there. */
  private static final int STRAIGHT = 5;

  /** Steps from an answer that is accepted to one with all its digits, which rounding may keep off. */
  private static final int LAST_STEPS = 3;

  /** What nodes gain or lose over all that is supplied [-]. */
  private static final double BALANCED = 1.0e-11;

  /** What the search adds to every loss, over the highest pressure, at the whole flow [-]. */
  private static final double MORE = 1.0e-10;

  private static final double LEAST_PART = 1.0e-3;
  private static final double SHORTEST = 1.0e12;

  final FlowBalance balance;

  private final Way first;

  int iterations;
  Way way; // that led to the solution
  double residual;
  boolean[] dead = new boolean[0]; // by branch

  /** Prepares a solver that begins with one of the ways. */
  NetworkSolver(FlowBalance balance, Way first) {
    this.balance = balance;
    this.first = first;
    this.way = first;
  }

  /** Solves; false where it came to no end. */
  boolean solve() {
    boolean settled = balance.stands();
    if (!settled) {
      settled = settle();
      while (settled && shut()) {
        settled = settle();
      }
      if (!settled || balance.residual(DIGITS) > ACCEPTED) {
        settled = settleFromHighest();
      }
    }
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

  /**
   * The other way round: every non-return valve shut but that of the highest supply, and then opened, the one that holds
   * back most first, until none holds back a pressure above that of its node. What air would flow back through valves
   * that shut in the end, and may be far more than the tools take, is never solved for.
   */
  private boolean settleFromHighest() {
    for (SolverSupply supply : balance.supplies) {
      supply.idle = !supply.letsBack && !balance.isHighest(supply);
      supply.flow = 0.0;
    }
    // each supply opens once and may shut once; rounding must not keep two at it for ever
    int most = 2 * balance.supplies.length + 1;
    for (int i = 0; i < most; i++) {
      way = first;
      if (!settle()) {
        return false;
      }
      if (!shut() && !open()) {
        return true;
      }
    }
    return false;
  }

  /** Opens the shut valve that holds back most; false where none holds back anything that counts. */
  private boolean open() {
    SolverSupply held = null;
    double most = ACCEPTED * balance.pressureScale();
    for (SolverSupply supply : balance.supplies) {
      double above = supply.still() - balance.pascals[supply.node];
      if (supply.idle && above > most) {
        most = above;
        held = supply;
      }
    }
    if (held != null) {
      held.idle = false;
    }
    return held != null;
  }

  private boolean settle() {
    if (way == Way.NEWTON) {
      balance.lean(SolverBranch.JUST);
      balance.start();
      if (newton(STRAIGHT, QUICK_STEPS)) {
        return true;
      }
      way = Way.LEANING;
    }
    if (way == Way.LEANING) {
      for (double widest : WIDEST) {
        balance.lean(widest);
        balance.start();
        if (upright(widest)) {
          return true;
        }
      }
      way = Way.SEARCH;
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
    double lean = widest;
    while (lean > SolverBranch.JUST) {
      balance.lean(lean);
      if (!newton(STRAIGHT, NEWTON_STEPS)) {
        return false;
      }
      lean = balance.anyStands() ? 0.1 * lean : 0.0;
    }
    balance.lean(SolverBranch.JUST);
    return newton(0, NEWTON_STEPS);
  }

  /**
   * Newton's method from the flows and pressures as they are; false where it came to no end. Steps are whole at first,
   * and then halved three times out of four.
   */
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

  /** The search in the pressures, with jumps that lean over by a part of their flow. */
  private boolean search(double widest) {
    balance.lean(widest);
    balance.start();
    double more = MORE * balance.pressureScale() / balance.flowScale();
    balance.invert(more);
    double before = balance.imbalances();
    double enough = 1.0e-5 * balance.flowScale();
    double shift = 0.1;
    double[] kept = balance.pascals.clone();
    for (int step = 0; step < SEARCH_STEPS; step++) {
      iterations++;
      balance.solve(shift);
      balance.confine();
      double gain = Math.max(0.0, before - balance.promised(shift));
      double part = 1.0;
      double now = after(kept, part, more);
      while (!(now <= before - 0.1 * part * gain) && part > LEAST_PART) {
        part *= 0.5;
        now = after(kept, part, more);
      }
      if (now <= before - 0.1 * part * gain) {
        System.arraycopy(balance.pascals, 0, kept, 0, kept.length);
        before = now;
        if (part == 1.0) {
          shift = shift < 1.0e-3 ? 0.0 : 0.1 * shift;
        }
      } else {
        restore(kept, more);
        shift = Math.max(1.0e-2, 10.0 * shift);
      }
      if (before <= enough || shift > SHORTEST) {
        if (upright(widest)) {
          return true;
        }
        if (shift > SHORTEST) {
          return false;
        }
        balance.lean(widest);
        restore(kept, more);
        enough = 0.1 * before;
      }
    }
    return false;
  }

  /** What the nodes gain and lose in all after a part of the step [kg/s]. */
  private double after(double[] kept, double part, double more) {
    System.arraycopy(kept, 0, balance.pascals, 0, kept.length);
    balance.advancePressures(part);
    balance.invert(more);
    return balance.imbalances();
  }

  private void restore(double[] kept, double more) {
    System.arraycopy(kept, 0, balance.pascals, 0, kept.length);
    balance.invert(more);
  }
}
