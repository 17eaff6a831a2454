package org.airfit.select;

import org.airfit.internal.Labels;

/** What a bill of materials has only where it was asked for. */
public enum Extra {
  /** A cap for every plug that is uncoupled in use. */
  END_CAP,
  /** A hook for every hose. */
  HOOK,
  /** A restraint at every joint of a hose, also of a hose so small that practice asks for none. */
  WHIP_RESTRAINT;

  /**
   * Reads an extra.
   *
   * @param text the extra in words, as {@link #toString} prints it
   * @return the extra
   * @throws IllegalArgumentException if {@code text} is no extra
   */
  public static Extra parse(String text) {
    return Labels.parse("extra", text, values());
  }

  /** {@return the extra in words, such as "end cap"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
