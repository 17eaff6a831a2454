package org.airfit.quantity;

import java.util.List;

/**
 * The sonic conductance C of a part: its choked flow, as free air at ISO 8778 reference (ANR), per absolute inlet
 * pressure.
 *
 * <p>Defined in ISO 6358-1; the trade unit is dm³/(s·bar).
 *
 * <p>In the unit of the standard:
 *
 * <pre>{@code
 * import org.airfit.quantity.SonicConductance;
 *
 * class ConductanceOfASheet {
 *   public static void main(String[] args) {
 *     SonicConductance c = SonicConductance.parse("6 dm³/(s·bar)");
 *     System.out.println(c.cubicMetresPerSecondPascal()); // 6.0E-8
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class SonicConductance extends Quantity<SonicConductance, ConductanceUnit> {

  private static final Grammar<ConductanceUnit> GRAMMAR = Grammar.ofUnits(
      "sonic conductance", ConductanceUnit.values(), List.of("3.5 dm3/(s bar)", "210 L/(min bar)"));

  private SonicConductance(double value, ConductanceUnit unit) {
    super(value, unit, 0.0, "sonic conductance");
  }

  /**
   * Obtains a sonic conductance from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the sonic conductance
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static SonicConductance of(double value, ConductanceUnit unit) {
    return new SonicConductance(value, unit);
  }

  /**
   * Obtains a sonic conductance from cubic metres per second pascal.
   *
   * @param cubicMetresPerSecondPascal the sonic conductance [m³/(s·Pa)]
   * @return the sonic conductance
   * @throws IllegalArgumentException if {@code cubicMetresPerSecondPascal} is NaN, infinite or negative
   */
  public static SonicConductance ofCubicMetresPerSecondPascal(double cubicMetresPerSecondPascal) {
    return of(cubicMetresPerSecondPascal, ConductanceUnit.CUBIC_METRE_PER_SECOND_PASCAL);
  }

  /**
   * Obtains a sonic conductance from cubic decimetres per second bar.
   *
   * @param cubicDecimetresPerSecondBar the sonic conductance [dm³/(s·bar)]
   * @return the sonic conductance
   * @throws IllegalArgumentException if {@code cubicDecimetresPerSecondBar} is NaN, infinite or negative
   */
  public static SonicConductance ofCubicDecimetresPerSecondBar(double cubicDecimetresPerSecondBar) {
    return of(cubicDecimetresPerSecondBar, ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "3.5 dm3/(s bar)", "210 L/(min bar)"
   * @return the sonic conductance
   * @throws QuantityFormatException if the text is not a sonic conductance; it tells where and what would be accepted
   */
  public static SonicConductance parse(String text) {
    return GRAMMAR.read(text, SonicConductance::of);
  }

  /** {@return this sonic conductance [m³/(s·Pa)]} */
  public double cubicMetresPerSecondPascal() {
    return in(ConductanceUnit.CUBIC_METRE_PER_SECOND_PASCAL);
  }

  /** {@return this sonic conductance [dm³/(s·bar)]} */
  public double cubicDecimetresPerSecondBar() {
    return in(ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR);
  }

  @Override
  public ConductanceUnit siUnit() {
    return ConductanceUnit.CUBIC_METRE_PER_SECOND_PASCAL;
  }
}
