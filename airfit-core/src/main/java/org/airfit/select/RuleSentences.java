package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.run.RunResult;
import org.airfit.safety.Ruling;
import org.airfit.working.UnitSystem;

/** What each rule answers for an assembly, and the sentence that says why, with its numbers in the units asked for. */
final class RuleSentences {

  /** What a reason says of more than one regulator. */
  static final String WHILE_THEY_HOLD = " while the regulators hold";

  /** So many hoses are joined to one at most; a choice of this project. */
  private static final double MOST_JOINED = 4.0;

  private RuleSentences() {}

  private static String names(List<? extends Part> parts) {
    Set<String> names = new LinkedHashSet<>();
    parts.forEach(part -> names.add(part.name()));
    return String.join(", ", names);
  }

  static RuleAnswer profile(Assembly a, UnitSystem units) {
    List<String> strangers = new ArrayList<>();
    List<Assembly.Pair> couplings = a.couplings();
    if (couplings.isEmpty()) {
      return RuleAnswer.doesNotApply("There is no coupling in this run.");
    }
    List<String> met = new ArrayList<>();
    Map<String, String> had = new HashMap<>();
    for (Assembly.Pair pair : couplings) {
      pair(pair, pair.position().profile(a.requirement()), strangers);
      tied(a, pair, had, strangers);
      had.put(pair.position().name(), pair.plug().profile());
      met.add("at the " + pair.position().called() + " profile " + pair.plug().profile());
    }
    return strangers.isEmpty()
        ? RuleAnswer.met("A" + String.join(", ", met).substring(1) + ".")
        : RuleAnswer.unmet(String.join(" ", strangers));
  }

  private static void pair(Assembly.Pair pair, Optional<String> wanted, List<String> strangers) {
    Part.Socket socket = pair.socket();
    Part.Plug plug = pair.plug();
    if (!socket.profiles().contains(plug.profile())) {
      strangers.add(socket.name() + " does not take profile " + plug.profile() + ".");
    }
    if (wanted.isPresent() && !wanted.get().equals(plug.profile())) {
      strangers.add(plug.name() + " is of profile " + plug.profile() + ", the shop uses "
          + wanted.get() + ".");
    }
  }

  /** Whether a coupling has the profile of the one that it is tied to. */
  private static void tied(
      Assembly a, Assembly.Pair pair, Map<String, String> had, List<String> strangers) {
    pair.position().sameAs().ifPresent(other -> {
      String wanted = had.getOrDefault(other, "");
      if (!wanted.equals(pair.plug().profile())) {
        strangers.add(pair.plug().name() + " is of profile " + pair.plug().profile() + ", the "
            + called(a, other) + " of " + wanted + ", and both must be the same.");
      }
    });
  }

  /** What the coupling of a name is called in a sentence. */
  private static String called(Assembly a, String name) {
    return a.couplings().stream()
        .map(Assembly.Pair::position)
        .filter(position -> position.name().equals(name))
        .findFirst()
        .map(Position::called)
        .orElse(name);
  }

  static RuleAnswer inUse(Assembly a, UnitSystem units) {
    Set<String> wanted = a.requirement().profilesInUse();
    if (wanted.isEmpty()) {
      return RuleAnswer.doesNotApply("The job does not name several profiles.");
    }
    if (a.couplings().isEmpty()) {
      return RuleAnswer.doesNotApply("There is no coupling in this run.");
    }
    Part.Socket first = a.couplings().get(0).socket();
    String socket = first.name();
    String left = wanted.stream()
        .filter(profile -> !first.profiles().contains(profile))
        .sorted()
        .collect(Collectors.joining(", "));
    return PartChecks.breaking(a, PartChecks::takesNotAllInUse).isEmpty()
        ? RuleAnswer.met(socket + " takes them all.")
        : RuleAnswer.unmet(socket + " does not take " + left + ".");
  }

  static RuleAnswer ends(Assembly a, UnitSystem units) {
    if (!a.joints().stream().allMatch(Joint::isSound)) {
      return RuleAnswer.unmet(notJoined(a, units));
    }
    String joints =
        ByLine.joined(a, a.joints().stream().map(joint -> joint.inWords(units)).toList(), "; ")
            + ".";
    return a.joints().stream().anyMatch(Joint::isForLowPressure)
        ? RuleAnswer.open(joints
            + " A straight coupling thread is meant for low pressure: ask its maker for a rating for "
            + "compressed air.")
        : RuleAnswer.met(joints);
  }

  /** What does not join, with the line it is in; what joins beside it needs no word. */
  private static String notJoined(Assembly a, UnitSystem units) {
    return ByLine.joined(
            a,
            a.joints().stream()
                .filter(joint -> !joint.isSound())
                .map(joint -> joint.inWords(units))
                .toList(),
            "; ")
        + ".";
  }

  static RuleAnswer rated(Assembly a, UnitSystem units) {
    Requirement job = a.requirement();
    String highest = "Up to " + units.say(job.highest()) + " can occur";
    List<Part> weak = PartChecks.breaking(a, PartChecks::isTooWeak);
    if (!weak.isEmpty()) {
      return RuleAnswer.unmet(highest + "; too weak: " + names(weak)
          + ". Take parts of a higher rating, or see to it that less can occur.");
    }
    List<Part> bought = a.parts().stream().filter(PartChecks::isUnmarkedToBuy).toList();
    if (!bought.isEmpty()) {
      return RuleAnswer.unmet(
          "No rating is known of " + names(bought) + "; ask the maker before selling it.");
    }
    List<Part> unmarked = PartChecks.breaking(a, PartChecks::isUnmarkedAndThere);
    if (!unmarked.isEmpty()) {
      return RuleAnswer.open("No rating is known of " + names(unmarked)
          + ", which the customer has already: find the marking, ask the maker, or replace it.");
    }
    return RuleAnswer.met(highest
        + a.lowestRating()
            .map(lowest -> "; the weakest part is rated for " + units.say(lowest) + ".")
            .orElse("; the piping alone was not judged."));
  }

  static RuleAnswer toolRated(Requirement job, UnitSystem units) {
    GaugePressure[] limit = job.toolRating().stream().toArray(GaugePressure[]::new);
    String highest = units.say(job.pressuresAtTool().highest(), limit);
    long regulators = regulators(job);
    String stands = job.pressuresAtTool()
        .whileRegulated()
        .map(held -> "The dead-end pressure at the tool is " + settings(job, held, units)
            + units.say(held, limit)
            + (regulators > 1
                ? WHILE_THEY_HOLD + " and " + highest + " if they fail"
                : " while the regulator holds and " + highest + " if it fails"))
        .orElse("The dead-end pressure at the tool is up to " + highest);
    if (job.toolRating().isEmpty()) {
      return job.markedUpTo()
          .map(marked -> marked(job, marked, stands, units))
          .orElseGet(() -> RuleAnswer.open(
              "Ask for the highest pressure that the tool's maker allows. " + stands + "."));
    }
    String allowed = units.say(
        job.toolRating().get(),
        Stream.concat(
                Stream.of(job.pressuresAtTool().highest()),
                job.pressuresAtTool().whileRegulated().stream())
            .toArray(GaugePressure[]::new));
    String compared = stands + ", its maker allows " + allowed;
    if (PartChecks.isToolOverPressured(job)) {
      return RuleAnswer.unmet(compared + ": a regulator in front of it must be set to at most "
          + allowed + "; couplings, hoses and adapters do not change that.");
    }
    String relief = " A relief valve behind the "
        + (regulators > 1 ? "last regulator" : "regulator")
        + ", set to at most what the maker allows, guards the tool if "
        + (regulators > 1 ? "they fail." : "the regulator fails.");
    if (PartChecks.mayBeSetTooHighForTool(job)) {
      return RuleAnswer.open(compared + ". It depends: met while "
          + (regulators > 1 ? "one of the regulators" : "the regulator") + " is set to " + allowed
          + " at most. Ask what it is set to, and see that nobody sets it higher." + relief);
    }
    return PartChecks.isToolSparedByRegulator(job)
        ? RuleAnswer.metWhileRegulated(compared + "." + relief)
        : RuleAnswer.met(compared + ".");
  }

  /** Of a tool that is marked with a range: it works up to the end of that, and whether it stands more is to be asked. */
  private static RuleAnswer marked(
      Requirement job, GaugePressure marked, String stands, UnitSystem units) {
    String end = units.say(marked, job.pressuresAtTool().highest());
    return job.pressuresAtTool().canExceed(marked)
        ? RuleAnswer.open("Ask whether the " + end
            + " that end the range marked on the tool are the highest that its maker allows, or what else is. "
            + stands + ". If they are the limit, "
            + (job.pressuresAtTool().exceeds(marked)
                ? "a regulator in front of the tool must be set to at most " + end + "."
                : "they are kept only while "
                    + (regulators(job) > 1 ? "the regulators hold" : "the regulator holds")
                    + ": a relief valve behind "
                    + (regulators(job) > 1 ? "the last of them" : "it")
                    + ", set to at most that, guards the tool then."))
        : RuleAnswer.met(stands + ", and the tool is marked for up to " + end + ".");
  }

  /** The lowest that the regulators can hold, in front of the most that they hold; blank where that is the same. */
  private static String settings(Requirement job, GaugePressure held, UnitSystem units) {
    return job.heldAtToolWhenSetLowest()
        .filter(least -> least.compareTo(held) < 0)
        .map(least -> units.say(
                least,
                Stream.concat(Stream.of(held), job.toolRating().stream())
                    .toArray(GaugePressure[]::new))
            + " to ")
        .orElse("");
  }

  /** How many regulators stand in front of the tool, one before the piping with them. */
  private static long regulators(Requirement job) {
    return (job.pressures().whileRegulated().isPresent() ? 1 : 0)
        + job.layout().slots().stream().filter(Slot.Regulated.class::isInstance).count();
  }

  static RuleAnswer cleaning(Requirement job, UnitSystem units) {
    if (job.cleaningDeadEnd().isEmpty()) {
      return RuleAnswer.doesNotApply("The job does not say that the tool cleans with air.");
    }
    List<Ruling> rulings = PartChecks.cleaningRulings(job);
    if (rulings.isEmpty()) {
      return RuleAnswer.open("At a blocked nozzle stand up to "
          + units.say(job.cleaningDeadEnd().get()) + ". None of the rules that it was judged by"
          + " limits that: ask what holds at this place.");
    }
    String each = rulings.stream()
        .map(ruling -> ruling.toldIn(units))
        .map(ruling -> ruling.rule().title() + ": "
            + (PartChecks.isAllowed(ruling)
                ? "allowed, "
                : ruling.rule().isAdvice() ? "not advised, " : "not allowed, ")
            + ruling.reason())
        .collect(Collectors.joining(" "));
    if (PartChecks.isCleaningForbidden(job)) {
      return RuleAnswer.unmet(each
          + " Take a gun that lets the pressure off when its nozzle is blocked, or see to it that no more than the limit"
          + " can stand in front of it: a regulator alone does not do, it can fail open.");
    }
    if (rulings.stream().allMatch(PartChecks::isAllowed)) {
      return RuleAnswer.met(each);
    }
    return rulings.stream()
            .filter(ruling -> !PartChecks.isAllowed(ruling))
            .allMatch(ruling -> ruling.rule().isAdvice())
        ? RuleAnswer.open(each + " That is advice, not law: ask what holds at this place.")
        : RuleAnswer.open(each + " The rules differ here: ask which of them holds at this place.");
  }

  static RuleAnswer air(Assembly a, UnitSystem units) {
    Requirement job = a.requirement();
    GaugePressure[] arriving = arriving(a);
    long missing = a.joints().stream().filter(joint -> !joint.isSound()).count();
    boolean isAdapterMissing = missing > 0;
    String adapters = missing > 1 ? "adapters" : "adapter";
    String wanted =
        (job.leastRange().isExact() ? "" : units.say(job.leastRange().least(), arriving) + " to ")
            + units.say(job.least(), arriving) + " at "
            + (job.demandRange().isExact() ? "" : units.say(job.demandRange().least()) + " to ")
            + units.say(job.demand());
    boolean mayBeEnough = a.isAirOpen() || Assembly.isAtLeast(a.result(), job.least());
    if (mayBeEnough && a.joints().stream().anyMatch(RuleSentences::isNeverJoined)) {
      return RuleAnswer.open("Ends of the line are not joined, and no standard adapter joins them:"
          + " what arrives at the tool is not told.");
    }
    if (a.isAirOpen()) {
      return RuleAnswer.open(
          "It depends: the tool has from " + has(a.result(), job, units::sayAtLeast)
              + " to " + has(a.atBest(), job, units::sayAtMost) + ", it needs " + wanted + ". "
              + Doubt.whatToAsk(Doubts.of(a), units)
              + (isAdapterMissing ? " That is without the missing " + adapters + "." : ""));
    }
    if (Assembly.isAtLeast(a.result(), job.least()) && isAdapterMissing) {
      return RuleAnswer.open("Without the missing " + adapters + " the tool has "
          + has(a, units) + ", it needs " + wanted
          + ". What the " + adapters
          + (missing > 1 ? " take" : " takes")
          + " of that is not reckoned: judge it again once the ends are joined.");
    }
    if (Assembly.isAtLeast(a.result(), job.least())
        && !PartChecks.breaking(a, PartChecks::isTooShort).isEmpty()) {
      return RuleAnswer.open("With a hose that is too short the tool has " + has(a, units)
          + ", it needs " + wanted + ". What the length that is lacking loses is not reckoned.");
    }
    if (Assembly.isAtLeast(a.result(), job.least())) {
      return RuleAnswer.met("The tool has " + has(a, units) + ", it needs " + wanted + "."
          + UntoldDroop.inWords(a, units)
          + a.result()
              .fold(
                  delivered -> delivered
                      .justEnough(job.least())
                      .map(spare -> " That is just enough, with " + units.say(spare) + " to spare.")
                      .or(() -> delivered
                          .lessThanAGaugeShows(job.least())
                          .map(spare -> belowGauge(spare, units)))
                      .orElse(""),
                  starved -> ""));
    }
    return a.atBest()
        .fold(
            delivered -> RuleAnswer.unmet("The tool has only "
                + (a.isExact()
                    ? has(delivered, job, units::say)
                    : has(delivered, job, units::sayAtMost) + " at best")
                + ", it needs " + wanted + ". "
                + heldBack(job, delivered, units)
                + GivenHoses.inWords(a, units)),
            starved -> RuleAnswer.unmet("The tool starves: " + starved.element()
                + " does not let the air through, it needs " + wanted + "."
                + GivenHoses.inWords(a, units)));
  }

  private static String belowGauge(PressureDrop spare, UnitSystem units) {
    return " That is just enough: the " + units.say(spare)
        + " to spare are less than a usual gauge may be off, "
        + units.say(RunResult.Delivered.GAUGE_ERROR) + " (class 1.6 of EN 837-1, 0 to 10 bar).";
  }

  /** What holds the air back: what is too low in front of the parts, or what narrows most. */
  private static String heldBack(Requirement job, RunResult.Delivered delivered, UnitSystem units) {
    String tooLow = SupplyTooLow.ofWay(job, units);
    return tooLow.isEmpty()
        ? (job.pressures().whileRegulated().isPresent()
                ? "Of the parts behind the first regulator the biggest restriction is "
                : "The biggest restriction is ")
            + delivered.bottleneckInWords(units)
        : tooLow;
  }

  /** What it has, where that is not known exactly at least. */
  private static String has(Assembly a, UnitSystem units) {
    return a.isExact()
        ? has(a.result(), a.requirement(), units::say)
        : "at least " + has(a.result(), a.requirement(), units::sayAtLeast);
  }

  /** How a pressure is written beside others: rounded to the nearest, down or up. */
  private interface Saying {
    String of(GaugePressure pressure, GaugePressure... others);
  }

  private static String has(RunResult result, Requirement job, Saying said) {
    return result.fold(
        delivered ->
            said.of(delivered.atToolGauge(), job.least(), job.leastRange().least()),
        starved -> "no air at all");
  }

  /** What arrives at worst and at best, as far as air arrives. */
  private static GaugePressure[] arriving(Assembly a) {
    return Stream.of(a.result(), a.atBest())
        .map(result -> result.fold(
            delivered -> Optional.of(delivered.atToolGauge()),
            starved -> Optional.<GaugePressure>empty()))
        .flatMap(Optional::stream)
        .toArray(GaugePressure[]::new);
  }

  static RuleAnswer reach(Assembly a, UnitSystem units) {
    if (a.hoses().isEmpty()) {
      return RuleAnswer.doesNotApply("There is no hose in this run.");
    }
    String compared = ByLine.sentence(
        a,
        a.hoses().stream()
            .map(hose -> a.line(hose.position())
                + reach(hose, units)
                + (PartChecks.isTooShort(a.requirement(), hose.position(), hose.part())
                    ? ": too short"
                    : ""))
            .toList());
    List<Placed> tooShort = a.hoses().stream()
        .filter(hose -> PartChecks.isTooShort(a.requirement(), hose.position(), hose.part()))
        .toList();
    if (!tooShort.isEmpty()) {
      return RuleAnswer.unmet(compared + "." + joined(tooShort));
    }
    List<Placed> doubtful = a.hoses().stream()
        .filter(hose -> PartChecks.mayBeTooShort(a.requirement(), hose.position(), hose.part()))
        .toList();
    return doubtful.isEmpty()
        ? RuleAnswer.met(compared + ".")
        : RuleAnswer.open(compared + ". " + turning(doubtful, a, units));
  }

  /** How many of the one hose that is too short reach when they are joined, where a few do. */
  private static String joined(List<Placed> tooShort) {
    Placed hose = tooShort.get(0);
    if (tooShort.size() > 1
        || hose.part().facts().isExisting()
        || hose.position().longest().isPresent()) {
      return "";
    }
    double length = ((Part.Hose) hose.part()).shortest().metres();
    return hose.position()
        .reach()
        .map(needed -> Math.ceil(needed.most().metres() / length))
        .filter(pieces -> pieces <= MOST_JOINED)
        .map(pieces -> " " + Math.round(pieces) + " × " + hose.part().name()
            + " reach when they are joined: put so many hoses into the line, with a coupling between two,"
            + " and see what air is left.")
        .orElse("");
  }

  /** Where it turns whether hoses reach, and what is to be measured. */
  private static String turning(List<Placed> doubtful, Assembly a, UnitSystem units) {
    List<String> sentences = new ArrayList<>();
    String atReach = turns(doubtful, RuleSentences::turnsAtReach, a, units);
    if (!atReach.isEmpty()) {
      sentences.add("It turns at " + atReach + ": up to there it reaches. Measure how far it is.");
    }
    String atLength = turns(doubtful, RuleSentences::turnsAtLength, a, units);
    if (!atLength.isEmpty()) {
      sentences.add("It turns at a hose of " + atLength
          + ": from that length on it reaches. Measure how long it is.");
    }
    if (!doubtful.stream().allMatch(hose -> turnsAtReach(hose) || turnsAtLength(hose))) {
      sentences.add("Neither settles it alone. Measure how far it is, and how long the hose is.");
    }
    return String.join(" ", sentences);
  }

  /** The length up to which a hose reaches however long it is, or from which it does however far that is. */
  private static String turns(
      List<Placed> doubtful, Predicate<Placed> which, Assembly a, UnitSystem units) {
    return doubtful.stream()
        .filter(which)
        .map(hose -> units.say(
                turnsAtLength(hose)
                    ? hose.position().reach().orElseThrow().most()
                    : ((Part.Hose) hose.part()).shortest())
            + (a.hoses().size() == 1 ? "" : " (" + hose.position().name() + ")"))
        .distinct()
        .collect(Collectors.joining(" and "));
  }

  /** Whether the length of a hose alone settles it: it may be as long as the farthest that it may have to reach. */
  private static boolean turnsAtLength(Placed placed) {
    Part.Hose hose = (Part.Hose) placed.part();
    return !isOfOneLength(hose)
        && placed.position().reach().orElseThrow().most().compareTo(hose.longest()) <= 0;
  }

  /** Whether how far it is settles it alone: that may be less than the shortest that the hose may be. */
  private static boolean turnsAtReach(Placed placed) {
    Part.Hose hose = (Part.Hose) placed.part();
    return !turnsAtLength(placed)
        && (isOfOneLength(hose)
            || placed.position().reach().orElseThrow().least().compareTo(hose.shortest()) < 0);
  }

  private static boolean isOfOneLength(Part.Hose hose) {
    return hose.shortest().equals(hose.longest());
  }

  private static String reach(Placed placed, UnitSystem units) {
    Part.Hose hose = (Part.Hose) placed.part();
    Length length = hose.longest();
    String shortest = isOfOneLength(hose) ? "" : units.say(hose.shortest()) + " to ";
    String of = " of " + placed.position().noun();
    if (placed.position().isOfLength(length)) {
      return shortest + units.say(length) + of + ", the length looked for";
    }
    return placed
        .position()
        .reach()
        .map(reach -> {
          // the one of the two that the length is short of, or else the longer
          Length decides = length.compareTo(reach.least()) < 0 ? reach.least() : reach.most();
          return shortest + units.say(length, decides) + of + ", "
              + (reach.isExact() ? "" : units.say(reach.least(), length) + " to ")
              + units.say(reach.most(), length) + " needed";
        })
        .orElseGet(() -> shortest + units.say(length) + of);
  }

  static RuleAnswer shortEnough(Assembly a, UnitSystem units) {
    List<Placed> limited =
        a.hoses().stream().filter(hose -> hose.position().longest().isPresent()).toList();
    if (limited.isEmpty()) {
      return RuleAnswer.doesNotApply("No hose to be chosen is a whip hose, or limited in length.");
    }
    String compared = ByLine.sentence(
        a,
        limited.stream()
            .map(hose -> a.line(hose.position())
                + longest(hose, units)
                + (PartChecks.isTooLong(a.requirement(), hose.position(), hose.part())
                    ? ": too long"
                    : ""))
            .toList());
    if (!PartChecks.breaking(a, PartChecks::isTooLong).isEmpty()) {
      return RuleAnswer.unmet(compared + ".");
    }
    return PartChecks.breaking(a, PartChecks::mayBeTooLong).isEmpty()
        ? RuleAnswer.met(compared + ".")
        : RuleAnswer.open(compared + ". Measure how long the hose is.");
  }

  /** Whether not even standard adapters join two ends, as those of a water hose and of an air hose. */
  private static boolean isNeverJoined(Joint joint) {
    return !joint.isSound() && Meeting.lacking(joint).isEmpty();
  }

  /** How long a hose is, and how long it may be; what nobody told is common practice. */
  private static String longest(Placed placed, UnitSystem units) {
    Part.Hose hose = (Part.Hose) placed.part();
    Length length = hose.shortest();
    Length longest = placed.position().longest().orElseThrow();
    String is = units.say(length, longest)
        + (isOfOneLength(hose) ? "" : " to " + units.say(hose.longest(), longest)) + " of "
        + placed.position().noun();
    if (placed.position().isOfLength(length)) {
      return is + ", the length looked for";
    }
    boolean isWhip = placed.position().slot() instanceof Slot.Hose slot && slot.isWhip();
    return isWhip && longest.equals(Slot.Hose.LONGEST_WHIP)
        ? is + ", and a whip hose is at most " + units.either("3.05 m", "10 ft")
            + " long (common practice, no source)"
        : is + ", at most " + units.say(longest, length) + " wanted";
  }

  static RuleAnswer sleeve(Assembly a, UnitSystem units) {
    if (!a.requirement().isDragged()) {
      return RuleAnswer.doesNotApply("The job does not say that the hose is dragged.");
    }
    List<Part> dragged = a.couplings().stream()
        .filter(pair -> pair.position().isBehindHose())
        .<Part>map(Assembly.Pair::socket)
        .toList();
    if (dragged.isEmpty()) {
      return RuleAnswer.doesNotApply("There is no coupling behind a hose.");
    }
    List<Part> open = PartChecks.breaking(a, PartChecks::isUnguarded);
    return open.isEmpty()
        ? RuleAnswer.met(names(dragged)
            + (dragged.stream().distinct().count() == 1L
                ? " has a guarded sleeve."
                : " have guarded sleeves."))
        : RuleAnswer.unmet(
            names(open) + (open.size() == 1 ? " has an open sleeve" : " have open sleeves")
                + " that an edge can pull back.");
  }

  static RuleAnswer vented(Assembly a, UnitSystem units) {
    if (!a.requirement().isVentRequired()) {
      return RuleAnswer.doesNotApply(
          "The job does not ask for vented couplings; shut off and let the air out before parting one.");
    }
    List<Part> closed = PartChecks.breaking(a, PartChecks::isUnvented);
    return closed.isEmpty()
        ? RuleAnswer.met((a.couplings().size() == 2 ? "Both sockets let" : "Each socket lets")
            + " the air out before they part.")
        : RuleAnswer.unmet("Not vented: " + names(closed) + ".");
  }
}
