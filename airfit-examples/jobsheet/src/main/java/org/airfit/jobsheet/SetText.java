package org.airfit.jobsheet;

import java.util.List;
import org.airfit.measure.Instrument;
import org.airfit.plug.BenchPath;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.Separation;
import org.airfit.plug.UniversalSocket;

/** What a reference set can tell apart and what to measure first, as plain text. */
public final class SetText {

  private static final double RISK = 0.01;

  private SetText() {}

  /**
   * Writes the text.
   *
   * @param set the set
   * @return its profiles and sockets, which pairs can be told apart, and the order of the readings
   */
  public static String of(ReferenceSet set) {
    StringBuilder out = new StringBuilder(set.toString()).append("\n\n");
    for (PlugProfile profile : set.profiles()) {
      out.append(profile.id())
          .append(": ")
          .append(profile.displayName())
          .append(", ")
          .append(profile.provenance())
          .append("; ")
          .append(profile.dimensions().size())
          .append(" dimensions\n");
    }
    for (UniversalSocket socket : set.sockets()) {
      out.append("socket ")
          .append(socket.name())
          .append(" takes ")
          .append(String.join(", ", socket.profileIds()))
          .append('\n');
    }
    out.append("\nWhich pairs can be told apart\n");
    List<Separation> pairs = Separation.within(set, Instrument.DIGITAL_CALIPER);
    pairs.forEach(pair -> out.append("  ").append(pair.inWords(RISK)).append('\n'));
    if (pairs.isEmpty()) {
      out.append("  There is one profile only.\n");
    }
    return out.append('\n')
        .append(BenchPath.of(Identifier.of(set)))
        .append('\n')
        .toString();
  }
}
