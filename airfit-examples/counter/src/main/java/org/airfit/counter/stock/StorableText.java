package org.airfit.counter.stock;

/** Which texts every database gives back as they are. */
final class StorableText {

  private StorableText() {}

  /**
   * Whether a text can be stored: no NUL, which PostgreSQL refuses, and no half of a sign of two halves, of which it
   * makes a question mark, so that two texts become one.
   */
  static boolean isStorable(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == 0 || Character.isLowSurrogate(c)) {
        return false;
      }
      if (Character.isHighSurrogate(c)
          && (++i == text.length() || !Character.isLowSurrogate(text.charAt(i)))) {
        return false;
      }
    }
    return true;
  }
}
