package org.airfit.lesson;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** Lines of text in a notebook, the same in every country. */
public final class Say {

  /** Text of more lines may go on over the side of a page. */
  private static final int SHORT = 25;

  private Say() {}

  /**
   * Prints a line below the cell.
   *
   * @param format the text, with the places of {@link String#format}
   * @param values what comes in those places
   */
  public static void say(String format, Object... values) {
    System.out.println(values.length == 0 ? format : String.format(Locale.ROOT, format, values));
  }

  /**
   * Sets lines with the indices of their symbols low, for a notebook to {@code render} as "text/html".
   *
   * @param lines one or more texts, such as "tip diameter (D_t) 11.92 mm"
   * @return the lines as HTML
   */
  public static String typeset(Object... lines) {
    String text = Arrays.stream(lines)
        .map(line -> String.valueOf(line).strip())
        .collect(Collectors.joining("\n"))
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;");
    String kind = text.split("\n").length > SHORT ? "said" : "said short";
    return "<pre class=\"" + kind + "\" style=\"white-space: pre-wrap\">" + lowered(text)
        + "</pre>";
  }

  /** Sets an index low: one letter or digit behind one letter, such as D_t or p_1. */
  private static String lowered(String text) {
    StringBuilder set = new StringBuilder();
    int at = 0;
    while (at < text.length()) {
      if (isSymbol(text, at)) {
        set.append(text.charAt(at)).append("<sub>").append(text.charAt(at + 2)).append("</sub>");
        at += 3;
      } else {
        set.append(text.charAt(at));
        at++;
      }
    }
    return set.toString();
  }

  private static boolean isSymbol(String text, int at) {
    return at + 2 < text.length()
        && Character.isLetter(text.charAt(at))
        && text.charAt(at + 1) == '_'
        && Character.isLetterOrDigit(text.charAt(at + 2))
        && (at == 0 || !isOfWord(text.charAt(at - 1)))
        && (at + 3 == text.length() || !isOfWord(text.charAt(at + 3)));
  }

  private static boolean isOfWord(char letter) {
    return Character.isLetterOrDigit(letter) || letter == '_';
  }

  /**
   * Writes a chance, never as 0 % or 100 %: nothing that was measured is certain.
   *
   * @param chance the chance, from 0 to 1
   * @return it in percent, such as "93.4 %", "< 0.1 %" or "> 99.9 %"
   */
  public static String percent(double chance) {
    if (chance < 0.001) {
      return "< 0.1 %";
    }
    return chance > 0.999 ? "> 99.9 %" : Printed.text("%.1f %%", 100.0 * chance);
  }
}
