package org.airfit.plug;

import java.util.List;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Working;

/**
 * What can be said of a socket without its plug: that its profile cannot be told, and how to go on.
 *
 * <p>What decides the profile of a socket, its seal, its balls and how deep they sit, is inside. Its outside is the maker's free choice.
 */
public final class SocketAnswer {

  private static final String REASON =
      "A socket alone cannot be identified: the seal, the locking balls and their depth are inside, and the outside is the maker's free "
          + "choice. Letters on it mean different profiles in different places.";

  private static final List<WayOut> WAYS_OUT = List.of(
      new WayOut(
          "Find its plug",
          "Look for a plug that has been used in this socket, on its hose, tool or bench, and measure the plug.",
          "that the two really were used together; a plug that was forced in proves nothing."),
      new WayOut(
          "Try known plugs, depressurised",
          "Shut off and vent the line, then try plugs of known profile by hand, without force.",
          "that it locks, does not turn wobbly and cannot be pulled out by hand; then leak and pull check at slowly rising pressure. "
              + "More than one profile may go in, and one that goes in may not seal."),
      new WayOut(
          "Replace the pair",
          "Fit a new socket and a new plug of one known profile.",
          "thread, pressure rating and flow of both halves, and every other plug that is used at this place."),
      new WayOut(
          "Fit a universal socket",
          "Where several profiles are in use, fit a socket whose maker states that it takes each of them.",
          "that every profile in use is on the maker's list by its name, not by a letter; the word universal is also used of two-lug "
              + "claw couplings, which are something else."));

  private static final SocketAnswer ALONE = new SocketAnswer();

  private SocketAnswer() {}

  /** {@return the answer for a socket without its plug; it is always the same} */
  public static SocketAnswer alone() {
    return ALONE;
  }

  /** {@return always {@link Verdict#INSUFFICIENT_DATA}} */
  public Verdict verdict() {
    return Verdict.INSUFFICIENT_DATA;
  }

  /** {@return why it cannot be told} */
  public String reason() {
    return REASON;
  }

  /** {@return the ways out, the cheapest first} */
  public List<WayOut> waysOut() {
    return WAYS_OUT;
  }

  /** {@return the warnings that go with this answer} */
  public List<Caution> cautions() {
    return List.of(PlugCautions.MATING, PlugCautions.RATING, PlugCautions.AIR_ONLY);
  }

  /** {@return the reason as a working without equations} */
  public Working working() {
    Working.Builder out = Working.titled("A socket without its plug").note(REASON);
    WAYS_OUT.forEach(way -> out.note(way.toString()));
    return out.note("Source: "
            + Source.commonPractice("sockets are known by the plug that fits them") + ".")
        .build();
  }

  /** {@return the reason and the ways out} */
  @Override
  public String toString() {
    return REASON;
  }
}
