package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.airfit.files.JobReceiver;
import org.airfit.plant.ReceiverUse;
import org.airfit.plant.ReceiverVerdict;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
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
 * @param use the judgement at worst; empty where no least pressure below that at the start is known
 * @param useAtBest the same with the need at best; empty where the job tells the least pressure
 * @param turning the most that the tool may need in the receiver so that it is met, where that decides
 * @param turningAir the most air that the tool may take so that it is met, where that decides alone
 * @param others what others take of the line, which is drawn too; empty where nobody does
 */
public record ReceiverAnswer(
    JobReceiver receiver,
    Optional<SupplyNeeded> needed,
    Optional<SupplyNeeded> neededAtBest,
    Optional<ReceiverUse> use,
    Optional<ReceiverUse> useAtBest,
    Optional<GaugePressure> turning,
    Optional<FreeAirFlow> turningAir,
    Optional<Range<FreeAirFlow>> others) {

  /** So often a range is halved that the rest is a millionth of it. */
  private static final int HALVINGS = 20;

  /**
   * Refuses what is null.
   *
   * @param receiver what the job tells of it
   * @param needed what the supply needs with the parts
   * @param neededAtBest the same at best
   * @param use the judgement at worst
   * @param useAtBest the judgement at best
   * @param turning the most that the tool may need in the receiver so that it is met
   * @param turningAir the most air that the tool may take so that it is met
   * @param others what others take of the line
   */
  public ReceiverAnswer {
    Objects.requireNonNull(receiver, "receiver");
    Objects.requireNonNull(needed, "needed");
    Objects.requireNonNull(neededAtBest, "neededAtBest");
    Objects.requireNonNull(use, "use");
    Objects.requireNonNull(useAtBest, "useAtBest");
    Objects.requireNonNull(turning, "turning");
    Objects.requireNonNull(turningAir, "turningAir");
    Objects.requireNonNull(others, "others");
  }

  static ReceiverAnswer of(
      JobReceiver receiver, Requirement job, String tool, Optional<Proposal> parts) {
    if (receiver.to().isPresent()) {
      GaugePressure to = receiver.to().get();
      ReceiverUse told = receiver.use(job, to);
      return new ReceiverAnswer(
          receiver,
          Optional.empty(),
          Optional.empty(),
          Optional.of(told),
          Optional.empty(),
          Optional.empty(),
          turningAir(
              receiver, job, told.verdict() == ReceiverVerdict.DEPENDS, any -> Optional.of(to)),
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
    Optional<ReceiverUse> use = use(receiver, job, needed);
    Optional<ReceiverUse> useAtBest = use(receiver, job, atBest);
    ReceiverAnswer answer = new ReceiverAnswer(
        receiver,
        needed,
        atBest,
        use,
        useAtBest,
        turning(receiver, job, use, useAtBest),
        Optional.empty(),
        job.airOfOthers());
    boolean depends =
        answer.verdict().map(ReceiverVerdict.DEPENDS::equals).orElse(answer.mayCarry());
    return new ReceiverAnswer(
        receiver,
        needed,
        atBest,
        use,
        useAtBest,
        answer.turning(),
        turningAir(
            receiver,
            job,
            depends,
            air -> parts
                .flatMap(proposal -> needed(
                    proposal,
                    way -> way.run()
                        .supplyNeeded(
                            ToolDemand.fixed(tool, air), way.requirement().least())))
                .map(SupplyNeeded::neededGauge)),
        job.airOfOthers());
  }

  /**
   * The most air that the one tool may take so that the receiver does, all else at its worst, found by halving: with
   * less air the draw is smaller and the tool needs no more in the receiver. Empty where the air is known exactly, or
   * the least of it is too much.
   */
  private static Optional<FreeAirFlow> turningAir(
      JobReceiver receiver,
      Requirement job,
      boolean depends,
      Function<FreeAirFlow, Optional<GaugePressure>> needs) {
    if (!depends || job.isOfSeveralTools() || job.demandRange().isExact()) {
      return Optional.empty();
    }
    Predicate<FreeAirFlow> does = air -> needs
        .apply(air)
        .filter(least -> least.compareTo(receiver.from()) < 0)
        .filter(least -> isMet(receiver.use(job, least, drawn(air, job))))
        .isPresent();
    FreeAirFlow least = job.demandRange().least();
    if (!does.test(least)) {
      return Optional.empty();
    }
    ReferenceState counted = least.reference();
    double met = least.massFlow().kilogramsPerSecond();
    double tooMuch = job.demandRange().most().massFlow().kilogramsPerSecond();
    for (int i = 0; i < HALVINGS; i++) {
      double middle = met + (tooMuch - met) / 2.0;
      if (does.test(FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(middle), counted))) {
        met = middle;
      } else {
        tooMuch = middle;
      }
    }
    return Optional.of(FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(met), counted));
  }

  /** What is drawn where the tool takes so much: that and the most that others take. */
  private static Range<FreeAirFlow> drawn(FreeAirFlow air, Requirement job) {
    double others = job.airOfOthers()
        .map(range -> range.most().massFlow().kilogramsPerSecond())
        .orElse(0.0);
    return Range.exactly(FreeAirFlow.from(
        MassFlow.ofKilogramsPerSecond(air.massFlow().kilogramsPerSecond() + others),
        air.reference()));
  }

  private static Optional<ReceiverUse> use(
      JobReceiver receiver, Requirement job, Optional<SupplyNeeded> needed) {
    return needed
        .map(SupplyNeeded::neededGauge)
        .filter(least -> least.compareTo(receiver.from()) < 0)
        .map(least -> receiver.use(job, least));
  }

  /**
   * The most that the tool may need in the receiver so that it is met, found by halving: the more it may fall, the
   * longer it carries. Empty where it is met with any of what the tool may need, or with none.
   */
  private static Optional<GaugePressure> turning(
      JobReceiver receiver,
      Requirement job,
      Optional<ReceiverUse> atWorst,
      Optional<ReceiverUse> atBest) {
    if (atBest.filter(ReceiverAnswer::isMet).isEmpty()
        || atWorst.filter(ReceiverAnswer::isMet).isPresent()) {
      return Optional.empty();
    }
    double met = atBest.get().least().pascals();
    double tooMuch = atWorst.map(ReceiverUse::least).orElse(receiver.from()).pascals();
    for (int i = 0; i < HALVINGS; i++) {
      double middle = met + (tooMuch - met) / 2.0;
      if (isMet(receiver.use(job, GaugePressure.ofPascals(middle)))) {
        met = middle;
      } else {
        tooMuch = middle;
      }
    }
    return Optional.of(GaugePressure.ofPascals(met));
  }

  private static boolean isMet(ReceiverUse use) {
    return use.verdict() == ReceiverVerdict.MET;
  }

  /**
   * {@return whether the receiver does: as certain as what the tool needs in it is known; empty where no least pressure
   * below that at the start is known}
   */
  public Optional<ReceiverVerdict> verdict() {
    if (use.isEmpty() || useAtBest.isEmpty()) {
      return use.map(ReceiverUse::verdict);
    }
    ReceiverVerdict best = useAtBest.get().verdict();
    boolean isNo = best == ReceiverVerdict.TOO_SMALL || best == ReceiverVerdict.NOT_FILLED;
    return Optional.of(isMet(use.get()) || isNo ? best : ReceiverVerdict.DEPENDS);
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
    use.ifPresent(it -> sentences.addAll(it.inWords(units, verdict().orElseThrow())));
    use.filter(it -> !isMet(it) && mayCarry() && !isNeedKnown(units))
        .ifPresent(it -> sentences.add(
            "The times are with all that is not known of the parts and the tool at its worst;"
                + " at its best the tool needs " + units.say(bestNeed(), receiver.from())
                + " in the receiver."
                + turningInWords(units)
                + " Settle what is open, and judge it again."));
    if (use.isPresent()) {
      turningAir.ifPresent(most -> sentences.add(turningAirInWords(most, units).strip()));
    }
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

  private String turningInWords(UnitSystem units) {
    return turning
        .map(most -> " It is met if the tool needs at most "
            + units.sayAtLeast(most, receiver.from()) + " there.")
        .orElse("");
  }

  private String dependsInWords(UnitSystem units) {
    return "What the tool needs in the receiver depends on what is not known of the parts and the tool: from "
        + units.sayAtLeast(bestNeed(), receiver.from())
        + needed
            .map(least -> " to " + units.sayAtMost(least.neededGauge(), receiver.from()))
            .orElse(" on")
        + ", and it has " + units.say(receiver.from(), bestNeed())
        + " when a draw begins: it depends. Ask what is open of the air at the tool, and judge it again."
        + turningInWords(units)
        + turningAir.map(most -> turningAirInWords(most, units)).orElse("");
  }

  private static String turningAirInWords(FreeAirFlow most, UnitSystem units) {
    // on the safe side: what is told is no more than what was tried
    FreeAirFlow less = most;
    while (FreeAirFlow.parse(units.say(less)).massFlow().compareTo(most.massFlow()) > 0) {
      less = FreeAirFlow.from(
          MassFlow.ofKilogramsPerSecond(0.9995 * less.massFlow().kilogramsPerSecond()),
          most.reference());
    }
    return " It is met if the tool takes at most " + units.say(less)
        + " of free air, whatever else is not known: measure what it takes.";
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
