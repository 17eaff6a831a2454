package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What can be said of a socket without its plug: that its profile cannot be told, and how to go on.
 *
 * <p>What decides the profile of a socket, its seal, its balls and how deep they sit, is inside. Its outside is the
 * maker's free choice.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class SocketAnswer implements Worked {

  private static final String REASON =
      "A socket alone cannot be identified: the seal, the locking balls and their depth are inside, and the outside "
          + "is the maker's free "
          + "choice. Letters on it mean different profiles in different places.";

  private static final String CHECK_UNIVERSAL =
      "that every profile in use is on the maker's list by its name, not by a letter; the word universal is also "
          + "used of two-lug "
          + "claw couplings, which are something else.";

  private static final List<SocketRemedy> ANYWHERE = List.of(
      new SocketRemedy(
          "Find its plug",
          "Look for a plug that has been used in this socket, on its hose, tool or bench, and measure the plug.",
          "that the two really were used together; a plug that was forced in proves nothing."),
      new SocketRemedy(
          "Try known plugs, depressurised",
          "Shut off and vent the line, then try plugs of known profile by hand, without force.",
          "that it locks, does not turn wobbly and cannot be pulled out by hand; then leak and pull check at slowly "
              + "rising pressure. "
              + "More than one profile may go in, and one that goes in may not seal."),
      new SocketRemedy(
          "Replace the pair",
          "Fit a new socket and a new plug of one known profile.",
          "thread, pressure rating and flow of both halves, and every other plug that is used at this place."));

  private static final SocketAnswer ALONE = new SocketAnswer(
      List.of(),
      "Where several profiles are in use, fit a socket whose maker states that it takes each of them.");

  private final List<UniversalSocket> universal;
  private final List<SocketRemedy> waysOut;

  private SocketAnswer(List<UniversalSocket> universal, String fit) {
    this.universal = List.copyOf(universal);
    List<SocketRemedy> ways = new ArrayList<>(ANYWHERE);
    ways.add(new SocketRemedy("Fit a universal socket", fit, CHECK_UNIVERSAL));
    this.waysOut = List.copyOf(ways);
  }

  /** {@return the answer for a socket without its plug, with no set at hand} */
  public static SocketAnswer alone() {
    return ALONE;
  }

  /**
   * Obtains the answer for a socket without its plug, with the universal sockets of a set that take every profile in
   * use.
   *
   * @param set the shop's set
   * @param inUse the ids of the profiles in use at the place, one at least
   * @return the answer
   * @throws IllegalArgumentException if none is given, or one is not in the set
   */
  public static SocketAnswer alone(ReferenceSet set, Set<String> inUse) {
    Objects.requireNonNull(set, "set");
    Objects.requireNonNull(inUse, "inUse");
    if (inUse.isEmpty()) {
      throw new IllegalArgumentException(
          "profiles in use must be at least one, were none; where they are not known, ask without a set");
    }
    inUse.forEach(id -> set.requireProfile(id, "place"));
    List<UniversalSocket> taking =
        set.sockets().stream().filter(socket -> socket.takesAll(inUse)).toList();
    String names = set.profiles().stream()
        .filter(profile -> inUse.contains(profile.id()))
        .map(PlugProfile::displayName)
        .collect(Collectors.joining(", "));
    String fit = taking.isEmpty()
        ? "The set \"" + set.name() + "\" knows no socket that takes all profiles in use here ("
            + names
            + "); ask a maker for one that is stated to take each of them, or keep to one profile."
        : "For the profiles in use here (" + names + ") these are stated to take each of them: "
            + taking.stream()
                .map(socket -> socket.name() + " (" + socket.source() + ")")
                .collect(Collectors.joining("; "))
            + ".";
    return new SocketAnswer(taking, fit);
  }

  /**
   * {@return the universal sockets of the set that take every profile in use; empty if there is none, or no set was
   * given}
   */
  public List<UniversalSocket> universalSockets() {
    return universal;
  }

  /** {@return always {@link PlugVerdict#INSUFFICIENT_DATA}} */
  public PlugVerdict verdict() {
    return PlugVerdict.INSUFFICIENT_DATA;
  }

  /** {@return why it cannot be told} */
  public String reason() {
    return REASON;
  }

  /** {@return the ways out, the cheapest first} */
  public List<SocketRemedy> waysOut() {
    return waysOut;
  }

  /** {@return the warnings that go with this answer} */
  public List<Caution> cautions() {
    return List.of(PlugCautions.MATING, PlugCautions.RATING, PlugCautions.AIR_ONLY);
  }

  /**
   * Tells the reason as a working without equations.
   *
   * @param units the units, of which it shows none
   * @return the working
   */
  @Override
  public Working working(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    Working.Builder out = Working.titled("A socket without its plug", units).note(REASON);
    waysOut.forEach(way -> out.note(way.toString()));
    return out.note("Source: "
            + Source.commonPractice("sockets are known by the plug that fits them") + ".")
        .answer("The profile of this socket cannot be told from outside.")
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SocketAnswer that
        && universal.equals(that.universal)
        && waysOut.equals(that.waysOut);
  }

  @Override
  public int hashCode() {
    return Objects.hash(universal, waysOut);
  }

  /** {@return why it cannot be told} */
  @Override
  public String toString() {
    return REASON;
  }
}
