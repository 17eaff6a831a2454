package org.airfit.jobsheet;

import java.io.PrintStream;
import org.airfit.files.Disk;

/** Checks a price list, prints its faults and what it lacks, and writes them as a page. */
final class PriceListProgram {

  private static final String USAGE =
      "give what is asked of a price list, and where the page should go if not beside you:"
          + " pricelist CHECK.json [PAGE.html]";

  private PriceListProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.answer(args, USAGE, "(?i)\\.json", out, err, Disk::priceList, read -> {
      PriceListSheet sheet = PriceListSheet.of(read);
      return new CommandLine.Answered(
          PriceListText.of(sheet), PriceListPage.of(sheet), "The same for the printer");
    });
  }
}
