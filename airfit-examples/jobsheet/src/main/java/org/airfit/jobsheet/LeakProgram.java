package org.airfit.jobsheet;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.airfit.files.Disk;
import org.airfit.files.LeakJob;
import org.airfit.files.WrongFileException;

/** Reads a ledger of leaks, prints what they cost, and writes it as a page to hang up and as a ledger anew. */
final class LeakProgram {

  private static final String USAGE =
      "give a ledger of leaks, and what to write if not a page beside you: leaks LEDGER.csv [PAGE.html] [NEW.csv]";

  private LeakProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.run(args, 3, USAGE, err, () -> {
      Path file = CommandLine.path(args[0], USAGE);
      List<Path> outputs = new ArrayList<>();
      for (int i = 1; i < args.length; i++) {
        outputs.add(CommandLine.path(args[i], USAGE));
      }
      Path page = only(outputs, ".html").orElse(CommandLine.pageOf(file, "(?i)\\.csv"));
      Optional<Path> ledger = only(outputs, ".csv");
      List<Path> files = new ArrayList<>();
      LeakJob job = Disk.leaks(file, files);
      Disk.requireOther(page, files);
      if (ledger.isPresent()) {
        Disk.requireOther(ledger.get(), files);
        Disk.write(ledger.get(), job);
      }
      Disk.write(page, LeakPage.of(job));
      out.print(LeakText.of(job));
      out.println("The same to hang up, without the working: " + CommandLine.shown(page));
      ledger.ifPresent(written ->
          out.println("The ledger with what was computed: " + CommandLine.shown(written)));
    });
  }

  /** The file to write whose name ends so. */
  private static Optional<Path> only(List<Path> outputs, String ending) throws WrongFileException {
    Optional<Path> found = Optional.empty();
    for (Path path : outputs) {
      String name = path.toString().toLowerCase(Locale.ROOT);
      if (!name.endsWith(".html") && !name.endsWith(".csv")) {
        throw new WrongFileException(path.toString(), "", "must end in .html or .csv");
      }
      if (name.endsWith(ending)) {
        if (found.isPresent()) {
          throw new WrongFileException(path.toString(), "", "is a second file to write; " + USAGE);
        }
        found = Optional.of(path);
      }
    }
    return found;
  }
}
