package org.airfit.jobsheet;

import java.io.FileDescriptor;
import java.io.InputStream;
import java.io.PrintStream;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.files.Printable;

/**
 * Starts the program that is asked for: the job sheet, or by a word before the files the network sheet, the
 * diagnosis by gauges, the sheet of leaks, the inventory of couplings, the water and purity of air, the check of a price
 * list or of a set, pencil cards, whether two ends go together, or the interview.
 */
public final class Main {

  private static final Set<String> HELP = Set.of("--help", "-h", "-?", "/?");

  /** All that the program does, as it is called. */
  private static final String FORMS = """
      java -jar airfit-jobsheet.jar ...

        JOB.json [PAGE.html]
            prints the sheet of a job, and writes it as a page to hand over and a page with its reasons;
            the pages are named after the job, in this folder, if none is named
        interview [START.json] CATALOGUE.json NEW-JOB.json
            asks what a job needs, one question at a time, and writes the job file; START may lack anything
        network NETWORK.csv [PAGE.html]
            prints the sheet of a network and writes it as a page
        day DAY.json [PAGE.html]
            prints what the air of a plant does over a day, and writes it as a page
        diagnosis DIAGNOSIS.json [PAGE.html]
            tells what is wrong in a run by readings of its gauges, prints that and writes it as a page
        leaks LEDGER.csv [PAGE.html] [NEW.csv]
            prints what the leaks of a ledger cost and which repairs pay first, writes it as a page to hang up,
            and writes the ledger anew with what was computed
        inventory INVENTORY.json [PAGE.html]
            tells which coupling profile to keep, what to change in which order and what can be plugged together
            wrongly on the way, prints that and writes it as a page
        pricelist CHECK.json [PAGE.html]
            lists the faults of a price list and what it lacks for the jobs that come, prints that and writes it as
            a page
        card JOB.json [PAGE.html]
            prints the answers of a job as cards to follow with pencil and ruler, and writes them as a page:
            what arrives at the tool, which thread and which plug it is, each with how far it can be from the exact
            answer
        water WATER.json [PAGE.html]
            tells where water falls out of compressed air, which train of filters and dryers reaches the purity asked
            for and what clogged elements cost, prints that and writes it as a page
        joint END END
            tells what goes between two ends, such as "1/2 NPT male" "1/4 NPT female"
        set SET.csv|SET.json [OUT.csv|OUT.json|PAGE.html] [A4|Letter]
            checks a reference set; turns it into the other form, or draws it to true scale
        --help
            prints this

      No file that is read is written over. Exit code 0: a sheet was made; 2: something could not be used,
      and one line tells what.
      """;

  private Main() {}

  /**
   * Runs the program; exit code 0 if a sheet was made, 2 if a file could not be used.
   *
   * @param args the job file, and the page to write (by default the job file's name with .html, in the current
   *     folder); or "network", "day", "diagnosis", "leaks", "inventory", "water", "pricelist" or "set" and a file of
   *     that kind; or "card" and a job file; or "joint" and two ends; or "interview" and the files that its program
   *     asks for
   */
  public static void main(String[] args) {
    System.exit(run(
        args,
        System.in,
        CommandLine.terminal(FileDescriptor.out),
        CommandLine.terminal(FileDescriptor.err)));
  }

  static int run(String[] args, PrintStream out, PrintStream err) {
    return run(args, InputStream.nullInputStream(), out, err);
  }

  static int run(String[] args, InputStream in, PrintStream out, PrintStream err) {
    if (Stream.of(args).anyMatch(HELP::contains)) {
      out.print(FORMS);
      return 0;
    }
    String word = args.length == 0 ? "" : args[0];
    if (word.startsWith("-")) {
      err.println(Printable.line(word) + ": is no form of this program; --help tells them all");
      return CommandLine.WRONG_INPUT;
    }
    String[] files = args.length == 0 ? args : Arrays.copyOfRange(args, 1, args.length);
    return switch (word) {
      case "network" -> NetworkProgram.run(files, out, err);
      case "day" -> DayProgram.run(files, out, err);
      case "diagnosis" -> DiagnosisProgram.run(files, out, err);
      case "leaks" -> LeakProgram.run(files, out, err);
      case "inventory" -> InventoryProgram.run(files, out, err);
      case "pricelist" -> PriceListProgram.run(files, out, err);
      case "water" -> WaterProgram.run(files, out, err);
      case "set" -> SetProgram.run(files, out, err);
      case "card" -> CardProgram.run(files, out, err);
      case "interview" -> InterviewProgram.run(files, in, out, err);
      case "joint" -> JointProgram.run(files, out, err);
      default -> JobProgram.run(args, out, err);
    };
  }
}
