package org.airfit.joint;

import java.util.List;
import java.util.Optional;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.QuantityFormatException;

/**
 * Reads a hose or barb by its bore, and a tube or push-in end by its outside diameter: "3/8 in barb", "10 mm hose", "8
 * mm push-in", "push-in for 8 mm", "6 mm tube, wall 1 mm", "6 x 4 mm tube".
 */
final class HoseTubeReader {

  /** The words that name such an end, and what stands beside them. */
  private enum Kind {
    BARB("barb"),
    HOSE("hose"),
    PUSH_IN("push-in", "pushin", "push-to-connect"),
    TUBE("tube");

    private final String word;

    /** The word itself and what else the trade says for it. */
    private final List<String> words;

    Kind(String... words) {
      this.word = words[0];
      this.words = List.of(words);
    }

    boolean isOfHose() {
      return this == BARB || this == HOSE;
    }

    /** Whether a text has a word from a place on, with any dash or a blank for its dash. */
    private static boolean isAt(String word, String text, int start) {
      for (int i = 0; i < word.length(); i++) {
        char typed = text.charAt(start + i);
        char wanted = word.charAt(i);
        if (wanted == '-'
            ? !EndScanner.isDash(typed) && !EndScanner.isBlank(typed)
            : Character.toLowerCase(typed) != wanted) {
          return false;
        }
      }
      return true;
    }
  }

  private static final String WALL = "wall";
  private static final String BORE = "bore";

  /** What tubes are of, as people say it. */
  private static final List<String> MATERIALS = List.of(
      "nylon",
      "polyamide",
      "pa",
      "polyurethane",
      "pu",
      "polyethylene",
      "pe",
      "plastic",
      "copper",
      "steel",
      "stainless",
      "aluminium",
      "aluminum",
      "brass");

  private final String text;
  private final Kind kind;

  private HoseTubeReader(String text, Kind kind) {
    this.text = text;
    this.kind = kind;
  }

  /** Reads a text; empty if it names none of these; refuses with a {@link QuantityFormatException}. */
  static Optional<EndWords> read(String text) {
    int end = stripped(text);
    for (Kind kind : Kind.values()) {
      for (String word : kind.words) {
        int start = end - word.length();
        if (start >= 0
            && Kind.isAt(word, text, start)
            && (start == 0 || !EndScanner.isLetter(text.charAt(start - 1)))) {
          return Optional.of(new HoseTubeReader(text, kind).behindSize(start));
        }
      }
    }
    return beforeSize(text, end).or(() -> tubeAndWall(text, end));
  }

  /** Where the blanks behind a text begin. */
  private static int stripped(String text) {
    int end = text.length();
    while (end > 0 && EndScanner.isBlank(text.charAt(end - 1))) {
      end--;
    }
    return end;
  }

  /** The word first: "push-in for 8 mm", "tube 5/16 in", "barb 3/8 in". */
  private static Optional<EndWords> beforeSize(String text, int end) {
    int start = 0;
    while (start < end && EndScanner.isBlank(text.charAt(start))) {
      start++;
    }
    for (Kind kind : Kind.values()) {
      for (String word : kind.words) {
        int behind = start + word.length();
        if (behind < end
            && Kind.isAt(word, text, start)
            && EndScanner.isBlank(text.charAt(behind))) {
          int size = wordAt(text, "for", behind + 1) ? behind + 4 : behind;
          return Optional.of(new HoseTubeReader(text, kind).sized(text.substring(size, end)));
        }
      }
    }
    return Optional.empty();
  }

  private static boolean wordAt(String text, String word, int start) {
    int behind = start + word.length();
    return text.regionMatches(true, start, word, 0, word.length())
        && (behind >= text.length() || !EndScanner.isLetter(text.charAt(behind)));
  }

  private QuantityFormatException refused(int position, String problem, String accepted) {
    return new QuantityFormatException(text, position, problem, accepted);
  }

  private EndWords behindSize(int start) {
    EndScanner scanner = new EndScanner(text, EndScanner.EXAMPLES);
    scanner.skipBlanks();
    String size = text.substring(scanner.quotationMark() ? scanner.at() : 0, start);
    if (size.isBlank()) {
      throw refused(
          start,
          kind.isOfHose()
              ? "the bore of the hose is missing"
              : "the outside diameter of the tube is missing",
          EndScanner.EXAMPLES);
    }
    return sized(kind.isOfHose() ? size : withoutMaterial(size));
  }

  /** The size without what the tube is of, which tells nothing of its end. */
  private static String withoutMaterial(String size) {
    String bare = size;
    for (String material : MATERIALS) {
      bare = withoutWord(bare, material);
    }
    return bare;
  }

  private EndWords sized(String size) {
    if (kind.isOfHose()) {
      return new EndWords.OfHose(HoseBore.parse(size), kind == Kind.BARB, Optional.empty());
    }
    int by = times(size);
    if (by >= 0) {
      return twoNumbers(size.substring(0, by), size.substring(by + 1));
    }
    return tube(outside(size), Optional.empty(), Optional.empty());
  }

  private static int times(String size) {
    int x = Math.max(size.indexOf('x'), size.indexOf('X'));
    return Math.max(x, size.indexOf('×'));
  }

  private Length outside(String size) {
    String plain = withoutWord(size, "od");
    Length outside = Length.parse(plain);
    if (!(outside.millimetres() >= 1.0 && outside.millimetres() <= 500.0)) {
      throw refused(
          0,
          "the outside diameter of a tube must be in [1, 500] mm",
          "the tube's outside diameter, such as \"8 mm " + kind.word + "\"");
    }
    return outside;
  }

  private static String withoutWord(String text, String word) {
    String bare = text.strip();
    int start = bare.length() - word.length();
    return start > 0 && wordAt(bare, word, start) && EndScanner.isBlank(bare.charAt(start - 1))
        ? bare.substring(0, start)
        : bare;
  }

  /**
   * Outside by bore, or outside by wall: a wall is less than half of the outside, so that a second number of half the
   * outside or more is the bore; a smaller one is taken as the wall, and that is told.
   */
  private EndWords twoNumbers(String first, String second) {
    boolean isBore = wordAt(second.strip(), "id", Math.max(0, second.strip().length() - 2));
    Length inner = Length.parse(withoutWord(second, "id"));
    Length outside = outside(hasUnit(first) ? first : first + " " + unitOf(second));
    if (isBore || inner.metres() >= outside.metres() / 2.0) {
      return withBore(outside, inner);
    }
    return tube(
        outside,
        Optional.of(requireWall(outside, inner)),
        Optional.of("read as " + TubeText.of(outside) + " tube with a wall of "
            + inner.label(TubeText.unit(outside))
            + ", because it is less than half of the outside; write \"" + TubeText.of(outside)
            + " tube, bore " + inner.label(TubeText.unit(outside)) + "\" if the bore is meant"));
  }

  private static boolean hasUnit(String number) {
    for (int i = 0; i < number.length(); i++) {
      char c = number.charAt(i);
      if (EndScanner.isLetter(c) || c == '"') {
        return true;
      }
    }
    return false;
  }

  private static String unitOf(String number) {
    for (LengthUnit unit : LengthUnit.values()) {
      if (wordIn(number, unit.symbol())) {
        return unit.symbol();
      }
    }
    return LengthUnit.INCH.symbol();
  }

  private static boolean wordIn(String text, String word) {
    for (int i = 0; i + word.length() <= text.length(); i++) {
      if (wordAt(text, word, i) && (i == 0 || !EndScanner.isLetter(text.charAt(i - 1)))) {
        return true;
      }
    }
    return false;
  }

  private EndWords withBore(Length outside, Length bore) {
    if (!(bore.metres() > 0.0 && bore.metres() < outside.metres())) {
      throw refused(
          0,
          "the bore of a tube must be above 0 and below its outside diameter",
          "outside by bore, such as \"6 x 4 mm tube\"");
    }
    // half of a difference, without what it rounds off
    Length wall = Length.parse(outside.minus(bore).times(0.5).inFull(TubeText.unit(outside)));
    return tube(outside, Optional.of(wall), Optional.empty());
  }

  private Length requireWall(Length outside, Length wall) {
    if (!(wall.metres() > 0.0 && wall.metres() < outside.metres() / 2.0)) {
      throw refused(
          0,
          "the wall of a tube must be above 0 and below half of its outside diameter",
          "outside and wall, such as \"6 mm tube, wall 1 mm\"");
    }
    return wall;
  }

  /** A tube with its wall or bore behind it: "6 mm tube, wall 1 mm", "6 mm tube 1 mm wall", "6 mm tube, bore 4 mm". */
  private static Optional<EndWords> tubeAndWall(String text, int end) {
    for (int i = 1; i + Kind.TUBE.word.length() < end; i++) {
      int behind = i + Kind.TUBE.word.length();
      if (wordAt(text, Kind.TUBE.word, i) && !EndScanner.isLetter(text.charAt(i - 1))) {
        String rest = withoutComma(text.substring(behind, end));
        for (String word : List.of(WALL, BORE)) {
          if (wordAt(rest, word, 0) || wordAt(rest, word, Math.max(0, rest.length() - 4))) {
            String thickness = wordAt(rest, word, 0)
                ? rest.substring(word.length())
                : rest.substring(0, rest.length() - word.length());
            return Optional.of(new HoseTubeReader(text, Kind.TUBE)
                .thickness(text.substring(0, i), Length.parse(thickness), word));
          }
        }
      }
    }
    return Optional.empty();
  }

  private static String withoutComma(String rest) {
    String bare = rest.strip();
    return bare.startsWith(",") ? bare.substring(1).strip() : bare;
  }

  private EndWords thickness(String size, Length told, String word) {
    Length outside = outside(size);
    return word.equals(BORE)
        ? withBore(outside, told)
        : tube(outside, Optional.of(requireWall(outside, told)), Optional.empty());
  }

  private EndWords tube(Length outside, Optional<Length> wall, Optional<String> remark) {
    return new EndWords.OfTube(outside, kind == Kind.PUSH_IN, wall, remark);
  }
}
