package org.airfit.quantity;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * The bore by which a hose is named, such as '3/8 in' or '10 mm'.
 *
 * <p>A hose is named by its inside, a tube by its outside, a pipe by neither. The name is close to the bore but not
 * equal to it: ISO 1307:2006, table 1, lets a hose of type A named 10 mm measure 9.3 to 10.1 mm. It turns into no
 * {@link NominalThreadSize} or {@link BasicBodySize}.
 *
 * <p>A hose keeps the name by which it is sold:
 *
 * <pre>{@code
 * import org.airfit.quantity.HoseBore;
 *
 * class NameOfAHose {
 *   public static void main(String[] args) {
 *     HoseBore bore = HoseBore.parse("3/8 in");
 *     System.out.println(bore.label() + ", " + bore.nominal().millimetres() + " mm"); // 3/8 in, 9.525 mm
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class HoseBore implements Comparable<HoseBore> {

  /** What may stand behind the length, the longer of two alike first. */
  private static final List<String> KINDS = List.of("bore", "hose", "i.d.", "id.", "i.d", "id");

  /** A label as typed stays as short as a label is. */
  private static final int LONGEST_LABEL = 60;

  private static final Grammar<LengthUnit> GRAMMAR = Grammar.ofWords(
      "hose bore",
      words(),
      Map.of(),
      Arrays.stream(LengthUnit.values()).map(Unit::symbol).collect(Collectors.joining(", ")),
      List.of("3/8 in", "10 mm"));

  private final Length nominal;
  private final String label;

  private HoseBore(Length nominal, String label) {
    if (!(nominal.millimetres() >= 1.0 && nominal.millimetres() <= 500.0)) {
      throw new IllegalArgumentException(
          "hose bore must be in [1, 500] mm, was " + nominal.inFull(LengthUnit.MILLIMETRE));
    }
    this.nominal = nominal;
    this.label = label;
  }

  /**
   * Obtains a bore from a length.
   *
   * @param nominal the bore the hose is named by, in [1, 500] mm
   * @return the bore, labelled in millimetres as {@link Length#label} prints it
   * @throws IllegalArgumentException if {@code nominal} is out of range
   */
  public static HoseBore of(Length nominal) {
    Objects.requireNonNull(nominal, "nominal");
    return new HoseBore(nominal, nominal.label(LengthUnit.MILLIMETRE));
  }

  /**
   * Reads a bore as people write it.
   *
   * @param text a length with its unit, such as "3/8 in" or "10 mm", with or without "bore", "hose" or "ID" behind it
   * @return the bore, labelled as it was typed
   * @throws QuantityFormatException if the text is not a hose bore; it tells where and what would be accepted
   */
  public static HoseBore parse(String text) {
    return GRAMMAR.read(text, (value, unit) -> {
      HoseBore bore = of(Length.of(value, unit));
      String typed = withoutKind(oneSpaced(text));
      return typed.length() > LONGEST_LABEL ? bore : new HoseBore(bore.nominal, typed);
    });
  }

  private static String oneSpaced(String text) {
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (!Lexicon.isSpace(c)) {
        words.append(c);
      } else if (words.length() > 0 && words.charAt(words.length() - 1) != ' ') {
        words.append(' ');
      }
    }
    return words.toString().strip();
  }

  /** Takes "bore", "(ID)" and the like from the end. */
  private static String withoutKind(String text) {
    int end = text.length() - (text.endsWith(")") || text.endsWith("]") ? 1 : 0);
    for (String kind : KINDS) {
      int start = end - kind.length();
      if (start > 0 && text.regionMatches(true, start, kind, 0, kind.length())) {
        char before = text.charAt(start - 1);
        return text.substring(0, before == '(' || before == '[' ? start - 1 : start)
            .strip();
      }
    }
    return text;
  }

  private static Map<String, LengthUnit> words() {
    Map<String, LengthUnit> words = new HashMap<>();
    for (LengthUnit unit : LengthUnit.values()) {
      for (String behind : List.of("", "bore", "hose", "ID")) {
        words.put(unit.symbol() + behind, unit);
        unit.scale().spellings().forEach(word -> words.put(word + behind, unit));
      }
    }
    return words;
  }

  /** {@return the length the hose is named by; the bore measured on a hose differs from it} */
  public Length nominal() {
    return nominal;
  }

  /** {@return the bore as it was given, such as "3/8 in"} */
  public String label() {
    return label;
  }

  @Override
  public int compareTo(HoseBore other) {
    return nominal.compareTo(Objects.requireNonNull(other, "other").nominal);
  }

  /** Equal bores are equal however they are written: '3/8 in' equals '9.525 mm'. */
  @Override
  public boolean equals(Object other) {
    return other instanceof HoseBore that && nominal.equals(that.nominal);
  }

  @Override
  public int hashCode() {
    return nominal.hashCode();
  }

  /** {@return the label with its kind, such as "3/8 in bore"} */
  @Override
  public String toString() {
    return label + " bore";
  }
}
