package org.airfit.quantity;

import java.util.List;

/**
 * How a unit stands to the SI unit of its quantity.
 *
 * <pre>
 *   si = (value + offset) × multiplier / divisor
 * </pre>
 *
 * <p>At least one of multiplier and divisor is 1, so that a conversion rounds once and, there and back, returns within 2 ulp.
 *
 * @param symbol how the unit is printed
 * @param multiplier the factor to the SI unit, or 1 [SI unit per unit]
 * @param divisor the exact whole number of units in one SI unit, or 1 [unit per SI unit]
 * @param offset added before scaling: 273.15 for °C, 459.67 for °F, otherwise 0 [unit]
 * @param definition the definition of the unit in words
 * @param spellings other ways in which people write the unit
 */
public record UnitScale(
    String symbol, double multiplier, double divisor, double offset, String definition, List<String> spellings) {

  /**
   * Checks that a conversion rounds once.
   *
   * @throws IllegalArgumentException if neither multiplier nor divisor is 1, or one of them is not positive
   */
  public UnitScale {
    if (!(multiplier > 0.0 && divisor > 0.0 && (multiplier == 1.0 || divisor == 1.0))) {
      throw new IllegalArgumentException(
          "multiplier and divisor must be positive and one of them 1, were " + multiplier + " and " + divisor);
    }
    spellings = List.copyOf(spellings);
  }

  static UnitScale of(
      String symbol, double multiplier, double divisor, double offset, String definition, String... spellings) {
    return new UnitScale(symbol, multiplier, divisor, offset, definition, List.of(spellings));
  }

  double toSi(double value) {
    return (value + offset) * multiplier / divisor;
  }

  double fromSi(double si) {
    return si * divisor / multiplier - offset;
  }
}
