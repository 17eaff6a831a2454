package org.airfit.joint;

/** The indefinite article in a sentence. */
final class Article {

  private Article() {}

  /** A noun with "a" or "an" before it, by the sound of its first letter or number: an adapter, an 8 mm tube, an R, an M5. */
  static String with(String noun) {
    int digits = 0;
    while (digits < noun.length() && Character.isDigit(noun.charAt(digits))) {
      digits++;
    }
    String number = noun.substring(0, digits);
    boolean vowel = "aeiouR".indexOf(noun.charAt(0)) >= 0
        || number.startsWith("8")
        || number.equals("11")
        || number.equals("18")
        || (noun.startsWith("M") && noun.length() > 1 && Character.isDigit(noun.charAt(1)));
    return (vowel ? "an " : "a ") + noun;
  }
}
