package org.airfit.quantity;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Digits;

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

  /** What one of each is after Darcy. */
  private static final Grammar<Double> GRAMMAR = Grammar.ofWords(
      "friction factor",
      Map.of("Darcy", 1.0, "Fanning", 4.0),
      Map.of(),
      "Darcy, Fanning",
      List.of("0.02 Darcy", "0.005 Fanning"));

  private final double darcy;

  private FrictionFactor(double darcy) {
    if (!(darcy > 0.0 && darcy <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException(
          "Darcy friction factor must be finite and above 0, was " + Digits.told(darcy));
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

  /**
   * Reads what people type.
   *
   * @param text a number and which of the two it is, such as "0.02 Darcy", "0.005 Fanning"
   * @return the friction factor
   * @throws QuantityFormatException if the text is not a friction factor; it tells where and what would be accepted
   */
  public static FrictionFactor parse(String text) {
    return GRAMMAR.read(text, (value, darcy) -> new FrictionFactor(value * darcy));
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
    return Double.compare(darcy, Objects.requireNonNull(other, "other").darcy);
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
