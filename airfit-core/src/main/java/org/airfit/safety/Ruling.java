package org.airfit.safety;

import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Capital;
import org.airfit.working.UnitSystem;

/**
 * What one safety rule says of one situation, and why.
 *
 * <p>At the limit itself, the printed operator decides:
 *
 * <pre>{@code
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.safety.Ruling;
 * import org.airfit.safety.SafetyRules;
 * import org.airfit.safety.Situation;
 *
 * class AtTheLimit {
 *   public static void main(String[] args) {
 *     Situation gun = Situation.describe().cleaning(GaugePressure.parse("30 psig")).build();
 *     SafetyRules rules = SafetyRules.bundled();
 *     System.out.println(Ruling.of(rules.rule("29 CFR 1910.242(b)"), gun).judgement()); // not allowed
 *     System.out.println(Ruling.of(rules.rule("29 CFR 1917.154"), gun).judgement()); // allowed
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Ruling {

  private final SafetyRule rule;
  private final Situation situation;
  private final Judgement judgement;
  private final String reason;

  Ruling(SafetyRule rule, Situation situation, Judgement judgement, String reason) {
    this.rule = Objects.requireNonNull(rule, "rule");
    this.situation = Objects.requireNonNull(situation, "situation");
    this.judgement = Objects.requireNonNull(judgement, "judgement");
    Objects.requireNonNull(reason, "reason");
    if (reason.isBlank()) {
      throw new IllegalArgumentException("reason of a ruling must say why, was blank");
    }
    this.reason = reason;
  }

  /**
   * Judges a situation by one rule alone.
   *
   * @param rule the rule
   * @param situation what is known
   * @return what the rule says of it
   */
  public static Ruling of(SafetyRule rule, Situation situation) {
    SafetyRule.Answer answer =
        Objects.requireNonNull(rule, "rule").judge(Objects.requireNonNull(situation, "situation"));
    return new Ruling(rule, situation, answer.judgement(), answer.reason());
  }

  /**
   * Obtains this ruling with its numbers in a system of units; what the law prints stands in brackets.
   *
   * @param units the units
   * @return the same judgement by {@link SafetyRule#toldIn the rule in these units}
   */
  public Ruling toldIn(UnitSystem units) {
    return of(rule.toldIn(units), situation);
  }

  /** {@return the rule} */
  public SafetyRule rule() {
    return rule;
  }

  /** {@return what the rule says} */
  public Judgement judgement() {
    return judgement;
  }

  /** {@return why, in one plain sentence with the numbers compared, in the units in which the rule is told} */
  public String reason() {
    return reason;
  }

  /** {@return the caution this ruling calls for, if it calls for one} */
  public Optional<Caution> caution() {
    return judgement.callsForCaution()
        ? Optional.of(Caution.of(rule.title(), rule.demand(), reason, rule.source()))
        : Optional.empty();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Ruling that
        && rule.equals(that.rule)
        && judgement == that.judgement
        && reason.equals(that.reason);
  }

  @Override
  public int hashCode() {
    return Objects.hash(rule, judgement, reason);
  }

  /**
   * {@return the ruling in one line, such as "Rated pressure: allowed. 90 psig in the line, weakest part rated 150
   * psig."}
   */
  @Override
  public String toString() {
    return rule.title() + ": " + judgement + ". " + Capital.first(reason);
  }
}
