package org.airfit.select;

import org.airfit.internal.Labels;

/** Whether couplings can be brought to fewer profiles. */
public enum ChangeOverVerdict {
  /** There is a profile to keep, or a few, and something to change. */
  CHANGE,
  /** Each bay has the profile already that would be kept. */
  NOTHING_TO_CHANGE,
  /** No profile, nor a few side by side, can be kept for all bays. */
  NOTHING_CAN_BE_KEPT;

  /**
   * Reads a verdict.
   *
   * @param text the verdict in words, as {@link #toString} prints it
   * @return the verdict
   * @throws IllegalArgumentException if {@code text} is no verdict
   */
  public static ChangeOverVerdict parse(String text) {
    return Labels.parse("verdict", text, values());
  }

  /** {@return the verdict in words, such as "nothing to change"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
