package org.airfit.files;

import java.util.Objects;

/**
 * Texts as they may be shown: signs that steer a terminal, turn the direction of writing or show nothing at all become
 * their code, such as "\\u001B".
 *
 * <p>Names come from files and from command lines, and an escape sequence in one can recolour, erase or fake what
 * stands beside it.
 */
public final class Printable {

  private Printable() {}

  /**
   * Makes a text harmless on one line.
   *
   * @param text the text
   * @return the text with every run of line ends and tabs as a blank, and other such signs as their code
   */
  public static String line(String text) {
    Objects.requireNonNull(text, "text");
    boolean isOneLine = text.indexOf('\n') < 0 && text.indexOf('\r') < 0 && text.indexOf('\t') < 0;
    return shown(isOneLine ? text : text.replaceAll("[\\n\\r\\t]+", " "), false);
  }

  /**
   * Makes a text of several lines harmless.
   *
   * @param text the text
   * @return the text with its line feeds, and other such signs as their code
   */
  public static String lines(String text) {
    Objects.requireNonNull(text, "text");
    return shown(text, true);
  }

  private static String shown(String text, boolean lineFeeds) {
    int i = firstNotToBeShown(text, lineFeeds);
    if (i == text.length()) {
      return text;
    }
    StringBuilder out = new StringBuilder(text.length()).append(text, 0, i);
    while (i < text.length()) {
      int sign = text.codePointAt(i);
      if (isHarmless(sign) || (lineFeeds && sign == '\n')) {
        out.appendCodePoint(sign);
      } else {
        out.append(code(sign));
      }
      i += Character.charCount(sign);
    }
    return out.toString();
  }

  /** Where the first sign stands that does not show itself; the length of the text where there is none. */
  private static int firstNotToBeShown(String text, boolean lineFeeds) {
    int i = 0;
    while (i < text.length()) {
      char unit = text.charAt(i);
      if (unit < ' ' || unit > '~') {
        int sign = text.codePointAt(i);
        if (!isHarmless(sign) && !(lineFeeds && sign == '\n')) {
          return i;
        }
        i += Character.charCount(sign);
      } else {
        i++;
      }
    }
    return i;
  }

  private static String code(int sign) {
    StringBuilder hex =
        new StringBuilder(Integer.toHexString(sign).toUpperCase(java.util.Locale.ROOT));
    while (hex.length() < 4) {
      hex.insert(0, '0');
    }
    return "\\u" + hex;
  }

  /** Whether a sign shows itself and nothing else. */
  static boolean isHarmless(int sign) {
    boolean turns = sign == 0x061C
        || sign == 0x200E
        || sign == 0x200F
        || (sign >= 0x2028 && sign <= 0x202E)
        || (sign >= 0x2066 && sign <= 0x2069)
        || sign == 0xFEFF;
    boolean empty = sign == 0x00AD
        || sign == 0x180E
        || sign == 0x200B
        || (sign >= 0x2060 && sign <= 0x2065)
        || (sign >= 0xFFF9 && sign <= 0xFFFB)
        || (sign >= 0xE0000 && sign <= 0xE007F);
    boolean half = sign >= 0xD800 && sign <= 0xDFFF; // a surrogate without its other half
    return !Character.isISOControl(sign) && !turns && !empty && !half;
  }

  /** The first sign of a text, line ends and tabs aside, that must not be shown, as its code; empty if none is. */
  static String firstHarmful(String text) {
    int i = 0;
    while (i < text.length()) {
      int sign = text.codePointAt(i);
      if (!isHarmless(sign) && "\n\r\t".indexOf(sign) < 0) {
        return code(sign);
      }
      i += Character.charCount(sign);
    }
    return "";
  }
}
