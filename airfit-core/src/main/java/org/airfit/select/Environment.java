package org.airfit.select;

import java.util.Locale;

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

  /** {@return the place in words, such as "wash down"} */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
