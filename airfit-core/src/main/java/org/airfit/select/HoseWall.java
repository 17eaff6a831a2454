package org.airfit.select;

import org.airfit.internal.Labels;

/** What the wall of a hose is made of. */
public enum HoseWall {
  /** Rubber, with its plies. */
  RUBBER,
  /** A plastic, such as polyurethane, polyamide or PVC. */
  PLASTIC;

  /**
   * Reads a kind of wall.
   *
   * @param text the wall in words, as {@link #toString} prints it
   * @return the wall
   * @throws IllegalArgumentException if {@code text} is no wall
   */
  public static HoseWall parse(String text) {
    return Labels.parse("wall of a hose", text, values());
  }

  /** {@return the wall in words} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
