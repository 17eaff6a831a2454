package org.airfit.quantity;

import org.jspecify.annotations.Nullable;

/**
 * A number as people write it, found at a place in a text: decimal with a point ({@code 6.2}, {@code 1.813e-5}), a
 * fraction ({@code 3/8}, {@code ⅜}) or mixed ({@code 1-1/4}, {@code 1 1/4}, {@code 1¼}). Read once, from left to right.
 *
 * @param value the number, signed
 * @param end where the text goes on behind it
 * @param problem what is wrong with it, or null
 * @param problemAt where
 */
record WrittenNumber(double value, int end, @Nullable String problem, int problemAt) {

  /** So many digits fit into an int, whatever they are. */
  private static final int EXACT_DIGITS = 9;

  /** In eighths, so that the place in this text is the value. */
  private static final String EIGHTHS = "0⅛¼⅜½⅝¾⅞";

  private static final char LAST_OF_ASCII = '\u007f';

  private static final String SLASHES = "/⁄∕";

  /** Hyphens between a whole number and its fraction, as word processors make them too. */
  private static final String HYPHENS = "-‐‑–";

  /** The number that begins at {@code start}, or null if none does. */
  static @Nullable WrittenNumber at(String text, int start) {
    int first = start + (isOneOf("+-−", text, start) ? 1 : 0);
    int whole = afterDigits(text, first);
    if (whole == first) {
      return eighthsAt(text, first) > 0
          ? of(text, start, eighthsAt(text, first) / 8.0, first + 1)
          : decimal(text, start, first, whole);
    }
    if (isFraction(text, first)) {
      return fraction(text, start, 0.0, first);
    }
    int next = afterJoint(text, whole);
    if (eighthsAt(text, next) > 0) {
      return of(text, start, number(text, first, whole) + eighthsAt(text, next) / 8.0, next + 1);
    }
    return next > whole && isFraction(text, next)
        ? fraction(text, start, number(text, first, whole), next)
        : decimal(text, start, first, whole);
  }

  private static @Nullable WrittenNumber decimal(String text, int start, int first, int whole) {
    int end = whole;
    if (isOneOf(".", text, end)) {
      end = afterDigits(text, end + 1);
      if (whole == first && end == whole + 1) {
        return null; // a point alone
      }
    }
    if (end == first) {
      return null;
    }
    if (isOneOf("eE", text, end)) {
      int digits = end + (isOneOf("+-", text, end + 1) ? 2 : 1);
      end = afterDigits(text, digits) > digits ? afterDigits(text, digits) : end;
    }
    return of(text, start, number(text, first, end), end);
  }

  private static WrittenNumber fraction(String text, int start, double whole, int top) {
    int slash = afterDigits(text, top);
    int end = afterDigits(text, slash + 1);
    double bottom = number(text, slash + 1, end);
    return bottom == 0.0
        ? new WrittenNumber(0.0, end, "a fraction cannot be over zero", slash + 1)
        : of(text, start, whole + number(text, top, slash) / bottom, end);
  }

  private static WrittenNumber of(String text, int start, double magnitude, int end) {
    double value = isOneOf("-−", text, start) ? -magnitude : magnitude;
    return magnitude == 0.0 && !isWrittenZero(text, start, end)
        ? new WrittenNumber(value, end, "this number is too small to hold", start)
        : new WrittenNumber(value, end, null, end);
  }

  private static boolean isWrittenZero(String text, int start, int end) {
    for (int i = start; i < end && !isOneOf("eE" + SLASHES, text, i); i++) {
      if (text.charAt(i) >= '1' && text.charAt(i) <= '9') {
        return false;
      }
    }
    return true;
  }

  /**
   * The nearest double. Few digits are read as a whole number over a power of ten: where both are held exactly, their
   * quotient is rounded once (W. D. Clinger, Proc. ACM SIGPLAN 1990 Conf. on Programming Language Design, 92-101).
   */
  private static double number(String text, int from, int to) {
    if (to - from > EXACT_DIGITS) {
      return Double.parseDouble(text.substring(from, to));
    }
    int digits = 0;
    double power = 1.0;
    boolean behindPoint = false;
    for (int i = from; i < to; i++) {
      char c = text.charAt(i);
      if (c == '.') {
        behindPoint = true;
      } else if (isDigit(c)) {
        digits = 10 * digits + (c - '0');
        power *= behindPoint ? 10.0 : 1.0;
      } else {
        return Double.parseDouble(text.substring(from, to));
      }
    }
    return digits / power;
  }

  private static boolean isFraction(String text, int start) {
    int slash = afterDigits(text, start);
    return slash > start
        && isOneOf(SLASHES, text, slash)
        && afterDigits(text, slash + 1) > slash + 1;
  }

  private static int eighthsAt(String text, int at) {
    return at < text.length() && text.charAt(at) > LAST_OF_ASCII
        ? EIGHTHS.indexOf(text.charAt(at), 1)
        : 0;
  }

  /** Blanks, a hyphen with or without blanks, or nothing. */
  private static int afterJoint(String text, int from) {
    int at = Lexicon.skipSpaces(text, from);
    return isOneOf(HYPHENS, text, at) ? Lexicon.skipSpaces(text, at + 1) : at;
  }

  private static int afterDigits(String text, int from) {
    int at = from;
    while (at < text.length() && isDigit(text.charAt(at))) {
      at++;
    }
    return at;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /** Whether one of some characters, none of them a digit, stands at a place. */
  private static boolean isOneOf(String characters, String text, int at) {
    return at < text.length()
        && !isDigit(text.charAt(at))
        && characters.indexOf(text.charAt(at)) >= 0;
  }
}
