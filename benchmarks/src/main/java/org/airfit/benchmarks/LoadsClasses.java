package org.airfit.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A program that loads and links classes by their names and does nothing else: the least that a program of these classes
 * takes, before any of its own code runs.
 */
public final class LoadsClasses {

  private LoadsClasses() {}

  /**
   * Loads the classes. It ends with 1 if more than one in a hundred is not there.
   *
   * @param args a file with a name on each line
   * @throws IOException if the file cannot be read
   */
  public static void main(String[] args) throws IOException {
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
