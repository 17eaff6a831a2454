package org.airfit.select;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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

  private static final List<RuleOutcome> WORST_FIRST =
      List.of(UNMET, OPEN, MET_WHILE_REGULATED, MET, DOES_NOT_APPLY);

  /** The worst of outcomes; empty of none. */
  static Optional<RuleOutcome> worst(Stream<RuleOutcome> outcomes) {
    return outcomes.min(Comparator.comparingInt(WORST_FIRST::indexOf));
  }

  /** Whether this is worse than another. */
  boolean isWorseThan(RuleOutcome other) {
    return WORST_FIRST.indexOf(this) < WORST_FIRST.indexOf(other);
  }

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
