package org.airfit.jobsheet;

import java.io.PrintStream;
import java.nio.file.Path;
import org.airfit.files.Disk;

/** Reads a network file, prints what its drops have, and writes it as a page. */
final class NetworkProgram {

  private static final String USAGE =
      "give a network file, and where the page should go if not beside you: network NETWORK.csv [PAGE.html]";

  private NetworkProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.run(args, USAGE, err, () -> {
      Path file = CommandLine.path(args[0], USAGE);
      Path page = args.length == 2
          ? CommandLine.path(args[1], USAGE)
          : CommandLine.pageOf(file, "(?i)\\.csv");
      NetworkSheet sheet = NetworkSheet.of(Disk.network(file));
      Disk.write(page, NetworkPage.of(sheet));
      out.print(NetworkText.of(sheet));
      out.println("The same for the printer, on one page without the working: " + page);
    });
  }
}
