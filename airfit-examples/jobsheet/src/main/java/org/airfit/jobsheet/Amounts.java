package org.airfit.jobsheet;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers without a unit as every sheet shows them, with the digits they are worth. */
final class Amounts {

  private Amounts() {}

  /** Never 0 % or 100 %: nothing is certain. */
  static String percent(double probability) {
    if (probability < 0.001) {
      return "< 0.1 %";
    }
    return probability > 0.999 ? "> 99.9 %" : fixed(100.0 * probability, 1) + " %";
  }

  /** The next power of ten above a number, such as 10⁻¹²; 10⁻¹⁵ for what is smaller, as a double has no more digits. */
  static String powerAbove(double value) {
    int power = (int) Math.ceil(Math.log10(Math.max(value, 1.0e-15)));
    StringBuilder out = new StringBuilder("10");
    for (char digit : Integer.toString(power).toCharArray()) {
      out.append(digit == '-' ? '⁻' : "⁰¹²³⁴⁵⁶⁷⁸⁹".charAt(digit - '0'));
    }
    return out.toString();
  }

  /** A part of a whole in percent; what is not nothing is never told as 0 %. */
  static String share(double fraction) {
    String percent = fixed(100.0 * fraction, 0);
    return percent.equals("0") && fraction > 1.0e-9 ? "< 1 %" : percent + " %";
  }

  /** A number with so many decimals, halves rounded to even as the library does. */
  static String fixed(double value, int decimals) {
    return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  /** A number with so many digits that count, and no zeros behind its point; whole digits are never rounded away. */
  static String digits(double value, int digits) {
    if (value == 0.0) {
      return "0";
    }
    BigDecimal exact = new BigDecimal(value);
    int decimals = digits - exact.precision() + exact.scale();
    BigDecimal rounded = exact.setScale(Math.max(0, decimals), RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
