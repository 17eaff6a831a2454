package org.airfit.select;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import org.airfit.internal.Labels;
import org.jspecify.annotations.Nullable;

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

  /** The materials that suit an environment and the knocks; none where the two exclude one another. */
  static Set<Material> suited(@Nullable Environment environment, boolean isDropped) {
    Set<Material> good = EnumSet.allOf(Material.class);
    if (isDropped) {
      good.retainAll(Set.of(HARDENED_STEEL, STAINLESS_STEEL));
    }
    if (environment == Environment.OUTDOORS || environment == Environment.WASH_DOWN) {
      good.retainAll(Set.of(STAINLESS_STEEL, BRASS));
    } else if (environment == Environment.SPARKING_HAZARD) {
      good.retainAll(Set.of(BRASS));
    }
    return Collections.unmodifiableSet(good);
  }

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
