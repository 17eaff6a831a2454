package org.airfit.jobsheet;

import java.io.PrintStream;
import org.airfit.files.Disk;

/** Reads a day file, prints what the day of the plant comes to, and writes it as a page. */
final class DayProgram {

  private static final String USAGE =
      "give a day file, and where the page should go if not beside you: day DAY.json [PAGE.html]";

  private DayProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.answer(args, USAGE, "(?i)\\.json", out, err, Disk::day, read -> {
      DaySheet sheet = DaySheet.of(read);
      return new CommandLine.Answered(
          DayText.of(sheet),
          DayPage.of(sheet),
          "The same for the printer, with the pressure over the day");
    });
  }
}
