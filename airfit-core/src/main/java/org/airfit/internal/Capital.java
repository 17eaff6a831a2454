package org.airfit.internal;

/** Beginnings of sentences. */
public final class Capital {

  private Capital() {}

  /**
   * Begins a text with a capital letter.
   *
   * @param text the text, not empty
   * @return the same text, its first letter a capital
   */
  public static String first(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
