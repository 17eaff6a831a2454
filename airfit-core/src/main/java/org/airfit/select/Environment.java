package org.airfit.select;

import org.airfit.internal.Labels;

/** Where the parts will be used, as far as it decides the material. */
public enum Environment {
  /** Under a roof, dry. */
  INDOORS,
  /** In rain or condensation, where rust matters. */
  OUTDOORS,
  /** In salt air or spray, which eats through a plating. */
  SALT_AIR,
  /** Hosed down for cleaning, nobody said with what. */
  WASH_DOWN,
  /** Hosed down with water or a neutral cleaner. */
  WASH_DOWN_WITH_WATER,
  /** Hosed down with a caustic cleaner, as in dairies and breweries. */
  WASH_DOWN_WITH_CAUSTIC,
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
