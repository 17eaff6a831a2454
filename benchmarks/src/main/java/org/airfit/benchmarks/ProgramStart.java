package org.airfit.benchmarks;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How long the program of the job sheets takes as a whole process, from the command to the last line of its sheet, beside
 * a JVM that does nothing: one after the other in turn, so that what slows the machine slows all.
 */
final class ProgramStart {

  private static final int TURNS = 21;
  private static final String PROGRAM = "airfit-examples/jobsheet/target/airfit-jobsheet.jar";
  private static final String JOB = "airfit-examples/jobs/boatyard/weak-sander.json";

  private ProgramStart() {}

  /**
   * Medians of whole processes [ns].
   *
   * @param empty a JVM that prints its version
   * @param plain the program without flags
   * @param archived the program with an archive of its classes
   */
  record Medians(double empty, double plain, double archived) {}

  /** Measures them; the archive is made by the first run, which is not counted. */
  static Medians measure() throws IOException, InterruptedException {
    Path archive = Files.createTempDirectory("airfit").resolve("airfit.jsa");
    run("-XX:ArchiveClassesAtExit=" + archive, "-jar", PROGRAM, JOB);
    List<double[]> turns = new ArrayList<>();
    for (int i = 0; i < TURNS; i++) {
      turns.add(new double[] {
        run("-version"),
        run("-jar", PROGRAM, JOB),
        run("-XX:SharedArchiveFile=" + archive, "-jar", PROGRAM, JOB)
      });
    }
    Files.delete(archive);
    return new Medians(median(turns, 0), median(turns, 1), median(turns, 2));
  }

  private static double median(List<double[]> turns, int of) {
    double[] sorted = turns.stream().mapToDouble(turn -> turn[of]).sorted().toArray();
    return sorted[sorted.length / 2];
  }

  private static double run(String... arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(System.getProperty("java.home") + File.separator + "bin" + File.separator + "java");
    command.addAll(Arrays.asList(arguments));
    long began = System.nanoTime();
    Process process = new ProcessBuilder(command)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
    if (process.waitFor() != 0) {
      throw new IllegalStateException("a program failed: " + command);
    }
    return System.nanoTime() - began;
  }
}
