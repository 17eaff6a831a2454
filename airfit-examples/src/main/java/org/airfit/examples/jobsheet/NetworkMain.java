package org.airfit.examples.jobsheet;

import java.io.FileDescriptor;
import java.io.PrintStream;
import java.nio.file.Path;

/** Reads a network file, prints what its drops have, and writes it as a page beside where it was called. */
public final class NetworkMain {

  private static final String USAGE =
      "give a network file, and where the page should go if not beside you: NETWORK.csv [PAGE.html]";

  private NetworkMain() {}

  /**
   * Runs the program; exit code 0 if a sheet was made, 2 if a file could not be used.
   *
   * @param args the network file, and the page to write (by default the file's name with .html, in the current folder)
   */
  public static void main(String[] args) {
    System.exit(run(args, Main.terminal(FileDescriptor.out), Main.terminal(FileDescriptor.err)));
  }

  static int run(String[] args, PrintStream out, PrintStream err) {
    return Main.run(args, USAGE, err, () -> {
      Path file = Main.path(args[0], USAGE);
      Path page = args.length == 2 ? Main.path(args[1], USAGE) : Main.pageOf(file, "(?i)\\.csv");
      NetworkSheet sheet = NetworkSheet.of(NetworkFile.read(file));
      Main.write(page, NetworkPage.of(sheet));
      out.print(NetworkText.of(sheet));
      out.println("The same for the printer, on one page without the working: " + page);
    });
  }
}
