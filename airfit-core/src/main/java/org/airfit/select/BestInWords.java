package org.airfit.select;

import java.util.List;
import java.util.stream.Collectors;
import org.airfit.run.RunResult;
import org.airfit.working.UnitSystem;

/**
 * Why the best of a list of proposals stands first, in sentences that are true of it: it breaks no rule, but it meets
 * every rule only where nothing is open; its parts in the line cost least only where all their prices are known. What
 * comes beside the line is in the bill.
 */
final class BestInWords {

  private final Proposal best;
  private final List<Proposal> proposals;
  private final UnitSystem units;

  BestInWords(Proposal best, List<Proposal> proposals, UnitSystem units) {
    this.best = best;
    this.proposals = proposals;
    this.units = units;
  }

  /** {@return the sentences} */
  @Override
  public String toString() {
    return whileRegulated() + (best.open().isEmpty() ? allMet() : someOpen()) + leftOpen();
  }

  /** A rule that a regulator keeps is met, but not without a word. */
  private String whileRegulated() {
    return best.metWhileRegulated().stream()
        .map(finding -> finding.rule().title() + ": " + finding.outcomeInWords() + ". ")
        .collect(Collectors.joining());
  }

  /** What no rule judges and must be closed all the same. */
  private String leftOpen() {
    String left = best.leftOpenInWords();
    return left.isEmpty() ? "" : " " + left;
  }

  private String allMet() {
    if (proposals.size() == 1) {
      return "It is the only combination that meets every rule: " + itself();
    }
    return proposals.get(1).open().isEmpty()
        ? "Of all combinations that meet every rule" + first() + itself()
        : "It is the only combination that meets every rule; the others that break no rule leave something"
            + " to be asked: " + itself();
  }

  private String someOpen() {
    String still =
        "It breaks no rule, but whether it meets every rule depends on what is still to be asked. "
            + best.findings(units).stream()
                .filter(finding -> finding.outcome() == RuleOutcome.OPEN)
                .map(finding -> finding.rule().title() + ": " + finding.reason())
                .collect(Collectors.joining(" "));
    if (proposals.size() == 1) {
      return still + " It is the only combination that breaks no rule: " + itself();
    }
    if (proposals.get(1).partQuestions() > best.partQuestions()) {
      return still
          + " Every other combination that breaks no rule leaves more questions about its parts open: "
          + itself();
    }
    return still
        + (isAirOpen()
            ? " Of all combinations that break no rule, that leave as few questions about their parts open and "
                + (best.assembly().dependsOnSettingsAlone()
                    ? "depend on what regulators are set to alone"
                    : "have enough air in as many of the cases that are possible")
                + (best.requirement().objective() == Objective.LOWEST_PRICE ? "" : ",")
            : " Of all combinations that break no rule and leave as few questions about their parts open")
        + first()
        + itself();
  }

  /** Whether it depends on what is not known if the air is enough: how far it is enough counts before the objective. */
  private boolean isAirOpen() {
    return best.open().stream().anyMatch(finding -> finding.rule() == Rule.AIR_AT_TOOL);
  }

  /** Whether couplings could have more profiles than one. */
  private boolean isOfAnyProfiles() {
    List<Assembly.Pair> couplings = best.assembly().couplings();
    return couplings.size() > 1
        && couplings.stream()
            .anyMatch(pair -> pair.position().profile(best.requirement()).isEmpty()
                && !pair.plug().facts().isExisting());
  }

  /** By what it stands first: what can be told of prices depends on which are known. */
  private String first() {
    boolean allPriced = best.unpriced().isEmpty();
    if (best.requirement().objective() == Objective.LOWEST_PRICE) {
      return allPriced
          ? " and have all prices known, the parts in its line cost least: "
          : " it has the fewest pieces of unknown price, and of those the known prices sum to the least: ";
    }
    String pieces = " it needs the fewest pieces to buy, "
        + (isOfAnyProfiles() ? "of those its couplings have the fewest profiles, " : "")
        + "and of those ";
    if (best.price().isEmpty()) {
      return pieces + "it keeps the most pressure: ";
    }
    return pieces
        + (allPriced
            ? "that have all prices known the parts in its line cost least: "
            : "it has the fewest of unknown price, and their known prices sum to the least: ");
  }

  private String itself() {
    long pieces = best.pieces();
    return (pieces == 0 ? "nothing" : pieces + (pieces == 1 ? " piece" : " pieces"))
        + " to buy in its line, "
        + best.priceInWords().map(price -> price + ", ").orElse("")
        + arriving()
        + (best.requirement().isOfSeveralTools()
            ? " at the tool that has least to spare."
            : " at the tool.");
  }

  /** Whether what arrives at worst is printed as it is at best. */
  private boolean isKnown() {
    return printed(best.result()).equals(printed(best.resultAtBest()));
  }

  private String printed(RunResult result) {
    return result.fold(delivered -> units.say(delivered.atToolGauge()), starved -> "");
  }

  /** What arrives; where nothing does at worst but something at best, both. */
  private String arriving() {
    return best.result()
        .fold(
            delivered -> isKnown()
                ? units.say(delivered.atToolGauge())
                : "at least " + units.sayAtLeast(delivered.atToolGauge()),
            starved -> best.resultAtBest()
                .fold(
                    delivered -> "from no air at worst to " + units.say(delivered.atToolGauge())
                        + " at best",
                    none -> "no air"));
  }
}
