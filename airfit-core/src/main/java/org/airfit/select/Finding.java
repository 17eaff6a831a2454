package org.airfit.select;

import org.airfit.source.Source;

/**
 * What one rule says of one proposal.
 *
 * @param rule the rule
 * @param verdict whether it is met
 * @param reason why, in plain words
 * @param source what the rule rests on
 */
public record Finding(Rule rule, Verdict verdict, String reason, Source source) {

  /** Whether a rule is met. */
  public enum Verdict {
    /** It is met. */
    MET,
    /** It is not met. */
    UNMET,
    /** It can't be told before somebody is asked; the reason says what. */
    OPEN,
    /** It does not speak of this job. */
    NOT_CONCERNED
  }

  /** {@return the finding in one line} */
  @Override
  public String toString() {
    String said = verdict == Verdict.MET ? "met" : verdict == Verdict.UNMET ? "NOT MET" : "ask";
    return rule.title() + ": " + (verdict == Verdict.NOT_CONCERNED ? "not concerned" : said) + ". "
        + reason;
  }
}
