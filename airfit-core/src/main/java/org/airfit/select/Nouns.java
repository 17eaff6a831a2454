package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the parts of a run are called in a sentence. Of several hoses, filters, regulators or the like the sentence says
 * which: "first filter to second filter". Halves of a coupling follow from the part that they stand next to.
 */
final class Nouns {

  private static final List<String> ORDINALS = List.of(
      "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth",
      "tenth");

  private Nouns() {}

  /**
   * What parts are called, those of each line counted for themselves.
   *
   * @param placed the parts
   * @param lines the line of each
   */
  static List<String> of(List<Placed> placed, List<?> lines) {
    Map<List<Object>, Integer> all = new HashMap<>();
    for (int i = 0; i < placed.size(); i++) {
      all.merge(kind(placed, i, lines), 1, Integer::sum);
    }
    Map<List<Object>, Integer> seen = new HashMap<>();
    List<String> nouns = new ArrayList<>();
    for (int i = 0; i < placed.size(); i++) {
      List<Object> kind = kind(placed, i, lines);
      int nth = seen.merge(kind, 1, Integer::sum);
      boolean isOnly = all.getOrDefault(kind, 0) == 1;
      Position position = placed.get(i).position();
      nouns.add(
          isOnly || position.isCoupling() ? position.noun() : ordinal(nth) + " " + position.noun());
    }
    return nouns;
  }

  private static List<Object> kind(List<Placed> placed, int index, List<?> lines) {
    return List.<Object>of(lines.get(index), placed.get(index).position().noun());
  }

  private static String ordinal(int nth) {
    return nth <= ORDINALS.size() ? ORDINALS.get(nth - 1) : nth + "th";
  }
}
