package org.airfit.quantity;

import java.util.List;

/**
 * A mass of air per volume.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Density extends Quantity<Density, DensityUnit> {

  private static final Grammar<DensityUnit> GRAMMAR =
      Grammar.ofUnits("density", DensityUnit.values(), List.of("1.2 kg/m3", "0.075 lb/ft3"));

  private Density(double value, DensityUnit unit) {
    super(value, unit, 0.0, "density");
  }

  /**
   * Obtains a density from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the density
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static Density of(double value, DensityUnit unit) {
    return new Density(value, unit);
  }

  /**
   * Obtains a density from kilograms per cubic metre.
   *
   * @param kilogramsPerCubicMetre the density [kg/m³]
   * @return the density
   * @throws IllegalArgumentException if {@code kilogramsPerCubicMetre} is NaN, infinite or negative
   */
  public static Density ofKilogramsPerCubicMetre(double kilogramsPerCubicMetre) {
    return of(kilogramsPerCubicMetre, DensityUnit.KILOGRAM_PER_CUBIC_METRE);
  }

  /**
   * Obtains a density from pounds per cubic foot.
   *
   * @param poundsPerCubicFoot the density [lb/ft³]
   * @return the density
   * @throws IllegalArgumentException if {@code poundsPerCubicFoot} is NaN, infinite or negative
   */
  public static Density ofPoundsPerCubicFoot(double poundsPerCubicFoot) {
    return of(poundsPerCubicFoot, DensityUnit.POUND_PER_CUBIC_FOOT);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "1.2 kg/m3", "0.075 lb/ft3"
   * @return the density
   * @throws QuantityFormatException if the text is not a density; it tells where and what would be accepted
   */
  public static Density parse(String text) {
    return GRAMMAR.read(text, Density::of);
  }

  /** {@return this density [kg/m³]} */
  public double kilogramsPerCubicMetre() {
    return in(DensityUnit.KILOGRAM_PER_CUBIC_METRE);
  }

  /** {@return this density [lb/ft³]} */
  public double poundsPerCubicFoot() {
    return in(DensityUnit.POUND_PER_CUBIC_FOOT);
  }

  @Override
  public DensityUnit siUnit() {
    return DensityUnit.KILOGRAM_PER_CUBIC_METRE;
  }
}
