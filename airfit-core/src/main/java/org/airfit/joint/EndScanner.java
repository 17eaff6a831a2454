package org.airfit.joint;

import java.util.Locale;
import org.airfit.quantity.QuantityFormatException;

/**
 * Goes through a text once, from left to right, and takes numbers, inch marks, dashes and words off it. Blanks, dashes,
 * strokes and quotation marks may be of any kind, curly and no-break ones too.
 */
final class EndScanner {

  /**
   * A number as it stands in the text: 1, 0.25, 1/4, 1¼, 1-1/4, 11 1/2.
   *
   * @param value the number
   * @param isWhole whether it was written without a fraction
   * @param start where it begins
   */
  record Amount(double value, boolean isWhole, int start) {

    private boolean isProperFraction() {
      return !isWhole && value < 1.0;
    }
  }

  /** What a refusal says would be accepted. */
  static final String EXAMPLES =
      "an end such as \"3/8 NPT male\", \"G 1/2 female\", \"3/8 in barb\", \"8 mm push-in\","
          + " \"37° flare 9/16-18 male\", \"M14x1.5 O-ring port\" or \"two-lug claw\"";

  private static final String VULGAR = "¼½¾⅛⅜⅝⅞";
  private static final double[] VULGAR_VALUES = {0.25, 0.5, 0.75, 0.125, 0.375, 0.625, 0.875};
  private static final String DASHES = "-\u2010\u2011\u2012\u2013\u2212";
  private static final String SLASHES = "/\u2044\u2215";
  private static final String INCH_MARKS = "\"\u201c\u201d\u201e\u201f\u2033\u02ba\uff02";
  private static final String HALF_INCH_MARKS = "'\u2018\u2019\u201b\u2032\u02b9";

  private static final String DEGREE_MARKS = "\u00b0\u00ba\u02da";
  private static final String CROSSES = "xX\u00d7*";

  private static final String OTHER_QUOTATION_MARKS = "\u00ab\u00bb";

  private final String text;
  private final String accepted;
  private int at;

  /** Whether a quotation mark was opened and not yet closed. */
  private boolean quoted;

  /** Starts at the beginning of a text; {@code accepted} goes into the message of a refusal. */
  EndScanner(String text, String accepted) {
    this.text = text;
    this.accepted = accepted;
  }

  /** Where the next character stands. */
  int at() {
    return at;
  }

  boolean isAtEnd() {
    return at >= text.length();
  }

  char next() {
    return text.charAt(at);
  }

  boolean isAtNumber() {
    return !isAtEnd() && startsNumber(next());
  }

  boolean isAtLetter() {
    return !isAtEnd() && isLetter(next());
  }

  QuantityFormatException refused(int position, String problem) {
    return new QuantityFormatException(text, position, problem, accepted);
  }

  /** A number, with the fraction of a mixed one. */
  Amount amount() {
    Amount first = number();
    double fraction = first.isWhole ? fractionBehind() : 0.0;
    return fraction == 0.0 ? first : new Amount(first.value + fraction, false, first.start);
  }

  private Amount number() {
    int start = at;
    int vulgar = VULGAR.indexOf(next());
    if (vulgar >= 0) {
      at++;
      return new Amount(VULGAR_VALUES[vulgar], false, start);
    }
    while (!isAtEnd() && isDigit(next())) {
      at++;
    }
    boolean isWhole = true;
    if (!isAtEnd() && next() == '.') {
      isWhole = false;
      at++;
      while (!isAtEnd() && isDigit(next())) {
        at++;
      }
    }
    String digits = text.substring(start, at);
    if (digits.equals(".")) {
      throw refused(start, "'.' is no number");
    }
    double value = Double.parseDouble(digits);
    if (isWhole && !isAtEnd() && VULGAR.indexOf(next()) >= 0) {
      return new Amount(value + number().value, false, start);
    }
    return isWhole ? overDenominator(value, start) : new Amount(value, false, start);
  }

  private Amount overDenominator(double numerator, int start) {
    int before = at;
    skipBlanks();
    if (isAtEnd() || SLASHES.indexOf(next()) < 0) {
      at = before;
      return new Amount(numerator, true, start);
    }
    at++;
    skipBlanks();
    int from = at;
    while (!isAtEnd() && isDigit(next())) {
      at++;
    }
    double denominator = from == at ? 0.0 : Double.parseDouble(text.substring(from, at));
    if (denominator == 0.0) {
      throw refused(from, "a fraction needs a number above 0 below its line");
    }
    return new Amount(numerator / denominator, false, start);
  }

  /** A dash with the blanks around it, if one is next. */
  boolean dash() {
    int before = at;
    skipBlanks();
    if (!isAtEnd() && DASHES.indexOf(next()) >= 0) {
      at++;
      skipBlanks();
      return true;
    }
    at = before;
    return false;
  }

  /** Leaves the next character out. */
  void skip() {
    at++;
  }

  /** A degree mark, if one is next. */
  boolean degreeMark() {
    int before = at;
    skipBlanks();
    if (!isAtEnd() && DEGREE_MARKS.indexOf(next()) >= 0) {
      at++;
      return true;
    }
    at = before;
    return false;
  }

  /** The cross or the letter x of a metric thread, if one is next. */
  boolean times() {
    int before = at;
    skipBlanks();
    if (!isAtEnd() && CROSSES.indexOf(next()) >= 0) {
      at++;
      return true;
    }
    at = before;
    return false;
  }

  /** An inch mark, straight or curly, or the word. */
  boolean inchMark() {
    int before = at;
    skipBlanks();
    if (!isAtEnd()) {
      char c = next();
      if (INCH_MARKS.indexOf(c) >= 0) {
        at++;
        return true;
      }
      if (HALF_INCH_MARKS.indexOf(c) >= 0 && at + 1 < text.length() && text.charAt(at + 1) == c) {
        at += 2;
        return true;
      }
      String word = letters();
      if (word.equals("IN") || word.equals("INCH") || word.equals("INCHES")) {
        if (!isAtEnd() && next() == '.') {
          at++;
        }
        return true;
      }
    }
    at = before;
    return false;
  }

  /**
   * A quotation mark that opens or closes the text or a part of it, if one is next; behind a number it would have been
   * an inch mark. It opens in front of a number or letter, and closes only what was opened.
   */
  boolean quotationMark() {
    if (isAtEnd()) {
      return false;
    }
    if (INCH_MARKS.indexOf(next()) < 0 && OTHER_QUOTATION_MARKS.indexOf(next()) < 0) {
      return false;
    }
    boolean opens = at + 1 < text.length()
        && (startsNumber(text.charAt(at + 1)) || isLetter(text.charAt(at + 1)));
    if (!opens && !quoted) {
      return false;
    }
    quoted = opens;
    at++;
    return true;
  }

  /** The fraction of a mixed number, behind a blank or a dash; 0 where none follows. */
  private double fractionBehind() {
    int before = at;
    skipBlanks();
    dash();
    if (isAtNumber()) {
      Amount next = number();
      boolean isDecimal = text.substring(next.start, at).indexOf('.') >= 0;
      if (next.isProperFraction() && !isDecimal) {
        return next.value;
      }
    }
    at = before;
    return 0.0;
  }

  /** A run of letters, as capitals; empty if none is next. */
  String letters() {
    int start = at;
    while (isAtLetter()) {
      at++;
    }
    return text.substring(start, at).toUpperCase(Locale.ROOT);
  }

  /** Whether a word stands next, behind blanks or a dash; if so it is read. */
  boolean follows(String word) {
    int before = at;
    if (!dash()) {
      skipBlanks();
    }
    if (letters().equals(word)) {
      return true;
    }
    at = before;
    return false;
  }

  void skipBlanks() {
    while (!isAtEnd() && isBlank(next())) {
      at++;
    }
  }

  /** Blanks of every kind, the no-break ones too. */
  static boolean isBlank(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c);
  }

  static boolean isDash(char c) {
    return DASHES.indexOf(c) >= 0;
  }

  static boolean isLetter(char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean startsNumber(char c) {
    return isDigit(c) || c == '.' || VULGAR.indexOf(c) >= 0;
  }
}
