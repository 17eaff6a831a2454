package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.joint.Chain;
import org.airfit.joint.Mating;

/**
 * The ends of a job by number, which of them go together, and the adapters that go between. An adapter may be turned
 * round, and used more than once: a catalogue holds kinds of parts. Not thread-safe: it remembers.
 */
final class AdapterStock {

  private record Pair(int one, int other) {

    /** Spread out, as a map holds thousands of small numbers. */
    @Override
    public int hashCode() {
      return one * 0x9E3779B1 + other;
    }
  }

  /** What a joint counts as that no standard adapters join: more pieces than any other joints of a job lack. */
  private static final int NEVER_JOINED = 10_000;

  /**
   * What a joint of threads of two standards counts as, beside its pieces: more than all joints of one standard lack.
   */
  private static final int OTHER_STANDARD = 100;

  private final EndNumbers ends;
  private final Map<Integer, List<Candidate>> byNear = new LinkedHashMap<>();
  private final Map<Integer, List<Candidate>> onto = new HashMap<>();
  private final Map<Integer, Set<Integer>> reached = new HashMap<>();
  private final Map<Pair, Boolean> sound = new HashMap<>();
  private final Map<Pair, Integer> questions = new HashMap<>();
  private final Map<Pair, Integer> missing = new HashMap<>();

  /**
   * Takes adapters, of those between the same ends only the ones of which no other is as good.
   *
   * @param ends the ends by number
   * @param stock the adapters, one way round
   */
  AdapterStock(EndNumbers ends, List<Candidate> stock) {
    this.ends = ends;
    Map<Pair, List<Candidate>> byEnds = new LinkedHashMap<>();
    for (Candidate adapter : stock) {
      Candidate turned = adapter.turned();
      byEnds
          .computeIfAbsent(new Pair(adapter.near(), adapter.far()), any -> new ArrayList<>())
          .add(adapter);
      if (adapter.near() != adapter.far()) {
        byEnds
            .computeIfAbsent(new Pair(turned.near(), turned.far()), any -> new ArrayList<>())
            .add(turned);
      }
    }
    byEnds.forEach((pair, alike) -> byNear
        .computeIfAbsent(pair.one, any -> new ArrayList<>())
        .addAll(Front.ofCandidates(alike, 1)));
  }

  /** Whether two ends go together as they are. */
  boolean isSound(int one, int other) {
    return sound.computeIfAbsent(
        new Pair(one, other), pair -> Mating.isSound(ends.end(one), ends.end(other)));
  }

  /** How many standard adapters would join two ends that do not go together; of two standards it counts as more. */
  int piecesMissing(int one, int other) {
    return missing.computeIfAbsent(
        new Pair(one, other),
        pair -> piecesMissing(Mating.of(ends.end(one), ends.end(other)))
            + (Ends.areOfTwoStandards(ends.end(one), ends.end(other)) ? OTHER_STANDARD : 0));
  }

  private static int piecesMissing(Mating apart) {
    return apart.between().isEmpty() ? NEVER_JOINED : apart.between().size();
  }

  /** What must be asked of two ends that go together, as bits. */
  int question(int one, int other) {
    return questions.computeIfAbsent(
        new Pair(one, other),
        pair ->
            PartQuestions.ofJoint(Mating.of(ends.end(one), ends.end(other)).isForLowPressure()));
  }

  /** The adapters that go onto an end, turned so that this end is in front of them. */
  List<Candidate> onto(int end) {
    return onto.computeIfAbsent(end, any -> {
      List<Candidate> all = new ArrayList<>();
      byNear.forEach((near, adapters) -> {
        if (isSound(end, near)) {
          all.addAll(adapters);
        }
      });
      return all;
    });
  }

  /** Whether as many adapters as may stand in a row join two ends. */
  boolean isWithinReach(int from, int goal) {
    for (int end : reached.computeIfAbsent(from, this::reach)) {
      if (isSound(end, goal)) {
        return true;
      }
    }
    return false;
  }

  private Set<Integer> reach(int from) {
    Set<Integer> all = new HashSet<>();
    Set<Integer> last = Set.of(from);
    for (int count = 1; count <= Chain.MOST_ADAPTERS; count++) {
      Set<Integer> next = new HashSet<>();
      for (int end : last) {
        onto(end).forEach(adapter -> next.add(adapter.far()));
      }
      next.removeAll(all);
      all.addAll(next);
      last = next;
    }
    return all;
  }
}
