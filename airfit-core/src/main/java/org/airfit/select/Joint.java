package org.airfit.select;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.airfit.thread.End;
import org.airfit.thread.Mating;

/**
 * Two ends that must be joined, and the fewest adapters that join them soundly.
 *
 * @param where what is joined, such as "wall outlet to socket"
 * @param upstream the end towards the supply
 * @param downstream the end towards the tool
 * @param adapters the adapters between, from the supply on; empty where the ends meet directly
 * @param matings every pair of ends that meet, from the supply on; if the last is not sound, nothing joins them
 */
public record Joint(
    String where, End upstream, End downstream, List<Part.Adapter> adapters, List<Mating> matings) {

  /** More than three pieces on one another is a lever, not a joint. This project's rule. */
  private static final int MOST_ADAPTERS = 3;

  private record Reached(End end, List<Part.Adapter> adapters, List<Mating> matings) {}

  /** Looks for the shortest chain, breadth first; an adapter may be turned round. */
  static Joint of(String where, End upstream, End downstream, List<Part.Adapter> stock) {
    Mating direct = Mating.of(upstream, downstream);
    if (direct.verdict().isSound()) {
      return new Joint(where, upstream, downstream, List.of(), List.of(direct));
    }
    Deque<Reached> open = new ArrayDeque<>();
    Set<End> seen = new HashSet<>();
    open.add(new Reached(upstream, List.of(), List.of()));
    seen.add(upstream);
    while (!open.isEmpty()) {
      Reached from = open.remove();
      if (!from.adapters().isEmpty()) {
        Mating last = Mating.of(from.end(), downstream);
        if (last.verdict().isSound()) {
          return new Joint(
              where, upstream, downstream, from.adapters(), longer(from.matings(), last));
        }
      }
      if (from.adapters().size() < MOST_ADAPTERS) {
        for (Part.Adapter adapter : stock) {
          step(from, adapter, adapter.one(), adapter.other(), seen, open);
          step(from, adapter, adapter.other(), adapter.one(), seen, open);
        }
      }
    }
    return new Joint(where, upstream, downstream, List.of(), List.of(direct));
  }

  private static void step(
      Reached from, Part.Adapter adapter, End near, End far, Set<End> seen, Deque<Reached> open) {
    Mating mating = Mating.of(from.end(), near);
    if (mating.verdict().isSound() && seen.add(far)) {
      open.add(new Reached(far, longer(from.adapters(), adapter), longer(from.matings(), mating)));
    }
  }

  private static <T> List<T> longer(List<T> list, T last) {
    List<T> longer = new ArrayList<>(list);
    longer.add(last);
    return List.copyOf(longer);
  }

  /** {@return whether every pair of ends that meet is sound} */
  public boolean isSound() {
    return matings.get(matings.size() - 1).verdict().isSound();
  }

  /** {@return what meets what, in words} */
  public String inWords() {
    if (!isSound()) {
      return where + ": " + upstream.label() + " and " + downstream.label() + " are not joined ("
          + matings.get(0).reason() + ")";
    }
    if (adapters.isEmpty()) {
      return where + ": " + downstream.label() + " goes straight to " + upstream.label();
    }
    return where + ": " + upstream.label() + " to " + downstream.label() + " through "
        + String.join(" and ", adapters.stream().map(Part.Adapter::name).toList());
  }
}
