package org.airfit.select;

import org.airfit.internal.Labels;

/** What a regulator is in one piece with. The piece has one inlet, one outlet, one set point and one droop. */
public enum RegulatorKind {
  /** A regulator alone. */
  REGULATOR,
  /** A regulator with the filter in one piece. */
  FILTER_REGULATOR,
  /** A regulator with the filter and the lubricator in one piece. */
  FILTER_REGULATOR_LUBRICATOR;

  /** Whether it oils the air. */
  boolean isLubricator() {
    return this == FILTER_REGULATOR_LUBRICATOR;
  }

  /**
   * Reads a kind.
   *
   * @param text the kind in words, as {@link #toString} prints it
   * @return the kind
   * @throws IllegalArgumentException if {@code text} is no kind
   */
  public static RegulatorKind parse(String text) {
    return Labels.parse("regulator", text, values());
  }

  /** {@return the kind in words, such as "filter regulator"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
