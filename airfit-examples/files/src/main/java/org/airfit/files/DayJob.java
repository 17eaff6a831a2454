package org.airfit.files;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.network.DayPrice;
import org.airfit.network.PlantDay;
import org.airfit.working.UnitSystem;

/**
 * A plant over a day as a file tells it.
 *
 * @param title what the plant is called
 * @param customer whose it is
 * @param day the plant and its users
 * @param begins the time of day at which the day begins
 * @param price what the day is priced by; empty where no price of electricity is told
 * @param units the units of the sheet
 * @param remarks what was taken for what is not told, or told in words of several meanings
 */
public record DayJob(
    String title,
    String customer,
    PlantDay day,
    Duration begins,
    Optional<DayPrice> price,
    UnitSystem units,
    List<String> remarks) {

  /**
   * Copies the list; refuses what is null.
   *
   * @param title what the plant is called
   * @param customer whose it is
   * @param day the plant and its users
   * @param begins the time of day at which the day begins
   * @param price what the day is priced by; empty where no price of electricity is told
   * @param units the units of the sheet
   * @param remarks what was taken for what is not told, or told in words of several meanings
   */
  public DayJob {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(day, "day");
    Objects.requireNonNull(begins, "begins");
    Objects.requireNonNull(price, "price");
    Objects.requireNonNull(units, "units");
    remarks = List.copyOf(Objects.requireNonNull(remarks, "remarks"));
  }
}
