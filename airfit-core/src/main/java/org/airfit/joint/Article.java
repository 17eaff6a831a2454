package org.airfit.joint;

/** The indefinite article in a sentence. */
final class Article {

  private Article() {}

  /** A noun with "a" or "an" before it, by the sound of its first letter or number: an adapter, an 8 mm tube, an R. */
  static String with(String noun) {
    boolean vowel = "aeiou".indexOf(noun.charAt(0)) >= 0
        || noun.startsWith("R")
        || noun.startsWith("8")
        || noun.startsWith("11 ")
        || noun.startsWith("11.")
        || noun.startsWith("18 ")
        || noun.startsWith("18.");
    return (vowel ? "an " : "a ") + noun;
  }
}
