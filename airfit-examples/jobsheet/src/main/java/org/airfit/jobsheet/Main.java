package org.airfit.jobsheet;

import java.io.File;
import java.io.FileDescriptor;
import java.io.InputStream;
import java.io.PrintStream;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.files.Printable;
import org.airfit.files.kept.LibraryVersion;

/**
 * Starts the program that is asked for: the job sheet, or by a word before the files the network sheet, the
 * diagnosis by gauges, the sheet of leaks, the inventory of couplings, the water and purity of air, the check of a price
 * list or of a set, pencil cards, whether two ends go together, or the interview.
 */
public final class Main {

  private static final Set<String> HELP = Set.of("--help", "-h", "-?", "/?");

  private static final String VERSION = "--version";

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
    String word = args.length == 0 ? "" : args[0];
    if (Stream.of(args).anyMatch(HELP::contains)) {
      out.print(help(word));
      return 0;
    }
    if (word.equals(VERSION) && args.length == 1) {
      out.println("airfit-jobsheet " + LibraryVersion.ofCore());
      return 0;
    }
    if (word.startsWith("-")) {
      err.println(Printable.line(word) + ": is no form of this program; --help tells them all");
      return CommandLine.WRONG_INPUT;
    }
    if (isMistyped(word)) {
      err.println(Printable.line(word)
          + ": is neither a form of this program nor a file here; --help tells them all");
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

  /** Whether a word can be meant for that of a form: it names none, and no file. */
  private static boolean isMistyped(String word) {
    return word.matches("[a-z-]+") && ProgramForm.named(word).isEmpty() && !new File(word).exists();
  }

  /** The help of the form that is called; of all forms where none is. */
  private static String help(String word) {
    if (HELP.contains(word) || word.equals(VERSION)) {
      return ProgramForm.helpOfAll();
    }
    return ProgramForm.named(word).orElse(ProgramForm.JOB).help();
  }
}
