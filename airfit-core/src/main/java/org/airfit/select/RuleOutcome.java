package org.airfit.select;

import org.airfit.internal.Labels;

/** Whether a rule is met. */
public enum RuleOutcome {
  /** It is met. */
  MET,
  /** It is met as long as a regulator works; the reason tells the pressure if it fails. */
  MET_WHILE_REGULATED,
  /** It is not met. */
  UNMET,
  /** It cannot be told before somebody is asked; the reason says what to ask. */
  OPEN,
  /** It does not apply to this job. */
  DOES_NOT_APPLY;

  /**
   * Reads an outcome.
   *
   * @param text the outcome in words, as {@link #toString} prints it
   * @return the outcome
   * @throws IllegalArgumentException if {@code text} is no outcome
   */
  public static RuleOutcome parse(String text) {
    return Labels.parse("outcome", text, values());
  }

  /** {@return the outcome in words, such as "does not apply" or "met while the regulator holds"} */
  @Override
  public String toString() {
    return this == MET_WHILE_REGULATED ? "met while the regulator holds" : Labels.of(this);
  }
}
