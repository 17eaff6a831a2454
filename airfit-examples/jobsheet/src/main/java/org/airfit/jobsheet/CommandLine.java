package org.airfit.jobsheet;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.airfit.files.Disk;
import org.airfit.files.Printable;
import org.airfit.files.WrongFileException;

/** What the programs share: one or two files as arguments, exit codes, one line for what was wrong. */
final class CommandLine {

  /** The exit code where what was typed or a file could not be used. */
  static final int WRONG_INPUT = 2;

  private CommandLine() {}

  /** What a program does with its files. */
  interface Program {
    void run() throws WrongFileException;
  }

  /** The same signs on every terminal, whatever its locale says. */
  static PrintStream terminal(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), true, StandardCharsets.UTF_8);
  }

  /** Runs a program that wants one or two files: its exit code, and one line of what was wrong. */
  static int run(String[] args, String usage, PrintStream err, Program program) {
    return run(args, 2, usage, err, program);
  }

  /** The same for a program that wants so many words at most. */
  static int run(String[] args, int most, String usage, PrintStream err, Program program) {
    if (args.length < 1 || args.length > most) {
      err.println(usage);
      return WRONG_INPUT;
    }
    try {
      program.run();
      return 0;
    } catch (WrongFileException e) {
      err.println(e.getMessage());
      return WRONG_INPUT;
    } catch (OutOfMemoryError e) {
      err.println(
          Printable.line(args[0]) + ": needs more memory than there is; give a smaller file");
      return WRONG_INPUT;
    }
  }

  /** Reads a file, and notes every file that is read for it. */
  interface Reader<T> {
    T read(Path file, List<Path> read) throws WrongFileException;
  }

  /**
   * The answer to a file.
   *
   * @param text what is printed
   * @param page what is written as a page
   * @param same what is said of the page, in front of its name
   */
  record Answered(String text, String page, String same) {}

  /**
   * Answers one file: prints the text, and writes the page where the second word says, or beside the caller. That the
   * page is none of the files that were read is known before anything is worked out.
   *
   * @param ending how the name of the file ends, a pattern
   */
  static <T> int answer(
      String[] args,
      String usage,
      String ending,
      PrintStream out,
      PrintStream err,
      Reader<T> reader,
      Function<T, Answered> answer) {
    return run(args, usage, err, () -> {
      Path file = path(args[0], usage);
      Path page = args.length == 2 ? path(args[1], usage) : pageOf(file, ending);
      List<Path> files = new ArrayList<>();
      T read = reader.read(file, files);
      Disk.requireOther(page, files);
      Answered answered = answer.apply(read);
      Disk.write(page, answered.page());
      out.print(answered.text());
      out.println(answered.same() + ": " + shown(page));
    });
  }

  /** A path as it may be shown. */
  static String shown(Path path) {
    return Printable.line(path.toString());
  }

  static Path path(String text, String usage) throws WrongFileException {
    if (text.startsWith("-")) {
      throw new WrongFileException(
          text, "", "is no option of this program, and no name of a file here; " + usage);
    }
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new WrongFileException(text, "", "is no path; " + usage);
    }
  }

  /**
   * The page of a file, in the folder where the program was called: its name without the ending, which is a pattern.
   */
  static Path pageOf(Path file, String ending) {
    return Path.of(
        String.valueOf(file.getFileName()).replaceFirst("(" + ending + ")?$", "") + ".html");
  }

  /** A further page beside a page: the same name with an addition before the ending. */
  static Path beside(Path page, String addition) {
    String name = String.valueOf(page.getFileName());
    int point = name.lastIndexOf('.');
    return page.resolveSibling(
        point <= 0 ? name + addition : name.substring(0, point) + addition + name.substring(point));
  }
}
