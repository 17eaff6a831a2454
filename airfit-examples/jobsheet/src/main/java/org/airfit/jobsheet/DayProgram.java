package org.airfit.jobsheet;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.airfit.files.DayJob;
import org.airfit.files.Disk;

/** Reads a day file, prints what the day of the plant comes to, and writes it as a page. */
final class DayProgram {

  private static final String USAGE =
      "give a day file, and where the page should go if not beside you: day DAY.json [PAGE.html]";

  private DayProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.run(args, USAGE, err, () -> {
      Path file = CommandLine.path(args[0], USAGE);
      Path page = args.length == 2
          ? CommandLine.path(args[1], USAGE)
          : CommandLine.pageOf(file, "(?i)\\.json");
      List<Path> files = new ArrayList<>();
      DayJob read = Disk.day(file, files);
      Disk.requireOther(page, files);
      DaySheet sheet = DaySheet.of(read);
      Disk.write(page, DayPage.of(sheet));
      out.print(DayText.of(sheet));
      out.println(
          "The same for the printer, with the pressure over the day: " + CommandLine.shown(page));
    });
  }
}
