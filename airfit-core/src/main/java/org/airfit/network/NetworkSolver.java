package org.airfit.network;

import org.airfit.internal.Interruption;

/**
 * Steady flow in a network by Newton's method on flows and pressures at once, which is quick and nearly always arrives.
 *
 * <p>The laws have vertical lines: at Re 2300, and where a non-return valve, a check valve or a regulator is shut. What
 * stands at one hardly feels the rest of the network, and Newton's method may run in circles between such lines. Then
 * each line is first drawn out over a part of the flow, so that the network hangs together; the lines are drawn upright
 * by tens, each answer leading to the next.
 *
 * <p>A solution is accepted when every law and every balance has been evaluated at it.
 */
final class NetworkSolver {

  /** The largest residual with which a solution is accepted [-]. */
  static final double ACCEPTED = 1.0e-9;

  /** Flows that differ by less than this part are the same [-]: at a jump, and where a branch chokes. */
  static final double DIGITS = 1.0e-11;

  /** By how much of the flow the lines lean over at first [-], one after the other: our choice, by trial. */
  private static final double[] LEANS = {
    SolverBranch.JUST, 0.3, 1.0, 0.03, 0.003, 0.1, 3.0, 0.01, 10.0, 1.0e-3, 0.5, 1.0e-4
  };

  /** What is said to have ended where nobody waits for it. */
  static final String SUBJECT = "the computing of the network";

  private static final int STEPS = 100;
  private static final int WHOLE_STEPS = 20;
  private static final int EVEN_STEPS = 50;

  /** The parts of its multiples behind the point are spread most evenly [-]. */
  private static final double GOLDEN = 0.5 * (Math.sqrt(5.0) - 1.0);

  /** Steps in which a flow may pass a jump, before it has to stop there. */
  private static final int STRAIGHT = 5;

  /** Steps from an answer that is accepted to one with all its digits, which rounding may keep off. */
  private static final int LAST_STEPS = 3;

  final FlowBalance balance;

  private final int first; // of the leans

  int iterations;
  double lean; // at first, on the way that led to the solution
  double residual;
  boolean[] dead = new boolean[0]; // by branch

  /** Prepares a solver that begins with one of the leans. */
  NetworkSolver(FlowBalance balance, int first) {
    this.balance = balance;
    this.first = first;
  }

  /** Solves; false where it came to no end. */
  boolean solve() {
    if (balance.stands()) {
      finish();
    } else {
      settle();
    }
    return residual <= ACCEPTED;
  }

  private void settle() {
    for (int i = first; i < LEANS.length; i++) {
      lean = LEANS[i];
      upright();
      finish();
      if (residual <= ACCEPTED) {
        return;
      }
    }
  }

  /** Takes away what cannot flow, and evaluates every law and every balance at what is left. */
  private void finish() {
    dead = balance.stopDeadLegs();
    residual = balance.residual(DIGITS);
  }

  /** Draws the lines upright, each answer leading to the next. */
  private void upright() {
    balance.lean(lean);
    balance.start();
    for (double part = lean; part > SolverBranch.JUST; part *= 0.1) {
      balance.lean(part);
      if (!newton()) {
        return;
      }
    }
    balance.lean(SolverBranch.JUST);
    newton();
  }

  /**
   * The part of a step that is taken: all at first, then a half three times out of four, and at last uneven parts, so
   * that no circle of steps keeps in time with them.
   */
  private static double damping(int step) {
    if (step > EVEN_STEPS) {
      double part = step * GOLDEN;
      return 0.2 + 0.8 * (part - Math.floor(part));
    }
    return step > WHOLE_STEPS && step % 4 != 0 ? 0.5 : 1.0;
  }

  /** Newton's method from the flows and pressures as they are; false where it came to no end. */
  private boolean newton() {
    int accepted = 0;
    for (int step = 0; step < STEPS; step++) {
      Interruption.check(SUBJECT);
      iterations++;
      balance.evaluate();
      if (balance.isNearlySettled() && balance.leans()) {
        return true;
      }
      if (accepted > 0 && balance.isSettled()) {
        // the laws were accepted a step ago and need no look; what the supplies give follows anew
        balance.imbalance();
        return true;
      }
      accepted += !balance.leans() && balance.isNearAnswer() && balance.residual(DIGITS) <= ACCEPTED
          ? 1
          : 0;
      if (accepted > LAST_STEPS || (accepted == 1 && balance.isSettled())) {
        return true;
      }
      if (!balance.isFinite()) {
        return false;
      }
      balance.solve();
      double damping = damping(step);
      balance.damp(damping);
      balance.confine();
      balance.advance(damping, step >= STRAIGHT);
    }
    return false;
  }
}
