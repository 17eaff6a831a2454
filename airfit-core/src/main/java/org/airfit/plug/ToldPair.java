package org.airfit.plug;

import java.util.Collection;
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
 * @param socket the id of the profile that the socket is made for, another one
 * @param outcome what happens
 * @param source who says so: a trial without pressure and then a slow one under pressure, or the makers
 */
public record ToldPair(String plug, String socket, PairOutcome outcome, Source source) {

  /**
   * Checks the components.
   *
   * @param plug the id of the profile of the plug
   * @param socket the id of the profile that the socket is made for, another one
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
   * @return that it fits where the socket takes it; otherwise what was told, of a socket of one profile
   */
  public static PairOutcome judge(Collection<ToldPair> told, String plug, Set<String> takes) {
    Objects.requireNonNull(told, "told");
    Objects.requireNonNull(plug, "plug");
    Objects.requireNonNull(takes, "takes");
    if (takes.contains(plug)) {
      return PairOutcome.FITS;
    }
    if (takes.size() == 1) {
      for (ToldPair pair : told) {
        if (pair.plug.equals(plug) && takes.contains(pair.socket)) {
          return pair.outcome;
        }
      }
    }
    return PairOutcome.NOT_TOLD;
  }

  /** {@return the pair in one line} */
  @Override
  public String toString() {
    return "plug " + plug + " in socket " + socket + ": " + outcome + " (" + source + ")";
  }
}
