package org.airfit.select;

import java.util.Objects;
import org.airfit.plant.AirPlant;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.working.UnitSystem;

/**
 * The figures of a plant by which parts are reckoned over a year: what compressed air costs there, how much flows, and
 * how much a joint leaks. All of them are the user's: airfit knows none.
 *
 * @param plant what compresses the air, how many hours in the year, and what its electricity costs
 * @param flow the mean flow, over these hours, that is compressed higher by what the parts lose: of the tool alone, or
 *     of the whole plant where its pressure is set for this tool
 * @param leakPerJoint the mean leak of one joint; 0 where leaks are not to be reckoned
 */
public record PlantYear(AirPlant plant, FreeAirFlow flow, FreeAirFlow leakPerJoint) {

  /**
   * Refuses {@code null}.
   *
   * @param plant what compresses the air, how many hours in the year, and what its electricity costs
   * @param flow the mean flow that is compressed higher by what the parts lose
   * @param leakPerJoint the mean leak of one joint
   */
  public PlantYear {
    Objects.requireNonNull(plant, "plant");
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(leakPerJoint, "leakPerJoint");
  }

  /** What was taken for granted, in a sentence. */
  String assumptions(UnitSystem units) {
    return "Reckoned with " + plant.time().toHours() + " h in the year at "
        + plant.perKilowattHour().shown() + " per kWh, a mean flow of " + units.say(flow)
        + " that is compressed higher by what the parts lose, and a leak of "
        + units.say(leakPerJoint)
        + " at every joint. What the pipe in front of the outlet loses is the same for all and left out."
        + " A regulator counts with what it loses wide open: what it takes down to its setting is wanted, and its"
        + " droop asks for a higher setting at most, for which no compressor works more.";
  }
}
