package org.airfit.files;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.plant.LeakLedger;
import org.airfit.plant.LeakTest;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.working.UnitSystem;

/**
 * What a ledger of leaks says.
 *
 * @param title what to call the plant
 * @param customer whose it is
 * @param atmosphere the pressure around
 * @param units the units in which to tell the answer
 * @param ledger the leaks and what air costs
 * @param tests tests of the whole plant, in the order of the file
 * @param rows the rows as they were filed, the heading first
 */
public record LeakJob(
    String title,
    String customer,
    AbsolutePressure atmosphere,
    UnitSystem units,
    LeakLedger ledger,
    List<Test> tests,
    List<List<String>> rows) {

  /**
   * A test of the whole plant.
   *
   * @param name what to call it
   * @param day its day; empty where it was not told
   * @param result what it showed
   */
  public record Test(String name, Optional<LocalDate> day, LeakTest result) {

    /**
     * Refuses what is null.
     *
     * @param name what to call it
     * @param day its day; empty where it was not told
     * @param result what it showed
     */
    public Test {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(day, "day");
      Objects.requireNonNull(result, "result");
    }
  }

  /**
   * Refuses what is null, and copies the lists.
   *
   * @param title what to call the plant
   * @param customer whose it is
   * @param atmosphere the pressure around
   * @param units the units in which to tell the answer
   * @param ledger the leaks and what air costs
   * @param tests tests of the whole plant, in the order of the file
   * @param rows the rows as they were filed, the heading first
   */
  public LeakJob {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(units, "units");
    Objects.requireNonNull(ledger, "ledger");
    tests = List.copyOf(Objects.requireNonNull(tests, "tests"));
    rows = Objects.requireNonNull(rows, "rows").stream().map(List::copyOf).toList();
  }
}
