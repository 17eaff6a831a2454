package org.airfit.joint;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.internal.Digits;
import org.airfit.joint.EndScanner.Amount;
import org.airfit.quantity.QuantityFormatException;
import org.jspecify.annotations.Nullable;

/**
 * Takes a text that names a flare, port, stud, claw or hose coupling apart, from left to right and once: its words, an
 * angle, a size with its threads per inch, a metric thread, a dash size.
 */
final class FormScanner {

  /** Words that make a text one of this kind. */
  private static final Set<String> TELLING = Set.of(
      "FLARE", "FLARED", "JIC", "CONE", "PORT", "BOSS", "ORB", "RING", "ORING", "WASHER", "STUD",
      "CLAW", "LUG", "LUGS", "NH", "NST", "GHT", "GARDEN", "FIRE");

  /** Words that may stand beside them and say nothing more. */
  private static final Set<String> FILLING = Set.of(
      "WITH",
      "AND",
      "FOR",
      "THE",
      "END",
      "COUPLING",
      "THREAD",
      "THREADED",
      "FITTING",
      "HEAD",
      "UNF",
      "UN",
      "SAE",
      "NORTH",
      "O",
      "SEAL",
      "BONDED",
      "SEALING",
      "FACE",
      "SIZE",
      "DASH",
      "KIND",
      "OD",
      "ELASTOMER",
      "FLAT",
      "METRIC");

  private static final String SMALL_UNIFIED = "10-32";

  private static final Map<String, String> SAME = Map.ofEntries(
      Map.entry("FLARED", "FLARE"),
      Map.entry("LUGS", "LUG"),
      Map.entry("NST", "NH"),
      Map.entry("M", "MALE"),
      Map.entry("F", "FEMALE"),
      Map.entry("TWO", "2"),
      Map.entry("FOUR", "4"),
      Map.entry("DEG", "DEGREE"),
      Map.entry("DEGREES", "DEGREE"));

  /** Words that are understood, besides those that only fill. */
  private static final Set<String> MEANT = Set.of(
      "FLARE",
      "JIC",
      "CONE",
      "PORT",
      "BOSS",
      "ORB",
      "RING",
      "WASHER",
      "STUD",
      "CLAW",
      "LUG",
      "NH",
      "GHT",
      "GARDEN",
      "FIRE",
      "MALE",
      "FEMALE",
      "2",
      "4",
      "DEGREE",
      "AMERICAN",
      "EUROPEAN",
      "UNIVERSAL",
      "INVERTED",
      "SWIVEL",
      "NUT",
      "FIXED",
      "TUBE",
      "HOSE",
      "FLAT",
      "O",
      "BONDED",
      "WATER");

  private final String text;
  private final EndScanner scanner;

  /** Where each word stands first. */
  private final Map<String, Integer> words = new HashMap<>();

  /** Words that are none of these; they may be the letters of a pipe thread. */
  private final List<Amount> strange = new ArrayList<>();

  private @Nullable Amount size;
  private @Nullable Amount threadsPerInch;
  private @Nullable Amount angle;
  private @Nullable Amount dash;
  private @Nullable String metric;
  private int metricAt;
  private boolean isMillimetres;
  private boolean isInches;

  private FormScanner(String text) {
    this.text = text;
    this.scanner = new EndScanner(text, EndScanner.EXAMPLES);
  }

  /** Whether a text has a word of this kind, or what may be a metric thread. */
  static boolean isTold(String text) {
    return isTold(text, true);
  }

  /** Whether a text has a word of this kind. */
  static boolean hasTellingWord(String text) {
    return isTold(text, false);
  }

  /** Whether a text begins with the thread of small parts that has no letter of its own: 10-32, also #10-32. */
  private static boolean isSmallUnified(String text) {
    String plain = text.strip();
    String name = plain.startsWith("#") ? plain.substring(1).strip() : plain;
    return name.startsWith(SMALL_UNIFIED)
        && (name.length() == SMALL_UNIFIED.length()
            || "0123456789./".indexOf(name.charAt(SMALL_UNIFIED.length())) < 0);
  }

  private static boolean isTold(String text, boolean byMetricThread) {
    if (byMetricThread && isSmallUnified(text)) {
      return true;
    }
    EndScanner words = new EndScanner(text, EndScanner.EXAMPLES);
    while (!words.isAtEnd()) {
      if (!words.isAtLetter()) {
        words.skip();
        continue;
      }
      String word = words.letters();
      boolean metric = byMetricThread && word.equals("M") && words.isAtNumber();
      if (metric || TELLING.contains(word)) {
        return true;
      }
    }
    return false;
  }

  /** Takes a text apart; refuses with a {@link QuantityFormatException} what has no meaning in any end. */
  static FormScanner of(String text) {
    FormScanner scan = new FormScanner(isSmallUnified(text) ? text.replace('#', ' ') : text);
    scan.scan();
    return scan;
  }

  private void scan() {
    for (scanner.skipBlanks(); !scanner.isAtEnd(); scanner.skipBlanks()) {
      int start = scanner.at();
      if (scanner.isAtNumber()) {
        number();
      } else if (scanner.isAtLetter()) {
        word(start);
      } else if (scanner.next() == '#' || EndScanner.isDash(scanner.next())) {
        scanner.skip();
        if (scanner.isAtNumber()) {
          dash = once(dash, scanner.amount());
        }
      } else if (scanner.next() == ',' || scanner.next() == ';') {
        scanner.skip();
      } else if (!scanner.quotationMark()) {
        throw refused(start, "'" + scanner.next() + "' is not understood");
      }
    }
  }

  private void number() {
    Amount amount = scanner.amount();
    if (scanner.degreeMark() || isDegreeWord()) {
      angle = once(angle, amount);
      return;
    }
    if (isLugs(amount)) {
      words.putIfAbsent(amount.value() == 2.0 ? "2" : "4", amount.start());
      return;
    }
    size = once(size, amount);
    isInches = scanner.inchMark();
    if (!isInches && scanner.follows("MM")) {
      isMillimetres = true;
    } else if (scanner.dash() && scanner.isAtNumber()) {
      threadsPerInch = scanner.amount();
    }
  }

  private boolean isDegreeWord() {
    return scanner.follows("DEGREE") || scanner.follows("DEGREES") || scanner.follows("DEG");
  }

  private boolean isLugs(Amount amount) {
    return (amount.value() == 2.0 || amount.value() == 4.0)
        && (scanner.follows("LUG") || scanner.follows("LUGS"))
        && words.putIfAbsent("LUG", amount.start()) == null;
  }

  private Amount once(@Nullable Amount before, Amount now) {
    if (before != null) {
      throw refused(now.start(), "a second size");
    }
    return now;
  }

  private void word(int start) {
    String word = scanner.letters();
    if (word.equals("M") && scanner.isAtNumber()) {
      metric(start);
      return;
    }
    if (word.equals("ORING")) {
      words.putIfAbsent("O", start);
      word = "RING";
    }
    String meant = SAME.getOrDefault(word, word);
    if (MEANT.contains(meant)) {
      words.putIfAbsent(meant, start);
    } else if (!FILLING.contains(meant)) {
      strange.add(new Amount(0.0, true, start));
    }
  }

  private void metric(int start) {
    if (metric != null) {
      throw refused(start, "a second thread");
    }
    metric = "M" + Digits.plain(scanner.amount().value());
    metricAt = start;
    int behind = scanner.at();
    if (scanner.times() || scanner.dash()) {
      scanner.skipBlanks();
      if (!scanner.isAtNumber()) {
        throw refused(behind, "the pitch of the metric thread is missing");
      }
      metric += "x" + Digits.plain(scanner.amount().value());
    }
  }

  QuantityFormatException refused(int position, String problem) {
    return new QuantityFormatException(text, position, problem, EndScanner.EXAMPLES);
  }

  boolean has(String word) {
    return words.containsKey(word);
  }

  /** Where a word stands; the end of the text if it does not. */
  int at(String word) {
    return words.getOrDefault(word, text.length());
  }

  String text() {
    return text;
  }

  /** A size without threads per inch or with them. */
  @Nullable
  Amount size() {
    return size;
  }

  @Nullable
  Amount threadsPerInch() {
    return threadsPerInch;
  }

  @Nullable
  Amount angle() {
    return angle;
  }

  @Nullable
  Amount dash() {
    return dash;
  }

  /** A metric thread as typed, such as M14x1.5. */
  @Nullable
  String metric() {
    return metric;
  }

  int metricAt() {
    return metricAt;
  }

  /** Whether the size has an inch mark. */
  boolean isInches() {
    return isInches;
  }

  boolean isMillimetres() {
    return isMillimetres;
  }

  /** Whether there are words that are none of a form: the letters of a pipe thread, or a mistake. */
  boolean hasStrangeWord() {
    return !strange.isEmpty();
  }

  int strangeAt() {
    return strange.get(0).start();
  }

  /** The text with the words of a form and commas blanked, so that a pipe thread is left. */
  String pipeThread() {
    StringBuilder left = new StringBuilder(text);
    EndScanner words = new EndScanner(text, EndScanner.EXAMPLES);
    while (!words.isAtEnd()) {
      int start = words.at();
      if (!words.isAtLetter()) {
        words.skip();
        if (",;".indexOf(text.charAt(start)) >= 0) {
          left.setCharAt(start, ' ');
        }
        continue;
      }
      String word = words.letters();
      boolean ofForm = !word.equals("M")
          && !word.equals("F")
          && !word.equals("SWIVEL")
          && !word.equals("MALE")
          && !word.equals("FEMALE")
          && (word.equals("ORING")
              || MEANT.contains(SAME.getOrDefault(word, word))
              || FILLING.contains(word));
      int from = start > 0 && EndScanner.isDash(text.charAt(start - 1)) ? start - 1 : start;
      for (int i = from; ofForm && i < words.at(); i++) {
        left.setCharAt(i, ' ');
      }
    }
    return left.toString();
  }
}
