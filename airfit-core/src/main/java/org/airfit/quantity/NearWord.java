package org.airfit.quantity;

import java.util.Collection;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * The known word that somebody most likely meant with one that is not known: for whoever reads what people type.
 *
 * <p>The distance between two words is the fewest letters to insert, drop, change or swap with their neighbour
 * (optimal string alignment), capitals, blanks and hyphens aside. How far a word may lie is our own choice: one letter
 * in four, at least one.
 */
public final class NearWord {

  private static final int LETTERS_PER_SLIP = 4;

  private NearWord() {}

  /**
   * Finds the known word that is nearest to another.
   *
   * @param word the word that is not known
   * @param known the words that are
   * @return the nearest, of two as near the first; empty if none is near
   */
  public static Optional<String> to(String word, Collection<String> known) {
    Objects.requireNonNull(word, "word");
    Objects.requireNonNull(known, "known");
    String meant = plain(word);
    Optional<String> nearest = Optional.empty();
    int least = Integer.MAX_VALUE;
    for (String each : known) {
      String other = plain(each);
      int distance = distance(meant, other);
      int slips = Math.max(1, Math.max(meant.length(), other.length()) / LETTERS_PER_SLIP);
      if (distance <= slips && distance < least) {
        nearest = Optional.of(each);
        least = distance;
      }
    }
    return nearest;
  }

  /**
   * Names the nearest known word in the middle of a complaint.
   *
   * @param word the word that is not known
   * @param known the words that are
   * @return such as "; nearest: NPT"; empty if none is near
   */
  public static String named(String word, Collection<String> known) {
    return to(word, known).map(nearest -> "; nearest: " + nearest).orElse("");
  }

  private static String plain(String word) {
    StringBuilder plain = new StringBuilder();
    String lower = word.toLowerCase(Locale.ROOT);
    for (int i = 0; i < lower.length(); i++) {
      char sign = lower.charAt(i);
      if (sign != '-' && sign != '_' && !Character.isWhitespace(sign)) {
        plain.append(sign);
      }
    }
    return plain.toString();
  }

  private static int distance(String one, String other) {
    int[] twoBefore = new int[other.length() + 1];
    int[] before = new int[other.length() + 1];
    int[] now = new int[other.length() + 1];
    for (int j = 0; j <= other.length(); j++) {
      before[j] = j;
    }
    for (int i = 1; i <= one.length(); i++) {
      now[0] = i;
      for (int j = 1; j <= other.length(); j++) {
        int changed = before[j - 1] + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
        now[j] = Math.min(changed, 1 + Math.min(before[j], now[j - 1]));
        if (i > 1
            && j > 1
            && one.charAt(i - 1) == other.charAt(j - 2)
            && one.charAt(i - 2) == other.charAt(j - 1)) {
          now[j] = Math.min(now[j], twoBefore[j - 2] + 1);
        }
      }
      int[] free = twoBefore;
      twoBefore = before;
      before = now;
      now = free;
    }
    return before[other.length()];
  }
}
