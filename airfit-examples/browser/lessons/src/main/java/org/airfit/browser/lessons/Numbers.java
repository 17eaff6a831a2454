package org.airfit.browser.lessons;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Pattern;
import org.airfit.lesson.Printed;

/** Numbers as a lesson writes and reads them. */
final class Numbers {

  private static final Pattern BARE = Pattern.compile("[+-]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)");

  private Numbers() {}

  /** Whether a text is a number without a unit. */
  static boolean isBare(String text) {
    return BARE.matcher(text).matches();
  }

  /** Reads a number that may have one unit. */
  static double read(String text, String unit) {
    String number = text.strip();
    if (!unit.isEmpty() && number.endsWith(unit)) {
      number = number.substring(0, number.length() - unit.length()).strip();
    }
    if (number.indexOf(',') >= 0) {
      throw new IllegalArgumentException(
          "a comma means different things in different places: write 6.2 with a point and 1200"
              + " without a mark");
    }
    if (!isBare(number)) {
      throw new IllegalArgumentException(
          "this is no number" + (unit.isEmpty() ? "" : " of " + unit));
    }
    return Double.parseDouble(number);
  }

  /** Reads seconds, or minutes if they say so. */
  static double seconds(String text) {
    return text.strip().endsWith("min") ? 60.0 * read(text, "min") : read(text, "s");
  }

  /** At most four digits that count, without zeros at the end. */
  static String plain(double value) {
    BigDecimal four = BigDecimal.valueOf(value).round(new MathContext(4));
    return four.signum() == 0 ? "0" : four.stripTrailingZeros().toPlainString();
  }

  /** The value as it is, without zeros at the end. */
  static String exact(double value) {
    BigDecimal all = BigDecimal.valueOf(value);
    return all.signum() == 0 ? "0" : all.stripTrailingZeros().toPlainString();
  }

  /** A value cut to so many digits, as somebody writes it down on paper. */
  static double written(double value, int digits) {
    return BigDecimal.valueOf(value).round(new MathContext(digits)).doubleValue();
  }

  /** The text with its numbers, the same in every country. */
  static String form(String format, Object... values) {
    return Printed.text(format, values);
  }
}
