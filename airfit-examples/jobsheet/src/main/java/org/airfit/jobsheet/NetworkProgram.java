package org.airfit.jobsheet;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.airfit.files.Disk;
import org.airfit.files.NetworkJob;

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
      List<Path> files = new ArrayList<>();
      NetworkJob read = Disk.network(file, files);
      Disk.requireOther(page, files);
      NetworkSheet sheet = NetworkSheet.of(read);
      Disk.write(page, NetworkPage.of(sheet));
      out.print(NetworkText.of(sheet));
      out.println(
          "The same for the printer, on one page without the working: " + CommandLine.shown(page));
    });
  }
}
