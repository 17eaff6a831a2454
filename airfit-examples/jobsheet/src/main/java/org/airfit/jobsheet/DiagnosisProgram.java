package org.airfit.jobsheet;

import java.io.PrintStream;
import org.airfit.files.Disk;

/** Reads a diagnosis file, prints what its readings say, and writes it as a page. */
final class DiagnosisProgram {

  private static final String USAGE =
      "give a diagnosis file, and where the page should go if not beside you:"
          + " diagnosis DIAGNOSIS.json [PAGE.html]";

  private DiagnosisProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.answer(args, USAGE, "(?i)\\.json", out, err, Disk::diagnosis, read -> {
      DiagnosisSheet sheet = DiagnosisSheet.of(read);
      return new CommandLine.Answered(
          DiagnosisText.of(sheet),
          DiagnosisPage.of(sheet),
          "The same for the printer, without the working");
    });
  }
}
