package org.airfit.quantity;

import java.util.List;

/**
 * A thermodynamic temperature, such as '20 °C'.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Temperature extends Quantity<Temperature, TemperatureUnit> {

  private static final Grammar<TemperatureUnit> GRAMMAR = Grammar.ofUnits(
      "temperature", TemperatureUnit.values(), List.of("20 °C", "68 F", "293.15 K"));

  private Temperature(double value, TemperatureUnit unit) {
    super(value, unit, 0.0, "temperature");
  }

  /**
   * Obtains a temperature from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the temperature
   * @throws IllegalArgumentException if the value is NaN, infinite or below absolute zero
   */
  public static Temperature of(double value, TemperatureUnit unit) {
    return new Temperature(value, unit);
  }

  /**
   * Obtains a temperature from kelvins.
   *
   * @param kelvins the temperature [K]
   * @return the temperature
   * @throws IllegalArgumentException if {@code kelvins} is NaN, infinite or below absolute zero
   */
  public static Temperature ofKelvins(double kelvins) {
    return of(kelvins, TemperatureUnit.KELVIN);
  }

  /**
   * Obtains a temperature from degrees Celsius.
   *
   * @param celsius the temperature [°C]
   * @return the temperature
   * @throws IllegalArgumentException if {@code celsius} is NaN, infinite or below absolute zero
   */
  public static Temperature ofCelsius(double celsius) {
    return of(celsius, TemperatureUnit.CELSIUS);
  }

  /**
   * Obtains a temperature from degrees Fahrenheit.
   *
   * @param fahrenheit the temperature [°F]
   * @return the temperature
   * @throws IllegalArgumentException if {@code fahrenheit} is NaN, infinite or below absolute zero
   */
  public static Temperature ofFahrenheit(double fahrenheit) {
    return of(fahrenheit, TemperatureUnit.FAHRENHEIT);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "20 °C", "68 F", "293.15 K"
   * @return the temperature
   * @throws QuantityFormatException if the text is not a temperature; it tells where and what would be accepted
   */
  public static Temperature parse(String text) {
    return GRAMMAR.read(text, Temperature::of);
  }

  /** {@return this temperature [K]} */
  public double kelvins() {
    return in(TemperatureUnit.KELVIN);
  }

  /** {@return this temperature [°C]} */
  public double celsius() {
    return in(TemperatureUnit.CELSIUS);
  }

  /** {@return this temperature [°F]} */
  public double fahrenheit() {
    return in(TemperatureUnit.FAHRENHEIT);
  }

  @Override
  public TemperatureUnit siUnit() {
    return TemperatureUnit.KELVIN;
  }
}
