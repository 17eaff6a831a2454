package org.airfit.files.kept;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.airfit.files.Json;
import org.airfit.files.WrongFileException;
import org.jspecify.annotations.Nullable;

/**
 * Plain values as JSON in canonical form, RFC 8785: no spaces, the fields of an object in the order of their names,
 * numbers as ECMAScript writes them. Equal values have the same text, and so the same hash.
 */
final class Canonical {

  private static final int MOST_DIGITS = 17;
  private static final int SMALLEST_POINT = -6;
  private static final int LARGEST_POINT = 21;

  private final StringBuilder out = new StringBuilder();

  private Canonical() {}

  /**
   * Writes plain values.
   *
   * @throws IllegalArgumentException if a number is not finite, or a value is none that JSON has
   */
  static String text(@Nullable Object plain) {
    Canonical text = new Canonical();
    text.value(plain);
    return text.out.toString();
  }

  /** The plain values of a text in canonical form. */
  static Object plain(String canonical) {
    try {
      return Json.read("kept answer", canonical);
    } catch (WrongFileException e) {
      throw new IllegalStateException("a canonical text must be JSON", e);
    }
  }

  /** The SHA-256 of a text in UTF-8, in small hexadecimal digits. */
  static String sha256(String text) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private void value(@Nullable Object value) {
    if (value instanceof Map<?, ?> map) {
      object(map);
    } else if (value instanceof List<?> list) {
      String between = "";
      out.append('[');
      for (Object item : list) {
        out.append(between);
        value(item);
        between = ",";
      }
      out.append(']');
    } else if (value instanceof String text) {
      quoted(text);
    } else if (value instanceof Number number) {
      out.append(digits(number.doubleValue()));
    } else if (value == null || value instanceof Boolean) {
      out.append(value);
    } else {
      throw new IllegalArgumentException(
          "a plain value must be of JSON, was a " + value.getClass().getName());
    }
  }

  private void object(Map<?, ?> map) {
    Map<String, @Nullable Object> sorted = new TreeMap<>(); // by UTF-16, as RFC 8785 has it
    map.forEach((name, value) -> sorted.put(String.valueOf(name), value));
    String between = "";
    out.append('{');
    for (Map.Entry<String, @Nullable Object> field : sorted.entrySet()) {
      out.append(between);
      quoted(field.getKey());
      out.append(':');
      value(field.getValue());
      between = ",";
    }
    out.append('}');
  }

  private void quoted(String text) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      char sign = text.charAt(i);
      switch (sign) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\b' -> out.append("\\b");
        case '\t' -> out.append("\\t");
        case '\n' -> out.append("\\n");
        case '\f' -> out.append("\\f");
        case '\r' -> out.append("\\r");
        default -> {
          if (sign < ' ') {
            out.append("\\u00").append(HexFormat.of().toHexDigits((byte) sign));
          } else {
            out.append(sign);
          }
        }
      }
    }
    out.append('"');
  }

  /** A number as ECMAScript writes it: the fewest digits that are read as the same double. */
  static String digits(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a number in JSON must be finite, was " + value);
    }
    if (value == 0.0) {
      return "0";
    }
    BigDecimal shortest = shortest(Math.abs(value)).stripTrailingZeros();
    String digits = shortest.unscaledValue().toString();
    int point = digits.length() - shortest.scale(); // the value is 0.digits times 10 to this
    String sign = value < 0.0 ? "-" : "";
    if (point > SMALLEST_POINT && point <= 0) {
      return sign + "0." + "0".repeat(-point) + digits;
    }
    if (point > 0 && point <= LARGEST_POINT) {
      return sign
          + (digits.length() <= point
              ? digits + "0".repeat(point - digits.length())
              : digits.substring(0, point) + "." + digits.substring(point));
    }
    String mantissa =
        digits.length() == 1 ? digits : digits.substring(0, 1) + "." + digits.substring(1);
    return sign + mantissa + "e" + (point > 0 ? "+" : "") + (point - 1);
  }

  private static BigDecimal shortest(double value) {
    BigDecimal exact = new BigDecimal(value);
    for (int digits = 1; digits < MOST_DIGITS; digits++) {
      int length = digits;
      // The nearest of that many digits; at a power of two the next one may be read as the value
      // where that is not.
      BigDecimal found = Stream.of(RoundingMode.HALF_EVEN, RoundingMode.CEILING, RoundingMode.FLOOR)
          .map(mode -> exact.round(new MathContext(length, mode)))
          .filter(each -> each.doubleValue() == value)
          .findFirst()
          .orElse(null);
      if (found != null) {
        return found;
      }
    }
    return exact.round(new MathContext(MOST_DIGITS, RoundingMode.HALF_EVEN));
  }
}
