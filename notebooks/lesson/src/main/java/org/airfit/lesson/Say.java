package org.airfit.lesson;

import java.util.Locale;

/** Lines of text in a notebook, the same in every country. */
public final class Say {

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
   * Writes a chance, never as 0 % or 100 %: nothing that was measured is certain.
   *
   * @param chance the chance, from 0 to 1
   * @return it in percent, such as "93.4 %", "< 0.1 %" or "> 99.9 %"
   */
  public static String percent(double chance) {
    if (chance < 0.001) {
      return "< 0.1 %";
    }
    return chance > 0.999 ? "> 99.9 %" : String.format(Locale.ROOT, "%.1f %%", 100.0 * chance);
  }
}
