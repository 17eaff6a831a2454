package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.files.JobReceiver;
import org.airfit.plant.ReceiverUse;
import org.airfit.plant.ReceiverVerdict;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.run.SupplyNeeded;
import org.airfit.run.ToolDemand;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.working.UnitSystem;

/**
 * Whether the receiver of a job carries its tool: down to the pressure that the job tells, or else to the one that the
 * tool needs through the parts proposed.
 *
 * @param receiver what the job tells of it
 * @param needed what the supply needs with the parts; empty where the job tells the least pressure, or no parts are
 *     chosen
 * @param neededAtBest the same with all that is not known of the parts and the tool at its best
 * @param use the judgement; empty where no least pressure below that at the start is known
 * @param others what others take of the line, which is drawn too; empty where nobody does
 */
public record ReceiverAnswer(
    JobReceiver receiver,
    Optional<SupplyNeeded> needed,
    Optional<SupplyNeeded> neededAtBest,
    Optional<ReceiverUse> use,
    Optional<Range<FreeAirFlow>> others) {

  /**
   * Refuses what is null.
   *
   * @param receiver what the job tells of it
   * @param needed what the supply needs with the parts
   * @param neededAtBest the same at best
   * @param use the judgement
   * @param others what others take of the line
   */
  public ReceiverAnswer {
    Objects.requireNonNull(receiver, "receiver");
    Objects.requireNonNull(needed, "needed");
    Objects.requireNonNull(neededAtBest, "neededAtBest");
    Objects.requireNonNull(use, "use");
    Objects.requireNonNull(others, "others");
  }

  static ReceiverAnswer of(
      JobReceiver receiver, Requirement job, String tool, Optional<Proposal> parts) {
    if (receiver.to().isPresent()) {
      return new ReceiverAnswer(
          receiver,
          Optional.empty(),
          Optional.empty(),
          Optional.of(receiver.use(job, receiver.to().get())),
          job.airOfOthers());
    }
    Optional<SupplyNeeded> needed = parts.flatMap(proposal -> needed(
        proposal,
        way -> way.run()
            .supplyNeeded(
                ToolDemand.fixed(tool, way.requirement().demand()),
                way.requirement().least())));
    Optional<SupplyNeeded> atBest = parts.flatMap(proposal -> needed(
        proposal,
        way -> way.runAtBest()
            .supplyNeeded(
                ToolDemand.fixed(tool, way.requirement().demandRange().least()),
                way.requirement().leastRange().least())));
    Optional<ReceiverUse> use = needed
        .map(SupplyNeeded::neededGauge)
        .filter(least -> least.compareTo(receiver.from()) < 0)
        .map(least -> receiver.use(job, least));
    return new ReceiverAnswer(receiver, needed, atBest, use, job.airOfOthers());
  }

  /** What the supply needs for the tool, of several tools for the one that needs most; empty where it cannot feed one. */
  private static Optional<SupplyNeeded> needed(
      Proposal parts, Function<Proposal, Optional<SupplyNeeded>> ofOne) {
    List<Optional<SupplyNeeded>> each = parts.toEachTool().stream().map(ofOne).toList();
    return each.stream().allMatch(Optional::isPresent)
        ? each.stream()
            .flatMap(Optional::stream)
            .max(Comparator.comparing(SupplyNeeded::neededGauge))
        : Optional.empty();
  }

  /** The answer in sentences. */
  List<String> sentences(UnitSystem units) {
    List<String> sentences = new ArrayList<>();
    if (use.isEmpty() && mayCarry()) {
      sentences.add(dependsInWords(units));
    } else {
      needed
          .map(SupplyNeeded::neededGauge)
          .ifPresent(least -> sentences.add(neededInWords(least, units)));
    }
    use.ifPresent(it -> sentences.addAll(it.inWords(units)));
    use.filter(it -> it.verdict() != ReceiverVerdict.MET && mayCarry() && !isNeedKnown(units))
        .ifPresent(
            it -> sentences.add("That is with all that is not known of the parts at its worst;"
                + " at its best the tool needs " + units.say(bestNeed(), receiver.from())
                + " in the receiver."));
    others
        .filter(any -> use.isPresent())
        .ifPresent(air -> sentences.add("The draw counts what others take of the line, "
            + said(air, units)
            + ", as if they always took it while the tool runs. If they take air between two"
            + " draws too, tell receiver.compressor without it."));
    if (use.isEmpty() && needed.isEmpty() && !mayCarry()) {
      sentences.add("How far its pressure may fall depends on the parts, which are not chosen; tell"
          + " receiver.to, or see what is missing for them.");
    }
    return List.copyOf(sentences);
  }

  /** Whether at best the tool needs less than there is when a draw begins. */
  private boolean mayCarry() {
    return neededAtBest
        .filter(least -> least.neededGauge().compareTo(receiver.from()) < 0)
        .isPresent();
  }

  private GaugePressure bestNeed() {
    return neededAtBest.orElseThrow().neededGauge();
  }

  private boolean isNeedKnown(UnitSystem units) {
    return needed
        .map(least -> units.say(least.neededGauge()).equals(units.say(bestNeed())))
        .orElse(true);
  }

  private String dependsInWords(UnitSystem units) {
    return "What the tool needs in the receiver depends on what is not known of the parts: from "
        + units.sayAtLeast(bestNeed(), receiver.from())
        + needed
            .map(least -> " to " + units.sayAtMost(least.neededGauge(), receiver.from()))
            .orElse(" on")
        + ", and it has " + units.say(receiver.from(), bestNeed())
        + " when a draw begins: it depends. Ask what is open of the air at the tool, and judge it again.";
  }

  private static String said(Range<FreeAirFlow> air, UnitSystem units) {
    return (air.isExact() ? "" : units.say(air.least()) + " to ") + units.say(air.most());
  }

  private String neededInWords(GaugePressure least, UnitSystem units) {
    String needs = "With the parts proposed the tool needs " + units.say(least, receiver.from())
        + " in the receiver";
    return use.isPresent()
        ? needs + ", so its pressure may fall no further than that."
        : needs + ", and it has " + units.say(receiver.from(), least)
            + " when a draw begins: NOT MET, whatever its volume. Less loss between the two or more pressure"
            + " helps, no larger receiver.";
  }
}
