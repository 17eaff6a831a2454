package org.airfit.lesson;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Texts with numbers in them, printed the same in every country and in a browser.
 *
 * <p>They look as {@link String#format} makes them. It is not used because its JavaScript rounds halves differently, and
 * because it brings the names of days and currencies along.
 */
public final class Printed {

  private static final long[] POWERS = {1, 10, 100, 1000};

  /** What is larger than this is printed the long way. */
  private static final double LARGE = 1.0e9;

  /** So near to a half the short way may round to the wrong side. */
  private static final double DOUBT = 1.0e-5;

  private Printed() {}

  /**
   * Puts values into a text.
   *
   * @param format the text; {@code %s} and {@code %d} stand for a value, {@code %.2f} for a number with two digits
   *     behind the point, {@code %+.2f} for the same with its sign, {@code %%} for a percent sign
   * @param values as many values
   * @return the text
   * @throws IllegalArgumentException if the format asks for something else, or for more values than there are
   */
  public static String text(String format, Object... values) {
    StringBuilder text = new StringBuilder();
    int next = 0;
    for (int at = 0; at < format.length(); at++) {
      char letter = format.charAt(at);
      if (letter != '%') {
        text.append(letter);
        continue;
      }
      at++;
      if (at < format.length() && format.charAt(at) == '%') {
        text.append('%');
        continue;
      }
      boolean signed = at < format.length() && format.charAt(at) == '+';
      at += signed ? 1 : 0;
      int decimals = -1;
      if (at + 1 < format.length() && format.charAt(at) == '.') {
        decimals = format.charAt(at + 1) - '0';
        at += 2;
      }
      char kind = at < format.length() ? format.charAt(at) : ' ';
      if (next == values.length) {
        throw new IllegalArgumentException(
            "values must be more than " + values.length + " for \"" + format + "\"");
      }
      Object value = values[next++];
      if (kind == 'f' && decimals >= 0 && value instanceof Number number) {
        String fixed = fixed(number.doubleValue(), decimals);
        text.append(signed && !fixed.startsWith("-") ? "+" : "").append(fixed);
      } else if ((kind == 's' || kind == 'd') && !signed && decimals < 0) {
        text.append(value);
      } else {
        throw new IllegalArgumentException(
            "format must hold %s, %d, %.2f, %+.2f or %%, was \"" + format + "\" for " + value);
      }
    }
    return text.toString();
  }

  /**
   * Prints a number.
   *
   * @param value the number
   * @param decimals how many digits to write behind the point, 0 to 9; a half is rounded away from zero
   * @return the text
   */
  public static String fixed(double value, int decimals) {
    if (!Double.isFinite(value)) {
      return Double.isNaN(value) ? "NaN" : value > 0.0 ? "Infinity" : "-Infinity";
    }
    String size = size(Math.abs(value), decimals);
    return value < 0.0 || 1.0 / value < 0.0 ? "-" + size : size;
  }

  private static String size(double size, int decimals) {
    if (decimals < POWERS.length && size < LARGE) {
      double scaled = size * POWERS[decimals];
      double whole = Math.floor(scaled);
      if (Math.abs(scaled - whole - 0.5) > DOUBT) {
        long digits = (long) whole + (scaled - whole > 0.5 ? 1 : 0);
        String text = Long.toString(digits);
        if (decimals == 0) {
          return text;
        }
        String padded = "0".repeat(Math.max(0, decimals + 1 - text.length())) + text;
        int point = padded.length() - decimals;
        return padded.substring(0, point) + "." + padded.substring(point);
      }
    }
    return BigDecimal.valueOf(size).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }
}
