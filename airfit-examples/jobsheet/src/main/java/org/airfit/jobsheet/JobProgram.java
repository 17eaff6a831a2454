package org.airfit.jobsheet;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.files.Disk;
import org.airfit.files.Job;
import org.airfit.files.Printable;
import org.airfit.files.Refusal;

/** Reads a job file, prints the job sheet, and writes it as a page. */
final class JobProgram {

  private static final String USAGE =
      "give a job file, and where the page should go if not beside you: JOB.json [PAGE.html]; for a network sheet:"
          + " network NETWORK.csv [PAGE.html]; to check a reference set: set SET.csv|SET.json [OUT]; for what goes between"
          + " two ends: joint END END; to be asked: interview [START.json] CATALOGUE.json NEW-JOB.json";

  private JobProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.run(args, USAGE, err, () -> {
      Path job = CommandLine.path(args[0], USAGE);
      Path page =
          args.length == 2 ? CommandLine.path(args[1], USAGE) : CommandLine.pageOf(job, "\\.json");
      List<Path> files = new ArrayList<>();
      Optional<Refusal> refusal = Disk.refusal(job, files);
      Disk.requireOther(page, files);
      if (refusal.isPresent()) {
        Disk.write(page, Printable.lines(RefusalSheet.page(refusal.get())));
        out.print(RefusalSheet.text(refusal.get()));
        return;
      }
      Job read = Disk.job(job, files);
      Disk.requireOther(page, files);
      JobSheet sheet = JobSheet.of(read);
      String text = TextSheet.of(sheet);
      Disk.write(page, PageSheet.of(sheet));
      out.print(text);
      out.println("The same for the printer: " + CommandLine.shown(page));
    });
  }
}
