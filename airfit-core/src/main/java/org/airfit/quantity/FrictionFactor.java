package org.airfit.quantity;

/**
 * The friction factor of flow in a bore, which half of the books give after Darcy and half after Fanning.
 *
 * <pre>
 *   darcy = 4 × fanning,  Δp = darcy (L/D) ρ w²/2 = 4 fanning (L/D) ρ w²/2
 * </pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class FrictionFactor implements Comparable<FrictionFactor> {

  private final double darcy;

  private FrictionFactor(double darcy) {
    if (!(darcy > 0.0 && darcy <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException(
          "Darcy friction factor must be finite and above 0, was " + darcy);
    }
    this.darcy = darcy;
  }

  /**
   * Obtains a friction factor after Darcy (Weisbach, Moody): 64/Re in laminar flow.
   *
   * @param darcy the factor [-], above 0
   * @return the friction factor
   * @throws IllegalArgumentException if {@code darcy} is NaN, infinite or not above 0
   */
  public static FrictionFactor ofDarcy(double darcy) {
    return new FrictionFactor(darcy);
  }

  /**
   * Obtains a friction factor after Fanning: 16/Re in laminar flow.
   *
   * @param fanning the factor [-], above 0
   * @return the friction factor
   * @throws IllegalArgumentException if {@code fanning} is NaN, infinite or not above 0
   */
  public static FrictionFactor ofFanning(double fanning) {
    return new FrictionFactor(4.0 * fanning);
  }

  /** {@return the factor after Darcy [-]} */
  public double darcy() {
    return darcy;
  }

  /** {@return the factor after Fanning [-], a quarter of Darcy's} */
  public double fanning() {
    return darcy / 4.0;
  }

  @Override
  public int compareTo(FrictionFactor other) {
    return Double.compare(darcy, other.darcy);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FrictionFactor that && darcy == that.darcy;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(darcy);
  }

  /** {@return the factor with its kind, such as "0.02 (Darcy)"} */
  @Override
  public String toString() {
    return darcy + " (Darcy)";
  }
}
