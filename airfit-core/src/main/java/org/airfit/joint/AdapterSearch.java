package org.airfit.joint;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.quantity.HoseBore;
import org.airfit.thread.ThreadFamily;
import org.jspecify.annotations.Nullable;

/**
 * The fewest standard adapters between two ends, every joint sound by {@link EndPairs}.
 *
 * <p>Ends are places, adapters are roads, and two ends that mate are one step apart. It goes piece by piece, and keeps
 * for every end the best way that arrives there: of equally many pieces the one whose joints are of one family and one
 * bore, then the one that changes size least with the fewest nipples and couplings, then the first in the order of
 * {@link StandardAdapter#all()}. Costs sum along a way, so that the best way of n pieces begins with a best way of
 * n − 1. It starts at the end whose label comes
 * first, so that both directions find the same pieces.
 */
final class AdapterSearch {

  /** More than three pieces on one another is a lever, not a joint. A choice of this project. */
  static final int MOST_ADAPTERS = 3;

  /** What a joint or a piece of two families or two names costs, against one size that a piece changes. */
  private static final int OTHER_FAMILY = 100;

  /**
   * What a piece with threads of two standards costs: no way goes to the other standard and back, or through a flare,
   * port or claw that neither end has.
   */
  private static final int OTHER_STANDARD = 10_000;

  /** A road to an end, by numbers. */
  private record Road(int far, int adapter, int cost) {}

  /** A way as far as it goes, with its last adapter by number; the end it leaves open is the place it is kept at. */
  private record Way(int cost, int adapter, @Nullable Way before) {

    /** Before the first adapter. */
    static final Way START = new Way(0, -1, null);

    /** Negative if this way comes first among ways of one cost and as many pieces. */
    int compareAdapters(Way other) {
      if (before == null || other.before == null) {
        return 0;
      }
      int earlier = before.compareAdapters(other.before);
      return earlier != 0 ? earlier : Integer.compare(adapter, other.adapter);
    }

    boolean isBetterThan(@Nullable Way other) {
      return other == null
          || cost < other.cost
          || (cost == other.cost && compareAdapters(other) < 0);
    }

    List<StandardAdapter> adapters() {
      List<StandardAdapter> adapters = new ArrayList<>();
      for (Way way = this; way.before != null; way = way.before) {
        adapters.add(StandardAdapter.all().get(way.adapter));
      }
      Collections.reverse(adapters);
      return List.copyOf(adapters);
    }
  }

  /** Loaded on first use: the ends of all adapters, the roads from each, and which of them mate. */
  private static final class Loaded {
    static final List<End> ENDS;
    static final List<List<Road>> ROADS = new ArrayList<>();
    static final List<int[]> MATES = new ArrayList<>();

    static {
      Map<End, Integer> numbers = new LinkedHashMap<>();
      List<StandardAdapter> adapters = StandardAdapter.all();
      for (int i = 0; i < adapters.size(); i++) {
        int one = number(numbers, adapters.get(i).one());
        int other = number(numbers, adapters.get(i).other());
        int cost = cost(adapters.get(i));
        ROADS.get(one).add(new Road(other, i, cost));
        if (one != other) {
          ROADS.get(other).add(new Road(one, i, cost));
        }
      }
      ENDS = List.copyOf(numbers.keySet());
      ENDS.forEach(end -> MATES.add(mates(ENDS, end)));
    }

    private static int number(Map<End, Integer> numbers, End end) {
      Integer known = numbers.get(end);
      if (known != null) {
        return known;
      }
      numbers.put(end, numbers.size());
      ROADS.add(new ArrayList<>());
      return numbers.size() - 1;
    }
  }

  private AdapterSearch() {}

  /** What a piece costs: sizes, standard and family that it changes, and one more for a nipple or coupling. */
  static int cost(StandardAdapter adapter) {
    if (adapter.one() instanceof End.Claw) {
      return OTHER_STANDARD;
    }
    int sizes = StandardShapes.size(adapter.one()).stepsTo(StandardShapes.size(adapter.other()));
    if (adapter.one() instanceof End.Threaded a && adapter.other() instanceof End.Threaded b) {
      return sizes
          + (a.gender() == b.gender() ? 1 : 0)
          + (ThreadPairs.isOfOneForm(a, b) ? 0 : OTHER_STANDARD)
          + (a.family() == b.family() ? 0 : OTHER_FAMILY);
    }
    boolean changesForm =
        adapter.one() instanceof End.Formed != adapter.other() instanceof End.Formed;
    return sizes + (changesForm ? OTHER_STANDARD : 0);
  }

  private static int[] mates(List<End> ends, End end) {
    List<Integer> mates = new ArrayList<>();
    for (int i = 0; i < ends.size(); i++) {
      if (EndPairs.isSound(end, ends.get(i))) {
        mates.add(i);
      }
    }
    return mates.stream().mapToInt(Integer::intValue).toArray();
  }

  /** What a sound joint costs: nothing if both ends go by one name; twice where a foreign thread wants a seat. */
  static int joint(End one, End other) {
    if (one instanceof End.Threaded a && other instanceof End.Threaded b) {
      boolean onSeat = a.family() == ThreadFamily.NPSM || b.family() == ThreadFamily.NPSM;
      return a.family() == b.family() ? 0 : onSeat ? 2 * OTHER_FAMILY : OTHER_FAMILY;
    }
    return bore(one).equals(bore(other)) ? 0 : OTHER_FAMILY;
  }

  private static Optional<HoseBore> bore(End end) {
    return end instanceof End.Barb barb
        ? Optional.of(barb.bore())
        : end instanceof End.HoseEnd hose ? Optional.of(hose.bore()) : Optional.empty();
  }

  /** {@return whether any standard adapter has an end that mates with this one} */
  static boolean isServed(End end) {
    return mates(Loaded.ENDS, end).length > 0;
  }

  /**
   * Looks for what goes between two ends that do not mate themselves.
   *
   * @return the adapters from {@code from} on; empty if no {@value #MOST_ADAPTERS} of them do
   */
  static List<StandardAdapter> between(End from, End to) {
    if (from.label().compareTo(to.label()) > 0) {
      List<StandardAdapter> back = new ArrayList<>(between(to, from));
      Collections.reverse(back);
      return List.copyOf(back);
    }
    int[] last = mates(Loaded.ENDS, to);
    Map<Integer, Way> ways = firstPiece(from);
    for (int pieces = 1; pieces <= MOST_ADAPTERS; pieces++) {
      Way best = null;
      for (int end : last) {
        Way way = ways.get(end);
        if (way != null) {
          int cost = way.cost + joint(Loaded.ENDS.get(end), to);
          Way closed = new Way(cost, way.adapter, way.before);
          best = closed.isBetterThan(best) ? closed : best;
        }
      }
      if (best != null) {
        return best.adapters();
      }
      ways = pieces < MOST_ADAPTERS ? oneMore(ways) : Map.of();
    }
    return List.of();
  }

  private static Map<Integer, Way> firstPiece(End from) {
    Map<Integer, Way> next = new LinkedHashMap<>();
    for (int near : mates(Loaded.ENDS, from)) {
      step(Way.START, joint(from, Loaded.ENDS.get(near)), near, next);
    }
    return next;
  }

  private static Map<Integer, Way> oneMore(Map<Integer, Way> ways) {
    Map<Integer, Way> next = new LinkedHashMap<>();
    ways.forEach((end, way) -> {
      for (int near : Loaded.MATES.get(end)) {
        step(way, joint(Loaded.ENDS.get(end), Loaded.ENDS.get(near)), near, next);
      }
    });
    return next;
  }

  private static void step(Way way, int joint, int near, Map<Integer, Way> next) {
    for (Road road : Loaded.ROADS.get(near)) {
      int cost = way.cost + joint + road.cost;
      Way known = next.get(road.far);
      if (known == null || cost <= known.cost) {
        Way longer = new Way(cost, road.adapter, way);
        if (longer.isBetterThan(known)) {
          next.put(road.far, longer);
        }
      }
    }
  }
}
