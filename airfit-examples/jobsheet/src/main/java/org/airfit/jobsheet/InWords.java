package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugVerdict;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.ReadingSlip;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.run.ElementLoss;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.run.WiderHose;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Finding;
import org.airfit.select.JobFindings;
import org.airfit.select.Offer;
import org.airfit.select.Part;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Rule;
import org.airfit.select.RuleOutcome;
import org.airfit.select.RunNow;
import org.airfit.working.UnitSystem;

/** The sentences of a job sheet that text and page share. */
final class InWords {

  /** Behind a number that is told at its worst. */
  private static final String AT_WORST =
      ", with all that is not known exactly at its worst: at its best it is more.";

  private static final String DEPRESSURISE = "Depressurise before uncoupling";

  /** So many profiles are listed with their chances; of a larger set the likeliest, and the others in one line. */
  private static final int MOST_CHANCES = 12;

  /** So many remarks are told one by one on how a file was read: all that a job usually has, some of a catalogue. */
  private static final int MOST_OF_JOB = 6;

  private static final int MOST_OF_CATALOGUE = 3;

  private InWords() {}

  /** The whole sheet in a few lines, for somebody who reads no further. */
  static List<Answer> inShort(JobSheet sheet) {
    List<Answer> lines = new ArrayList<>();
    if (sheet.job().atHand().isPresent()) {
      lines.add(new Answer(
          "Plug",
          sheet
              .plug()
              .map(plug -> plug.inWords(sheet.units()))
              .orElse("not at hand, only a socket")));
    }
    sheet
        .thread()
        .ifPresent(thread -> lines.add(new Answer("Its thread", thread.inWords(sheet.units()))));
    sheet
        .now()
        .ifPresent(now -> lines.add(new Answer(
            "Now",
            arrivesNow(sheet)
                + biggestRestriction(sheet).map(biggest -> " " + biggest).orElse("")
                + beyondTheModel(sheet))));
    lines.add(new Answer(
        "Recommended parts",
        sheet
            .selection()
            .map(selection -> selection.<String>fold(
                fitting -> recommended(fitting.best(), sheet) + beyondTheModel(sheet),
                nothing -> "nothing in the catalogue fits: "
                    + String.join(" ", nothing.toGive(sheet.units())) + beyondTheModel(sheet)))
            .orElse("not chosen before the plug is known")));
    sheet
        .hose()
        .ifPresent(hose ->
            lines.add(new Answer(hose.title(), String.join(" ", hose.sentences(sheet.units())))));
    sheet
        .receiver()
        .ifPresent(receiver ->
            lines.add(new Answer("Receiver", String.join(" ", receiver.sentences(sheet.units())))));
    sheet
        .selection()
        .flatMap(JobSheet::shown)
        .ifPresent(proposal -> findings(proposal, sheet, RuleOutcome.MET_WHILE_REGULATED)
            .forEach(finding -> lines.add(new Answer(
                "Regulator", capital(finding.outcomeInWords()) + ". " + finding.reason()))));
    lines.addAll(readOtherwise(sheet));
    if (sheet.selection().isEmpty()) {
      ofTheJob(sheet).forEach(finding -> lines.add(new Answer("The job", finding.toString())));
    }
    return lines;
  }

  /** How the job and the catalogue were read, where that may be meant otherwise. */
  static List<Answer> readOtherwise(JobSheet sheet) {
    List<Answer> lines = new ArrayList<>();
    readOtherwise(lines, "In the job", sheet.job().remarks(), MOST_OF_JOB);
    readOtherwise(lines, "In the catalogue", sheet.job().catalogue().remarks(), MOST_OF_CATALOGUE);
    return lines;
  }

  /** What may be meant otherwise than it was read; of many such remarks the first, and how many more there are. */
  private static void readOtherwise(
      List<Answer> lines, String what, List<String> remarks, int most) {
    int shown = Math.min(most, remarks.size());
    remarks.subList(0, shown).forEach(remark -> lines.add(new Answer(what, remark)));
    if (shown < remarks.size()) {
      lines.add(new Answer(what, (remarks.size() - shown) + " more that may be meant otherwise."));
    }
  }

  /** What the rules say of the job itself, where no parts were chosen for it; what is met needs no word. */
  private static List<Finding> ofTheJob(JobSheet sheet) {
    return JobFindings.of(sheet.requirement()).findings(sheet.units()).stream()
        .filter(finding ->
            finding.outcome() != RuleOutcome.MET && finding.outcome() != RuleOutcome.DOES_NOT_APPLY)
        .toList();
  }

  /** What the parts bring, what to buy, and what must be asked before they meet every rule. */
  private static String recommended(Proposal best, JobSheet sheet) {
    BillOfMaterials bill = bill(sheet, best);
    String pieces = bill.lines().stream()
        .filter(line -> !line.existing())
        .map(line -> line.quantity() + " × " + line.id().orElse(line.name()))
        .collect(Collectors.joining(", "));
    String open = best.open().stream()
        .map(finding -> finding.rule().title())
        .collect(Collectors.joining(", "));
    String asked = bill.questions().stream()
        .filter(question -> !question.startsWith("What closes")) // told below
        .map(InWords::firstSentence)
        .collect(Collectors.joining(" "));
    String regulated = best.metWhileRegulated().stream()
        .map(finding -> " " + finding.rule().title() + ": " + finding.outcomeInWords() + ".")
        .collect(Collectors.joining());
    return arrives(best, sheet)
        + (pieces.isEmpty() ? " Nothing to buy" : " To buy: " + pieces)
        + bill.totalInWords().map(total -> "; together " + total).orElse(".")
        + regulated
        + (open.isEmpty() ? "" : " Still to be asked before it meets every rule: " + open + ".")
        + (asked.isEmpty() ? "" : " Also to be asked: " + asked)
        + (best.leftOpen().isEmpty() ? "" : " " + best.leftOpenInWords());
  }

  /** What is asked, without why. */
  private static String firstSentence(String question) {
    int mark = question.indexOf('?');
    int stop = question.indexOf(". ");
    int end = mark >= 0 ? mark : stop;
    return end < 0 ? question : question.substring(0, end + 1);
  }

  /** All that a proposal takes, in the units of the sheet. */
  static BillOfMaterials bill(JobSheet sheet, Proposal proposal) {
    return BillOfMaterials.of(proposal, sheet.job().catalogue().parts(), sheet.units());
  }

  /**
   * What the words of a sheet in US units are called in the trade there, once, where the parts are first named; empty
   * in SI units, and where no coupling is among the parts. The words are common practice, no source.
   */
  static Optional<String> tradeWords(JobSheet sheet, Proposal proposal) {
    boolean isCoupled = proposal.parts().stream().anyMatch(Part.Socket.class::isInstance);
    return sheet.units() == UnitSystem.US && isCoupled
        ? Optional.of(
            "A socket here is what US trade calls a quick coupler or coupler; the plug goes into it."
                + " The profile is what it calls the interchange: both halves must have the same.")
        : Optional.empty();
  }

  /** What a bill sums to, and what the parts in the way of the air cost alone, by which they were chosen. */
  static Optional<String> together(BillOfMaterials bill, Proposal proposal) {
    return bill.totalInWords()
        .map(total -> "Together " + total
            + (proposal.price().equals(bill.total())
                ? ""
                : proposal
                    .price()
                    .map(parts -> " The parts in the line alone cost " + parts.format(2) + ".")
                    .orElse("")));
  }

  /** An offer in sentences: its aims, why it is made, and its parts. */
  static String offer(Offer offer) {
    return capital(offer.toString()) + " " + capital(offer.proposal() + ".");
  }

  /** What the parts are that stand below what nothing fits for. */
  static final String NEAREST =
      "Of all combinations this one comes nearest; it is no recommendation:";

  /**
   * What arrives with parts, against what is needed, in a sentence; both ends where it depends on what is not known.
   */
  static String arrives(Proposal proposal, JobSheet sheet) {
    return proposal.toEachTool().stream()
        .map(way -> way.requirement().way().map(name -> capital(name) + ": ").orElse("")
            + arrivesAtOne(way, sheet))
        .collect(Collectors.joining(" "));
  }

  private static String arrivesAtOne(Proposal proposal, JobSheet sheet) {
    UnitSystem units = sheet.units();
    Requirement job = proposal.requirement();
    boolean depends = proposal.findings().stream()
        .anyMatch(
            finding -> finding.rule() == Rule.AIR_AT_TOOL && finding.outcome() == RuleOutcome.OPEN);
    long missing = proposal.joints().stream().filter(joint -> !joint.isSound()).count();
    boolean neverJoined = proposal.joints().stream()
        .anyMatch(joint -> !joint.isSound() && joint.matings().get(0).between().isEmpty());
    if (depends && neverJoined) {
      return "Ends of the line are not joined, and no standard adapter joins them: what arrives at the"
          + " tool is not told.";
    }
    if (depends && missing > 0) {
      return "Without the missing " + (missing > 1 ? "adapters " : "adapter ")
          + betweenWorstAndBest(proposal, units)
          + " at the tool, needed " + units.sayBothOfRange(job.leastRange())
          + ": what the " + (missing > 1 ? "adapters take" : "adapter takes")
          + " is not reckoned; judge it again once the ends are joined.";
    }
    if (depends && isTooShort(proposal)) {
      return "With a hose that is too short " + betweenWorstAndBest(proposal, units)
          + " at the tool, needed " + units.sayBothOfRange(job.leastRange())
          + ": what the length that is lacking loses is not reckoned.";
    }
    if (!depends) {
      return arrives(proposal.result(), Optional.of(proposal.resultAtBest()), job, units);
    }
    return "It depends on what is not known: at the tool from "
        + betweenWorstAndBest(proposal, units) + ", needed "
        + units.sayBothOfRange(job.leastRange()) + ".";
  }

  private static boolean isTooShort(Proposal proposal) {
    return proposal.findings().stream()
        .anyMatch(finding ->
            finding.rule() == Rule.HOSE_REACHES && finding.outcome() == RuleOutcome.UNMET);
  }

  /** What arrives, from worst to best; once where both are printed alike. */
  private static String betweenWorstAndBest(Proposal proposal, UnitSystem units) {
    return betweenWorstAndBest(
        proposal.result(), proposal.resultAtBest(), proposal.requirement().least(), units);
  }

  private static String betweenWorstAndBest(
      RunResult atWorst, RunResult atBest, GaugePressure least, UnitSystem units) {
    String worst = atTool(atWorst, least, units);
    String best = atTool(atBest, least, units);
    return worst.equals(best) && !worst.isEmpty()
        ? worst
        : atWorst.<String>fold(
                delivered -> units.sayBothAtLeast(delivered.atToolGauge(), least),
                starved -> "nothing")
            + " to "
            + atBest.<String>fold(
                delivered -> units.sayBothAtMost(delivered.atToolGauge(), least),
                starved -> "nothing");
  }

  /**
   * What arrives with what is connected now, against what is needed: whatever it is of what is not known, or that it
   * depends, and on what. Empty where nobody told what is connected.
   */
  static String arrivesNow(JobSheet sheet) {
    return sheet.job().now().map(now -> airAndPressure(now, sheet)).orElse("");
  }

  /** Too much pressure comes before the air, which alone would read as if all were well. */
  private static String airAndPressure(RunNow now, JobSheet sheet) {
    String air = arrivesNow(now, sheet);
    String pressure = now.overPressure(sheet.units());
    return pressure.isEmpty()
        ? air
        : now.isToolOverPressured() ? pressure + " " + air : air + " " + pressure;
  }

  private static String arrivesNow(RunNow now, JobSheet sheet) {
    UnitSystem units = sheet.units();
    Requirement job = sheet.requirement();
    RuleOutcome outcome = now.airOutcome();
    String ends = betweenWorstAndBest(now.result(), now.resultAtBest(), job.least(), units);
    if (outcome == RuleOutcome.OPEN) {
      return "It depends on what is not known: at the tool from " + ends + ", needed "
          + units.sayBothOfRange(job.leastRange()) + ". " + now.whatToAsk(units);
    }
    String worst = atTool(now.result(), job.least(), units);
    boolean isOneEnd = worst.equals(atTool(now.resultAtBest(), job.least(), units));
    return outcome == RuleOutcome.UNMET && !isOneEnd
        ? "At the tool from " + ends + ", needed " + units.sayBothOfRange(job.leastRange())
            + ": too little, whatever it is of what is not known."
        : arrives(now.result(), Optional.of(now.resultAtBest()), job, units);
  }

  /** What arrives with what is connected now, where no need was told; both ends where not all is known. */
  static String arrivesWithoutNeed(JobSheet sheet) {
    return sheet.job().now().map(now -> arrivesWithoutNeed(now, sheet)).orElse("");
  }

  private static String arrivesWithoutNeed(RunNow now, JobSheet sheet) {
    boolean isStarved = now.resultAtBest().fold(delivered -> false, starved -> true);
    if (isStarved) {
      return arrives(
          now.result(), Optional.of(now.resultAtBest()), sheet.requirement(), sheet.units());
    }
    UnitSystem units = sheet.units();
    String worst = now.result()
        .<String>fold(delivered -> units.sayBoth(delivered.atToolGauge()), starved -> "nothing");
    String best = now.resultAtBest()
        .<String>fold(delivered -> units.sayBoth(delivered.atToolGauge()), starved -> "nothing");
    return worst.equals(best)
        ? "At the tool " + worst + "."
        : "At the tool from "
            + now.result()
                .<String>fold(
                    delivered -> units.sayBothAtLeast(delivered.atToolGauge()),
                    starved -> "nothing")
            + " to "
            + now.resultAtBest()
                .<String>fold(
                    delivered -> units.sayBothAtMost(delivered.atToolGauge()), starved -> "nothing")
            + ", depending on what is not known.";
  }

  /** What the losses of what is connected now are told of; empty where all is known exactly. */
  static Optional<String> atWorstNow(JobSheet sheet) {
    return sheet
        .job()
        .now()
        .filter(now -> !now.isExact() && !PressureChart.shares(now.result()).isEmpty())
        .map(now -> "Told with all that is not known at its worst:");
  }

  /** What narrows most now, in a sentence; empty where nobody told what is connected, or nothing arrives. */
  static Optional<String> biggestRestriction(JobSheet sheet) {
    boolean isExact = sheet.job().now().map(RunNow::isExact).orElse(true);
    return sheet
        .now()
        .flatMap(now -> now.fold(
            delivered -> Optional.of("Biggest restriction"
                + (isExact ? "" : ", with all that is not known at its worst") + ": "
                + delivered.bottleneckInWords(sheet.units())),
            starved -> Optional.empty()));
  }

  /** What the regulator at the supply is called in a table of losses. */
  static final String AT_SUPPLY = "regulator at the supply";

  /**
   * What a regulator at the supply loses in front of the first part, for the table of losses.
   *
   * @param set what it is set to
   * @param lost by how much less stands behind it
   */
  record AtSupply(GaugePressure set, PressureDrop lost) {

    /** What it is set to, for the table of losses. */
    String note(UnitSystem units) {
      return "set to " + units.say(set)
          + "; what it takes down to that is no loss. Its loss is not among those that the shares"
          + " are of";
    }
  }

  /** The regulator at the supply, in front of the losses of a run; empty where there is none. */
  static Optional<AtSupply> atSupply(RunResult result, JobSheet sheet) {
    List<ElementLoss> shares = result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
    if (shares.isEmpty()) {
      return Optional.empty();
    }
    AbsolutePressure behind = shares.get(0).inlet();
    return sheet
        .requirement()
        .belowSetting(behind)
        .map(lost -> new AtSupply(
            GaugePressure.of(
                AbsolutePressure.ofPascals(behind.pascals() + lost.pascals()),
                sheet.job().atmosphere()),
            lost));
  }

  /** What arrives, against what is needed, in a sentence; of parts what arrives at best may be known too. */
  private static String arrives(
      RunResult result, Optional<RunResult> atBest, Requirement job, UnitSystem units) {
    GaugePressure least = job.least();
    boolean isEnough =
        result.fold(delivered -> delivered.atToolGauge().compareTo(least) >= 0, starved -> false);
    boolean isLeast = atBest
        .map(best -> !atTool(best, least, units).equals(atTool(result, least, units)))
        .orElse(!job.isExact());
    return (!job.isExact() && !isEnough ? "At the worst of what was told: " : "")
        + result.fold(
            delivered -> "At the tool "
                + (isLeast
                    ? "at least " + units.sayBothAtLeast(delivered.atToolGauge(), least)
                    : units.sayBoth(delivered.atToolGauge(), least))
                + ", needed " + units.sayBoth(least, delivered.atToolGauge()) + ": "
                + (delivered.atToolGauge().compareTo(least) >= 0
                    ? delivered
                        .justEnough(least)
                        .map(spare -> "just enough, " + units.say(spare) + " to spare"
                            + (isLeast ? " at worst." : "."))
                        .or(() -> delivered
                            .lessThanAGaugeShows(least)
                            .map(spare -> "just enough, " + units.say(spare) + " to spare"
                                + (isLeast ? " at worst" : "") + ", less than a gauge shows."))
                        .orElse("enough.")
                    : "too little."),
            starved -> AirStops.inWords(starved, job, units));
  }

  /** The pressure at the tool as it is printed beside what is needed; empty where nothing arrives. */
  private static String atTool(RunResult result, GaugePressure least, UnitSystem units) {
    return result.fold(delivered -> units.sayBoth(delivered.atToolGauge(), least), starved -> "");
  }

  /** What the shares of the losses are shares of, where a part lets too little through to tell its own loss. */
  static Optional<String> sharesOf(RunResult result, JobSheet sheet) {
    return result.fold(
        delivered -> Optional.empty(),
        starved -> Optional.of(AirStops.sharesOf(starved, sheet.requirement(), sheet.units()))
            .filter(of -> !of.isEmpty()));
  }

  /** What a regulator takes down to what it is set to: wanted, and apart from what it loses; empty of all else. */
  static Optional<String> regulated(ElementLoss share, JobSheet sheet) {
    UnitSystem units = sheet.units();
    AbsolutePressure set =
        AbsolutePressure.ofPascals(share.inlet().pascals() - share.regulated().pascals());
    return share.regulated().pascals() > 0.0
        ? Optional.of("takes " + units.say(share.regulated()) + " down to what it is set to, "
            + units.say(GaugePressure.of(set, sheet.job().atmosphere())) + "; that is no loss")
        : Optional.empty();
  }

  /** The same of each tool of a proposal, while all others work. */
  static String carries(JobSheet sheet, Proposal proposal) {
    if (!proposal.requirement().isOfSeveralTools()) {
      return carries(sheet, proposal.run(), proposal.runAtBest());
    }
    UnitSystem units = sheet.units();
    List<String> each = new ArrayList<>();
    for (Proposal way : proposal.toEachTool()) {
      Requirement job = way.requirement();
      String least = units.sayBoth(job.least());
      boolean isKnown = isKnown(way.run(), way.runAtBest(), job.least(), job, units);
      each.add(capital(job.way().orElseThrow()) + ": the tool takes "
          + (job.demandRange().isExact() ? "" : "up to ") + units.sayBoth(job.demand())
          + " of free air. "
          + way.run()
              .largestFlow(job.least())
              .map(most -> "At " + least + " it can have "
                  + (isKnown ? "up to " : "at least ")
                  + units.sayBoth(freeAir(most.massFlow(), job)) + " while the others work"
                  + (isKnown ? "." : AT_WORST))
              .orElse((isKnown
                      ? "Less than "
                      : "With all that is not known exactly at its worst less than ")
                  + least + " is left for it while the others work."));
    }
    return String.join(" ", each);
  }

  /** What the run of now carries at the pressure the tool needs, against what the tool takes; empty without one. */
  static Optional<String> carriesNow(JobSheet sheet) {
    return sheet.job().now().map(now -> carries(sheet, now.run(), now.runAtBest()));
  }

  /** Whether a run carries no more at best at a pressure, as far as the numbers of the sheet tell. */
  private static boolean isKnown(
      Run run, Run atBest, GaugePressure least, Requirement job, UnitSystem units) {
    return carried(run, least, job, units).equals(carried(atBest, least, job, units));
  }

  private static Optional<String> carried(
      Run run, GaugePressure least, Requirement job, UnitSystem units) {
    return run.largestFlow(least).map(most -> units.sayBoth(freeAir(most.massFlow(), job)));
  }

  private static String carries(JobSheet sheet, Run run, Run atBest) {
    UnitSystem units = sheet.units();
    Requirement job = sheet.requirement();
    boolean isKnown = isKnown(run, atBest, job.least(), job, units);
    String takes = sheet.job().toolName()
        + (sheet.requirement().demandRange().isExact() ? " takes " : " takes up to ")
        + units.sayBoth(sheet.requirement().demand()) + " of free air. ";
    String least = units.sayBoth(sheet.requirement().least());
    return run.largestFlow(sheet.requirement().least())
        .map(most -> takes + "At " + least + " this run carries "
            + carried(freeAir(most.massFlow(), sheet.requirement()), isKnown, units))
        .orElseGet(() -> takes + tooLowAtRest(run, isKnown, job, units));
  }

  /** How much a run carries; of one that may carry none, that. */
  private static String carried(FreeAirFlow most, boolean isKnown, UnitSystem units) {
    boolean isNothing = most.cubicMetresPerSecond() == 0.0;
    if (isKnown) {
      return isNothing ? "nothing." : "up to " + units.sayBoth(most) + ".";
    }
    return isNothing
        ? "nothing with all that is not known exactly at its worst: at its best it is more."
        : "at least " + units.sayBoth(most) + AT_WORST;
  }

  /** What leaves too little for the tool even while no air flows: a part such as a regulator, or the supply itself. */
  private static String tooLowAtRest(Run run, boolean isKnown, Requirement job, UnitSystem units) {
    String needed = units.sayBoth(job.least());
    return lastAtRest(run)
        .map(part -> behind(
            part.name(), GaugePressure.of(part.outlet(), run.atmosphere()), isKnown, job, units))
        .or(() -> AirStops.untoldSupply(job))
        .or(() -> job.pressures()
            .whileRegulated()
            .map(any -> behind(
                "the " + AT_SUPPLY,
                GaugePressure.of(run.stillAir().pressure(), run.atmosphere()),
                isKnown,
                job,
                units)))
        .orElse("The supply itself " + (isKnown ? "stands" : "can stand") + " below the " + needed
            + " the tool needs.");
  }

  private static String behind(
      String part, GaugePressure stands, boolean isKnown, Requirement job, UnitSystem units) {
    GaugePressure least = job.least();
    return "Behind " + part + " "
        + (isKnown
            ? "no more than " + units.sayBothAtMost(stands, least)
                + " stand, even while no air flows, "
            : "it may be as little as " + units.sayBothAtLeast(stands, least) + ", ")
        + "and the tool needs " + units.sayBoth(least, stands) + ".";
  }

  /** The last part behind which less stands than in front even while no air flows. */
  private static Optional<ElementLoss> lastAtRest(Run run) {
    return run.at(MassFlow.ofKilogramsPerSecond(0.0))
        .fold(
            delivered -> delivered.shares().stream()
                .filter(share -> share.drop().pascals() > 0.0)
                .reduce((first, next) -> next),
            starved -> Optional.empty());
  }

  /**
   * Where the tool has too little and the biggest restriction is a hose: what hoses of sizes that exist would bring,
   * each solved as a run of its own; the piping before the outlet is no hose.
   */
  static Optional<String> widerHose(JobSheet sheet, RunResult now) {
    Run run = sheet.job().now().map(RunNow::run).orElse(null);
    GaugePressure least = sheet.requirement().least();
    boolean enough =
        now.fold(delivered -> delivered.atToolGauge().compareTo(least) >= 0, starved -> false);
    String narrowest =
        now.fold(delivered -> delivered.bottleneck().name(), RunResult.Starved::element);
    if (run == null
        || enough
        || !run.names().contains(narrowest)
        || sheet.requirement().toOutlet().names().contains(narrowest)) {
      return Optional.empty();
    }
    List<WiderHose> tried = WiderHose.tried(run, narrowest, now.massFlow(), least, sheet.units());
    return tried.isEmpty()
        ? Optional.empty()
        : Optional.of(WiderHose.inWords(tried, sheet.units()));
  }

  /** A flow counted as the tool's was typed. */
  private static FreeAirFlow freeAir(MassFlow flow, Requirement job) {
    return FreeAirFlow.from(flow, job.demand().reference());
  }

  /** The scale that all charts of a job share. */
  static PressureChart.Scale scale(JobSheet sheet) {
    List<RunResult> all = new ArrayList<>();
    sheet.now().ifPresent(all::add);
    sheet.selection().flatMap(JobSheet::shown).map(Proposal::result).ifPresent(all::add);
    return PressureChart.Scale.of(
        all,
        sheet.job().supply().pressure(),
        sheet.job().atmosphere(),
        Optional.of(sheet.requirement().least()),
        sheet.units());
  }

  /** What the rules say of a proposal with that outcome. */
  static List<Finding> findings(Proposal proposal, JobSheet sheet, RuleOutcome outcome) {
    return proposal.findings(sheet.units()).stream()
        .filter(finding -> finding.outcome() == outcome)
        .toList();
  }

  /**
   * What the plug may be, with its chance: the profiles, a profile with a slip in a reading, a near copy, none. The
   * chances of an identification hold for readings without a slip; here they leave room for the slips that are told.
   */
  static Map<String, Double> chances(Identification plug) {
    double slips = plug.slips().stream().mapToDouble(ReadingSlip::probability).sum();
    double right = Math.max(0.0, 1.0 - slips);
    Map<String, Double> chances = new LinkedHashMap<>();
    List<ProfileCandidate> all = plug.candidates();
    int shown = all.size() <= MOST_CHANCES ? all.size() : MOST_CHANCES - 1;
    all.subList(0, shown)
        .forEach(candidate -> chances.merge(
            candidate.profile().displayName(), right * candidate.probability(), Double::sum));
    if (shown < all.size()) {
      double others =
          all.stream().skip(shown).mapToDouble(ProfileCandidate::probability).sum();
      chances.put((all.size() - shown) + " others of the set", right * others);
    }
    plug.slips()
        .forEach(slip -> chances.put(
            slip.profile().displayName() + ", with a slip: " + slip.kind().label(),
            slip.probability()));
    if (plug.expectsNearCopies()) {
      chances.put("a near copy of one", right * plug.nearCopyProbability());
    }
    chances.put("none of these", right * plug.elsewhereProbability());
    return chances;
  }

  /** What was taken for granted about the plug, and how the job file changes it. */
  static String takenForGranted(Identification plug, UnitSystem units) {
    String wear = plug.wearAllowance().metres() > 0.0
        ? "Wear of up to "
            + units.either(
                units.saySmall(plug.wearAllowance()),
                plug.wearAllowance().format(LengthUnit.INCH, 3))
            + " was allowed for (the job's \"worn\" says otherwise)"
        : "The plug was taken as new";
    return wear
        + (plug.expectsNearCopies()
            ? ". Near copies were taken to be about, unless the job says \"noNearCopies\"."
            : ". No near copies are about, as the job says.");
  }

  /** Whether the next reading is worth telling, though the answer stands already. */
  static boolean leavesDoubt(Identification plug) {
    return plug.verdict() == PlugVerdict.CANDIDATE
        && !plug.nextReadings().isEmpty()
        && plug.nextReadings().get(0).expectedDropBits() >= 0.01;
  }

  /**
   * Every caution once: to depressurise first, then those of the plug, those of the run now, those of the parts, and
   * last the one that defers to codes and makers. A caution on a run says which run it speaks of.
   */
  static List<Caution> cautions(JobSheet sheet) {
    List<Caution> now = sheet.now().map(run -> run.cautions(sheet.units())).orElse(List.of());
    Optional<Proposal> proposal = sheet.selection().flatMap(JobSheet::shown);
    List<Caution> parts = proposal
        .map(chosen -> chosen.cautions(sheet.units()))
        .orElseGet(() -> JobFindings.of(sheet.requirement()).cautions(sheet.units()));
    List<Caution> with =
        proposal.map(Proposal::result).map(run -> run.cautions(sheet.units())).orElse(List.of());

    Set<Caution> all = new LinkedHashSet<>();
    sheet.plug().map(Identification::cautions).ifPresent(all::addAll);
    sheet.socket().ifPresent(socket -> all.addAll(socket.cautions()));
    sheet.receiver().flatMap(ReceiverAnswer::use).ifPresent(use -> all.addAll(use.cautions()));
    for (Caution caution : now) {
      all.add(with.contains(caution) ? caution : of("now", caution));
    }
    for (Caution caution : parts) {
      boolean ofNewRun = with.contains(caution) && !now.contains(caution) && !now.isEmpty();
      if (!caution.title().equals(DEPRESSURISE)) {
        all.add(ofNewRun ? of("with the recommended parts", caution) : caution);
      }
    }
    return framed(sheet, all);
  }

  /** Cautions each once, to depressurise first of them, that codes and makers come first last. */
  static List<Caution> cautionsWith(JobSheet sheet, List<Caution> some) {
    Set<Caution> all = new LinkedHashSet<>(some);
    all.removeIf(caution -> caution.title().equals(DEPRESSURISE));
    return framed(sheet, all);
  }

  /** Cautions behind that to depressurise, and before that on the air and the one that defers to codes and makers. */
  private static List<Caution> framed(JobSheet sheet, Set<Caution> some) {
    Set<Caution> all = new LinkedHashSet<>();
    all.add(SafetyRules.usFederal().reminder(DEPRESSURISE));
    all.addAll(some);
    outsideTheAirModel(sheet)
        .filter(outside ->
            all.stream().noneMatch(caution -> caution.title().startsWith(outside.title())))
        .ifPresent(all::add);
    Caution deference = sheet.requirement().rules().toldIn(sheet.units()).deference();
    all.remove(deference);
    all.add(deference);
    return List.copyOf(all);
  }

  /** Behind what arrives: that its numbers are worth no more than a first guess, where the air is outside its model. */
  static String beyondTheModel(JobSheet sheet) {
    return outsideTheAirModel(sheet).map(InWords::firstGuess).orElse("");
  }

  /** A sentence behind others: what a caution on the air means for the numbers in front of it. */
  static String firstGuess(Caution outside) {
    return " " + outside.title() + ": take the numbers for no more than a first guess.";
  }

  /** At the highest pressure that can occur the air may lie outside its model, though it does not at the usual one. */
  private static Optional<Caution> outsideTheAirModel(JobSheet sheet) {
    Run toOutlet = sheet.requirement().toOutlet();
    return toOutlet
        .stillAir()
        .at(sheet.requirement().highest().absolute(toOutlet.atmosphere()))
        .caution(sheet.units());
  }

  /** What holds of every run needs no run to be named. */
  private static Caution of(String run, Caution caution) {
    return caution.equals(Caution.MORE_SUPPLY_PRESSURE)
        ? caution
        : new Caution(caution.title() + " (" + run + ")", caution.text(), caution.source());
  }

  /** A sentence begins with a capital letter. */
  static String capital(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
