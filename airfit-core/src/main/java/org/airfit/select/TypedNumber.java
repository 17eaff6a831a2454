package org.airfit.select;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.airfit.quantity.Quantity;
import org.airfit.quantity.Unit;

/**
 * A number in the unit that a customer types, told to so many digits and rounded to the side that is wanted.
 *
 * @param number the number
 * @param unit its unit as it is printed: "psig" and not "psi"
 */
record TypedNumber(double number, String unit) {

  /** The digits to which a value comes back from SI as it was typed. */
  static final int EXACT_DIGITS = 9;

  static <Q extends Quantity<Q, U>, U extends Unit> TypedNumber of(Q quantity, U unit) {
    return new TypedNumber(quantity.in(unit), unitOf(quantity.format(unit)));
  }

  /** What is printed behind the number. */
  static String unitOf(String printed) {
    return printed.substring(printed.indexOf(' ') + 1);
  }

  /**
   * With so many digits, but no digit before the point rounded away, as sheets print them; what is off by the rounding of
   * a double alone is told as it was typed.
   */
  BigDecimal rounded(int digits, RoundingMode rounding) {
    BigDecimal exact = new BigDecimal(number)
        .round(new MathContext(EXACT_DIGITS))
        .setScale(EXACT_DIGITS, RoundingMode.HALF_EVEN);
    int whole = exact.precision() - exact.scale();
    return exact.setScale(Math.max(0, digits - whole), rounding);
  }

  String inWords(int digits, RoundingMode rounding) {
    BigDecimal rounded = rounded(digits, rounding);
    return (rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString()) + " "
        + unit;
  }
}
