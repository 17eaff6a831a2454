package org.airfit.quantity;

import java.util.Objects;
import java.util.function.Function;

/**
 * The mark between the whole digits and the rest of a number.
 *
 * <p>Everything in this library reads decimal points and refuses commas, since a comma groups thousands in one
 * country and begins the decimals in another. A program that knows which its user types says so, whatever is to be
 * read:
 *
 * <p>A decimal comma is read only where a program asks for it, so that 1,500 is never taken for one and a half by
 * chance:
 *
 * <pre>{@code
 * import org.airfit.quantity.DecimalMark;
 * import org.airfit.quantity.GaugePressure;
 *
 * class DecimalComma {
 *   public static void main(String[] args) {
 *     GaugePressure told = DecimalMark.COMMA.read("6,2 bar(g)", GaugePressure::parse);
 *     System.out.println(told.bar()); // 6.2
 *   }
 * }
 * }</pre>
 */
public enum DecimalMark {
  /** A point, as in 6.2. */
  POINT('.'),
  /** A comma, as in 6,2. Points in numbers are refused then, as they may group thousands. */
  COMMA(',');

  private final char mark;

  DecimalMark(char mark) {
    this.mark = mark;
  }

  /**
   * Reads a text whose numbers have this mark.
   *
   * @param <T> what is read
   * @param text the text, such as "6,2 bar(g)"
   * @param parse what reads it with a point, such as {@code GaugePressure::parse}
   * @return what {@code parse} reads
   * @throws QuantityFormatException if {@code parse} refuses the text, or a number in it has a point and this is the
   *     comma
   */
  public <T> T read(String text, Function<String, T> parse) {
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(parse, "parse");
    if (this == POINT) {
      return parse.apply(text);
    }
    try {
      return parse.apply(withPoints(text));
    } catch (QuantityFormatException wrong) {
      throw wrong.inside(text, 0);
    }
  }

  /** A comma belongs to a number where a digit stands behind it and no other comma before it in the same number. */
  private String withPoints(String text) {
    StringBuilder points = new StringBuilder(text);
    boolean hasMark = false;
    for (int i = 0; i < text.length() && i <= Grammar.LONGEST; i++) {
      char c = text.charAt(i);
      if (c == '.' && (isDigit(text, i - 1) || isDigit(text, i + 1))) {
        throw wrong(
            text,
            i,
            "a point in a number whose decimal mark is a comma: write 6,2 and 1200 without a mark");
      }
      if (c == mark && isDigit(text, i + 1)) {
        if (hasMark) {
          throw wrong(text, i, "a second comma in a number: write 1200 without a mark");
        }
        points.setCharAt(i, '.');
        hasMark = true;
      } else if (c < '0' || c > '9') {
        hasMark = false;
      }
    }
    return points.toString();
  }

  private static QuantityFormatException wrong(String text, int position, String problem) {
    return new QuantityFormatException(
        text, position, problem, "numbers with a decimal comma, such as \"6,2\"");
  }

  private static boolean isDigit(String text, int at) {
    return at >= 0 && at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9';
  }
}
