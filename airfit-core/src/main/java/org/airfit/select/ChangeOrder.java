package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * In which order bays are changed, exactly: every order of every grouping is weighed.
 *
 * <p>What can be plugged together wrongly depends on which bays are changed and not on the order in which they were, so
 * the best way on from a set of changed bays does not depend on the way there (R. Bellman, <cite>Dynamic
 * Programming</cite>, 1957, from memory). A set of bays is a number whose bits are the bays.
 */
final class ChangeOrder {

  /**
   * In how many ways plugs and sockets can meet wrongly, the worst kind first.
   *
   * @param media that join the lines of two media, or may
   * @param loose that let go, or of which nobody told
   * @param leaks that leak
   */
  record Ways(long media, long loose, long leaks) {

    static final Ways NONE = new Ways(0, 0, 0);

    private static final Comparator<Ways> BY_KIND = Comparator.comparingLong(Ways::media)
        .thenComparingLong(Ways::loose)
        .thenComparingLong(Ways::leaks);

    static Ways of(List<MixedPair> pairs) {
      return new Ways(ofRank(pairs, 0), ofRank(pairs, 1), ofRank(pairs, 2));
    }

    private static long ofRank(List<MixedPair> pairs, int rank) {
      return pairs.stream()
          .filter(pair -> pair.rank() == rank)
          .mapToLong(MixedPair::ways)
          .sum();
    }

    Ways plus(Ways more) {
      return new Ways(media + more.media, loose + more.loose, leaks + more.leaks);
    }
  }

  /** How bad a way on is: how many bays more than one are changed in one stop, then the states between. */
  private record Burden(int merged, Ways ways) {

    Burden after(int more, Ways state) {
      return new Burden(merged + more, ways.plus(state));
    }

    boolean isBelow(Burden other) {
      return merged != other.merged
          ? merged < other.merged
          : Ways.BY_KIND.compare(ways, other.ways) < 0;
    }
  }

  private final int all;
  private final IntPredicate allowed;
  private final List<Ways> ways = new ArrayList<>();

  private ChangeOrder(int bays, IntPredicate allowed, IntFunction<Ways> ways) {
    this.all = (1 << bays) - 1;
    this.allowed = allowed;
    for (int changed = 0; changed <= all; changed++) {
      this.ways.add(ways.apply(changed));
    }
  }

  /**
   * Finds the order: first the fewest bays in the largest stop, then the fewest stops of several bays, then the fewest
   * ways in which plugs and sockets can meet wrongly, summed over the states between.
   *
   * @param bays how many bays are changed
   * @param allowed whether a state between may be, by the bays that are changed in it
   * @param ways in how many ways plugs and sockets can meet wrongly in a state
   * @return the bays of each stop
   */
  static List<Integer> best(int bays, IntPredicate allowed, IntFunction<Ways> ways) {
    if (bays == 0) {
      return List.of();
    }
    ChangeOrder order = new ChangeOrder(bays, allowed, ways);
    for (int largest = 1; largest < bays; largest++) {
      List<Integer> stops = order.best(largest);
      if (!stops.isEmpty()) {
        return stops;
      }
    }
    return List.of(order.all);
  }

  private List<Integer> best(int largest) {
    @Nullable Burden[] onward = new Burden[all + 1];
    int[] next = new int[all + 1];
    onward[all] = new Burden(0, Ways.NONE);
    for (int changed = all - 1; changed >= 0; changed--) {
      if (changed != 0 && !allowed.test(changed)) {
        continue;
      }
      int left = all ^ changed;
      IntUnaryOperator following =
          block -> (block - left) & left; // the next larger part of what is left
      for (int block = following.applyAsInt(0); block != 0; block = following.applyAsInt(block)) {
        Burden rest = onward[changed | block];
        int size = Integer.bitCount(block);
        if (rest == null || size > largest) {
          continue;
        }
        boolean isLast = (changed | block) == all;
        Burden burden = rest.after(size - 1, isLast ? Ways.NONE : ways.get(changed | block));
        Burden best = onward[changed];
        if (best == null || burden.isBelow(best)) {
          onward[changed] = burden;
          next[changed] = block;
        }
      }
    }
    List<Integer> stops = new ArrayList<>();
    if (onward[0] != null) {
      for (int changed = 0; changed != all; changed |= next[changed]) {
        stops.add(next[changed]);
      }
    }
    return stops;
  }
}
