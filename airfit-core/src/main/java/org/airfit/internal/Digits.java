package org.airfit.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Prints doubles the same way everywhere, with a point and without grouping: the one formatter below all others.
 *
 * <p>NaN and infinities are refused: a result that is no number must not reach a sheet.
 */
public final class Digits {

  /** What a conversion of units rounds, in last places of a double. */
  private static final double CONVERSION = 4.0;

  /** The digits that a sentence shows: a sum or two and a change of unit leave more than these right. */
  private static final int TOLD = 12;

  /** Between these a number is written without an exponent, and a whole one fits into an int. */
  private static final double LEAST_QUICK = 1.0e-4;

  private static final double MOST_QUICK = 1.0e9;

  private static final double[] TENS = {
    1.0, 10.0, 1.0e2, 1.0e3, 1.0e4, 1.0e5, 1.0e6, 1.0e7, 1.0e8, 1.0e9
  };

  private static final String RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";

  private Digits() {}

  /**
   * Rounds half-even to significant digits and drops trailing zeros after the point. Whole digits are never rounded
   * away: 12 345 with 4 digits stays 12345. Values below 0.0001 or from 10⁹ are printed with an exponent, such as
   * 1.813e-5.
   *
   * @param value a finite value
   * @param digits the number of significant digits, from 1 to 17
   * @return the text, which {@link Double#parseDouble} reads
   * @throws IllegalArgumentException if {@code value} is not finite or {@code digits} is out of range
   */
  public static String significant(double value, int digits) {
    if (digits < 1 || digits > 17) {
      throw new IllegalArgumentException("digits must be in [1, 17], was " + digits);
    }
    if (value == 0.0) {
      return "0";
    }
    if (value > LEAST_QUICK && value < MOST_QUICK) {
      int decimals = Math.max(0, digits - wholeDigits(value));
      double quick = roundedQuickly(value, decimals);
      if (quick >= 0.0) {
        return quickly(quick, decimals, true);
      }
    }
    BigDecimal exact = exactly(value);
    if (needsExponent(value)) {
      return withExponent(exact.round(new MathContext(digits, RoundingMode.HALF_EVEN)));
    }
    int whole = exact.precision() - exact.scale();
    return trimmed(exact.setScale(Math.max(0, digits - whole), RoundingMode.HALF_EVEN));
  }

  /**
   * Rounds half-even to significant digits, those before the point too, as in a calculation with pencil and paper.
   * What has more whole digits is printed with an exponent, so that no zero is taken for a digit: 117 560 with four
   * digits is 1.176e5.
   *
   * @param value a finite value
   * @param digits the number of significant digits, from 1 to 17
   * @return the text, which {@link Double#parseDouble} reads
   * @throws IllegalArgumentException if {@code value} is not finite or {@code digits} is out of range
   */
  public static String rounded(double value, int digits) {
    String text = significant(value, digits);
    BigDecimal rounded = exactly(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    boolean whole = value != 0.0 && rounded.precision() - rounded.scale() > digits;
    return whole ? withExponent(rounded) : text;
  }

  /**
   * Rounds as {@link #rounded} does, and keeps the zeros at the end: they are digits of a number that was computed.
   *
   * @param value a finite value
   * @param digits the number of significant digits, from 1 to 17
   * @return the text, such as "46.00" for 45.9957 with four digits
   * @throws IllegalArgumentException if {@code value} is not finite or {@code digits} is out of range
   */
  public static String padded(double value, int digits) {
    String text = rounded(value, digits);
    if (value == 0.0) {
      return text;
    }
    int exponent = text.indexOf('e');
    String number = exponent < 0 ? text : text.substring(0, exponent);
    int there = number.replace("-", "").replace(".", "").replaceFirst("^0+", "").length();
    if (there >= digits) {
      return text;
    }
    return number
        + (number.indexOf('.') < 0 ? "." : "")
        + "0".repeat(digits - there)
        + (exponent < 0 ? "" : text.substring(exponent));
  }

  /**
   * Writes a printed number as it is read: a power of ten in place of an exponent.
   *
   * @param printed a number as {@link #significant} prints it
   * @return the same, or such as "1.813 × 10⁻⁵" for "1.813e-5"
   */
  public static String read(String printed) {
    int exponent = printed.indexOf('e');
    if (exponent < 0) {
      return printed;
    }
    StringBuilder out = new StringBuilder(printed.substring(0, exponent)).append(" × 10");
    for (int i = exponent + 1; i < printed.length(); i++) {
      char digit = printed.charAt(i);
      out.append(digit == '-' ? '⁻' : RAISED.charAt(digit - '0'));
    }
    return out.toString();
  }

  /**
   * Rounds half-even to a fixed number of decimals, which are all printed.
   *
   * @param value a finite value
   * @param decimals the number of digits after the point, from 0 to 15
   * @return the text, never "-0.00"
   * @throws IllegalArgumentException if {@code value} is not finite or {@code decimals} is out of range
   */
  public static String fixed(double value, int decimals) {
    if (decimals < 0 || decimals > 15) {
      throw new IllegalArgumentException("decimals must be in [0, 15], was " + decimals);
    }
    if (value >= 0.0 && value < MOST_QUICK) {
      double quick = roundedQuickly(value, decimals);
      if (quick >= 0.0) {
        return quickly(quick, decimals, false);
      }
    }
    return exactly(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  /**
   * Prints a value as a program would write it: with as few digits as read back exactly, and without a trailing ".0".
   *
   * @param value a finite value
   * @return the text, such as "0" or "0.05", which {@link Double#parseDouble} reads back exactly
   * @throws IllegalArgumentException if {@code value} is not finite
   */
  public static String plain(double value) {
    BigDecimal exact = exactly(value);
    BigDecimal shortest = new BigDecimal(Double.toString(value));
    // Java before 19 writes a digit too many at times, and a sheet must not tell which Java printed
    // it
    for (int digits = shortest.precision() - 1; digits >= 1; digits--) {
      BigDecimal shorter = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
      if (shorter.doubleValue() != value) {
        break;
      }
      shortest = shorter;
    }
    return value != 0.0 && needsExponent(value) ? withExponent(shortest) : trimmed(shortest);
  }

  /**
   * Prints a value for a refusal: with as few digits as tell it from other values, but for what a conversion of units
   * rounds, and at most twelve. A value just above a limit does not look like the limit.
   *
   * @param value a finite value
   * @return the text, such as "0.50001" or "0.254"
   * @throws IllegalArgumentException if {@code value} is not finite
   */
  public static String inFull(double value) {
    for (int digits = 1; digits < TOLD; digits++) {
      String text = significant(value, digits);
      if (Math.abs(Double.parseDouble(text) - value) <= CONVERSION * Math.ulp(value)) {
        return text;
      }
    }
    return significant(value, TOLD);
  }

  /**
   * Prints a value in a sentence, a refusal above all: as Java writes it, but without what sums and changes of unit
   * round off. That is the value to twelve significant digits, wherever it has more.
   *
   * @param value any value; what is no number is told as such
   * @return the text, such as "101300.0" for 101299.99999999999
   */
  public static String told(double value) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    BigDecimal rounded = exactly(value).round(new MathContext(TOLD, RoundingMode.HALF_EVEN));
    double magnitude = Math.abs(value);
    if (value == 0.0 || (magnitude >= 1.0e-3 && magnitude < 1.0e7)) {
      return withFraction(trimmed(rounded));
    }
    int exponent = rounded.precision() - rounded.scale() - 1;
    return withFraction(trimmed(rounded.scaleByPowerOfTen(-exponent))) + "E" + exponent;
  }

  /** A value that may have a fraction shows it, be it zero. */
  private static String withFraction(String text) {
    return text.indexOf('.') < 0 ? text + ".0" : text;
  }

  /** How many digits stand in front of the point; for 0.0123 it is −1. */
  private static int wholeDigits(double value) {
    if (value < 1.0) {
      return value >= 0.1 ? 0 : value >= 0.01 ? -1 : value >= 0.001 ? -2 : -3;
    }
    int digits = 1;
    while (value >= TENS[digits]) {
      digits++;
    }
    return digits;
  }

  /**
   * The value times a power of ten as a whole number, where a product of doubles is near enough to tell which; −1 where
   * it lies next to the middle of two, or has too many digits.
   */
  private static double roundedQuickly(double value, int decimals) {
    if (decimals >= TENS.length) {
      return -1.0;
    }
    double product = value * TENS[decimals];
    double rounded = Math.rint(product);
    double toMiddle = 0.5 - Math.abs(product - rounded);
    return product < MOST_QUICK && toMiddle > Math.ulp(product) ? rounded : -1.0;
  }

  /** Writes a whole number below 10⁹ with a point in it. */
  private static String quickly(double number, int decimals, boolean isTrimmed) {
    int left = (int) number;
    int behind = decimals;
    while (isTrimmed && behind > 0 && left % 10 == 0) {
      left /= 10;
      behind--;
    }
    char[] text = new char[TENS.length + 2];
    int at = text.length;
    for (int i = 0; left > 0 || i <= behind; i++) {
      if (i == behind && behind > 0) {
        text[--at] = '.';
      }
      text[--at] = (char) ('0' + left % 10);
      left /= 10;
    }
    return new String(text, at, text.length - at);
  }

  private static BigDecimal exactly(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a number to print must be finite, was " + value);
    }
    return new BigDecimal(value);
  }

  private static boolean needsExponent(double value) {
    double magnitude = Math.abs(value);
    return magnitude < 1.0e-4 || magnitude >= 1.0e9;
  }

  private static String withExponent(BigDecimal rounded) {
    int exponent = rounded.precision() - rounded.scale() - 1;
    return trimmed(rounded.scaleByPowerOfTen(-exponent)) + "e" + exponent;
  }

  private static String trimmed(BigDecimal rounded) {
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /**
   * Prints a probability, never as 0 % or 100 %: nothing that was measured is certain.
   *
   * @param probability the probability, from 0 to 1
   * @return it in percent, such as "93.4 %", "< 0.1 %" or "> 99.9 %"
   */
  public static String percent(double probability) {
    if (probability < 0.0005) {
      return "< 0.1 %";
    }
    return probability >= 0.9995 ? "> 99.9 %" : fixed(100.0 * probability, 1) + " %";
  }
}
