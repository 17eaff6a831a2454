package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.airfit.flow.FlowElement;
import org.airfit.joint.Chain;

/**
 * What the way that is left to the tool costs at least, and what it leaves of the pressure at most. Both are bounds: the
 * cheapest parts and the widest parts, whether they are the same or not. Not thread-safe: it remembers.
 */
final class Ahead {

  /** What cannot be joined at all; small enough to sum. */
  static final long NEVER = Long.MAX_VALUE / 4;

  private final List<Stock.Row> inRow;
  private final AdapterStock adapters;
  private final SearchAir air;
  private final boolean isWhole;
  private final int toolInlet;
  private final long[] shortBy;
  private final List<List<FlowElement>> widest = new ArrayList<>();
  private final List<Map<Integer, Long>> fromEnd = new ArrayList<>();
  private final List<Map<String, Long>> fromProfile = new ArrayList<>();
  private final Map<Integer, Map<Integer, Long>> joints = new HashMap<>();

  Ahead(Stock stock, AdapterStock adapters, SearchAir air, boolean isWhole) {
    this.inRow = stock.inRow();
    this.adapters = adapters;
    this.air = air;
    this.isWhole = isWhole;
    this.toolInlet = stock.toolInlet();
    this.shortBy = new long[inRow.size() + 1];
    for (int i = inRow.size() - 1; i >= 0; i--) {
      long least = inRow.get(i).suited(isWhole).stream()
          .mapToLong(Candidate::shortBy)
          .min()
          .orElse(0L);
      shortBy[i] = shortBy[i + 1] + least;
    }
    for (Stock.Row position : inRow) {
      widest.add(widest(position.suited(isWhole)));
      fromEnd.add(new HashMap<>());
      fromProfile.add(new HashMap<>());
    }
    fromEnd.add(new HashMap<>());
  }

  /** The rules that all candidates of some position break, as bits. */
  int alwaysBroken() {
    return always(Candidate::broken);
  }

  /** The rules that all candidates of some position leave open, as bits; told only where none may be broken. */
  int alwaysAsked() {
    return isWhole ? always(Candidate::asked) : 0;
  }

  private int always(ToIntFunction<Candidate> bits) {
    int always = 0;
    for (Stock.Row position : inRow) {
      always |=
          position.suited(isWhole).stream().mapToInt(bits).reduce(-1, (one, other) -> one & other);
    }
    return always == -1 ? 0 : always;
  }

  /** How much the positions from one on miss of what can be measured, at least. */
  long shortBy(int position) {
    return shortBy[position];
  }

  /** The elements of which no other leaves at least as much behind. */
  private static List<FlowElement> widest(List<Candidate> candidates) {
    List<Candidate> kept = new ArrayList<>();
    for (Candidate candidate : candidates) {
      if (kept.stream().noneMatch(other -> Width.isAsWide(other.part(), candidate.part()))) {
        kept.removeIf(other -> Width.isAsWide(candidate.part(), other.part()));
        kept.add(candidate);
      }
    }
    List<FlowElement> elements = new ArrayList<>();
    for (Candidate candidate : kept) {
      FlowElement element = candidate.atBest();
      if (element != null) {
        elements.add(element);
      }
    }
    return elements;
  }

  /** The most that can be left of a pressure in front of a position at the tool [Pa]. */
  double pascals(int position, double inFront) {
    double left = inFront;
    for (List<FlowElement> elements : widest.subList(position, inRow.size())) {
      double best = elements.isEmpty() ? left : SearchAir.STARVED;
      for (FlowElement element : elements) {
        best = Math.max(best, air.behind(element, left));
      }
      left = best;
    }
    return left;
  }

  /** The least that the positions from one on cost, from an end that is open. */
  long cost(int position, int end) {
    Map<Integer, Long> known = fromEnd.get(position);
    Long found = known.get(end);
    if (found == null) {
      found = position == inRow.size() ? join(end, toolInlet) : costOf(position, end);
      known.put(end, found);
    }
    return found;
  }

  private long costOf(int position, int end) {
    long least = NEVER;
    for (Map.Entry<Integer, List<Candidate>> goal :
        inRow.get(position).byEnd(isWhole).entrySet()) {
      long joint = join(end, goal.getKey());
      if (joint < NEVER) {
        for (Candidate candidate : goal.getValue()) {
          least = Math.min(least, joint + candidate.cost() + behind(position, candidate));
        }
      }
    }
    return least;
  }

  /** The least that the positions behind a candidate cost. */
  private long behind(int position, Candidate candidate) {
    return candidate.part() instanceof Part.Socket
        ? cost(position + 1, candidate.takes())
        : cost(position + 1, candidate.far());
  }

  /** The least that the positions from one on cost, from a socket that takes these profiles. */
  long cost(int position, Set<String> profiles) {
    long least = NEVER;
    for (String profile : profiles) {
      least = Math.min(
          least, fromProfile.get(position).computeIfAbsent(profile, any -> plug(position, any)));
    }
    return least;
  }

  private long plug(int position, String profile) {
    long least = NEVER;
    for (Candidate plug : inRow.get(position).byProfile(isWhole).getOrDefault(profile, List.of())) {
      least = Math.min(least, plug.cost() + cost(position + 1, plug.far()));
    }
    return least;
  }

  /** The least that the adapters between two ends cost. */
  private long join(int from, int goal) {
    long least = NEVER;
    for (Map.Entry<Integer, Long> reached :
        joints.computeIfAbsent(from, this::reach).entrySet()) {
      if (reached.getValue() < least && adapters.isSound(reached.getKey(), goal)) {
        least = reached.getValue();
      }
    }
    return least == NEVER && !isWhole ? 0L : least;
  }

  /** The ends that can be reached with the cheapest adapters to each. */
  private Map<Integer, Long> reach(int from) {
    Map<Integer, Long> all = new HashMap<>(Map.of(from, 0L));
    Map<Integer, Long> last = Map.of(from, 0L);
    for (int count = 1; count <= Chain.MOST_ADAPTERS; count++) {
      Map<Integer, Long> next = new HashMap<>();
      last.forEach((end, cost) -> adapters
          .onto(end)
          .forEach(adapter -> next.merge(adapter.far(), cost + adapter.cost(), Math::min)));
      next.forEach((end, cost) -> all.merge(end, cost, Math::min));
      last = next;
    }
    return all;
  }
}
