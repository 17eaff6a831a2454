package org.airfit.jobsheet;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.airfit.drawing.PlugSheet;
import org.airfit.files.Disk;
import org.airfit.files.MeasuredSet;
import org.airfit.files.Printable;
import org.airfit.files.WrongFileException;
import org.airfit.plug.ReferenceSet;

/** Checks a reference set file, prints what the set can tell apart, and writes it in the other form or as a page. */
final class SetProgram {

  private static final String USAGE =
      "give a set file, and what to write if anything: set SET.csv|SET.json [OUT.csv|OUT.json|PAGE.html] [A4|Letter]";

  private SetProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.run(args, 3, USAGE, err, () -> {
      PlugSheet.Paper paper = args.length == 3 ? paper(args[2]) : PlugSheet.Paper.A4;
      List<Path> files = new ArrayList<>();
      MeasuredSet read = Disk.measuredSet(CommandLine.path(args[0], USAGE), files);
      if (args.length >= 2) {
        Path path = CommandLine.path(args[1], USAGE);
        Disk.requireOther(path, files);
        write(path, read.set(), paper);
      }
      out.print(SetText.of(read));
      if (args.length >= 2) {
        out.println("Written: " + Printable.line(args[1]));
      }
    });
  }

  /** The paper of a page to scale; other files have none, and let it pass. */
  private static PlugSheet.Paper paper(String word) throws WrongFileException {
    for (PlugSheet.Paper paper : PlugSheet.Paper.values()) {
      if (paper.name().equalsIgnoreCase(word)) {
        return paper;
      }
    }
    throw new WrongFileException(word, "", "is no paper; type A4 or Letter");
  }

  private static void write(Path path, ReferenceSet set, PlugSheet.Paper paper)
      throws WrongFileException {
    String name = path.toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".html")) {
      Disk.write(path, Printable.lines(PlugSheet.of(set, paper).html()));
    } else if (name.endsWith(".csv") || name.endsWith(".json")) {
      Disk.write(path, set);
    } else {
      throw new WrongFileException(path.toString(), "", "must end in .csv, .json or .html");
    }
  }
}
