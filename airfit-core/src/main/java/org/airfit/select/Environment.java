package org.airfit.select;

import org.airfit.internal.Labels;

/** Where the parts will be used, as far as it decides the material. */
public enum Environment {
  /** Under a roof, dry. */
  INDOORS,
  /** In rain, salt air or condensation, where rust matters. */
  OUTDOORS,
  /** Hosed down for cleaning. */
  WASH_DOWN,
  /** Where a spark could ignite something. */
  SPARKING_HAZARD;

  /**
   * Reads an environment.
   *
   * @param text the environment in words, as {@link #toString} prints it
   * @return the environment
   * @throws IllegalArgumentException if {@code text} is no environment
   */
  public static Environment parse(String text) {
    return Labels.parse("environment", text, values());
  }

  /** {@return the environment in words, such as "wash down"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
