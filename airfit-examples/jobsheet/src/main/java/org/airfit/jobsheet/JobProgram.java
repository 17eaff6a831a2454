package org.airfit.jobsheet;

import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.airfit.files.Disk;
import org.airfit.files.Job;
import org.airfit.files.JobLabel;
import org.airfit.files.Printable;
import org.airfit.files.Refusal;

/** Reads a job file, prints the job sheet, and writes it as a page. */
final class JobProgram {

  private static final String USAGE =
      "give a job file, and where the page should go if not beside you: JOB.json [PAGE.html]; what it"
          + " rests on goes beside it; --help tells all that the program does";

  private JobProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return run(args, () -> LocalDate.now(ZoneId.systemDefault()), out, err);
  }

  /** The same on a day: the date of a sheet whose job tells none, not asked for where it tells one. */
  static int run(String[] args, Supplier<LocalDate> today, PrintStream out, PrintStream err) {
    return CommandLine.run(args, USAGE, err, () -> {
      Path job = CommandLine.path(args[0], USAGE);
      Path page =
          args.length == 2 ? CommandLine.path(args[1], USAGE) : CommandLine.pageOf(job, "\\.json");
      Path reasons = CommandLine.beside(page, "-reasons");
      List<Path> files = new ArrayList<>();
      Optional<Refusal> refusal = Disk.refusal(job, files);
      Disk.requireOther(page, files);
      if (refusal.isPresent()) {
        Letterhead head = Letterhead.of(
            Disk.shop(files), refusal.get().label(), day(refusal.get().label(), today));
        Disk.write(page, Printable.lines(RefusalSheet.page(refusal.get(), head)));
        out.print(RefusalSheet.text(refusal.get()));
        return;
      }
      Job read = Disk.job(job, files);
      Letterhead head = Letterhead.of(Disk.shop(files), read.label(), day(read.label(), today));
      Disk.requireOther(page, files);
      Disk.requireOther(reasons, files);
      JobSheet sheet = JobSheet.of(read);
      String text = TextSheet.of(sheet);
      Disk.write(
          page, PageSheet.of(sheet, head, Optional.of(String.valueOf(reasons.getFileName()))));
      Disk.write(reasons, PageReasons.of(sheet, head));
      out.print(text);
      out.println("To hand over: " + CommandLine.shown(page));
      out.println("What it rests on, and the working: " + CommandLine.shown(reasons));
    });
  }

  /** The day that stands on a sheet: the clock and its time zone are not read where the job tells it. */
  private static LocalDate day(JobLabel label, Supplier<LocalDate> today) {
    return label.date().orElseGet(today);
  }
}
