package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.NetworkJob;
import org.airfit.network.NetworkResult;
import org.airfit.network.ToolFlow;
import org.airfit.quantity.GaugePressure;

/**
 * What a drop has: its pressure with all running, and what it has or exceeds in 95 % of the time it runs.
 *
 * @param drop the drop
 * @param flow what it has with the worst of what is not known exactly
 * @param usual what it has or exceeds in 95 % of the time it runs
 * @param isTold whether no regulator in front works behind the end of its curve, where it holds at most what is
 *     reckoned
 * @param atBest what it has with the best of what is not known exactly; empty where all is known
 */
record DropAnswer(
    NetworkJob.Drop drop,
    ToolFlow flow,
    Optional<GaugePressure> usual,
    boolean isTold,
    Optional<ToolFlow> atBest) {

  /** What every drop has in a flow. */
  static List<DropAnswer> all(NetworkJob job, NetworkResult.Solved solved) {
    Set<String> untold = CurveEnds.untold(job, solved);
    List<DropAnswer> answers = new ArrayList<>();
    for (int i = 0; i < job.drops().size(); i++) {
      ToolFlow flow = solved.tools().get(i);
      answers.add(new DropAnswer(
          job.drops().get(i),
          flow,
          Optional.empty(),
          !untold.contains(flow.node()),
          Optional.empty()));
    }
    return answers;
  }

  /** How much is missing [Pa]; negative where there is a margin. */
  double lack() {
    return lack(flow);
  }

  private double lack(ToolFlow any) {
    return drop.needs().pascals() - any.atTool().pascals();
  }

  private boolean isShort(ToolFlow any) {
    return lack(any) > 0.0 || any.isStarved();
  }

  /** Whether it has too little even of what is reckoned. */
  boolean isShort() {
    return isShort(flow);
  }

  /** Whether it has enough, and that is told. */
  boolean isEnough() {
    return !isShort() && isTold;
  }

  /** Whether it has enough with the best of what is not known. */
  boolean isEnoughAtBest() {
    return !isShort(atBest.orElse(flow));
  }

  /** Whether it depends on what is not known whether it has enough. */
  boolean depends() {
    return isEnough() != isEnoughAtBest();
  }

  /** What becomes of it in a few words. */
  String verdict() {
    if (depends()) {
      return "it depends";
    }
    if (isEnough()) {
      return "enough";
    }
    // a tool of fixed flow that does not get it has nothing left at its inlet
    boolean fixed = flow.tool().ratedInlet().isEmpty();
    return fixed && flow.isStarved() ? "starved" : "too little";
  }

  /** What it has, and at which end of what is not known that is, in the words for amounts. */
  String has(NetworkAmounts amounts) {
    String worst = amounts.pressure(flow.atTool());
    String best = amounts.pressure(atBest.orElse(flow).atTool());
    if (!isTold) {
      return "at most " + best;
    }
    if (worst.equals(best)) {
      return worst;
    }
    return atBest.orElse(flow).atTool().compareTo(flow.atTool()) > 0
        ? worst + " at worst"
        : best + " to " + worst;
  }
}
