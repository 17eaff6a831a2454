package org.airfit.files;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugReading;
import org.airfit.plug.SocketAnswer;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.run.Run;
import org.airfit.select.Requirement;
import org.airfit.thread.ThreadReadings;

/**
 * What a customer asks.
 *
 * @param title the job in a line
 * @param customer whose job it is
 * @param toolName the tool
 * @param catalogue the profiles and parts to work with
 * @param plugWhere where the plug at hand comes from
 * @param readings what was read on it; empty for none
 * @param worn the most that wear can have taken off it
 * @param nearCopies whether near copies of the profiles are about
 * @param thread what was read on its thread
 * @param socket the answer where only a socket is at hand
 * @param supply the air at the supply
 * @param atmosphere the pressure around it
 * @param now the run of today; empty where it was not told
 * @param requirement what the parts must do, without the profile, which the plug must tell
 * @param remarks what the writer of its ends ought to know, such as on "R 1/4 female"; empty for most
 * @param units in which units to tell the answers, and why
 */
public record Job(
    String title,
    String customer,
    String toolName,
    ShopCatalogue catalogue,
    String plugWhere,
    List<PlugReading> readings,
    Length worn,
    boolean nearCopies,
    Optional<ThreadReadings> thread,
    Optional<SocketAnswer> socket,
    AirState supply,
    AbsolutePressure atmosphere,
    Optional<Run> now,
    Requirement requirement,
    List<String> remarks,
    TypedUnits units) {

  /**
   * Copies the lists; refuses what is null.
   *
   * @param title the job in a line
   * @param customer whose job it is
   * @param toolName the tool
   * @param catalogue the profiles and parts to work with
   * @param plugWhere where the plug at hand comes from
   * @param readings what was read on it; empty for none
   * @param worn the most that wear can have taken off it
   * @param nearCopies whether near copies of the profiles are about
   * @param thread what was read on its thread
   * @param socket the answer where only a socket is at hand
   * @param supply the air at the supply
   * @param atmosphere the pressure around it
   * @param now the run of today; empty where it was not told
   * @param requirement what the parts must do, without the profile, which the plug must tell
   * @param remarks what the writer of its ends ought to know, such as on "R 1/4 female"; empty for most
   * @param units in which units to tell the answers, and why
   */
  public Job {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(toolName, "toolName");
    Objects.requireNonNull(catalogue, "catalogue");
    Objects.requireNonNull(plugWhere, "plugWhere");
    readings = List.copyOf(Objects.requireNonNull(readings, "readings"));
    Objects.requireNonNull(worn, "worn");
    Objects.requireNonNull(thread, "thread");
    Objects.requireNonNull(socket, "socket");
    Objects.requireNonNull(supply, "supply");
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(now, "now");
    Objects.requireNonNull(requirement, "requirement");
    remarks = List.copyOf(Objects.requireNonNull(remarks, "remarks"));
    Objects.requireNonNull(units, "units");
  }

  /**
   * Obtains what tells the plug: the profiles of the catalogue, with what the job says of wear and near copies.
   *
   * @return the identifier
   */
  public Identifier identifier() {
    Identifier identifier = Identifier.of(catalogue.profiles()).withWearAllowance(worn);
    return nearCopies ? identifier : identifier.withoutNearCopies();
  }
}
