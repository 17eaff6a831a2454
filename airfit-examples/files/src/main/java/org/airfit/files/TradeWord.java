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
      Map.entry("outside", "outdoors"),
      Map.entry("inside", "indoors"),
      Map.entry("marine", "salt air"),
      Map.entry("aluminum", "aluminium"),
      Map.entry("stainless", "stainless steel"));

  /** Words that may mean several things: what to find out, and what is typed then. */
  private static final Map<String, String> OPEN = Map.of(
      "wet",
      "; that may mean oil or water: lubricated is air to which oil is added, dry is air without; whether a dryer"
          + " takes the water out is told by supply.dryer");

  private TradeWord() {}

  /**
   * Names the word of the file in the middle of a complaint.
   *
   * @param word what was typed
   * @param known the words that are accepted
   * @return such as "; here it is called socket", or what to find out of a word that may mean several things; empty
   *     where neither is so
   */
  public static String named(String word, Collection<String> known) {
    String typed = word.strip().toLowerCase(Locale.ROOT);
    if (OPEN.containsKey(typed) && known.contains("lubricated")) {
      return String.valueOf(OPEN.get(typed));
    }
    String meant = WORDS.get(typed);
    return meant != null && known.contains(meant) ? "; here it is called " + meant : "";
  }
}
