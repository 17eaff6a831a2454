package org.airfit.select;

import org.airfit.internal.Labels;

/** What a fault of a price list does to whoever relies on the list, the worst first. */
public enum FaultEffect {
  /** Somebody may put a part where it sees more than its maker allows. */
  UNSAFE,
  /** What is worked out with the list, or sold by it, may be wrong. */
  WRONG_ANSWER,
  /** What is worked out with the list stays open, and somebody must ask. */
  ANSWER_OPEN,
  /** Figures that differ by no more than rounding or make can: no fault until somebody has looked. */
  TO_BE_CHECKED,
  /** Nothing is worked out wrongly; the list is longer or harder to use than it need be. */
  UNTIDY;

  /**
   * Reads an effect.
   *
   * @param text the effect in words, as {@link #toString} prints it
   * @return the effect
   * @throws IllegalArgumentException if {@code text} is no effect
   */
  public static FaultEffect parse(String text) {
    return Labels.parse("effect of a fault", text, values());
  }

  /** {@return the effect in words, such as "wrong answer"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
