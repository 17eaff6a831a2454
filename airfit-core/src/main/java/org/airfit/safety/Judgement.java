package org.airfit.safety;

import org.airfit.internal.Labels;

/** What a safety rule says of a situation. */
public enum Judgement {
  /** The rule does not apply to this situation, or what it asks about was not told. */
  DOES_NOT_APPLY,
  /** The rule allows it. */
  ALLOWED,
  /** The rule asks for nothing here. */
  NOT_REQUIRED,
  /** The rule asks for something to be done or fitted. */
  REQUIRED,
  /** The rule forbids it. */
  NOT_ALLOWED,
  /** What nobody knows yet decides whether the rule forbids it or asks for something; the reason says what to ask. */
  DEPENDS;

  /** Whether nothing follows from it. */
  boolean isHarmless() {
    return !callsForCaution() && this != DEPENDS;
  }

  /** {@return whether somebody must act on this judgement} */
  public boolean callsForCaution() {
    return this == REQUIRED || this == NOT_ALLOWED;
  }

  /**
   * Reads a judgement.
   *
   * @param text the judgement in words, as {@link #toString} prints it
   * @return the judgement
   * @throws IllegalArgumentException if {@code text} is no judgement
   */
  public static Judgement parse(String text) {
    return Labels.parse("judgement", text, values());
  }

  /** {@return the judgement in words, such as "not allowed"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
