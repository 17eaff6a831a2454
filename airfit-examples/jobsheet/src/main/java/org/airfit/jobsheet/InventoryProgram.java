package org.airfit.jobsheet;

import java.io.PrintStream;
import org.airfit.files.Disk;

/** Reads an inventory of couplings, prints which profile to keep and how to get there, and writes it as a page. */
final class InventoryProgram {

  private static final String USAGE =
      "give an inventory of couplings, and where the page should go if not beside you:"
          + " inventory INVENTORY.json [PAGE.html]";

  private InventoryProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.answer(args, USAGE, "(?i)\\.json", out, err, Disk::inventory, read -> {
      InventorySheet sheet = InventorySheet.of(read);
      return new CommandLine.Answered(
          InventoryText.of(sheet), InventoryPage.of(sheet), "The same for the printer");
    });
  }
}
