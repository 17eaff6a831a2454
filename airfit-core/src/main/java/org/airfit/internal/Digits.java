package org.airfit.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Prints doubles the same way everywhere, with a point and without grouping: the one formatter below all others. */
public final class Digits {

  private Digits() {}

  /**
   * Rounds half-even to significant digits and drops trailing zeros after the point. Whole digits are never rounded away:
   * 12 345 with 4 digits stays 12345. Values below 0.0001 or from 10⁹ are printed with an exponent.
   *
   * @param value a finite value
   * @param digits the number of significant digits, from 1 to 17
   * @return the text, which {@link Double#parseDouble} reads
   */
  public static String significant(double value, int digits) {
    if (digits < 1 || digits > 17) {
      throw new IllegalArgumentException("digits must be in [1, 17], was " + digits);
    }
    double magnitude = Math.abs(value);
    BigDecimal exact = new BigDecimal(value);
    if (magnitude != 0.0 && (magnitude < 1.0e-4 || magnitude >= 1.0e9)) {
      BigDecimal rounded = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
      int exponent = rounded.precision() - rounded.scale() - 1;
      return plain(rounded.scaleByPowerOfTen(-exponent)) + "e" + exponent;
    }
    int whole = exact.precision() - exact.scale();
    return plain(exact.setScale(Math.max(0, magnitude == 0.0 ? 0 : digits - whole), RoundingMode.HALF_EVEN));
  }

  /**
   * Rounds half-even to a fixed number of decimals, which are all printed.
   *
   * @param value a finite value
   * @param decimals the number of digits after the point, from 0 to 15
   * @return the text
   */
  public static String fixed(double value, int decimals) {
    if (decimals < 0 || decimals > 15) {
      throw new IllegalArgumentException("decimals must be in [0, 15], was " + decimals);
    }
    String text = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    return text.chars().anyMatch(c -> c >= '1' && c <= '9') ? text : text.replace("-", "");
  }

  /**
   * Prints a value with the fewest digits that tell it from its neighbours.
   *
   * @param value a finite value
   * @return the text, such as "0" or "0.05"
   */
  public static String plain(double value) {
    return plain(new BigDecimal(Double.toString(value)));
  }

  private static String plain(BigDecimal rounded) {
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
