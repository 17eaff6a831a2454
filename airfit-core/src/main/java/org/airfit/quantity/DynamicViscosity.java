package org.airfit.quantity;

import java.util.List;

/**
 * A dynamic (absolute) viscosity. Air at 20 °C has about 18 µPa·s.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class DynamicViscosity extends Quantity<DynamicViscosity, ViscosityUnit> {

  private static final Grammar<ViscosityUnit> GRAMMAR = Grammar.ofUnits(
      "dynamic viscosity", ViscosityUnit.values(), List.of("18.13 µPa·s", "1.813e-5 Pa s"));

  private DynamicViscosity(double value, ViscosityUnit unit) {
    super(value, unit, 0.0, "dynamic viscosity");
  }

  /**
   * Obtains a dynamic viscosity from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the dynamic viscosity
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static DynamicViscosity of(double value, ViscosityUnit unit) {
    return new DynamicViscosity(value, unit);
  }

  /**
   * Obtains a dynamic viscosity from pascal seconds.
   *
   * @param pascalSeconds the dynamic viscosity [Pa·s]
   * @return the dynamic viscosity
   * @throws IllegalArgumentException if {@code pascalSeconds} is NaN, infinite or negative
   */
  public static DynamicViscosity ofPascalSeconds(double pascalSeconds) {
    return of(pascalSeconds, ViscosityUnit.PASCAL_SECOND);
  }

  /**
   * Obtains a dynamic viscosity from micropascal seconds.
   *
   * @param micropascalSeconds the dynamic viscosity [µPa·s]
   * @return the dynamic viscosity
   * @throws IllegalArgumentException if {@code micropascalSeconds} is NaN, infinite or negative
   */
  public static DynamicViscosity ofMicropascalSeconds(double micropascalSeconds) {
    return of(micropascalSeconds, ViscosityUnit.MICROPASCAL_SECOND);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "18.13 µPa·s", "1.813e-5 Pa s"
   * @return the dynamic viscosity
   * @throws QuantityFormatException if the text is not a dynamic viscosity; it tells where and what would be accepted
   */
  public static DynamicViscosity parse(String text) {
    return GRAMMAR.read(text, DynamicViscosity::of);
  }

  /** {@return this dynamic viscosity [Pa·s]} */
  public double pascalSeconds() {
    return in(ViscosityUnit.PASCAL_SECOND);
  }

  /** {@return this dynamic viscosity [µPa·s]} */
  public double micropascalSeconds() {
    return in(ViscosityUnit.MICROPASCAL_SECOND);
  }

  @Override
  public ViscosityUnit siUnit() {
    return ViscosityUnit.PASCAL_SECOND;
  }
}
