package org.airfit.jobsheet;

import java.util.Optional;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.run.RunResult;
import org.airfit.select.Requirement;
import org.airfit.working.UnitSystem;

/**
 * What is said where the air gets no further than a part: that part lets too little through, or more flows through a
 * regulator than its maker's curve tells, so that nobody knows.
 */
final class AirStops {

  private AirStops() {}

  /** What stops the air of the tool, or what is not known, in sentences. */
  static String inWords(RunResult.Starved starved, Requirement job, UnitSystem units) {
    return untold(starved, job, units)
        .map(untold -> "What arrives at the tool is not known. " + untold
            + " Ask its maker what it holds at that flow, or take a regulator that is made for it.")
        .orElseGet(() -> "The tool starves: " + starved.element() + " does not let its "
            + units.sayBoth(job.demand())
            + " through. Even with nothing behind the last part no more than "
            + units.sayBoth(FreeAirFlow.from(starved.largest(), job.demand().reference()))
            + " come through.");
  }

  /** What the table of losses is told of; where there is none, only what is not known. */
  static String sharesOf(RunResult.Starved starved, Requirement job, UnitSystem units) {
    Optional<String> untold = untold(starved, job, units);
    if (starved.before().isEmpty()) { // of the supply it is told where it says what the run carries
      return starved.endOfCurve().isPresent() ? untold.orElse("") : "";
    }
    return "The table tells what is lost in front of " + starved.element()
        + untold.map(why -> ". " + why).orElse(", which lets too little through.");
  }

  /** Why it is not known what a regulator holds: its curve ends before so much flows; empty where that is known. */
  private static Optional<String> untold(
      RunResult.Starved starved, Requirement job, UnitSystem units) {
    if (starved.endOfCurve().isPresent()) {
      return starved
          .endOfCurve()
          .map(end -> "The curve of the maker of " + starved.element() + " ends at "
              + units.say(end)
              + ", and more than that flows through it: what it holds then is not known.");
    }
    return untoldSupply(job);
  }

  /** Why it is not known what the regulator at the supply holds; empty where that is known, or there is none. */
  static Optional<String> untoldSupply(Requirement job) {
    return job.isSupplyUntold()
        ? Optional.of(
            "It is not known what the regulator at the supply holds while the tools work: its"
                + " maker's curve ends before that flow, or nobody told a droop that surely leaves any"
                + " pressure.")
        : Optional.empty();
  }

  /** What a picture says where the air gets no further. */
  static String onChart(RunResult.Starved starved) {
    return starved.endOfCurve().isPresent()
        ? "not known from here: curve ends"
        : "stops here: no such flow";
  }

  /** The same for those who do not see the picture. */
  static String besideChart(RunResult.Starved starved) {
    return " before " + starved.element()
        + (starved.endOfCurve().isPresent()
            ? ", whose curve ends before that flow: what stands behind it is not known."
            : ", which does not let that flow through.");
  }
}
