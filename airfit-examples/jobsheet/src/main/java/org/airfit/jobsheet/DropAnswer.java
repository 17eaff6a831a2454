package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.files.NetworkJob;
import org.airfit.network.NetworkResult;
import org.airfit.network.ToolFlow;
import org.airfit.quantity.GaugePressure;

/** What a drop has: its pressure with all running, and what it has or exceeds in 95 % of the time it runs. */
record DropAnswer(NetworkJob.Drop drop, ToolFlow flow, Optional<GaugePressure> usual) {

  /** What every drop has in a flow. */
  static List<DropAnswer> all(NetworkJob job, NetworkResult.Solved solved) {
    List<DropAnswer> answers = new ArrayList<>();
    for (int i = 0; i < job.drops().size(); i++) {
      answers.add(new DropAnswer(job.drops().get(i), solved.tools().get(i), Optional.empty()));
    }
    return answers;
  }

  /** How much is missing [Pa]; negative where there is a margin. */
  double lack() {
    return drop.needs().pascals() - flow.atTool().pascals();
  }

  boolean isEnough() {
    return lack() <= 0.0 && !flow.isStarved();
  }

  /** What becomes of it in a few words. */
  String verdict() {
    if (isEnough()) {
      return "enough";
    }
    // a tool of fixed flow that does not get it has nothing left at its inlet
    boolean fixed = flow.tool().ratedInlet().isEmpty();
    return fixed && flow.isStarved() ? "starved" : "too little";
  }
}
