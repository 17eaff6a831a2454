package org.airfit.select;

import java.util.Locale;

/** Whether the air of a line carries oil for the tools. Lines of the two kinds are kept apart: oil stays in hoses and couplings. */
public enum Lubrication {
  /** Without oil, as paint, blasting and breathing-apparatus makers ask. */
  DRY,
  /** With oil from a lubricator. */
  LUBRICATED;

  /** {@return the kind in words} */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
