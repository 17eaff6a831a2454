package org.airfit.files;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirPurity;
import org.airfit.air.AirTreatment;
import org.airfit.air.PipeSlope;
import org.airfit.plant.ElementCost;
import org.airfit.working.UnitSystem;

/**
 * What a file of water and purity says: the air asked for, and the trains of filters and dryers that may give it.
 *
 * @param title what is asked
 * @param customer whose air it is
 * @param shift the time for which water is counted, such as 8 h
 * @param asked the purity asked for; empty where only the water is asked about
 * @param trains the trains, at least one
 * @param units the units of its sheet
 */
public record WaterJob(
    String title,
    String customer,
    Duration shift,
    Optional<AirPurity> asked,
    List<Train> trains,
    UnitSystem units) {

  /**
   * One of the trains.
   *
   * @param name what it is called, such as "as it stands"
   * @param treatment its stages
   * @param mains the pipes in it whose fall was told
   * @param costs what the elements cost of which loss and plant were told
   */
  public record Train(
      String name, AirTreatment treatment, List<Main> mains, List<ElementCost> costs) {

    /**
     * Refuses what is null, and copies the lists.
     *
     * @param name what it is called
     * @param treatment its stages
     * @param mains the pipes in it whose fall was told
     * @param costs what the elements cost of which loss and plant were told
     */
    public Train {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(treatment, "treatment");
      mains = List.copyOf(Objects.requireNonNull(mains, "mains"));
      costs = List.copyOf(Objects.requireNonNull(costs, "costs"));
    }
  }

  /**
   * A pipe and its fall.
   *
   * @param name the pipe
   * @param slope its length and fall
   */
  public record Main(String name, PipeSlope slope) {

    /**
     * Refuses what is null.
     *
     * @param name the pipe
     * @param slope its length and fall
     */
    public Main {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(slope, "slope");
    }
  }

  /**
   * Refuses what is null, and copies the list.
   *
   * @param title what is asked
   * @param customer whose air it is
   * @param shift the time for which water is counted
   * @param asked the purity asked for
   * @param trains the trains, at least one
   * @param units the units of its sheet
   */
  public WaterJob {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(shift, "shift");
    Objects.requireNonNull(asked, "asked");
    trains = List.copyOf(Objects.requireNonNull(trains, "trains"));
    Objects.requireNonNull(units, "units");
  }
}
