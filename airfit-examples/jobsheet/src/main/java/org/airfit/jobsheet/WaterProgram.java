package org.airfit.jobsheet;

import java.io.PrintStream;
import org.airfit.files.Disk;

/**
 * Reads a file of water and purity, prints where water falls out, which train of filters and dryers reaches the purity
 * asked for and what its elements cost, and writes it as a page.
 */
final class WaterProgram {

  private static final String USAGE =
      "give a file of water and purity, and where the page should go if not beside you:"
          + " water WATER.json [PAGE.html]";

  private WaterProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.answer(args, USAGE, "(?i)\\.json", out, err, Disk::water, read -> {
      WaterSheet sheet = WaterSheet.of(read);
      return new CommandLine.Answered(
          WaterText.of(sheet), WaterPage.of(sheet), "The same for the printer");
    });
  }
}
