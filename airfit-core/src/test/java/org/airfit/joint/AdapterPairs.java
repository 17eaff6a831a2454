package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadFamily;

/** Which ends can be reached with one, two, three pieces; found without costs, from {@link Mating#isSound} alone. */
final class AdapterPairs {

  private final List<End> ends = everyEnd();
  private final List<BitSet> mates = new ArrayList<>();
  private final List<BitSet> far = new ArrayList<>();

  AdapterPairs() {
    for (End one : ends) {
      BitSet sound = new BitSet();
      for (int i = 0; i < ends.size(); i++) {
        if (Mating.isSound(one, ends.get(i))) {
          sound.set(i);
        }
      }
      mates.add(sound);
      far.add(new BitSet());
    }
    for (StandardAdapter adapter : StandardAdapter.all()) {
      int one = ends.indexOf(adapter.one());
      int other = ends.indexOf(adapter.other());
      far.get(one).set(other);
      far.get(other).set(one);
    }
  }

  /** The fewest pieces to every end, −1 where three do not do. */
  int[] pieces(int from) {
    int[] pieces = new int[ends.size()];
    Arrays.fill(pieces, -1);
    BitSet open = new BitSet();
    open.set(from);
    for (int count = 0; count <= 3; count++) {
      BitSet met = through(open, mates);
      for (int i = met.nextSetBit(0); i >= 0; i = met.nextSetBit(i + 1)) {
        pieces[i] = pieces[i] < 0 ? count : pieces[i];
      }
      open = through(met, far);
    }
    return pieces;
  }

  private static BitSet through(BitSet from, List<BitSet> steps) {
    BitSet to = new BitSet();
    for (int i = from.nextSetBit(0); i >= 0; i = from.nextSetBit(i + 1)) {
      to.or(steps.get(i));
    }
    return to;
  }

  /** Every end there is: all threads, the ends of the catalogue, and some that no standard names. */
  static List<End> everyEnd() {
    Set<End> ends = new LinkedHashSet<>();
    for (ThreadFamily family : ThreadFamily.values()) {
      for (NominalThreadSize size : family.sizes()) {
        for (Gender gender : Gender.values()) {
          if (family.has(gender)) {
            ends.add(new End.Threaded(family, size, gender));
          }
        }
      }
    }
    for (StandardAdapter adapter : StandardAdapter.all()) {
      ends.add(adapter.one());
      ends.add(adapter.other());
    }
    for (String odd : List.of(
        "11 mm hose", "11 mm barb", "9.5 mm hose", "13 mm barb", "18 mm tube", "5 mm push-in")) {
      ends.add(End.parse(odd));
    }
    return List.copyOf(ends);
  }

  /** Holds the pairs of every so manieth end against the search, some of them turned round as well. */
  void check(int step) {
    int[] count = new int[5];
    for (int i = 0; i < ends.size(); i += step) {
      int[] pieces = pieces(i);
      for (int j = i; j < ends.size(); j += step) {
        End from = ends.get(i);
        End to = ends.get(j);
        List<StandardAdapter> between = Mating.of(from, to).between();
        String pair = from + ", " + to;
        assertThat(between).as(pair).hasSize(Math.max(0, pieces[j]));
        count[pieces[j] + 1]++;
        if (!between.isEmpty()) {
          requireSound(pair, from, to, between);
        }
        // an end and itself is one pair whichever is named first
        if (i != j && (i + j) / step % 5 == 0) {
          List<StandardAdapter> back = new ArrayList<>(Mating.of(to, from).between());
          Collections.reverse(back);
          assertThat(back).as(pair + " turned").isEqualTo(between);
          assertThat(Chain.between(from, to).adapters()).as(pair).isEqualTo(between);
        }
      }
    }
    // none, straight together, one, two, three pieces: each happens
    assertThat(count).doesNotContain(0);
  }

  /** Goes along the adapters by their own two ends and asks of every joint whether it mates. */
  private static void requireSound(String pair, End from, End to, List<StandardAdapter> between) {
    Set<End> open = Set.of(from);
    for (StandardAdapter adapter : between) {
      Set<End> next = new LinkedHashSet<>();
      for (End near : open) {
        if (joins(near, adapter.one())) {
          next.add(adapter.other());
        }
        if (joins(near, adapter.other())) {
          next.add(adapter.one());
        }
      }
      open = next;
    }
    assertThat(open).as(pair + " through " + between).anyMatch(end -> joins(end, to));
  }

  private static boolean joins(End one, End other) {
    boolean bothMale = one instanceof End.Threaded a
        && other instanceof End.Threaded b
        && a.gender() == b.gender();
    return !bothMale && Mating.isSound(one, other);
  }
}
