package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.Run;
import org.airfit.run.SupplyNeeded;
import org.airfit.run.ToolDemand;
import org.airfit.working.UnitSystem;

/**
 * What no part can mend: less stands in front of the parts than a tool needs, with all that is not known at its best
 * and before a part has lost anything. What is given counts: the supply, the settings of regulators, the pipes to the
 * outlet.
 */
final class SupplyTooLow {

  private SupplyTooLow() {}

  /** Whether it is so of a tool of the job: nothing fits, whatever the parts. */
  static boolean isSo(Requirement job) {
    return job.toEachTool().stream().anyMatch(way -> !ofWay(way, UnitSystem.SI).isEmpty());
  }

  /** What is too low for each tool and what it would need, in sentences; none where parts may do. */
  static List<String> inWords(Requirement job, UnitSystem units) {
    List<String> sentences = new ArrayList<>();
    for (Requirement way : job.toEachTool()) {
      String sentence = ofWay(way, units);
      if (!sentence.isEmpty()) {
        sentences.add(way.way().map(name -> "For " + name + ": ").orElse("") + sentence + " "
            + needs(way, units));
      }
    }
    return List.copyOf(sentences);
  }

  /** What is too low for a tool: settings, the supply, or what is left of it at the outlet; blank where none is. */
  static String ofWay(Requirement way, UnitSystem units) {
    GaugePressure needed = way.leastRange().least();
    List<String> low = settings(way, units);
    if (!low.isEmpty()) {
      return low.size() == 1
          ? "The regulator holds " + only(held(way), needed, units)
              + ": couplings, hoses and adapters do not change that."
          : "Each of these regulators is set too low, so that all must be set higher: "
              + String.join(", ", low) + "; couplings, hoses and adapters do not change that.";
    }
    GaugePressure lowest = way.lowestAtBest();
    if (lowest.compareTo(needed) <= 0) {
      return "The supply itself stands at " + only(lowest, needed, units)
          + ": couplings, hoses and adapters do not change that.";
    }
    Optional<GaugePressure> left = atOutlet(way);
    if (left.isPresent() && left.get().compareTo(needed) > 0) {
      return "";
    }
    return "Of the " + units.say(lowest, needed)
        + (isRegulated(way) ? " that the first regulator is set to " : " at the supply ")
        + left.map(some -> "only " + units.say(some, needed) + " is").orElse("nothing is")
        + " left at the outlet while the tool works: couplings, hoses and adapters do not change that.";
  }

  /** What is too little, and what is just enough and too little behind the first part that loses some. */
  private static String only(GaugePressure there, GaugePressure needed, UnitSystem units) {
    return there.compareTo(needed) < 0
        ? "only " + units.say(there, needed)
        : "just the " + units.say(there, needed)
            + " that the tool needs, and every part loses some";
  }

  private static boolean isRegulated(Requirement way) {
    return way.pressures().whileRegulated().isPresent();
  }

  private static Optional<GaugePressure> atOutlet(Requirement way) {
    return way.atOutlet(Known.AT_BEST)
        .filter(left -> left.compareTo(way.toOutlet().atmosphere()) >= 0)
        .map(left -> GaugePressure.of(left, way.toOutlet().atmosphere()));
  }

  /** What the last regulator holds at most. */
  private static GaugePressure held(Requirement way) {
    return way.pressuresAtTool().whileRegulated().orElseThrow();
  }

  /** The regulators that can be set to no more than is too low, all of them: one that is raised alone helps nothing. */
  private static List<String> settings(Requirement way, UnitSystem units) {
    GaugePressure needed = way.leastRange().least();
    List<String> low = new ArrayList<>();
    way.pressures()
        .whileRegulated()
        .filter(set -> set.compareTo(needed) <= 0)
        .ifPresent(set -> low.add("the one in front of the piping " + units.say(set, needed)));
    for (Slot slot : way.layout().slots()) {
      if (slot instanceof Slot.Regulated regulated && regulated.set().compareTo(needed) <= 0) {
        low.add(regulated.name() + " " + units.say(regulated.set(), needed));
      }
    }
    return low;
  }

  /** What the tool would need in front of the parts, which lose some of it too. */
  private static String needs(Requirement way, UnitSystem units) {
    GaugePressure needed = way.leastRange().least();
    String tool =
        "The tool needs " + units.say(needed, way.lowestAtBest()) + " while it works, so that ";
    Run toOutlet = way.toOutlet(Known.AT_BEST);
    if (!settings(way, units).isEmpty()) {
      return tool + "it must be set higher than that, by as much as hose and couplings lose.";
    }
    if (isRegulated(way)) {
      return tool
          + "it must be set higher, by as much as it droops and piping, hose and couplings lose.";
    }
    Optional<SupplyNeeded> supply = toOutlet.names().isEmpty()
        ? Optional.empty()
        : toOutlet.supplyNeeded(
            ToolDemand.fixed("tool", Known.AT_BEST.of(way.airAtOutlet())), needed);
    return supply
        .map(SupplyNeeded::neededGauge)
        .map(least -> tool + "the supply must hold at least " + units.say(least, needed)
            + " for the piping alone, and more by as much as hose and couplings lose.")
        .orElse(
            tool + "the supply must hold more than that, by as much as hose and couplings lose.");
  }
}
