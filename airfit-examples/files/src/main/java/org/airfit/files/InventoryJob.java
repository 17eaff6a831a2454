package org.airfit.files;

import java.util.List;
import java.util.Objects;
import org.airfit.plug.ReferenceSet;
import org.airfit.select.CouplingInventory;
import org.airfit.working.UnitSystem;

/**
 * What an inventory of couplings says.
 *
 * @param title what is asked
 * @param customer whose couplings they are
 * @param inventory what is in use, on the shelf and on offer
 * @param profiles the plug profiles of the catalogue, with their sizes
 * @param units the units of its sheet
 * @param remarks what the writer of its ends ought to know; empty for most
 */
public record InventoryJob(
    String title,
    String customer,
    CouplingInventory inventory,
    ReferenceSet profiles,
    UnitSystem units,
    List<String> remarks) {

  /**
   * Copies the remarks; refuses what is null.
   *
   * @param title what is asked
   * @param customer whose couplings they are
   * @param inventory what is in use, on the shelf and on offer
   * @param profiles the plug profiles of the catalogue, with their sizes
   * @param units the units of its sheet
   * @param remarks what the writer of its ends ought to know; empty for most
   */
  public InventoryJob {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(inventory, "inventory");
    Objects.requireNonNull(profiles, "profiles");
    Objects.requireNonNull(units, "units");
    remarks = List.copyOf(Objects.requireNonNull(remarks, "remarks"));
  }
}
