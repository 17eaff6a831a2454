package org.airfit.select;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.internal.Ids;
import org.airfit.joint.End;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.Range;
import org.airfit.safety.Medium;

/**
 * Places among which the same tools go round: all their couplings are to have one profile, and are changed at once.
 *
 * @param name what to call it
 * @param medium what its line carries; a line of anything but compressed air is kept apart and never changed
 * @param pressure the pressure at its sockets while the tools run, as well as that is known; empty only for another
 *     medium
 * @param sockets the sockets in use
 * @param plugs the plugs in use
 */
public record Bay(
    String name,
    Medium medium,
    Optional<Range<GaugePressure>> pressure,
    List<Sockets> sockets,
    List<Plugs> plugs) {

  /** So many pieces may stand in one row. */
  static final int MOST_PIECES = 1000;

  /** So many rows of sockets, and of plugs, may a bay have. */
  static final int MOST_ROWS = 20;

  /**
   * Sockets of one kind.
   *
   * @param place where they are
   * @param takes the ids of the profiles that each takes; several for a universal socket
   * @param onto the end of the line that each is screwed on or into; empty only for another medium
   * @param count how many there are, from 1 to 1000
   */
  public record Sockets(String place, Set<String> takes, Optional<End> onto, int count) {
    /**
     * Checks the components and copies the set.
     *
     * @param place where they are
     * @param takes the ids of the profiles that each takes; several for a universal socket
     * @param onto the end of the line that each is screwed on or into; empty only for another medium
     * @param count how many there are, from 1 to 1000
     * @throws IllegalArgumentException if there is no profile, an id is blank or holds a comma, or the count is out of
     *     range
     */
    public Sockets {
      Objects.requireNonNull(place, "place");
      takes = Collections.unmodifiableSet(
          new LinkedHashSet<>(List.copyOf(Objects.requireNonNull(takes, "takes"))));
      Objects.requireNonNull(onto, "onto");
      if (takes.isEmpty()) {
        throw new IllegalArgumentException(
            "profiles of the sockets at " + place + " must be at least one, were none");
      }
      takes.forEach(profile -> Ids.require("profile of the sockets at " + place, profile));
      requireCount("sockets at " + place, count);
    }

    /** {@return the row in one line, such as "3 sockets wren at drops"} */
    @Override
    public String toString() {
      return count + (count == 1 ? " socket " : " sockets ") + String.join("/", takes) + " at "
          + place + onto.map(end -> ", on " + end).orElse("");
    }
  }

  /**
   * Plugs of one kind.
   *
   * @param tool what they are on
   * @param profile the id of their profile
   * @param onto the end of the tool or hose that each is screwed on or into; empty only for another medium
   * @param count how many there are, from 1 to 1000
   * @param need the air that each tool needs; empty where it needs none worth judging
   */
  public record Plugs(
      String tool, String profile, Optional<End> onto, int count, Optional<Need> need) {
    /**
     * Checks the components.
     *
     * @param tool what they are on
     * @param profile the id of their profile
     * @param onto the end of the tool or hose that each is screwed on or into; empty only for another medium
     * @param count how many there are, from 1 to 1000
     * @param need the air that each tool needs; empty where it needs none worth judging
     * @throws IllegalArgumentException if the id is blank or holds a comma, or the count is out of range
     */
    public Plugs {
      Objects.requireNonNull(tool, "tool");
      Ids.require("profile of the plugs on " + tool, Objects.requireNonNull(profile, "profile"));
      Objects.requireNonNull(onto, "onto");
      Objects.requireNonNull(need, "need");
      requireCount("plugs on " + tool, count);
    }

    /** {@return the row in one line, such as "5 plugs wren of grinders"} */
    @Override
    public String toString() {
      return count + (count == 1 ? " plug " : " plugs ") + profile + " of " + tool
          + onto.map(end -> ", on " + end).orElse("")
          + need.map(each -> ", " + each).orElse("");
    }
  }

  /**
   * The air that a tool needs, and the hose between coupling and tool.
   *
   * @param air what it takes while it runs, as well as that is known
   * @param pressure what it needs at its inlet
   * @param hose the hose between the coupling and the tool; empty where the plug is on the tool
   */
  public record Need(Range<FreeAirFlow> air, GaugePressure pressure, Optional<ConduitRange> hose) {
    /**
     * Refuses what is null.
     *
     * @param air what it takes while it runs, as well as that is known
     * @param pressure what it needs at its inlet
     * @param hose the hose between the coupling and the tool; empty where the plug is on the tool
     * @throws IllegalArgumentException if the pressure is below that around
     */
    public Need {
      Objects.requireNonNull(air, "air");
      Objects.requireNonNull(pressure, "pressure");
      Objects.requireNonNull(hose, "hose");
      if (!(pressure.pascals() >= 0.0)) {
        throw new IllegalArgumentException(
            "pressure that a tool needs must be at least 0 bar(g), was " + pressure.shown());
      }
    }

    /** {@return the need in one line, such as "takes 12 L/s ANR at 6 bar(g)"} */
    @Override
    public String toString() {
      return "takes " + air + " at " + pressure
          + hose.map(
                  each -> " behind a hose of " + each.least().bore().format(LengthUnit.MILLIMETRE))
              .orElse("");
    }
  }

  private static void requireCount(String what, int count) {
    if (count < 1 || count > MOST_PIECES) {
      throw new IllegalArgumentException("count of the " + what + " must be in [1, " + MOST_PIECES
          + "], was " + count + "; leave out what is not there");
    }
  }

  /**
   * Checks the components and copies the lists.
   *
   * @param name what to call it
   * @param medium what its line carries
   * @param pressure the pressure at its sockets while the tools run; empty only for another medium
   * @param sockets the sockets in use
   * @param plugs the plugs in use
   * @throws IllegalArgumentException if the name is blank, there is no socket or no plug, a bay of compressed air lacks its
   *     pressure or the end one is on, or a bay of another medium tells a need
   */
  public Bay {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(medium, "medium");
    Objects.requireNonNull(pressure, "pressure");
    sockets = List.copyOf(Objects.requireNonNull(sockets, "sockets"));
    plugs = List.copyOf(Objects.requireNonNull(plugs, "plugs"));
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a bay must not be blank, was \"" + name + "\"");
    }
    if (sockets.size() > MOST_ROWS || plugs.size() > MOST_ROWS) {
      throw new IllegalArgumentException("rows of sockets and of plugs of bay " + name
          + " must be at most " + MOST_ROWS + " each, were " + sockets.size() + " and "
          + plugs.size() + "; put pieces that are alike into one row, or make two bays");
    }
    if (sockets.isEmpty() || plugs.isEmpty()) {
      throw new IllegalArgumentException("bay " + name + " must have sockets and plugs, had "
          + sockets.size() + " and " + plugs.size()
          + " rows; a bay holds the places and the tools that go round among them, and a line of another"
          + " medium is told apart by them");
    }
    if (medium == Medium.COMPRESSED_AIR) {
      requireAir(name, pressure, sockets, plugs);
    } else if (plugs.stream().anyMatch(plug -> plug.need().isPresent())) {
      throw new IllegalArgumentException("bay " + name + " must tell no need of its tools, as its"
          + " line carries " + medium + ", whose flow airfit does not judge; leave it out");
    }
  }

  private static void requireAir(
      String name,
      Optional<Range<GaugePressure>> pressure,
      List<Sockets> sockets,
      List<Plugs> plugs) {
    if (pressure.isEmpty() || !(pressure.get().least().pascals() > 0.0)) {
      throw new IllegalArgumentException(
          "pressure of bay " + name + " must be told, above 0 bar(g),"
              + " was " + pressure.map(Range::toString).orElse("not told")
              + "; give that at its sockets while the tools run");
    }
    boolean isEnded = sockets.stream().allMatch(row -> row.onto().isPresent())
        && plugs.stream().allMatch(row -> row.onto().isPresent());
    if (!isEnded) {
      throw new IllegalArgumentException("each socket and plug of bay " + name
          + " must tell the end that it is on, such as 1/4 NPT female; one does not");
    }
  }

  /** {@return whether its line carries compressed air, so that it may be changed} */
  public boolean isAir() {
    return medium == Medium.COMPRESSED_AIR;
  }

  /** {@return the bay in one line: its name, its medium and what is in use} */
  @Override
  public String toString() {
    List<String> rows = new ArrayList<>();
    sockets.forEach(row -> rows.add(row.toString()));
    plugs.forEach(row -> rows.add(row.toString()));
    return name + " (" + medium + pressure.map(range -> ", " + range).orElse("") + "): "
        + (rows.isEmpty() ? "nothing in use" : String.join("; ", rows));
  }
}
