package org.airfit.jobsheet;

import java.io.PrintStream;
import org.airfit.files.Disk;
import org.airfit.files.Printable;

/** Reads a job file, prints its answers as pencil cards, and writes them as a page for the printer. */
final class CardProgram {

  private static final String USAGE =
      "give a job file, and where the cards should go if not beside you: card JOB.json [PAGE.html]";

  private CardProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    return CommandLine.answer(args, USAGE, "(?i)\\.json", out, err, Disk::job, job -> {
      CardSheet sheet = CardSheet.of(JobSheet.of(job));
      return new CommandLine.Answered(
          Printable.lines(CardText.of(sheet)),
          CardPage.of(sheet),
          "The cards with their figures, to print at full size");
    });
  }
}
