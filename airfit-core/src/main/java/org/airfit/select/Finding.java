package org.airfit.select;

import java.util.Objects;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/**
 * What one rule says of one proposal.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Finding {

  private final Rule rule;
  private final RuleOutcome outcome;
  private final String reason;
  private final boolean isPlural;

  private Finding(Rule rule, RuleAnswer answer) {
    this.isPlural = answer.reason().contains(RuleSentences.WHILE_THEY_HOLD);
    this.rule = rule;
    this.outcome = answer.outcome();
    this.reason = answer.reason();
  }

  /** Judges an assembly by one rule, and says why in the units asked for. */
  static Finding of(Rule rule, Assembly assembly, UnitSystem units) {
    return new Finding(rule, SeveralTools.judge(rule, assembly, units));
  }

  /** What a rule on the job itself answers, with its reason. */
  static Finding of(Rule rule, RuleAnswer answer) {
    return new Finding(rule, answer);
  }

  /** {@return the rule} */
  public Rule rule() {
    return rule;
  }

  /** {@return whether it is met} */
  public RuleOutcome outcome() {
    return outcome;
  }

  /** {@return why, in plain words} */
  public String reason() {
    return reason;
  }

  /**
   * {@return the outcome in words, such as "met", or "met while the regulators hold" where more than one stands in front}
   */
  public String outcomeInWords() {
    return outcome == RuleOutcome.MET_WHILE_REGULATED && isPlural
        ? "met while the regulators hold"
        : outcome.toString();
  }

  /** {@return what the rule rests on} */
  public Source source() {
    return rule.source();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Finding that
        && rule == that.rule
        && outcome == that.outcome
        && reason.equals(that.reason);
  }

  @Override
  public int hashCode() {
    return Objects.hash(rule, outcome, reason);
  }

  /** {@return the finding in one line, such as "Hose reaches: met. 10 m of hose, 10 m needed."} */
  @Override
  public String toString() {
    String said = switch (outcome) {
      case MET -> "met";
      case MET_WHILE_REGULATED -> outcomeInWords();
      case UNMET -> "NOT MET";
      case OPEN -> "ask";
      case DOES_NOT_APPLY -> "does not apply";
    };
    return rule.title() + ": " + said + ". " + reason;
  }
}
