package org.airfit.quantity;

import java.util.List;

/**
 * An energy, such as a year of a compressor's running.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Energy extends AdditiveQuantity<Energy, EnergyUnit> {

  private static final Grammar<EnergyUnit> GRAMMAR =
      Grammar.ofUnits("energy", EnergyUnit.values(), List.of("1200 kWh", "5 MJ"));

  private Energy(double value, EnergyUnit unit) {
    super(value, unit, "energy");
  }

  /**
   * Obtains an energy from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the energy
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static Energy of(double value, EnergyUnit unit) {
    return new Energy(value, unit);
  }

  /**
   * Obtains an energy from joules.
   *
   * @param joules the energy [J]
   * @return the energy
   * @throws IllegalArgumentException if {@code joules} is NaN, infinite or negative
   */
  public static Energy ofJoules(double joules) {
    return of(joules, EnergyUnit.JOULE);
  }

  /**
   * Obtains an energy from kilowatt hours.
   *
   * @param kilowattHours the energy [kWh]
   * @return the energy
   * @throws IllegalArgumentException if {@code kilowattHours} is NaN, infinite or negative
   */
  public static Energy ofKilowattHours(double kilowattHours) {
    return of(kilowattHours, EnergyUnit.KILOWATT_HOUR);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "1200 kWh", "5 MJ"
   * @return the energy
   * @throws QuantityFormatException if the text is not an energy; it tells where and what would be accepted
   */
  public static Energy parse(String text) {
    return GRAMMAR.read(text, Energy::of);
  }

  /** {@return this energy [J]} */
  public double joules() {
    return in(EnergyUnit.JOULE);
  }

  /** {@return this energy [kWh]} */
  public double kilowattHours() {
    return in(EnergyUnit.KILOWATT_HOUR);
  }

  @Override
  Energy ofSi(double value) {
    return new Energy(value, EnergyUnit.JOULE);
  }

  @Override
  public EnergyUnit siUnit() {
    return EnergyUnit.JOULE;
  }
}
