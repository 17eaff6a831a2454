package org.airfit.quantity;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The one parser: a number, then a word from a list. Each quantity has one of these, which differs in the words only.
 *
 * <p>Numbers are decimal with a point ({@code 6.2}, {@code 1.813e-5}), fractions ({@code 3/8}) or mixed ({@code 1-1/4},
 * {@code 1 1/4}). A decimal or grouping comma is refused, as it means different things in different places. Spaces,
 * brackets and dots in a unit do not matter. Capitals matter only where they tell two units apart.
 *
 * @param <T> what a unit word stands for
 */
final class Grammar<T> {

  private static final Pattern NUMBER = Pattern.compile(
      "(?<sign>[+\\-−]?)(?:(?:(?<whole>\\d+)(?:\\s*-\\s*|\\s+))?(?<top>\\d+)/(?<bottom>\\d+)"
          + "|(?<decimal>(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?))");

  private final String quantity;
  private final Map<String, T> words;
  private final String accepted;

  private Grammar(String quantity, Map<String, T> words, String units, List<String> examples) {
    this.quantity = quantity;
    this.words = words;
    this.accepted = "a number and one of " + units + ", such as \"" + String.join("\", \"", examples) + "\"";
  }

  static <U extends Unit> Grammar<U> ofUnits(String quantity, U[] units, List<String> examples) {
    Map<String, U> words = new LinkedHashMap<>();
    StringBuilder shown = new StringBuilder();
    for (U unit : units) {
      addWord(words, unit.symbol(), unit);
      unit.scale().spellings().forEach(word -> addWord(words, word, unit));
      shown.append(shown.isEmpty() ? "" : ", ").append(unit.symbol());
    }
    return new Grammar<>(quantity, words, shown.toString(), examples);
  }

  static Grammar<PressureUnit> ofPressures(String quantity, PressureKind kind, List<String> examples) {
    Map<String, PressureUnit> words = new LinkedHashMap<>();
    StringBuilder shown = new StringBuilder();
    for (PressureUnit unit : PressureUnit.values()) {
      for (String mark : kind.spellings()) {
        addWord(words, unit.symbol() + mark, unit);
        unit.scale().spellings().forEach(word -> addWord(words, word + mark, unit));
      }
      shown.append(shown.isEmpty() ? "" : ", ").append(kind.written(unit));
    }
    return new Grammar<>(quantity, words, shown.toString(), examples);
  }

  static <T> Grammar<T> ofWords(String quantity, Map<String, T> words, String units, List<String> examples) {
    Map<String, T> normalised = new LinkedHashMap<>();
    words.forEach((word, meaning) -> addWord(normalised, word, meaning));
    return new Grammar<>(quantity, normalised, units, examples);
  }

  private static <T> void addWord(Map<String, T> words, String word, T meaning) {
    T before = words.putIfAbsent(normalised(word), meaning);
    if (before != null && !before.equals(meaning)) {
      throw new IllegalStateException("\"" + word + "\" would mean both " + before + " and " + meaning);
    }
  }

  Parsed<T> read(String text) {
    int start = 0;
    while (start < text.length() && Character.isWhitespace(text.charAt(start))) {
      start++;
    }
    Matcher number = NUMBER.matcher(text);
    number.region(start, text.length());
    if (!number.lookingAt()) {
      throw wrong(text, start, start == text.length() ? "a number is missing" : "no number");
    }
    double value = value(text, number);
    int end = number.end();
    if (end < text.length() && text.charAt(end) == ',') {
      throw wrong(text, end, "a comma (write 6.2 with a point, and 1200 without a mark)");
    }
    String word = text.substring(end);
    T unit = meaning(word);
    if (unit == null) {
      int at = end;
      while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
        at++;
      }
      throw wrong(
          text, at, word.isBlank() ? "the unit is missing" : "\"" + word.strip() + "\" is no unit of " + quantity);
    }
    return new Parsed<>(value, unit);
  }

  private double value(String text, Matcher number) {
    double magnitude;
    String decimal = number.group("decimal");
    if (decimal != null) {
      magnitude = Double.parseDouble(decimal);
    } else {
      String whole = number.group("whole");
      double bottom = Double.parseDouble(number.group("bottom"));
      if (bottom == 0.0) {
        throw wrong(text, number.start("bottom"), "a fraction over zero");
      }
      magnitude = (whole == null ? 0.0 : Double.parseDouble(whole)) + Double.parseDouble(number.group("top")) / bottom;
    }
    return number.group("sign").isEmpty() || number.group("sign").equals("+") ? magnitude : -magnitude;
  }

  /** The exact word; or the word in other capitals, where it was typed all small or all large (mPa is not MPa). */
  private @Nullable T meaning(String word) {
    String exact = normalised(word);
    T found = words.get(exact);
    boolean oneCase =
        exact.equals(exact.toLowerCase(Locale.ROOT)) || exact.equals(exact.toUpperCase(Locale.ROOT));
    if (found != null || !oneCase) {
      return found;
    }
    for (Map.Entry<String, T> entry : words.entrySet()) {
      if (entry.getKey().equalsIgnoreCase(exact)) {
        return entry.getValue();
      }
    }
    return null;
  }

  private QuantityFormatException wrong(String text, int position, String problem) {
    return new QuantityFormatException(text, position, problem, accepted);
  }

  private static String normalised(String word) {
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < word.length(); i++) {
      char c = word.charAt(i);
      switch (c) {
        case '²' -> plain.append('2');
        case '³' -> plain.append('3');
        case '₂' -> plain.append('2');
        case 'μ' -> plain.append('µ');
        case '″', '”', '“' -> plain.append('"');
        case '′', '’' -> plain.append('\'');
        case '(', ')', '.', '·', '°' -> {}
        default -> {
          if (!Character.isWhitespace(c)) {
            plain.append(c);
          }
        }
      }
    }
    return plain.toString();
  }
}
