package org.airfit.select;

import org.airfit.internal.Labels;

/** What the body of a coupling or an adapter, or the end fittings of a hose, are made of. */
public enum Material {
  /** Plain or plated steel. */
  STEEL,
  /** Steel with a hardened surface, where balls and knocks wear, and no plating. */
  HARDENED_STEEL,
  /** Hardened steel under a plating against rust, such as zinc. */
  PLATED_HARDENED_STEEL,
  /** Steel that does not rust. */
  STAINLESS_STEEL,
  /** Plain brass or bronze. */
  BRASS,
  /** Brass under a plating of nickel or chrome. */
  PLATED_BRASS,
  /** Aluminium. */
  ALUMINIUM,
  /** A plastic. */
  PLASTIC;

  /**
   * Reads a material.
   *
   * @param text the material in words, as {@link #toString} prints it
   * @return the material
   * @throws IllegalArgumentException if {@code text} is no material
   */
  public static Material parse(String text) {
    return Labels.parse("material", text, values());
  }

  /** {@return the material in words, such as "hardened steel"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
