package org.airfit.quantity;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Digits;

/**
 * The flow coefficient of a valve or fitting for water, which is given as Cv or as Kv.
 *
 * <p>Kv is the flow of water in m³/h at a drop of 1 bar, Cv that in US gal/min at 1 psi.
 *
 * <pre>
 *   Cv = 1.156099 Kv,  from 1 US gal/min = 0.003785411784 × 60 m³/h and 1 bar = 14.503774 psi
 * </pre>
 *
 * <p>The two that are measured with water:
 *
 * <pre>{@code
 * import java.util.Locale;
 * import org.airfit.quantity.ValveCoefficient;
 *
 * class CvAndKv {
 *   public static void main(String[] args) {
 *     System.out.printf(Locale.ROOT, "%.3f%n", ValveCoefficient.parse("1.2 Cv").kv()); // 1.038
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ValveCoefficient implements Comparable<ValveCoefficient> {

  /** Kv of Cv = 1: 0.003785411784 m³ × 60 × √(100 000 Pa / 1 psi). */
  private static final double KV_PER_CV =
      0.003785411784 * 60.0 * Math.sqrt(PressureUnit.BAR.toSi(1.0) / PressureUnit.PSI.toSi(1.0));

  /** What one of each is in Kv. */
  private static final Grammar<Double> GRAMMAR = Grammar.ofWords(
      "valve coefficient",
      Map.of("Kv", 1.0, "Cv", KV_PER_CV),
      Map.of(),
      "Kv, Cv",
      List.of("0.9 Kv", "1.04 Cv"));

  private final double kv;

  private ValveCoefficient(double kv) {
    if (!(kv > 0.0 && kv <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException(
          "Kv must be finite and above 0 m³/h, was " + Digits.told(kv) + " m³/h");
    }
    this.kv = kv;
  }

  /**
   * Obtains a coefficient from Kv.
   *
   * @param kv the flow of water at a drop of 1 bar [m³/h], above 0
   * @return the coefficient
   * @throws IllegalArgumentException if {@code kv} is NaN, infinite or not above 0
   */
  public static ValveCoefficient ofKv(double kv) {
    return new ValveCoefficient(kv);
  }

  /**
   * Obtains a coefficient from Cv.
   *
   * @param cv the flow of water at a drop of 1 psi [US gal/min], above 0
   * @return the coefficient
   * @throws IllegalArgumentException if {@code cv} is NaN, infinite or not above 0
   */
  public static ValveCoefficient ofCv(double cv) {
    return new ValveCoefficient(cv * KV_PER_CV);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and which of the two it is, such as "0.9 Kv", "1.04 Cv"
   * @return the coefficient
   * @throws QuantityFormatException if the text is not a coefficient; it tells where and what would be accepted
   */
  public static ValveCoefficient parse(String text) {
    return GRAMMAR.read(text, (value, kv) -> new ValveCoefficient(value * kv));
  }

  /** {@return Kv [m³/h at 1 bar]} */
  public double kv() {
    return kv;
  }

  /** {@return Cv [US gal/min at 1 psi]} */
  public double cv() {
    return kv / KV_PER_CV;
  }

  @Override
  public int compareTo(ValveCoefficient other) {
    return Double.compare(kv, Objects.requireNonNull(other, "other").kv);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ValveCoefficient that && kv == that.kv;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(kv);
  }

  /** {@return the coefficient with its kind, such as "0.9 Kv"} */
  @Override
  public String toString() {
    return kv + " Kv";
  }
}
