package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.airfit.quantity.GaugePressure;
import org.airfit.safety.Judgement;
import org.airfit.safety.Ruling;
import org.airfit.safety.SafetyRule;
import org.airfit.working.UnitSystem;

/** What the safety rules that forbid something answer for a job or an assembly, with what to change. */
final class ForbiddenSentences {

  /** A ruling with the parts it is on; none where it is on the job. */
  private record Said(Ruling ruling, Set<String> parts) {

    /** The name of the rule, where it stands, and the value beside the limit. */
    String inWords(String judged, UnitSystem units) {
      SafetyRule rule = ruling.rule();
      String reason = ruling.toldIn(units).reason();
      String name = rule.title().equals(rule.citation())
          ? rule.source().toString()
          : rule.title() + " [" + rule.source() + "]";
      String value = ruling.judgement() == Judgement.DEPENDS
          ? ""
          : rule.quantity().map(quantity -> quantity + " ").orElse("");
      return name + ": " + judged + value + reason.substring(0, end(reason))
          + (parts.isEmpty() ? "" : " (" + String.join(", ", parts) + ")") + ".";
    }

    private static int end(String sentence) {
      return sentence.endsWith(".") ? sentence.length() - 1 : sentence.length();
    }
  }

  private ForbiddenSentences() {}

  /** What they say of the job, before its parts are chosen. */
  static RuleAnswer ofJob(Requirement job, UnitSystem units) {
    List<String> waiting = job.forbidding().stream()
        .filter(ForbiddingRules::isOfParts)
        .map(SafetyRule::title)
        .toList();
    RuleAnswer answer = answer(said(Forbidden.ofJob(job)), units);
    return waiting.isEmpty() || answer.outcome() == RuleOutcome.UNMET
        ? answer
        : RuleAnswer.open((answer.outcome() == RuleOutcome.OPEN ? answer.reason() + " " : "")
            + "The parts decide whether these rules are kept: " + String.join(", ", waiting) + ".");
  }

  static RuleAnswer of(Assembly a, UnitSystem units) {
    Requirement job = a.requirement();
    Map<Ruling, Said> said = new LinkedHashMap<>();
    said(Forbidden.ofJob(job)).forEach(each -> said.put(each.ruling, each));
    // the weakest part first, by which a rule on ratings is told as kept
    List<Placed> parts = new ArrayList<>(a.slotParts());
    parts.sort(Comparator.comparingDouble(
        each -> each.part().facts().rating().map(GaugePressure::pascals).orElse(Double.MAX_VALUE)));
    for (Placed each : parts) {
      for (Ruling ruling : Forbidden.ofPart(job, each.part())) {
        said.computeIfAbsent(ruling, any -> new Said(ruling, new LinkedHashSet<>()))
            .parts
            .add(each.part().name());
      }
    }
    return answer(List.copyOf(said.values()), units);
  }

  private static List<Said> said(List<Ruling> rulings) {
    return rulings.stream()
        .map(ruling -> new Said(ruling, new LinkedHashSet<>()))
        .toList();
  }

  private static RuleAnswer answer(List<Said> all, UnitSystem units) {
    List<Said> broken = those(all, Forbidden::isBroken);
    if (!broken.isEmpty()) {
      return RuleAnswer.unmet(broken.stream()
          .map(each -> each.inWords("not allowed, ", units) + " "
              + each.ruling.rule().toldIn(units).demand() + " "
              + change(each))
          .collect(Collectors.joining(" ")));
    }
    List<Said> open = those(all, Forbidden::isOpen);
    if (!open.isEmpty()) {
      return RuleAnswer.open(open.stream()
          .map(each -> each.ruling.judgement() == Judgement.DEPENDS
              ? each.inWords("", units)
              : each.inWords(
                  each.ruling.rule().isAdvice()
                      ? "not advised, ask what holds here; "
                      : "not allowed where that rule holds, ask whether it does here; ",
                  units))
          .collect(Collectors.joining(" ")));
    }
    Map<SafetyRule, Said> kept = new LinkedHashMap<>();
    those(
            all,
            ruling -> ruling.judgement() == Judgement.ALLOWED
                && !ForbiddingRules.isOfOneTrade(ruling.rule()))
        .forEach(each -> kept.putIfAbsent(each.ruling.rule(), each));
    return kept.isEmpty()
        ? RuleAnswer.doesNotApply(
            "Of the rules that forbid something, none applies to what was told.")
        : RuleAnswer.met(kept.values().stream()
            .map(each -> each.inWords("allowed, ", units))
            .collect(Collectors.joining(" ")));
  }

  private static List<Said> those(List<Said> all, Predicate<Ruling> wanted) {
    return all.stream().filter(each -> wanted.test(each.ruling)).toList();
  }

  /** What must change before the rule is kept. */
  private static String change(Said said) {
    SafetyRule rule = said.ruling.rule();
    List<String> ways = new ArrayList<>();
    byLimit(rule).ifPresent(ways::add);
    if (!said.parts.isEmpty() && rule.waitsFor().contains(ForbiddingRules.PLASTIC_PIPE)) {
      ways.add("take others than of plastic");
    }
    List<String> facts = rule.waitsFor().stream()
        .filter(fact -> said.parts.isEmpty() || !fact.equals(ForbiddingRules.PLASTIC_PIPE))
        .toList();
    if (!facts.isEmpty()) {
      ways.add("do without " + (facts.size() > 1 ? "one of: " : "") + String.join(", ", facts));
    }
    if (!rule.excepts().isEmpty()) {
      ways.add("provide what excepts it: " + String.join(", ", rule.excepts()));
    }
    return ways.isEmpty()
        ? "It forbids every such line: ask whoever made the rule."
        : "To change: " + String.join("; or ", ways) + ".";
  }

  private static Optional<String> byLimit(SafetyRule rule) {
    boolean upwards = ForbiddingRules.isUpwards(rule);
    String lower =
        "set the relief valve or the cut-out lower, or take a regulator whose maker tells"
            + " that no more stands behind it when it has failed";
    return rule.quantity().map(quantity -> switch (quantity) {
      case "hose bore", "mine hose bore" ->
        "take a hose of a " + (upwards ? "larger" : "smaller") + " bore";
      case ForbiddingRules.SHARE_OF_RATING -> "take parts of a higher rating; or " + lower;
      case "cleaning pressure", "pressure on clothing" ->
        "take a gun that lets the pressure off when its nozzle is blocked";
      default -> upwards ? "set the cut-in higher" : lower;
    });
  }
}
