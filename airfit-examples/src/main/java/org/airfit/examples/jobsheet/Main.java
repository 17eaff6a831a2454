package org.airfit.examples.jobsheet;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Reads a job file, prints the job sheet, and writes it as a page beside where it was called. */
public final class Main {

  private static final int WRONG_INPUT = 2;

  private static final String USAGE =
      "give a job file, and where the page should go if not beside you: JOB.json [PAGE.html]";

  private Main() {}

  /**
   * Runs the program; exit code 0 if a sheet was made, 2 if a file could not be used.
   *
   * @param args the job file, and the page to write (by default the job file's name with .html, in the current folder)
   */
  public static void main(String[] args) {
    System.exit(run(args, terminal(FileDescriptor.out), terminal(FileDescriptor.err)));
  }

  /** The same signs on every terminal, whatever its locale says. */
  static PrintStream terminal(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), true, StandardCharsets.UTF_8);
  }

  static int run(String[] args, PrintStream out, PrintStream err) {
    return run(args, USAGE, err, () -> {
      Path job = path(args[0], USAGE);
      Path page = args.length == 2 ? path(args[1], USAGE) : pageOf(job, "\\.json");
      JobSheet sheet = JobSheet.of(JobFile.read(job));
      String text = TextSheet.of(sheet);
      write(page, PageSheet.of(sheet));
      out.print(text);
      out.println("The same for the printer: " + page);
    });
  }

  /** What a program does with a file, and perhaps a second one. */
  interface Program {
    void run() throws WrongFileException;
  }

  /** Runs a program that wants one or two files: its exit code, and one line of what was wrong. */
  static int run(String[] args, String usage, PrintStream err, Program program) {
    if (args.length < 1 || args.length > 2) {
      err.println(usage);
      return WRONG_INPUT;
    }
    try {
      program.run();
      return 0;
    } catch (WrongFileException e) {
      err.println(e.getMessage());
      return WRONG_INPUT;
    }
  }

  static Path path(String text, String usage) throws WrongFileException {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new WrongFileException(text, "", "is no path; " + usage);
    }
  }

  /** The page of a file, where the program was called: its name without the ending, which is a pattern. */
  static Path pageOf(Path file, String ending) {
    return Path.of(
        String.valueOf(file.getFileName()).replaceFirst("(" + ending + ")?$", "") + ".html");
  }

  /** Whole or not at all: written beside its place first, then moved there. */
  static void write(Path page, String html) throws WrongFileException {
    Path folder = page.toAbsolutePath().getParent();
    try {
      Path draft = Files.createTempFile(folder, "page", ".part");
      try {
        Files.writeString(draft, html);
        Files.move(draft, page, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(draft);
      }
    } catch (IOException e) {
      throw new WrongFileException(
          page.toString(), "", "can't be written; give a file in a folder that is there and yours");
    }
  }
}
