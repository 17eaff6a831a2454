package org.airfit.safety;

/** What a rule says of a situation. */
public enum Judgement {
  /** The rule does not speak of this situation, or what it asks about was not told. */
  NOT_CONCERNED,
  /** The rule allows it. */
  ALLOWED,
  /** The rule asks for nothing here. */
  NOT_REQUIRED,
  /** The rule asks for something to be done or fitted. */
  REQUIRED,
  /** The rule forbids it. */
  NOT_ALLOWED;

  /** {@return whether somebody must act on this judgement} */
  public boolean callsForCaution() {
    return this == REQUIRED || this == NOT_ALLOWED;
  }
}
