package org.airfit.select;

import org.airfit.internal.Labels;

/**
 * Whether the air of a line carries oil for the tools. Lines of the two kinds are kept apart: oil stays in hoses and
 * couplings.
 */
public enum Lubrication {
  /** Without oil, as paint, blasting and breathing-apparatus makers ask. */
  DRY,
  /** With oil from a lubricator. */
  LUBRICATED;

  /**
   * Reads a kind of air.
   *
   * @param text the kind in words, as {@link #toString} prints it
   * @return the kind
   * @throws IllegalArgumentException if {@code text} is no kind
   */
  public static Lubrication parse(String text) {
    return Labels.parse("lubrication", text, values());
  }

  /** {@return the kind in words} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
