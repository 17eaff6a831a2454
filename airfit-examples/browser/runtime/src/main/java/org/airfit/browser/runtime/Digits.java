package org.airfit.browser.runtime;

import org.teavm.classlib.impl.text.DoubleAnalyzer;
import org.teavm.jso.JSBody;

/**
 * Numbers from text and back by the browser, whose digits are the shortest that read back the same and whose reading
 * is exact; the compiler's class library brings 40 kB of tables for it.
 */
final class Digits {

  /** So many digits has a mantissa in the class library. */
  private static final int PRECISION = 18;

  private Digits() {}

  /** The digits of a finite number, in place of those of the class library. */
  static void analyze(double value, DoubleAnalyzer.Result result) {
    result.sign = value < 0.0 || (value == 0.0 && 1.0 / value < 0.0);
    if (value == 0.0) {
      result.mantissa = 0L;
      result.exponent = 0;
      return;
    }
    String text = exponential(Math.abs(value));
    int mark = text.indexOf('e');
    String digits = text.substring(0, 1) + (mark > 1 ? text.substring(2, mark) : "");
    result.mantissa = Long.parseLong(digits + "0".repeat(PRECISION - digits.length()));
    result.exponent = Integer.parseInt(text.substring(mark + 1));
  }

  /** The logarithm to the base of ten without what stands behind its point. */
  static int wholeLog10(double value) {
    if (value == 0.0) {
      return 0;
    }
    String text = exponential(Math.abs(value));
    int mark = text.indexOf('e');
    int exponent = Integer.parseInt(text.substring(mark + 1));
    return exponent < 0 && !text.startsWith("1e") ? exponent + 1 : exponent;
  }

  /**
   * Reads a number as {@link Double#parseDouble} does, but no hexadecimal one.
   *
   * @throws NumberFormatException if it is none
   */
  static double parse(String text) {
    String number = text.trim();
    int end = number.length();
    if (end > 0 && "fFdD".indexOf(number.charAt(end - 1)) >= 0) {
      end--;
    }
    int at = sign(number, 0);
    String word = number.substring(at);
    if (word.equals("NaN")) {
      return Double.NaN;
    }
    if (word.equals("Infinity")) {
      return number.charAt(0) == '-' ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }
    int behind = digits(number, at, end);
    int many = behind - at;
    if (behind < end && number.charAt(behind) == '.') {
      at = behind + 1;
      behind = digits(number, at, end);
      many += behind - at;
      if (behind < end && number.charAt(behind) == '.') {
        throw new NumberFormatException("multiple points");
      }
    }
    if (many > 0
        && behind < end
        && (number.charAt(behind) == 'e' || number.charAt(behind) == 'E')) {
      at = sign(number, behind + 1);
      behind = digits(number, at, end);
      many = behind - at;
    }
    if (many == 0 || behind != end) {
      throw new NumberFormatException(
          number.isEmpty() ? "empty String" : "For input string: \"" + text + "\"");
    }
    return number(number.substring(0, end));
  }

  private static int sign(String text, int at) {
    return at < text.length() && (text.charAt(at) == '-' || text.charAt(at) == '+') ? at + 1 : at;
  }

  /** The place behind the digits that stand from here on. */
  private static int digits(String text, int from, int end) {
    int at = from;
    while (at < end && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    return at;
  }

  private static String exponential(double value) {
    return nativeExponential(value);
  }

  private static double number(String text) {
    return nativeNumber(text);
  }

  @JSBody(params = "value", script = "return value.toExponential();")
  private static native String nativeExponential(double value);

  @JSBody(params = "text", script = "return Number(text);")
  private static native double nativeNumber(String text);
}
