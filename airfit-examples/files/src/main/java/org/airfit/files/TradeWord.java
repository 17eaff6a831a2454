package org.airfit.files;

import java.util.Collection;
import java.util.Locale;
import java.util.Map;

/**
 * Words of the trade for what a file calls otherwise, so that whoever types them is told the word of the file. They are
 * common practice, no source; those of the glossary.
 */
public final class TradeWord {

  private static final Map<String, String> WORDS = Map.ofEntries(
      Map.entry("coupler", "socket"),
      Map.entry("quick coupler", "socket"),
      Map.entry("quick connect", "coupling"),
      Map.entry("oiler", "lubricator"),
      Map.entry("check valve", "non return valve"),
      Map.entry("ball valve", "shut off valve"),
      Map.entry("shutoff valve", "shut off valve"),
      Map.entry("manifold", "splitter"),
      Map.entry("tee", "splitter"),
      Map.entry("wye", "splitter"),
      Map.entry("hose reel", "reel"),
      Map.entry("filter-regulator", "filter regulator"),
      Map.entry("filter/regulator", "filter regulator"),
      Map.entry("fr", "filter regulator"),
      Map.entry("frl", "filter regulator lubricator"),
      Map.entry("filter-regulator-lubricator", "filter regulator lubricator"),
      Map.entry("velocity fuse", "hose fuse"),
      Map.entry("oiled", "lubricated"),
      Map.entry("wet", "lubricated"),
      Map.entry("outside", "outdoors"),
      Map.entry("inside", "indoors"),
      Map.entry("marine", "salt air"),
      Map.entry("aluminum", "aluminium"),
      Map.entry("stainless", "stainless steel"));

  private TradeWord() {}

  /**
   * Names the word of the file in the middle of a complaint.
   *
   * @param word what was typed
   * @param known the words that are accepted
   * @return such as "; here it is called socket"; empty where none of the accepted words is meant for sure
   */
  public static String named(String word, Collection<String> known) {
    String meant = WORDS.get(word.strip().toLowerCase(Locale.ROOT));
    return meant != null && known.contains(meant) ? "; here it is called " + meant : "";
  }
}
