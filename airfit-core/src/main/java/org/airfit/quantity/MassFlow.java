package org.airfit.quantity;

import java.util.List;

/**
 * A mass flow: the one measure of a flow that does not change with pressure and temperature along a line.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class MassFlow extends AdditiveQuantity<MassFlow, MassFlowUnit> {

  private static final Grammar<MassFlowUnit> GRAMMAR = Grammar.ofUnits(
      "mass flow", MassFlowUnit.values(), List.of("8 g/s", "29 kg/h", "1.1 lb/min"));

  private MassFlow(double value, MassFlowUnit unit) {
    super(value, unit, "mass flow");
  }

  /**
   * Obtains a mass flow from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the mass flow
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static MassFlow of(double value, MassFlowUnit unit) {
    return new MassFlow(value, unit);
  }

  /**
   * Obtains a mass flow from kilograms per second.
   *
   * @param kilogramsPerSecond the mass flow [kg/s]
   * @return the mass flow
   * @throws IllegalArgumentException if {@code kilogramsPerSecond} is NaN, infinite or negative
   */
  public static MassFlow ofKilogramsPerSecond(double kilogramsPerSecond) {
    return of(kilogramsPerSecond, MassFlowUnit.KILOGRAM_PER_SECOND);
  }

  /**
   * Obtains a mass flow from kilograms per hour.
   *
   * @param kilogramsPerHour the mass flow [kg/h]
   * @return the mass flow
   * @throws IllegalArgumentException if {@code kilogramsPerHour} is NaN, infinite or negative
   */
  public static MassFlow ofKilogramsPerHour(double kilogramsPerHour) {
    return of(kilogramsPerHour, MassFlowUnit.KILOGRAM_PER_HOUR);
  }

  /**
   * Obtains a mass flow from grams per second.
   *
   * @param gramsPerSecond the mass flow [g/s]
   * @return the mass flow
   * @throws IllegalArgumentException if {@code gramsPerSecond} is NaN, infinite or negative
   */
  public static MassFlow ofGramsPerSecond(double gramsPerSecond) {
    return of(gramsPerSecond, MassFlowUnit.GRAM_PER_SECOND);
  }

  /**
   * Obtains a mass flow from pounds per minute.
   *
   * @param poundsPerMinute the mass flow [lb/min]
   * @return the mass flow
   * @throws IllegalArgumentException if {@code poundsPerMinute} is NaN, infinite or negative
   */
  public static MassFlow ofPoundsPerMinute(double poundsPerMinute) {
    return of(poundsPerMinute, MassFlowUnit.POUND_PER_MINUTE);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "8 g/s", "29 kg/h", "1.1 lb/min"
   * @return the mass flow
   * @throws QuantityFormatException if the text is not a mass flow; it tells where and what would be accepted
   */
  public static MassFlow parse(String text) {
    return GRAMMAR.read(text, MassFlow::of);
  }

  /** {@return this mass flow [kg/s]} */
  public double kilogramsPerSecond() {
    return si();
  }

  /** {@return this mass flow [kg/h]} */
  public double kilogramsPerHour() {
    return in(MassFlowUnit.KILOGRAM_PER_HOUR);
  }

  /** {@return this mass flow [g/s]} */
  public double gramsPerSecond() {
    return in(MassFlowUnit.GRAM_PER_SECOND);
  }

  /** {@return this mass flow [lb/min]} */
  public double poundsPerMinute() {
    return in(MassFlowUnit.POUND_PER_MINUTE);
  }

  @Override
  MassFlow ofSi(double value) {
    return new MassFlow(value, MassFlowUnit.KILOGRAM_PER_SECOND);
  }

  @Override
  public MassFlowUnit siUnit() {
    return MassFlowUnit.KILOGRAM_PER_SECOND;
  }
}
