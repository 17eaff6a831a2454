package org.airfit.select;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.internal.Capital;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Range;
import org.airfit.working.UnitSystem;

/**
 * What a rule answers of a job of several tools. Rules about parts and joints are asked once of all of them, those about
 * a tool or the whole way to it are asked of the way to each, and the worst answer counts.
 */
final class SeveralTools {

  /** Asked of the way to each tool. */
  private static final Set<Rule> OF_EACH_WAY = EnumSet.of(
      Rule.PROFILES_IN_USE,
      Rule.TOOL_RATED,
      Rule.CLEANING_PRESSURE,
      Rule.SAFETY_RULES_ALLOW,
      Rule.AIR_AT_TOOL,
      Rule.MATERIAL_SUITS,
      Rule.WHIP_HOSE,
      Rule.AIR_KEPT_APART);

  private SeveralTools() {}

  /** Whether a rule is said of one tool, whatever is said of the others. */
  static boolean isOfATool(Rule rule) {
    return OF_EACH_WAY.contains(rule) && rule != Rule.AIR_KEPT_APART;
  }

  /** What a rule answers, of several tools with the lines of which it is said. */
  static RuleAnswer judge(Rule rule, Assembly a, UnitSystem units) {
    return a.ways().isEmpty() || !OF_EACH_WAY.contains(rule)
        ? rule.judge(a, units)
        : ofEachWay(rule, a, units);
  }

  private static RuleAnswer ofEachWay(Rule rule, Assembly a, UnitSystem units) {
    Map<String, RuleAnswer> answers = new LinkedHashMap<>();
    for (Assembly way : a.ways()) {
      answers.put(way.requirement().way().orElseThrow(), rule.judge(way, units));
    }
    if (rule == Rule.AIR_KEPT_APART) {
      ServiceSentences.unknownTogether(a).ifPresent(unmet -> answers.put("", unmet));
    }
    return rule == Rule.AIR_AT_TOOL
        ? new RuleAnswer(
            outcome(answers), atOnce(a, units) + said(answers, EnumSet.allOf(RuleOutcome.class)))
        : worst(answers);
  }

  /** The worst of answers, with the lines that it is said of, and what is met only while a regulator holds. */
  static RuleAnswer worst(Map<String, RuleAnswer> answers) {
    RuleOutcome worst = outcome(answers);
    Set<RuleOutcome> told = EnumSet.of(worst);
    if (worst.isWorseThan(RuleOutcome.MET_WHILE_REGULATED)) {
      told.add(RuleOutcome.MET_WHILE_REGULATED);
    }
    return new RuleAnswer(worst, said(answers, told));
  }

  private static RuleOutcome outcome(Map<String, RuleAnswer> answers) {
    return RuleOutcome.worst(answers.values().stream().map(RuleAnswer::outcome)).orElseThrow();
  }

  /** That all of them work at once, and what others take besides. */
  private static String atOnce(Assembly a, UnitSystem units) {
    Requirement job = a.requirement();
    int tools = job.layout().toolLines().stream().mapToInt(ToolLine::count).sum();
    String others = job.airOfOthers()
        .map(air -> "Others take " + between(air, units) + " at the same time. ")
        .orElse("");
    if (tools == 1) {
      return others;
    }
    return (tools == 2 ? "Both" : "All " + tools)
        + " tools at work at once, which is the worst case, take "
        + between(job.demandRange(), units) + ". " + others;
  }

  private static String between(Range<FreeAirFlow> air, UnitSystem units) {
    return (air.isExact() ? "" : units.say(air.least()) + " to ") + units.say(air.most());
  }

  /** The reasons of some outcomes, each once with the lines that it is said of; of all lines without. */
  private static String said(Map<String, RuleAnswer> answers, Set<RuleOutcome> outcomes) {
    Map<String, List<String>> ofReason = new LinkedHashMap<>();
    answers.forEach((way, answer) -> {
      if (outcomes.contains(answer.outcome())) {
        ofReason.computeIfAbsent(answer.reason(), any -> new ArrayList<>()).add(way);
      }
    });
    Set<String> sentences = new LinkedHashSet<>();
    ofReason.forEach((reason, ways) -> sentences.add(
        ways.size() == answers.size() || ways.contains("")
            ? reason
            : Capital.first(String.join("; ", ways)) + ": " + reason));
    return String.join(" ", sentences);
  }
}
