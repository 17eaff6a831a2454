package org.airfit.quantity;

import java.util.List;

/**
 * How a unit stands to the SI unit of its quantity.
 *
 * <pre>
 *   si = (value + offset) × multiplier / divisor
 * </pre>
 *
 * <p>The factor is held as the fraction of its definition, so that it is exact, and a conversion rounds once: it gives the
 * double nearest to the true value, and 3/8 in is 9.525 mm. The one factor too long for a fraction of doubles, that of the
 * horsepower of 550 ft·lbf/s, is the nearest double. There and back returns within 2 ulp of the value in the SI unit, as long as neither
 * overflows nor falls below the normal range of a double; for the temperatures with an offset, from 170 K up.
 *
 * @param symbol how the unit is printed
 * @param multiplier the top of the factor to the SI unit
 * @param divisor the bottom of that factor
 * @param offset added before scaling: 273.15 for °C, 459.67 for °F, otherwise 0 [unit]
 * @param definition the definition of the unit in words
 * @param spellings other ways in which people write the unit
 */
public record UnitScale(
    String symbol,
    double multiplier,
    double divisor,
    double offset,
    String definition,
    List<String> spellings) {

  /**
   * Checks the components.
   *
   * @param symbol how the unit is printed
   * @param multiplier the top of the factor to the SI unit
   * @param divisor the bottom of that factor
   * @param offset added before scaling: 273.15 for °C, 459.67 for °F, otherwise 0 [unit]
   * @param definition the definition of the unit in words
   * @param spellings other ways in which people write the unit
   */
  public UnitScale {
    if (!(multiplier > 0.0
        && multiplier <= Double.MAX_VALUE
        && divisor > 0.0
        && divisor <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException("multiplier and divisor must be positive and finite, were "
          + multiplier + " and " + divisor);
    }
    if (!Double.isFinite(offset)) {
      throw new IllegalArgumentException("offset must be finite, was " + offset + " " + symbol);
    }
    spellings = List.copyOf(spellings);
  }

  static UnitScale of(
      String symbol,
      double multiplier,
      double divisor,
      double offset,
      String definition,
      String... spellings) {
    return new UnitScale(symbol, multiplier, divisor, offset, definition, List.of(spellings));
  }

  double toSi(double value) {
    return scaled(value + offset, multiplier, divisor);
  }

  double fromSi(double si) {
    return scaled(si, divisor, multiplier) - offset;
  }

  /** value × top / bottom with one rounding: what product and quotient round off is caught exactly and put back. */
  private static double scaled(double value, double top, double bottom) {
    double product = value * top;
    if (!Double.isFinite(product)) {
      return value / bottom * top;
    }
    double lostByProduct = Math.fma(value, top, -product);
    double quotient = product / bottom;
    double lostByQuotient = Math.fma(-quotient, bottom, product);
    return quotient + (lostByQuotient + lostByProduct) / bottom;
  }
}
