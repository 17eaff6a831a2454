package org.airfit.line;

import org.airfit.quantity.FrictionFactor;
import org.airfit.source.Source;

/**
 * Friction factors of flow in a bore.
 *
 * <p>Below Re = 2300 every law gives 64/Re, whatever the wall. From 4000 up it gives its own formula. Between the two nothing is settled:
 * the flow may be laminar or turbulent and change from one to the other. There a law gives its turbulent value, which is the
 * higher, and {@link #isTransition(double)} tells that a result needs a warning.
 */
public enum FrictionLaw {
  /**
   * Colebrook (1939), solved to the last digits of a double.
   *
   * <pre>
   *   1/√λ = −2 log₁₀( (ε/D)/3.7 + 2.51 / (Re √λ) )
   * </pre>
   *
   * <p>Books also print 3.71 and 2.523; they move λ by up to 0.1 %.
   */
  COLEBROOK(Source.handbook(
      "C. F. Colebrook, Turbulent flow in pipes, J. Inst. Civ. Eng. 11 (1939) 133-156"));

  /** Below this Reynolds number the flow counts as laminar. */
  public static final double LAMINAR_BELOW = 2300.0;

  /** From this Reynolds number up the flow counts as turbulent. */
  public static final double TURBULENT_FROM = 4000.0;

  /** No measurement of friction goes beyond this Reynolds number. */
  static final double HIGHEST = 1.0e9;

  private final Source source;

  FrictionLaw(Source source) {
    this.source = source;
  }

  /**
   * Finds the friction factor.
   *
   * @param reynolds the Reynolds number on the bore [-], in [10⁻¹⁰⁰, 10⁹]
   * @param relativeRoughness the roughness over the bore [-], in [0, 0.05]
   * @return the friction factor
   * @throws IllegalArgumentException if an argument lies outside the range above, or is NaN
   */
  public FrictionFactor factor(double reynolds, double relativeRoughness) {
    if (!(reynolds >= 1.0e-100 && reynolds <= HIGHEST)) {
      throw new IllegalArgumentException("Re must be in [1e-100, 1e9], was " + reynolds);
    }
    if (!(relativeRoughness >= 0.0 && relativeRoughness <= 0.05)) {
      throw new IllegalArgumentException(
          "relative roughness must be in [0, 0.05], was " + relativeRoughness);
    }
    return FrictionFactor.ofDarcy(darcy(reynolds, relativeRoughness));
  }

  double darcy(double reynolds, double relativeRoughness) {
    return reynolds < LAMINAR_BELOW
        ? FrictionKernels.laminar(reynolds)
        : FrictionKernels.colebrook(reynolds, relativeRoughness);
  }

  /**
   * Tells whether a flow lies in the band where no law is settled.
   *
   * @param reynolds the Reynolds number [-]
   * @return whether it is at least 2300 and below 4000
   */
  public static boolean isTransition(double reynolds) {
    return reynolds >= LAMINAR_BELOW && reynolds < TURBULENT_FROM;
  }

  /** {@return where this law stands} */
  public Source source() {
    return source;
  }
}
