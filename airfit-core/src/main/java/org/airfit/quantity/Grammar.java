package org.airfit.quantity;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The one parser: a number, then a word from a {@link Lexicon}. Each quantity has one of these, which differs in the
 * words only.
 *
 * <p>Numbers are written as a {@link WrittenNumber}. A decimal or grouping comma is refused, as it means different
 * things in different places, and so are the other ways in which Java writes a number; {@link DecimalMark} reads
 * decimal commas.
 *
 * <p>The cost is linear in the length of a text, and a text longer than {@link #LONGEST} characters is refused unread.
 *
 * @param <T> what a unit word stands for
 */
final class Grammar<T> {

  /** Longer than anything a person types for one value. */
  static final int LONGEST = 200;

  static final String COMMA =
      "a comma means different things in different places: write 6.2 with a point and 1200 without a mark";

  static final String SECOND_NUMBER = "a second number: write 1200 without a gap";

  /** No unit word is longer: behind a page pasted into the field nobody need look for one. */
  private static final int LONGEST_WORD = 60;

  /** Words for a number that is not exact, the longer of two that begin alike first. */
  private static final List<String> ROUGHLY = List.of(
      "about",
      "approximately",
      "approx.",
      "approx",
      "around",
      "roughly",
      "nearly",
      "circa",
      "ca.",
      "ca",
      "~",
      "≈");

  private final String quantity;
  private final Lexicon<T> words;
  private final Lexicon<String> hints;
  private final String accepted;

  /** Makes the quantity of a number and its unit, or refuses the value. */
  @FunctionalInterface
  interface Maker<T, Q> {
    Q make(double value, T unit);
  }

  private Grammar(String quantity, Lexicon<T> words, Lexicon<String> hints, String accepted) {
    this.quantity = quantity;
    this.words = words;
    this.hints = hints;
    this.accepted = accepted;
  }

  static <U extends Unit> Grammar<U> ofUnits(String quantity, U[] units, List<String> examples) {
    return ofUnits(quantity, units, examples, Map.of());
  }

  /** A grammar that explains some words it does not accept; each hint goes on after the word. */
  static <U extends Unit> Grammar<U> ofUnits(
      String quantity, U[] units, List<String> examples, Map<String, String> hints) {
    Lexicon<U> words = new Lexicon<>();
    for (U unit : units) {
      words.add(unit.symbol(), unit);
      unit.scale().spellings().forEach(spelling -> words.add(spelling, unit));
    }
    String symbols = Arrays.stream(units).map(Unit::symbol).collect(Collectors.joining(", "));
    return new Grammar<>(quantity, words, lexicon(hints), accepted(symbols, examples));
  }

  static Grammar<PressureUnit> ofPressures(PressureKind kind, List<String> examples) {
    Lexicon<PressureUnit> words = new Lexicon<>();
    Lexicon<String> hints = new Lexicon<>();
    for (PressureUnit unit : PressureUnit.values()) {
      for (PressureKind typed : PressureKind.values()) {
        for (String word : typed.words(unit)) {
          if (typed == kind) {
            words.add(word, unit);
          } else {
            hints.add(word, kind.insteadOf(typed, unit));
          }
        }
      }
    }
    String symbols =
        Arrays.stream(PressureUnit.values()).map(kind::written).collect(Collectors.joining(", "));
    return new Grammar<>(kind.quantity(), words, hints, accepted(symbols, examples));
  }

  static <T> Grammar<T> ofWords(
      String quantity,
      Map<String, T> words,
      Map<String, String> hints,
      String units,
      List<String> examples) {
    return new Grammar<>(quantity, lexicon(words), lexicon(hints), accepted(units, examples));
  }

  /** A grammar of names that look like numbers, for which the word behind may be missing. */
  static Grammar<String> ofNames(String quantity, List<String> wordsBehind, List<String> names) {
    Lexicon<String> words = new Lexicon<>();
    words.add("", "");
    wordsBehind.forEach(word -> words.add(word, word));
    return new Grammar<>(quantity, words, new Lexicon<>(), String.join(", ", names));
  }

  private static <M> Lexicon<M> lexicon(Map<String, M> words) {
    Lexicon<M> lexicon = new Lexicon<>();
    words.forEach(lexicon::add);
    return lexicon;
  }

  private static String accepted(String units, List<String> examples) {
    return "a number with its unit, such as \"" + String.join("\", \"", examples)
        + "\"; the units are " + units;
  }

  /** Reads the whole text. What the maker refuses is refused as a text, with the maker's reason. */
  <Q> Q read(String text, Maker<T, Q> maker) {
    requireShort(text, accepted);
    int start = Lexicon.skipSpaces(text, 0);
    WrittenNumber number = WrittenNumber.at(text, start);
    if (number == null) {
      throw wrong(text, start, noNumber(text, start));
    }
    if (number.problem() != null) {
      throw wrong(text, number.problemAt(), number.problem());
    }
    T unit = unit(text, number.end());
    try {
      return maker.make(number.value(), unit);
    } catch (IllegalArgumentException refused) {
      QuantityFormatException wrong = wrong(text, start, String.valueOf(refused.getMessage()));
      wrong.initCause(refused);
      throw wrong;
    }
  }

  /** What is said where no number stands; a word such as "about" in front of one is told as what it is. */
  private static String noNumber(String text, int start) {
    if (start == text.length()) {
      return "the number is missing";
    }
    for (String word : ROUGHLY) {
      int behind = Lexicon.skipSpaces(text, Math.min(text.length(), start + word.length()));
      if (text.regionMatches(true, start, word, 0, word.length())
          && behind < text.length()
          && WrittenNumber.at(text, behind) != null) {
        return "\"" + word + "\" is not read, as it does not tell by how much: type \""
            + text.substring(behind).strip()
            + "\" alone, or where a range is possible the least and the most, with \"to\" between them";
      }
    }
    return "this is no number";
  }

  static void requireShort(String text, String accepted) {
    if (Objects.requireNonNull(text, "text").length() > LONGEST) {
      throw new QuantityFormatException(
          text, LONGEST, "this text is longer than " + LONGEST + " characters", accepted);
    }
  }

  /** Reads a part of a text; what is wrong with it is told of the whole. */
  static <Q> Q readPart(String text, int from, int to, Function<String, Q> parse) {
    try {
      return parse.apply(text.substring(from, to));
    } catch (QuantityFormatException wrong) {
      throw wrong.inside(text, from);
    }
  }

  private T unit(String text, int end) {
    int start = Lexicon.skipSpaces(text, end);
    if (start == text.length()) {
      T unmarked = words.find("");
      if (unmarked == null) {
        throw wrong(text, start, "the unit is missing");
      }
      return unmarked;
    }
    char first = text.charAt(start);
    if (first == ',') {
      throw wrong(text, start, COMMA);
    }
    if (first >= '0' && first <= '9') {
      throw wrong(text, start, SECOND_NUMBER);
    }
    String word = text.substring(start);
    T unit = words.find(word);
    if (unit == null) {
      throw unknown(text, start);
    }
    requirePairedBrackets(text, start);
    return unit;
  }

  private void requirePairedBrackets(String text, int start) {
    int open = -1;
    for (int i = start; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean opens = c == '(' || c == '[';
      boolean closes = c == ')' || c == ']';
      if ((opens && open >= 0) || (closes && open < 0)) {
        throw wrong(text, i, "this bracket has no partner");
      }
      if (opens) {
        open = i;
      } else if (closes) {
        open = -1;
      }
    }
    if (open >= 0) {
      throw wrong(text, open, "this bracket has no partner");
    }
  }

  private QuantityFormatException unknown(String text, int start) {
    String word = text.substring(start).strip();
    String shown = "\"" + QuantityFormatException.shown(word) + "\" ";
    String hint = hint(word);
    if (hint != null) {
      return wrong(text, start, shown + hint);
    }
    for (int end = Math.min(text.length() - 1, start + LONGEST_WORD); end > start; end--) {
      if (Lexicon.isSpace(text.charAt(end)) && words.find(text.substring(start, end)) != null) {
        int rest = Lexicon.skipSpaces(text, end);
        if (rest < text.length()) {
          return wrong(
              text,
              rest,
              "\"" + QuantityFormatException.shown(text.substring(rest).strip())
                  + "\" does not belong here");
        }
      }
    }
    return wrong(text, start, shown + "is no unit of " + quantity);
  }

  private @Nullable String hint(String word) {
    String hint = hints.find(word);
    if (hint != null) {
      return hint;
    }
    String other = OtherKinds.WORDS.find(word);
    return other == null ? null : "is a unit of " + other + ", not of " + quantity;
  }

  private QuantityFormatException wrong(String text, int position, String problem) {
    return new QuantityFormatException(text, position, problem, accepted);
  }

  /**
   * What a word measures elsewhere, for somebody who typed a right value into the wrong field. Filled at the first such
   * mistake.
   */
  private static final class OtherKinds {

    static final Lexicon<String> WORDS = new Lexicon<>();

    static {
      add("length", LengthUnit.values());
      add("area", AreaUnit.values());
      add("volume", VolumeUnit.values());
      add("pressure", PressureUnit.values());
      add("temperature", TemperatureUnit.values());
      add("mass flow", MassFlowUnit.values());
      add("volume flow", VolumeFlowUnit.values());
      add("density", DensityUnit.values());
      add("velocity", VelocityUnit.values());
      add("viscosity", ViscosityUnit.values());
      add("power", PowerUnit.values());
      add("energy", EnergyUnit.values());
      add("sonic conductance", ConductanceUnit.values());
      for (PressureUnit unit : PressureUnit.values()) {
        PressureKind.GAUGE.words(unit).forEach(word -> WORDS.addIfAbsent(word, "gauge pressure"));
        PressureKind.ABSOLUTE
            .words(unit)
            .forEach(word -> WORDS.addIfAbsent(word, "absolute pressure"));
      }
      FreeAirMarks.words().keySet().forEach(word -> WORDS.addIfAbsent(word, "free-air flow"));
    }

    private static void add(String kind, Unit[] units) {
      for (Unit unit : units) {
        WORDS.addIfAbsent(unit.symbol(), kind);
        unit.scale().spellings().forEach(spelling -> WORDS.addIfAbsent(spelling, kind));
      }
    }

    private OtherKinds() {}
  }
}
