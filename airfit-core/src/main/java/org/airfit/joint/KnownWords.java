package org.airfit.joint;

import java.util.List;
import org.airfit.quantity.NearWord;

/** The words of which the names of ends are made, for what is said of a word that is none of them. */
final class KnownWords {

  /** What is typed most comes first: of two words that are as near the first is named. */
  private static final List<String> WORDS = List.of(
      "NPT",
      "male",
      "female",
      "BSPT",
      "BSPP",
      "NPTF",
      "NPSM",
      "NPSC",
      "NPSF",
      "NPSI",
      "FIP",
      "MIP",
      "FNPT",
      "MNPT",
      "FPT",
      "MPT",
      "swivel",
      "hose",
      "barb",
      "tube",
      "push-in",
      "flare",
      "port",
      "stud",
      "claw",
      "O-ring",
      "washer",
      "garden",
      "coupling",
      "thread",
      "nut",
      "lug",
      "European",
      "universal");

  /** Words for a part or for its profile, which tell nothing of its end; those of the US trade among them. */
  private static final List<String> PARTS = List.of(
      "quick",
      "connect",
      "disconnect",
      "coupler",
      "socket",
      "plug",
      "nipple",
      "profile",
      "interchange",
      "industrial",
      "automotive",
      "fitting",
      "connector");

  private KnownWords() {}

  /** Says that a word is not understood, and which one is nearest; of a word that is out of place none is. */
  static String notUnderstood(String word) {
    if (PARTS.stream().anyMatch(word::equalsIgnoreCase)) {
      return "'" + word + "' tells the part, not how it ends: type its thread without that word,"
          + " such as \"1/4 NPT male\"";
    }
    boolean isKnown = WORDS.stream().anyMatch(word::equalsIgnoreCase);
    return "'" + word + "' is not understood" + (isKnown ? "" : NearWord.named(word, WORDS));
  }
}
