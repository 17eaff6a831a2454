package org.airfit.files;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How a file writes its values: JSON has numbers, lists and truth values of its own, in a table all is text.
 *
 * <p>A value that cannot be read gives an {@link IllegalArgumentException} with the complaint; {@link Field} adds the
 * place.
 */
enum Notation {
  JSON {
    @Override
    String place(String owner, String field) {
      return owner.isEmpty() ? field : owner + "." + field;
    }

    @Override
    double number(@Nullable Object value) {
      if (value instanceof Number number) {
        return number.doubleValue();
      }
      throw wanted(value, "a number without quotation marks is wanted");
    }

    /** Where a number is a whole one: a web page's JSON cannot tell 5 from 5.0. */
    @Override
    int wholeNumber(@Nullable Object value) {
      if (value instanceof Number number) {
        double asDouble = number.doubleValue();
        int whole = (int) asDouble;
        if (whole == asDouble) {
          return whole;
        }
      }
      throw wanted(value, "a whole number without quotation marks is wanted");
    }

    @Override
    boolean yes(@Nullable Object value) {
      if (value instanceof Boolean yes) {
        return yes;
      }
      throw wanted(value, "true or false is wanted, without quotation marks");
    }
  },

  TABLE {
    @Override
    String place(String owner, String field) {
      return owner + ", column " + field;
    }

    @Override
    double number(@Nullable Object value) {
      return Double.parseDouble(
          digits(value, "[0-9]{1,9}(\\.[0-9]{1,9})?", "type a number with a point, such as 0.3"));
    }

    @Override
    int wholeNumber(@Nullable Object value) {
      return Integer.parseInt(digits(value, "[0-9]{1,9}", "type a whole number such as 5"));
    }

    @Override
    boolean yes(@Nullable Object value) {
      String word = text(value).strip();
      if (word.equalsIgnoreCase("yes")) {
        return true;
      }
      if (word.equalsIgnoreCase("no")) {
        return false;
      }
      throw new IllegalArgumentException("was \"" + word + "\"; accepted: yes, no");
    }
  };

  /** The name of a field below another. */
  abstract String place(String owner, String field);

  abstract double number(@Nullable Object value);

  abstract int wholeNumber(@Nullable Object value);

  abstract boolean yes(@Nullable Object value);

  /** A text that is not blank. */
  static String text(@Nullable Object value) {
    if (value instanceof String text && !text.isBlank()) {
      String harmful = Printable.firstHarmful(text);
      if (!harmful.isEmpty()) {
        throw new IllegalArgumentException("was \"" + text + "\"; leave out the sign " + harmful
            + ", which shows nothing or steers the terminal");
      }
      return text;
    }
    if (value instanceof String) {
      throw new IllegalArgumentException(
          "is empty; write what is asked for, or leave the field out where it may be missing");
    }
    throw wanted(value, "a text in quotation marks is wanted");
  }

  /** Several words in one cell of a table. */
  static List<String> cellWords(@Nullable Object value) {
    List<String> words = new ArrayList<>();
    for (String word : CellWords.split(text(value))) {
      if (word.isBlank()) {
        throw new IllegalArgumentException(
            "was \"" + text(value) + "\"; type the words with one bar between, such as A | B");
      }
      words.add(word);
    }
    return words;
  }

  private static String digits(@Nullable Object value, String pattern, String accepted) {
    String text = text(value).strip();
    if (!text.matches(pattern)) {
      throw new IllegalArgumentException("was \"" + text(value) + "\"; " + accepted);
    }
    return text;
  }

  private static IllegalArgumentException wanted(@Nullable Object value, String wanted) {
    return new IllegalArgumentException("was " + kind(value) + "; " + wanted);
  }

  /** What stands there, for a complaint. */
  static String kind(@Nullable Object value) {
    if (value instanceof Map) {
      return "an object";
    }
    if (value instanceof List) {
      return "a list";
    }
    if (value instanceof String text) {
      return "the text \"" + text + "\"";
    }
    if (value instanceof Double number
        && number == Math.floor(number)
        && Math.abs(number) < 1.0e15) {
      return new BigDecimal(number).toPlainString(); // 5, not 5.0
    }
    return String.valueOf(value);
  }
}
