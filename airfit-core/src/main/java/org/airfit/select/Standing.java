package org.airfit.select;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.safety.Caution;

/**
 * Where a job stands with what is known: the parts that would be proposed, and all of their findings and warnings that
 * an answer may change. Two standings are one where a customer would notice no difference.
 *
 * @param shown the best proposal, or of none that fits the nearest miss; empty where there is neither
 * @param isFitting whether it breaks no rule
 * @param parts the ids of its parts in the order the air goes
 * @param told the rules that are broken, open, or met by a regulator only; of several tools those about a tool for each
 * @param asksForPlace whether it is open where it will be used, whatever else of the material is
 * @param warnings the titles of its warnings
 * @param drain what lets the water out of the pipes, where it needs that
 * @param asksForDryer whether it is open if it needs one
 * @param missing why there is no proposal at all
 */
record Standing(
    Optional<Proposal> shown,
    boolean isFitting,
    List<String> parts,
    Map<Point, RuleOutcome> told,
    boolean asksForPlace,
    Set<String> warnings,
    Optional<BillLine> drain,
    boolean asksForDryer,
    List<String> missing) {

  /**
   * A rule, and of which of several tools it is said.
   *
   * @param rule the rule
   * @param way the way to the tool; blank where it is said of the whole
   */
  record Point(Rule rule, String way) {}

  /** The rules that are there for safety first. */
  private static final Set<Rule> SAFETY = EnumSet.of(
      Rule.SAFETY_RULES_ALLOW, Rule.CLEANING_PRESSURE, Rule.TOOL_RATED, Rule.PARTS_RATED);

  /** Chooses the best parts of a job: the first of its {@link Selection}, without the others. */
  static Standing of(Requirement job, Catalogue catalogue) {
    Optional<String> refusal = job.medium().refusalInWords();
    if (refusal.isPresent()) {
      return nothing(List.of(refusal.get()));
    }
    PartSearch search = new PartSearch(job, catalogue, 1);
    if (!search.missing().isEmpty()) {
      return nothing(search.missing());
    }
    AccessoryShelf shelf = new AccessoryShelf(job, catalogue);
    List<Proposal> fitting = search.fitting();
    return fitting.isEmpty()
        ? of(search.nearest().get(0), false, shelf)
        : of(fitting.get(0), true, shelf);
  }

  private static Standing nothing(List<String> missing) {
    return new Standing(
        Optional.empty(),
        false,
        List.of(),
        Map.of(),
        false,
        Set.of(),
        Optional.empty(),
        false,
        missing);
  }

  private static Standing of(Proposal shown, boolean isFitting, AccessoryShelf shelf) {
    Map<Point, RuleOutcome> told = told(shown);
    Set<String> warnings = new LinkedHashSet<>();
    for (Caution caution : shown.cautions()) {
      warnings.add(caution.title());
    }
    return new Standing(
        Optional.of(shown),
        isFitting,
        shown.parts().stream().map(Part::id).toList(),
        told,
        isMaterialOpen(told) && shown.requirement().environment().isEmpty(),
        warnings,
        BillExtras.drain(shown.requirement(), shelf),
        BillExtras.asksForDryer(shown.requirement()),
        List.of());
  }

  private static Map<Point, RuleOutcome> told(Proposal shown) {
    Map<Point, RuleOutcome> told = new LinkedHashMap<>();
    for (Finding finding : shown.findings()) {
      if (shown.requirement().isOfSeveralTools() && SeveralTools.isOfATool(finding.rule())) {
        for (Proposal way : shown.toEachTool()) {
          put(told, way.requirement().way().orElse(""), way.of(finding.rule()));
        }
      } else {
        put(told, "", finding);
      }
    }
    return told;
  }

  private static void put(Map<Point, RuleOutcome> told, String way, Finding finding) {
    if (finding.outcome() != RuleOutcome.MET && finding.outcome() != RuleOutcome.DOES_NOT_APPLY) {
      told.put(new Point(finding.rule(), way), finding.outcome());
    }
  }

  private static boolean isMaterialOpen(Map<Point, RuleOutcome> told) {
    return told.entrySet().stream()
        .anyMatch(each ->
            each.getKey().rule() == Rule.MATERIAL_SUITS && each.getValue() == RuleOutcome.OPEN);
  }

  /** Whether it is open of what the parts must be made. */
  boolean isMaterialOpen() {
    return isMaterialOpen(told);
  }

  /** Whether a customer would notice no difference. */
  boolean isAs(Standing other) {
    return isFitting == other.isFitting
        && parts.equals(other.parts)
        && told.equals(other.told)
        && asksForPlace == other.asksForPlace
        && warnings.equals(other.warnings)
        && drain.equals(other.drain)
        && asksForDryer == other.asksForDryer
        && missing.equals(other.missing);
  }

  /** Whether it depends on what is not known exactly if a tool has its air. */
  boolean isAirOpen() {
    return told.entrySet().stream()
        .anyMatch(each ->
            each.getKey().rule() == Rule.AIR_AT_TOOL && each.getValue() == RuleOutcome.OPEN);
  }

  /** Whether the same is met, broken and open, be it with other parts. */
  boolean isAlike(Standing other) {
    return isFitting == other.isFitting
        && told.equals(other.told)
        && asksForPlace == other.asksForPlace
        && missing.equals(other.missing);
  }

  /** The rules that are broken here and in each of other standings in which anything is proposed at all. */
  List<Rule> brokenStill(List<Standing> others) {
    return told.entrySet().stream()
        .filter(each -> each.getValue() == RuleOutcome.UNMET)
        .map(Map.Entry::getKey)
        .filter(point -> others.stream()
            .allMatch(other -> other.shown.isEmpty() || other.told.get(point) == RuleOutcome.UNMET))
        .map(Point::rule)
        .distinct()
        .toList();
  }

  /** How many rules are open here and not there. */
  int settledBy(Standing after) {
    int settled = 0;
    for (Map.Entry<Point, RuleOutcome> each : told.entrySet()) {
      if (each.getValue() == RuleOutcome.OPEN
          && after.told.get(each.getKey()) != RuleOutcome.OPEN) {
        settled++;
      }
    }
    return settled;
  }

  /** Whether a rule of safety is broken there and not here, or nothing can be said any more. */
  boolean isForbiddenBy(Standing after) {
    return (after.shown.isEmpty() && shown.isPresent())
        || after.told.entrySet().stream()
            .anyMatch(each -> each.getValue() == RuleOutcome.UNMET
                && SAFETY.contains(each.getKey().rule())
                && told.get(each.getKey()) != RuleOutcome.UNMET);
  }
}
