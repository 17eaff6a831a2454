package org.airfit.pinned;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A question with its answer.
 *
 * @param area the package that answers
 * @param question the question, which says all that the answer rests on
 * @param answer the answer, a number with all its digits or a word
 * @param unit the SI unit of a number, "1" for a ratio, {@link #WORD} for a word
 */
record Pin(String area, String question, String answer, String unit) {

  static final String WORD = "word";

  /**
   * Numbers are the same within this share. Functions of analysis (exp, log, pow) may differ in their last digit
   * between versions of Java and processors; what a user can see changes by far more.
   */
  private static final double SAME = 1.0e-12;

  /** {@return a short name that stays as long as the question does} */
  String id() {
    return area + "-" + hash(question).substring(0, 6);
  }

  /** Whether the other answer is the same. */
  boolean isAnsweredBy(Pin other) {
    if (!unit.equals(other.unit)) {
      return false;
    }
    if (unit.equals(WORD)) {
      return answer.equals(other.answer);
    }
    double one = Double.parseDouble(answer);
    double two = Double.parseDouble(other.answer);
    return Math.abs(one - two) <= SAME * Math.max(Math.abs(one), Math.abs(two));
  }

  static String hash(String text) {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
