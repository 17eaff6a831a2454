package org.airfit.select;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.airfit.plug.PairOutcome;

/**
 * Plugs of one profile and sockets that are made for others, or for another medium, in one place at one time.
 *
 * @param plug the id of the profile of the plugs
 * @param takes the ids of the profiles that the sockets take
 * @param outcome what happens when such a plug is pushed into such a socket
 * @param acrossMedia whether their lines carry different media
 * @param plugs how many such plugs there are
 * @param sockets how many such sockets there are
 * @param plugsIn the names of the bays that the plugs are from
 * @param socketsIn the names of the bays that the sockets are in
 */
public record MixedPair(
    String plug,
    Set<String> takes,
    PairOutcome outcome,
    boolean acrossMedia,
    int plugs,
    int sockets,
    List<String> plugsIn,
    List<String> socketsIn) {

  /** How many ranks of danger there are that count. */
  static final int RANKS = 3;

  /**
   * Refuses what is null, and copies the lists.
   *
   * @param plug the id of the profile of the plugs
   * @param takes the ids of the profiles that the sockets take
   * @param outcome what happens when such a plug is pushed into such a socket
   * @param acrossMedia whether their lines carry different media
   * @param plugs how many such plugs there are
   * @param sockets how many such sockets there are
   * @param plugsIn the names of the bays that the plugs are from
   * @param socketsIn the names of the bays that the sockets are in
   */
  public MixedPair {
    Objects.requireNonNull(plug, "plug");
    takes = Collections.unmodifiableSet(
        new LinkedHashSet<>(List.copyOf(Objects.requireNonNull(takes, "takes"))));
    Objects.requireNonNull(outcome, "outcome");
    plugsIn = List.copyOf(Objects.requireNonNull(plugsIn, "plugsIn"));
    socketsIn = List.copyOf(Objects.requireNonNull(socketsIn, "socketsIn"));
  }

  /** {@return in how many ways one of the plugs can be pushed into one of the sockets} */
  public long ways() {
    return (long) plugs * sockets;
  }

  /** 0 for another medium, 1 where it lets go or may, 2 where it leaks; {@link #RANKS} where it does no harm. */
  int rank() {
    if (acrossMedia) {
      return outcome == PairOutcome.DOES_NOT_GO_IN ? RANKS : 0;
    }
    return switch (outcome) {
      case LETS_GO, NOT_TOLD -> 1;
      case LEAKS -> 2;
      case FITS, DOES_NOT_GO_IN -> RANKS;
    };
  }

  /**
   * {@return whether it joins two media, or the plug lets go or may; where nobody told what happens, it counts as
   * dangerous}
   */
  public boolean isDangerous() {
    return rank() < 2;
  }

  /** Whether another is of the same plugs and sockets, however many there are. */
  boolean isLike(MixedPair other) {
    return plug.equals(other.plug) && takes.equals(other.takes) && acrossMedia == other.acrossMedia;
  }

  /** {@return what can happen, in one sentence} */
  public String inWords() {
    String what = "Plug " + plug + " (" + plugs + ", " + String.join(", ", plugsIn) + ") in socket "
        + String.join("/", takes) + " (" + sockets + ", " + String.join(", ", socketsIn) + "): ";
    return what
        + outcome
        + switch (outcome) {
          case NOT_TOLD ->
            acrossMedia
                ? ", so it may join the lines of two media."
                : ", so it may go in and let go.";
          case FITS, LEAKS, LETS_GO -> acrossMedia ? "; this joins the lines of two media." : ".";
          case DOES_NOT_GO_IN -> ".";
        };
  }

  /** {@return the same as {@link #inWords}} */
  @Override
  public String toString() {
    return inWords();
  }
}
