package org.airfit.quantity;

import org.jspecify.annotations.Nullable;

/**
 * Where the parts of a reference state stand in a text such as "shop (15 °C, 100 kPa(a), dry)".
 *
 * @param open where the bracket behind the name opens
 * @param first where the comma behind the temperature stands
 * @param second where the comma behind the pressure stands
 * @param close where the bracket closes
 */
record StateText(int open, int first, int second, int close) {

  /** The parts of {@code text}, or null if it does not end in a bracket with three of them. */
  static @Nullable StateText of(String text) {
    int close = text.length() - 1;
    while (close >= 0 && Lexicon.isSpace(text.charAt(close))) {
      close--;
    }
    int open = partnerOf(text, close);
    int first = text.indexOf(',', Math.max(open, 0));
    int second = first < 0 ? -1 : text.indexOf(',', first + 1);
    boolean isWhole =
        open >= 0 && second >= 0 && second < close && text.indexOf(',', second + 1) < 0;
    return isWhole ? new StateText(open, first, second, close) : null;
  }

  /** Where the bracket opens that closes at {@code close}, as a name may have brackets of its own. */
  private static int partnerOf(String text, int close) {
    int depth = 0;
    for (int i = close; i >= 0; i--) {
      depth += text.charAt(i) == ')' ? 1 : 0;
      depth -= text.charAt(i) == '(' ? 1 : 0;
      if (depth <= 0) {
        return text.charAt(close) == ')' ? i : -1;
      }
    }
    return -1;
  }
}
