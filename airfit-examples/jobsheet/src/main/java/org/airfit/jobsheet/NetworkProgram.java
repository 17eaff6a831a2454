package org.airfit.jobsheet;

import java.io.PrintStream;
import org.airfit.files.Disk;

/** Reads a network file, prints what its drops have, and writes it as a page. */
final class NetworkProgram {

  private static final String USAGE =
      "give a network file, and where the page should go if not beside you: network NETWORK.csv [PAGE.html]";

  private NetworkProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.answer(args, USAGE, "(?i)\\.csv", out, err, Disk::network, read -> {
      NetworkSheet sheet = NetworkSheet.of(read);
      return new CommandLine.Answered(
          NetworkText.of(sheet),
          NetworkPage.of(sheet),
          "The same for the printer, on one page without the working");
    });
  }
}
