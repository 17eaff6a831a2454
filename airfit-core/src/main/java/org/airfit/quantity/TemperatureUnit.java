package org.airfit.quantity;

/** Units of temperatures; the SI unit is the kelvin. */
public enum TemperatureUnit implements Unit {
  /** SI base unit. */
  KELVIN("K", 1.0, 1.0, 0.0, "SI base unit", "kelvin"),
  /** Kelvin less 273.15, exactly. */
  CELSIUS("°C", 1.0, 1.0, 273.15, "K − 273.15, exactly", "C", "degC", "degrees C", "celsius"),
  /** 9/5 of the kelvin value less 459.67, exactly. */
  FAHRENHEIT(
      "°F", 5.0, 9.0, 459.67, "K × 9/5 − 459.67, exactly", "F", "degF", "degrees F", "fahrenheit"),
  /** 9/5 of the kelvin value, exactly. */
  RANKINE("°R", 5.0, 9.0, 0.0, "K × 9/5, exactly", "R", "degR", "rankine");

  private final UnitScale scale;

  TemperatureUnit(
      String symbol,
      double multiplier,
      double divisor,
      double offset,
      String definition,
      String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, offset, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
