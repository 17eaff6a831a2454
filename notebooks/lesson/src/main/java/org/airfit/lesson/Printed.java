package org.airfit.lesson;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Texts with numbers in them, printed the same in every country and in a browser.
 *
 * <p>They look as {@link String#format} makes them. It is not used because its JavaScript rounds halves differently,
 * and because it brings the names of days and currencies along.
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
    int at = 0;
    while (at < format.length()) {
      int mark = format.indexOf('%', at);
      if (mark < 0) {
        text.append(format, at, format.length());
        break;
      }
      text.append(format, at, mark);
      int end = end(format, mark + 1);
      String asked = format.substring(mark + 1, end);
      if (asked.equals("%")) {
        text.append('%');
      } else if (next < values.length) {
        text.append(one(asked, values[next]));
        next++;
      } else {
        throw new IllegalArgumentException(
            "values must be more than " + values.length + " for \"" + format + "\"");
      }
      at = end;
    }
    return text.toString();
  }

  /** Where a place ends that begins here: behind its letter, or its second percent sign. */
  private static int end(String format, int from) {
    int at = from;
    while (at < format.length() - 1 && "+.0123456789".indexOf(format.charAt(at)) >= 0) {
      at++;
    }
    return Math.min(at + 1, format.length());
  }

  /** One value as it is asked for, such as ".2f". */
  private static String one(String asked, Object value) {
    if (asked.equals("s") || asked.equals("d")) {
      return String.valueOf(value);
    }
    boolean signed = asked.startsWith("+");
    String digits = asked.substring(signed ? 1 : 0);
    boolean fixed = digits.length() == 3
        && digits.charAt(0) == '.'
        && Character.isDigit(digits.charAt(1))
        && digits.charAt(2) == 'f';
    if (fixed && value instanceof Number number) {
      String text = fixed(number.doubleValue(), digits.charAt(1) - '0');
      return signed && !text.startsWith("-") ? "+" + text : text;
    }
    throw new IllegalArgumentException(
        "format must hold %s, %d, %.2f, %+.2f or %%, was %" + asked + " for " + value);
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
