package org.airfit.quantity;

import java.util.List;

/**
 * A difference of two pressures along the flow, such as '5 psi' across a coupler. Never negative.
 *
 * <p>Neither a gauge nor an absolute pressure: it needs no atmosphere to have a meaning.
 *
 * <p>Losses add up, and come off a pressure:
 *
 * <pre>{@code
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.PressureDrop;
 *
 * class LossesAddUp {
 *   public static void main(String[] args) {
 *     PressureDrop both = PressureDrop.parse("4 psi").plus(PressureDrop.parse("6 psi"));
 *     System.out.println(both.psi()); // 10.0
 *     System.out.println(GaugePressure.parse("90 psig").minus(both).psi()); // 80.0
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class PressureDrop extends AdditiveQuantity<PressureDrop, PressureUnit> {

  private static final Grammar<PressureUnit> GRAMMAR =
      Grammar.ofPressures(PressureKind.DROP, List.of("5 psi", "0.35 bar", "35 kPa"));

  private PressureDrop(double value, PressureUnit unit) {
    super(value, unit, "pressure drop");
  }

  /**
   * Obtains a pressure drop from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the pressure drop
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static PressureDrop of(double value, PressureUnit unit) {
    return new PressureDrop(value, unit);
  }

  /**
   * Obtains a pressure drop from pascals.
   *
   * @param pascals the pressure drop [Pa]
   * @return the pressure drop
   * @throws IllegalArgumentException if {@code pascals} is NaN, infinite or negative
   */
  public static PressureDrop ofPascals(double pascals) {
    return of(pascals, PressureUnit.PASCAL);
  }

  /**
   * Obtains a pressure drop from bar.
   *
   * @param bar the pressure drop [bar]
   * @return the pressure drop
   * @throws IllegalArgumentException if {@code bar} is NaN, infinite or negative
   */
  public static PressureDrop ofBar(double bar) {
    return of(bar, PressureUnit.BAR);
  }

  /**
   * Obtains a pressure drop from kilopascals.
   *
   * @param kilopascals the pressure drop [kPa]
   * @return the pressure drop
   * @throws IllegalArgumentException if {@code kilopascals} is NaN, infinite or negative
   */
  public static PressureDrop ofKilopascals(double kilopascals) {
    return of(kilopascals, PressureUnit.KILOPASCAL);
  }

  /**
   * Obtains a pressure drop from psi.
   *
   * @param psi the pressure drop [psi]
   * @return the pressure drop
   * @throws IllegalArgumentException if {@code psi} is NaN, infinite or negative
   */
  public static PressureDrop ofPsi(double psi) {
    return of(psi, PressureUnit.PSI);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "5 psi", "0.35 bar", "35 kPa"
   * @return the pressure drop
   * @throws QuantityFormatException if the text is not a pressure drop; it tells where and what would be accepted
   */
  public static PressureDrop parse(String text) {
    return GRAMMAR.read(text, PressureDrop::of);
  }

  /** {@return this pressure drop [Pa]} */
  public double pascals() {
    return si();
  }

  /** {@return this pressure drop [bar]} */
  public double bar() {
    return in(PressureUnit.BAR);
  }

  /** {@return this pressure drop [kPa]} */
  public double kilopascals() {
    return in(PressureUnit.KILOPASCAL);
  }

  /** {@return this pressure drop [psi]} */
  public double psi() {
    return in(PressureUnit.PSI);
  }

  @Override
  PressureDrop ofSi(double value) {
    return new PressureDrop(value, PressureUnit.PASCAL);
  }

  @Override
  public PressureUnit siUnit() {
    return PressureUnit.PASCAL;
  }

  @Override
  String written(PressureUnit unit) {
    return PressureKind.DROP.written(unit);
  }

  /**
   * Prints this pressure loss in bar or in psi, whichever takes fewer digits, as a refusal does: a pressure that somebody typed
   * is most likely told in the unit that was typed.
   *
   * @return the pressure loss with all its digits, such as "5 psi" or "0.2 bar"; in bar where both take as many
   */
  public String inFewestDigits() {
    return PressureUnit.inFewestDigits(this);
  }
}
