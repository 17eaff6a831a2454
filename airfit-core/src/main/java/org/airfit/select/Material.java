package org.airfit.select;

import java.util.Locale;

/** What the body of a coupling is made of. */
public enum Material {
  /** Plain or plated steel. */
  STEEL,
  /** Steel with a hardened surface, where balls and knocks wear. */
  HARDENED_STEEL,
  /** Steel that does not rust. */
  STAINLESS_STEEL,
  /** Brass or bronze. */
  BRASS,
  /** Aluminium. */
  ALUMINIUM,
  /** A plastic. */
  PLASTIC;

  /** {@return the material in words, such as "hardened steel"} */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
