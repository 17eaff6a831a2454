package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * One stop of a change-over: its bays are vented, and all their sockets and plugs that are to go are changed.
 *
 * @param bays the names of the bays that are changed together
 * @param sockets how many sockets are changed
 * @param plugs how many plugs are changed
 * @param before the wrong pairs that can be made until then, the worst first
 * @param possible the wrong pairs that can be made from then until the next stop, the worst first
 */
public record ChangeStep(
    List<String> bays, int sockets, int plugs, List<MixedPair> before, List<MixedPair> possible) {

  /**
   * Copies the lists.
   *
   * @param bays the names of the bays that are changed together
   * @param sockets how many sockets are changed
   * @param plugs how many plugs are changed
   * @param before the wrong pairs that can be made until then, the worst first
   * @param possible the wrong pairs that can be made from then until the next stop, the worst first
   * @throws IllegalArgumentException if there is no bay
   */
  public ChangeStep {
    bays = List.copyOf(Objects.requireNonNull(bays, "bays"));
    before = List.copyOf(Objects.requireNonNull(before, "before"));
    possible = List.copyOf(Objects.requireNonNull(possible, "possible"));
    if (bays.isEmpty()) {
      throw new IllegalArgumentException("bays of a step must be at least one, were none");
    }
  }

  /** {@return in how many ways plugs and sockets can meet dangerously until the next stop} */
  public long dangerousWays() {
    return possible.stream()
        .filter(MixedPair::isDangerous)
        .mapToLong(MixedPair::ways)
        .sum();
  }

  /**
   * {@return what it does to the wrong pairs, such as "Ways to join the lines of two media: 22 before, 0 after."; each
   * plug with each socket is one way}
   */
  public String gainInWords() {
    String[] kinds = {
      "to join the lines of two media", "to put in a plug that lets go or is not told", "to leak"
    };
    List<String> said = new ArrayList<>();
    for (int rank = 0; rank < MixedPair.RANKS; rank++) {
      long old = ways(before, rank);
      long left = ways(possible, rank);
      if (old > 0 || left > 0) {
        said.add(kinds[rank] + ": " + old + " before, " + left + " after");
      }
    }
    return said.isEmpty()
        ? "No wrong pair that matters could be made before, and none can after."
        : "Ways " + String.join("; ", said) + ".";
  }

  private static long ways(List<MixedPair> pairs, int rank) {
    return pairs.stream()
        .filter(pair -> pair.rank() == rank)
        .mapToLong(MixedPair::ways)
        .sum();
  }

  /** {@return what is done, in one sentence} */
  public String inWords() {
    String what = sockets + (sockets == 1 ? " socket" : " sockets") + " and " + plugs
        + (plugs == 1 ? " plug" : " plugs");
    return bays.size() == 1
        ? "Change " + bays.get(0) + ": " + what + "."
        : "Change " + String.join(" and ", bays) + " in one stop, " + what
            + ": with only some of them changed, plugs and sockets could meet that let go or of which"
            + " that is not told.";
  }

  /** {@return the same as {@link #inWords}} */
  @Override
  public String toString() {
    return inWords();
  }
}
