package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A combination of parts with its cost and what arrives at the tool, or one as far as it is chosen, with the bounds
 * of both.
 *
 * @param asked how many rules its parts leave open
 * @param cost what it costs by the objective; at least, where it is not whole
 * @param pascals what arrives [Pa above atmosphere], in whole pascals; at most, where it is not whole
 * @param hose the hose
 * @param outletSocket the socket at the outlet, or null where it is not chosen yet
 * @param hosePlug the plug of the hose, or null
 * @param toolSocket the socket of the tool, or null
 * @param toolPlug the plug of the tool, or null
 */
record Combination(
    int asked,
    long cost,
    long pascals,
    Part.Hose hose,
    Part.@Nullable Socket outletSocket,
    Part.@Nullable Plug hosePlug,
    Part.@Nullable Socket toolSocket,
    Part.@Nullable Plug toolPlug) {

  private static final Comparator<Combination> FEWEST_QUESTIONS =
      Comparator.comparingInt(Combination::asked);

  private static final Comparator<Combination> MOST_PRESSURE =
      Comparator.comparingLong(Combination::pascals).reversed();

  /** The fewest questions first, then the cheapest, then the one of most pressure, then by name. */
  static final Comparator<Combination> BY_COST = FEWEST_QUESTIONS
      .thenComparingLong(Combination::cost)
      .thenComparing(MOST_PRESSURE)
      .thenComparing(Combination::byName);

  /** The fewest questions first, then most pressure, then the cheapest, then by name. */
  static final Comparator<Combination> BY_PRESSURE = FEWEST_QUESTIONS
      .thenComparing(MOST_PRESSURE)
      .thenComparingLong(Combination::cost)
      .thenComparing(Combination::byName);

  private List<@Nullable Part> parts() {
    List<@Nullable Part> parts = new ArrayList<>();
    parts.add(hose);
    parts.add(outletSocket);
    parts.add(hosePlug);
    parts.add(toolSocket);
    parts.add(toolPlug);
    return parts;
  }

  /** By name, the hose first; what is not chosen yet comes before all. */
  static int byName(Combination one, Combination other) {
    List<@Nullable Part> own = one.parts();
    List<@Nullable Part> others = other.parts();
    for (int i = 0; i < own.size(); i++) {
      Part a = own.get(i);
      Part b = others.get(i);
      if (a == null || b == null) {
        return a == b ? 0 : a == null ? -1 : 1;
      }
      int order = a == b ? 0 : Catalogue.BY_NAME.compare(a, b);
      if (order != 0) {
        return order;
      }
    }
    return 0;
  }
}
