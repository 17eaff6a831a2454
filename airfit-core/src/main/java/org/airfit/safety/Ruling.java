package org.airfit.safety;

import java.util.Objects;
import java.util.Optional;

/**
 * What one rule says of one situation, and why.
 *
 * @param rule the rule
 * @param judgement what it says
 * @param reason why, in one plain sentence with the numbers compared
 */
public record Ruling(SafetyRule rule, Judgement judgement, String reason) {

  /**
   * Checks the components.
   *
   * @param rule the rule
   * @param judgement what it says
   * @param reason why, in one plain sentence with the numbers compared
   */
  public Ruling {
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(judgement, "judgement");
    if (reason.isBlank()) {
      throw new IllegalArgumentException("reason of a ruling must say why, was blank");
    }
  }

  /** {@return the caution this ruling calls for, if it calls for one} */
  public Optional<Caution> caution() {
    return judgement.callsForCaution()
        ? Optional.of(new Caution(rule.title(), rule.demand() + " Here: " + reason, rule.source()))
        : Optional.empty();
  }
}
