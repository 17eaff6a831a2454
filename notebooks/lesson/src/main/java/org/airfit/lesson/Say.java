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
}
