package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.joint.Chain;
import org.airfit.joint.End;
import org.airfit.joint.Mating;

/**
 * Finds adapters that no chain uses: on one of their sides nothing can ever stand, neither a part nor a usual end, even
 * through the other adapters of the list.
 *
 * <p>The search is complete. How many adapters must follow an end before a part can stand there is 0 where the end is a
 * sound joint with an end of a part, or with a usual end; otherwise one more than behind the far end of an adapter that
 * goes on it, whichever takes fewest. An adapter may be used more than once, as a list holds kinds of parts. An adapter
 * is of use where both its sides together want no more than {@link Chain#MOST_ADAPTERS} in a row, itself among them.
 * Each pair of different ends is judged once.
 */
final class AdapterUse {

  /** More than any row has; two of them can be added. */
  private static final int NEVER = 1_000_000;

  private final Set<End> goals = new LinkedHashSet<>();
  private final List<Part.Adapter> adapters = new ArrayList<>();

  /** How many adapters must follow each end of an adapter. */
  private final Map<End, Integer> following = new HashMap<>();

  AdapterUse(PriceList list) {
    goals.addAll(list.usualEnds());
    for (ListedPart article : list.articles()) {
      if (article.part() instanceof Part.Adapter adapter) {
        adapters.add(adapter);
      } else {
        goals.addAll(Ends.all(article.part()));
      }
    }
    search();
  }

  private void search() {
    Map<End, Set<End>> far =
        new HashMap<>(); // of each end, the ends on the other side of such adapters
    for (Part.Adapter adapter : adapters) {
      far.computeIfAbsent(adapter.one(), any -> new LinkedHashSet<>()).add(adapter.other());
      far.computeIfAbsent(adapter.other(), any -> new LinkedHashSet<>()).add(adapter.one());
    }
    List<End> ends = List.copyOf(new LinkedHashSet<>(far.keySet()));
    for (End end : ends) {
      if (goals.stream().anyMatch(goal -> Mating.isSound(end, goal))) {
        following.put(end, 0);
      }
    }
    for (int count = 1; count <= ends.size(); count++) {
      Set<End> behind = new LinkedHashSet<>(); // near ends of adapters that lead to a goal
      for (End near : ends) {
        int least = far.getOrDefault(near, Set.of()).stream()
            .mapToInt(other -> following.getOrDefault(other, NEVER))
            .min()
            .orElse(NEVER);
        if (least == count - 1) {
          behind.add(near);
        }
      }
      for (End end : ends) {
        if (!following.containsKey(end)
            && behind.stream().anyMatch(near -> Mating.isSound(end, near))) {
          following.put(end, count);
        }
      }
      if (!following.containsValue(count)) {
        return;
      }
    }
  }

  /** {@return how many adapters were looked at} */
  int adapters() {
    return adapters.size();
  }

  void addTo(List<ListFault> found) {
    Set<String> told = new LinkedHashSet<>();
    for (Part.Adapter adapter : adapters) {
      int one = following.getOrDefault(adapter.one(), NEVER);
      int other = following.getOrDefault(adapter.other(), NEVER);
      if (one + 1 + other <= Chain.MOST_ADAPTERS || !told.add(adapter.id())) {
        continue;
      }
      found.add(ListFault.of(
          FaultKind.ORPHAN_ADAPTER,
          List.of(adapter.id()),
          units -> adapter.name() + ": " + why(adapter, one >= NEVER, other >= NEVER),
          "Tell what it is sold for, or look whether its ends are misprinted; else take it out."));
    }
  }

  private static String why(Part.Adapter adapter, boolean isOneDead, boolean isOtherDead) {
    if (!isOneDead && !isOtherDead) {
      return "between any two ends of parts, or usual ends of outlets and tools, more than "
          + Chain.MOST_ADAPTERS + " adapters would stand in a row with it.";
    }
    String ends = isOneDead && isOtherDead
        ? "either of its ends, " + adapter.one().label() + " and "
            + adapter.other().label()
        : "its end " + (isOneDead ? adapter.one() : adapter.other()).label();
    return "no other part of the list and no usual end of an outlet or a tool goes on " + ends
        + ", straight or through other adapters of the list.";
  }
}
