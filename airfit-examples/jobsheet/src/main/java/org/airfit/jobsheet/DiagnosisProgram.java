package org.airfit.jobsheet;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.airfit.files.DiagnosisJob;
import org.airfit.files.Disk;

/** Reads a diagnosis file, prints what its readings say, and writes it as a page. */
final class DiagnosisProgram {

  private static final String USAGE =
      "give a diagnosis file, and where the page should go if not beside you:"
          + " diagnosis DIAGNOSIS.json [PAGE.html]";

  private DiagnosisProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.run(args, USAGE, err, () -> {
      Path file = CommandLine.path(args[0], USAGE);
      Path page = args.length == 2
          ? CommandLine.path(args[1], USAGE)
          : CommandLine.pageOf(file, "(?i)\\.json");
      List<Path> files = new ArrayList<>();
      DiagnosisJob read = Disk.diagnosis(file, files);
      Disk.requireOther(page, files);
      DiagnosisSheet sheet = DiagnosisSheet.of(read);
      Disk.write(page, DiagnosisPage.of(sheet));
      out.print(DiagnosisText.of(sheet));
      out.println("The same for the printer, without the working: " + CommandLine.shown(page));
    });
  }
}
