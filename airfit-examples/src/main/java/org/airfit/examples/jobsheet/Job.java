package org.airfit.examples.jobsheet;

import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.plug.Reading;
import org.airfit.plug.SocketAnswer;
import org.airfit.quantity.AbsolutePressure;
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
 * @param thread what was read on its thread
 * @param socket the answer where only a socket is at hand
 * @param supply the air at the supply
 * @param atmosphere the pressure around it
 * @param now the run as it stands
 * @param requirement what the parts must do; its profile is filled in when the plug is known
 */
record Job(
    String title,
    String customer,
    String toolName,
    CatalogueFile catalogue,
    String plugWhere,
    List<Reading> readings,
    Optional<ThreadReadings> thread,
    Optional<SocketAnswer> socket,
    AirState supply,
    AbsolutePressure atmosphere,
    Optional<Run> now,
    Requirement.Builder requirement) {}
