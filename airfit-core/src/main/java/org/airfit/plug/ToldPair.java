package org.airfit.plug;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.airfit.internal.Ids;
import org.airfit.source.Source;

/**
 * What somebody told of a plug of one profile in a socket of another.
 *
 * <p>The sizes of two plugs do not tell it: what decides in a socket, its seal, its balls and their depth, is inside.
 *
 * @param plug the id of the profile of the plug
 * @param socket the id of the profile that the socket is made for, another one; for a universal socket those of its
 *     profiles with a slash between, such as "finch/wren". That a plug goes into a socket of neither does not tell that
 *     it stays out of one that takes both
 * @param outcome what happens
 * @param source who says so: a trial without pressure and then a slow one under pressure, or the makers
 */
public record ToldPair(String plug, String socket, PairOutcome outcome, Source source) {

  /** What stands between the profiles of a universal socket. */
  private static final String BETWEEN_PROFILES = "/";

  /**
   * Checks the components.
   *
   * @param plug the id of the profile of the plug
   * @param socket the id of the profile that the socket is made for, another one; of a universal one those of its
   *     profiles with a slash between
   * @param outcome what happens
   * @param source who says so
   * @throws IllegalArgumentException if an id is blank or holds a comma, the two are one profile, or nothing is told
   */
  public ToldPair {
    Ids.require("profile of a plug", Objects.requireNonNull(plug, "plug"));
    Ids.require("profile of a socket", Objects.requireNonNull(socket, "socket"));
    Objects.requireNonNull(outcome, "outcome");
    Objects.requireNonNull(source, "source");
    if (plug.equals(socket)) {
      throw new IllegalArgumentException("profiles of a pair must be two, were " + plug + " and "
          + socket + "; halves of one profile go together, leave the pair out");
    }
    if (outcome == PairOutcome.NOT_TOLD) {
      throw new IllegalArgumentException("what happens with plug " + plug + " in socket " + socket
          + " must be told, was " + outcome + "; leave the pair out until it was tried");
    }
  }

  /**
   * Judges a plug in a socket.
   *
   * @param told what was told of pairs
   * @param plug the id of the profile of the plug
   * @param takes the ids of the profiles that the socket takes
   * @return that it fits where the socket takes it; otherwise what was told of that socket. Of a universal one of which
   *     nothing was told, that the plug lets go where it does so in a socket of one of its profiles
   */
  public static PairOutcome judge(Collection<ToldPair> told, String plug, Set<String> takes) {
    Objects.requireNonNull(told, "told");
    Objects.requireNonNull(plug, "plug");
    Objects.requireNonNull(takes, "takes");
    if (takes.contains(plug)) {
      return PairOutcome.FITS;
    }
    PairOutcome ofOne = PairOutcome.NOT_TOLD; // what a socket of one of the profiles does
    for (ToldPair pair : told) {
      if (pair.plug.equals(plug) && isNamed(pair.socket, takes)) {
        return pair.outcome;
      }
      if (pair.plug.equals(plug)
          && pair.outcome == PairOutcome.LETS_GO
          && takes.contains(pair.socket)) {
        ofOne = PairOutcome.LETS_GO;
      }
    }
    return ofOne;
  }

  private static boolean isNamed(String socket, Set<String> takes) {
    return takes.equals(Set.of(socket))
        || (takes.size() > 1
            && takes.equals(new HashSet<>(List.of(socket.split(BETWEEN_PROFILES, -1)))));
  }

  /** {@return the pair in one line} */
  @Override
  public String toString() {
    return "plug " + plug + " in socket " + socket + ": " + outcome + " (" + source + ")";
  }
}
