package org.airfit.quantity;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Unit words with what they mean, found again however they are typed.
 *
 * <p>Spaces, brackets, dots between factors and carets do not matter: "bar (g)", "barg" and "bar(g)" are one word.
 * Capitals do not matter either, with one exception: a small m in front is a thousandth and a capital M a million. In a
 * word of mixed capitals the front letter must therefore be right (mPa is not MPa); one typed all small or all large
 * tells nothing and is taken as known.
 *
 * @param <M> what a word means
 */
final class Lexicon<M> {

  /** Zero-width space and joiners, direction marks, byte order mark. */
  private static final String WITHOUT_WIDTH = "\u200b\u200c\u200d\u200e\u200f\u2060\ufeff";

  private static final char FIRST_BEYOND_ASCII = '\u007f';

  private final Map<String, M> exact = new HashMap<>();
  private final Map<String, Map.Entry<String, M>> ignoringCase = new HashMap<>();
  private final Set<String> ambiguous = new HashSet<>();

  /** Adds a word; the first meaning stays where {@code word} is known already. */
  void addIfAbsent(String word, M meaning) {
    if (!exact.containsKey(normalised(word))) {
      add(word, meaning);
    }
  }

  void add(String word, M meaning) {
    String key = normalised(word);
    M before = exact.putIfAbsent(key, meaning);
    if (before != null && !before.equals(meaning)) {
      throw new IllegalStateException(
          "\"" + word + "\" would mean both " + before + " and " + meaning);
    }
    Map.Entry<String, M> alike = ignoringCase.putIfAbsent(folded(key), Map.entry(key, meaning));
    if (alike != null && !alike.getValue().equals(meaning)) {
      ambiguous.add(folded(key));
    }
  }

  /** What the word means, or null if it is unknown. */
  @Nullable
  M find(String typed) {
    M asIs = exact.get(typed);
    if (asIs != null) {
      return asIs; // most words are typed as they are kept
    }
    String key = normalised(typed);
    M found = exact.get(key);
    if (found != null || key.isEmpty() || ambiguous.contains(folded(key))) {
      return found;
    }
    Map.Entry<String, M> alike = ignoringCase.get(folded(key));
    return alike == null || hasWrongPrefix(key, alike.getKey()) ? null : alike.getValue();
  }

  private static boolean hasWrongPrefix(String typed, String known) {
    boolean oneCase = typed.equals(folded(typed)) || typed.equals(typed.toUpperCase(Locale.ROOT));
    char front = typed.charAt(0);
    return !oneCase && (front == 'm' || front == 'M') && front != known.charAt(0);
  }

  private static String folded(String word) {
    return word.toLowerCase(Locale.ROOT);
  }

  /**
   * Blanks of every kind, those that do not break a line and those without a width too: texts are pasted from pages.
   */
  static boolean isSpace(char c) {
    if (c > ' ' && c < FIRST_BEYOND_ASCII) {
      return false;
    }
    return Character.isWhitespace(c) || Character.isSpaceChar(c) || WITHOUT_WIDTH.indexOf(c) >= 0;
  }

  static int skipSpaces(String text, int from) {
    int at = from;
    while (at < text.length() && isSpace(text.charAt(at))) {
      at++;
    }
    return at;
  }

  /** One spelling for what looks alike on paper. */
  private static String normalised(String word) {
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < word.length(); i++) {
      char c = word.charAt(i);
      switch (c) {
        case '²', '₂' -> plain.append('2');
        case '³' -> plain.append('3');
        case 'μ' -> plain.append('µ');
        case 'º', '˚' -> plain.append('°');
        case '℃' -> plain.append("°C");
        case '℉' -> plain.append("°F");
        case '″', '”', '“', '„', '‟', '＂' -> plain.append('"');
        case '′', '’', '‘', '‛', '´', '＇' -> plain.append('\'');
        case '(', ')', '[', ']', '.', '·', '⋅', '•', '*', '^' -> {}
        default -> {
          if (!isSpace(c)) {
            plain.append(c);
          }
        }
      }
    }
    return plain.toString();
  }
}
