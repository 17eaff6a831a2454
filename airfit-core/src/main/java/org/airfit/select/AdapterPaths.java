package org.airfit.select;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.airfit.joint.Chain;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.jspecify.annotations.Nullable;

/**
 * The best chain of adapters between any two ends of a job: the one that breaks the fewest rules, then leaves the
 * fewest adapters and threads to be asked about, then costs least by the objective, then has
 * the fewest adapters, then has the least pressure loss, then the first by name. Each of these sums over the chain,
 * so that the best chain of
 * n adapters begins with a best chain of n − 1. Not thread-safe: it remembers.
 */
final class AdapterPaths {

  /** Where a conduit stops the flow; above every real drop, and small enough to sum. */
  private static final long STOPS = 1_000_000_000_000L;

  /**
   * What a joint that nothing joins costs: more than all prices, so that of two misses the one with fewer such joints
   * comes first.
   */
  private static final long UNJOINED = 1L << 58;

  /** An adapter as it is used, with what a chain sums. */
  private record Step(Part.Adapter part, int broken, int asked, long cost, long drop) {}

  /** A step from one end to another. */
  private record Edge(int far, Step step) {}

  /** A chain as far as it goes. */
  private record Open(
      int breaking,
      int asking,
      int asked,
      long cost,
      int count,
      long drop,
      @Nullable Open before,
      @Nullable Step last) {

    static final Open START = new Open(0, 0, 0, 0L, 0, 0L, null, null);

    Open through(Step step) {
      return new Open(
          breaking + (step.broken == 0 ? 0 : 1),
          asking + (step.asked == 0 ? 0 : 1),
          asked | step.asked,
          cost + step.cost,
          count + 1,
          drop + step.drop,
          this,
          step);
    }

    /** With the thread at its open end, which may be one to ask about. */
    Open meeting(int question) {
      return question == 0
          ? this
          : new Open(breaking, asking + 1, asked | question, cost, count, drop, before, last);
    }

    boolean isBetterThan(@Nullable Open other) {
      if (other == null) {
        return true;
      }
      if (breaking != other.breaking) {
        return breaking < other.breaking;
      }
      if (asking != other.asking) {
        return asking < other.asking;
      }
      if (cost != other.cost) {
        return cost < other.cost;
      }
      if (count != other.count) {
        return count < other.count;
      }
      return drop != other.drop ? drop < other.drop : isNamedBefore(other);
    }

    private boolean isNamedBefore(Open other) {
      List<Part.Adapter> own = adapters();
      List<Part.Adapter> others = other.adapters();
      for (int i = 0; i < own.size(); i++) {
        int order = Catalogue.BY_NAME.compare(own.get(i), others.get(i));
        if (order != 0) {
          return order < 0;
        }
      }
      return false;
    }

    List<Part.Adapter> adapters() {
      List<Part.Adapter> adapters = new ArrayList<>();
      for (Open open = this; open.last != null && open.before != null; open = open.before) {
        adapters.add(open.last.part());
      }
      Collections.reverse(adapters);
      return adapters;
    }

    int broken() {
      int broken = 0;
      for (Open open = this; open.last != null && open.before != null; open = open.before) {
        broken |= open.last.broken();
      }
      return broken;
    }
  }

  /**
   * What joins two ends: the adapters, the rules broken by it and those it leaves open, as bits, and what it costs.
   */
  record Way(List<Part.Adapter> adapters, int broken, int asked, long cost, long drop) {

    static final Way DIRECT = new Way(List.of(), 0, 0, 0L, 0L);
    private static final Way NONE = new Way(List.of(), Rule.ENDS_MATE.bit(), 0, UNJOINED, 0L);
  }

  private final Map<End, Integer> numbers = new HashMap<>();
  private final List<End> ends = new ArrayList<>();
  private final Map<Integer, List<Edge>> from = new HashMap<>();
  private final List<Integer> entrances;
  private final int everBroken;
  private final int everAsked;
  private final Map<Integer, int[]> mates = new HashMap<>();
  private final Map<Integer, List<Map<Integer, Open>>> layers = new HashMap<>();
  private final Map<Integer, Map<Integer, Way>> known = new HashMap<>();

  AdapterPaths(Requirement job, List<Part.Adapter> stock, PressureCache air) {
    Map<Integer, Map<Integer, Step>> best = new HashMap<>();
    int broken = 0;
    int asked = 0;
    for (Part.Adapter adapter : stock) {
      Step step = new Step(
          adapter,
          Rule.brokenBy(job, Slot.ADAPTER, adapter),
          PartQuestions.of(job, Slot.ADAPTER, adapter),
          job.objective().cost(adapter.facts()),
          drop(adapter, air));
      broken |= step.broken;
      asked |= step.asked;
      int one = number(adapter.one());
      int other = number(adapter.other());
      offer(best, one, other, step);
      offer(best, other, one, step);
    }
    best.forEach((near, steps) -> {
      List<Edge> edges = new ArrayList<>();
      steps.forEach((far, step) -> edges.add(new Edge(far, step)));
      from.put(near, edges);
    });
    entrances = List.copyOf(from.keySet());
    everBroken = broken;
    everAsked = asked;
  }

  /** The pressure loss with the outlet's pressure in front, in whole millipascals so that sums are exact. */
  private static long drop(Part.Adapter adapter, PressureCache air) {
    double behind = air.behind(adapter.conduit(), air.outlet());
    return Double.isNaN(behind)
        ? STOPS
        : Math.round(1.0e3 * (air.gaugePascals(air.outlet()) - air.gaugePascals(behind)));
  }

  private static void offer(Map<Integer, Map<Integer, Step>> best, int near, int far, Step step) {
    best.computeIfAbsent(near, any -> new HashMap<>())
        .merge(
            far,
            step,
            (old, other) ->
                Open.START.through(other).isBetterThan(Open.START.through(old)) ? other : old);
  }

  /** The rules that an adapter breaks, as bits. */
  int everBroken() {
    return everBroken;
  }

  /** The rules that an adapter leaves open, as bits. */
  int everAsked() {
    return everAsked;
  }

  /** Whether the one way round of two ends that go together is one to ask about, as bits. */
  private int question(int one, int other) {
    return PartQuestions.ofJoint(Mating.of(ends.get(one), ends.get(other)).isForLowPressure());
  }

  /** A number for an end, the same for equal ends. */
  int number(End end) {
    return numbers.computeIfAbsent(end, any -> {
      ends.add(end);
      return ends.size() - 1;
    });
  }

  /** The best way between two ends, seen from the supply, by their numbers. */
  Way between(int start, int goal) {
    Map<Integer, Way> fromStart = known.computeIfAbsent(start, any -> new HashMap<>());
    Way way = fromStart.get(goal);
    if (way == null) {
      way = Mating.isSound(ends.get(start), ends.get(goal))
          ? new Way(List.of(), 0, question(start, goal), 0L, 0L)
          : through(start, goal);
      fromStart.put(goal, way);
    }
    return way;
  }

  private Way through(int start, int goal) {
    Open best = null;
    int[] last = mates(goal);
    for (Map<Integer, Open> layer : layers(start)) {
      for (int end : last) {
        Open open = layer.get(end);
        Open whole = open == null ? null : open.meeting(question(end, goal));
        if (whole != null && whole.isBetterThan(best)) {
          best = whole;
        }
      }
    }
    return best == null
        ? Way.NONE
        : new Way(List.copyOf(best.adapters()), best.broken(), best.asked, best.cost, best.drop);
  }

  /** The best chains of one, two and three adapters to every end they reach. */
  private List<Map<Integer, Open>> layers(int start) {
    List<Map<Integer, Open>> found = layers.get(start);
    if (found == null) {
      found = new ArrayList<>();
      Map<Integer, Open> layer = Map.of(start, Open.START);
      for (int count = 1; count <= Chain.MOST_ADAPTERS; count++) {
        layer = oneMore(layer);
        found.add(layer);
      }
      layers.put(start, found);
    }
    return found;
  }

  private Map<Integer, Open> oneMore(Map<Integer, Open> layer) {
    Map<Integer, Open> next = new HashMap<>();
    layer.forEach((end, open) -> {
      for (int near : mates(end)) {
        Open met = open.meeting(question(end, near));
        for (Edge edge : from.getOrDefault(near, List.of())) {
          Open longer = met.through(edge.step);
          if (longer.isBetterThan(next.get(edge.far))) {
            next.put(edge.far, longer);
          }
        }
      }
    });
    return next;
  }

  /**
   * The ends of adapters that go together with an end. An adapter may be turned round, so that they are its ways in
   * and its ways out.
   */
  private int[] mates(int end) {
    return mates.computeIfAbsent(
        end,
        any -> entrances.stream()
            .filter(near -> Mating.isSound(ends.get(end), ends.get(near)))
            .mapToInt(Integer::intValue)
            .toArray());
  }

  /** That way as a joint, with its pairs of ends worked out. */
  Joint joint(String where, End upstream, End downstream) {
    List<Part.Adapter> adapters = between(number(upstream), number(downstream)).adapters();
    return new Joint(where, chain(upstream, downstream, adapters));
  }

  /** Which way round each adapter stands is found from its ends; both may do, and then the first is taken. */
  static Chain<Part.Adapter> chain(End upstream, End downstream, List<Part.Adapter> adapters) {
    List<Mating> matings = new ArrayList<>();
    if (!turned(upstream, downstream, adapters, 0, matings)) {
      return new Chain<>(upstream, downstream, List.of(), List.of(Mating.of(upstream, downstream)));
    }
    return new Chain<>(upstream, downstream, adapters, matings);
  }

  private static boolean turned(
      End open, End goal, List<Part.Adapter> adapters, int next, List<Mating> matings) {
    if (next == adapters.size()) {
      matings.add(Mating.of(open, goal));
      return Mating.isSound(open, goal);
    }
    Part.Adapter adapter = adapters.get(next);
    return turned(open, goal, adapters, next, matings, adapter.one(), adapter.other())
        || turned(open, goal, adapters, next, matings, adapter.other(), adapter.one());
  }

  private static boolean turned(
      End open,
      End goal,
      List<Part.Adapter> adapters,
      int next,
      List<Mating> matings,
      End near,
      End far) {
    if (!Mating.isSound(open, near)) {
      return false;
    }
    int before = matings.size();
    matings.add(Mating.of(open, near));
    if (turned(far, goal, adapters, next + 1, matings)) {
      return true;
    }
    matings.subList(before, matings.size()).clear();
    return false;
  }
}
