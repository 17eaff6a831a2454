package org.airfit.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.airfit.lesson.ProgramHelp;

/**
 * A program that loads and links classes by their names and does nothing else: the least that a program of these classes
 * takes, before any of its own code runs.
 */
public final class LoadsClasses {

  private static final String HELP = """
      LoadsClasses, loads and links classes by their names, and does nothing else

        java -cp airfit-benchmarks.jar org.airfit.benchmarks.LoadsClasses NAMES

      NAMES is a file with the name of a class on each line. Performance starts it to measure what a program takes
      before its own code runs; it prints nothing.
        --help, -h   prints this
        --version    prints the version
      Exit code 0: loaded; 1: more than one in a hundred is not there; 2: the words could not be used.
      """;

  private LoadsClasses() {}

  /**
   * Loads the classes. It ends with 1 if more than one in a hundred is not there.
   *
   * @param args a file with a name on each line
   * @throws IOException if the file cannot be read
   */
  public static void main(String[] args) throws IOException {
    if (args.length != 1 || args[0].startsWith("-")) {
      System.exit(ProgramHelp.answered(args, 1, 1, HELP).getAsInt());
    }
    int asked = 0;
    int missed = 0;
    int declared = 0;
    for (String name : Files.readAllLines(Path.of(args[0]))) {
      asked++;
      try {
        // to ask for what a class declares links it
        Class<?> loaded = Class.forName(name, false, ClassLoader.getSystemClassLoader());
        declared += loaded.getDeclaredConstructors().length;
      } catch (ClassNotFoundException | LinkageError missing) {
        missed++;
      }
    }
    System.exit(declared == 0 || 100 * missed > asked ? 1 : 0);
  }
}
