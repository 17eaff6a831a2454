package org.airfit.benchmarks;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;

/**
 * How long the program of the job sheets takes as a whole process, from the command to the last line of its sheet, beside
 * a JVM that does nothing and one that only loads and links the classes which the program loads: one after the other in
 * turn, so that what slows the machine slows all.
 */
final class ProgramStart {

  private static final String PROGRAM = "airfit-examples/jobsheet/target/airfit-jobsheet.jar";
  private static final String JOB = "airfit-examples/jobs/boatyard/weak-sander.json";
  private static final String LOADER = LoadsClasses.class.getName();

  private ProgramStart() {}

  /**
   * Medians of whole processes [ns].
   *
   * @param empty a JVM that prints its version
   * @param plain the program without flags
   * @param archived the program with an archive of its classes
   * @param loading a JVM that only loads and links the classes of the program
   * @param loadingArchived the same with an archive of them
   * @param ownClasses how many classes of its jar the program loads
   * @param jdkClasses how many classes of the JDK it loads
   */
  record Medians(
      double empty,
      double plain,
      double archived,
      double loading,
      double loadingArchived,
      int ownClasses,
      int jdkClasses) {}

  /**
   * Measures them; what the archives are made by, and the names of the classes, are not counted.
   *
   * @param turns how often each runs
   */
  static Medians measure(int turns) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("airfit");
    Path page = folder.resolve("page.html");
    String archive = folder.resolve("airfit.jsa").toString();
    String loaded = folder.resolve("loaded.jsa").toString();
    Path log = folder.resolve("classes.log");
    Path names = folder.resolve("classes.txt");
    String classPath = PROGRAM + File.pathSeparator + loader(folder.resolve("loader.jar"));
    String[] program = {"-jar", PROGRAM, JOB, page.toString()};
    String[] loading = {"-cp", classPath, LOADER, names.toString()};
    run(with("-XX:ArchiveClassesAtExit=" + archive, program));
    run(with("-Xlog:class+load:file=" + log + ":none", program));
    List<String> classes = Files.readAllLines(log).stream()
        .filter(line -> line.contains(" source: "))
        .map(line -> line.substring(0, line.indexOf(' ')))
        .filter(name -> !name.contains("/")) // what is spun while it runs has one
        .distinct()
        .toList();
    Files.write(names, classes);
    run(with("-XX:ArchiveClassesAtExit=" + loaded, loading));
    List<double[]> all = new ArrayList<>();
    for (int i = 0; i < turns; i++) {
      all.add(new double[] {
        run("-version"),
        run(program),
        run(with("-XX:SharedArchiveFile=" + archive, program)),
        run(loading),
        run(with("-XX:SharedArchiveFile=" + loaded, loading))
      });
    }
    int own = (int) classes.stream().filter(ProgramStart::isOwn).count();
    try (Stream<Path> left = Files.list(folder)) {
      for (Path file : left.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
    return new Medians(
        median(all, 0),
        median(all, 1),
        median(all, 2),
        median(all, 3),
        median(all, 4),
        own,
        classes.size() - own);
  }

  private static boolean isOwn(String name) {
    return !(name.startsWith("java.")
        || name.startsWith("javax.")
        || name.startsWith("jdk.")
        || name.startsWith("sun.")
        || name.startsWith("com.sun.")
        || name.startsWith("["));
  }

  /** A jar with the class that loads others and nothing else. */
  private static Path loader(Path jar) throws IOException {
    String entry = LOADER.replace('.', '/') + ".class";
    try (InputStream bytes = ProgramStart.class.getResourceAsStream("/" + entry);
        OutputStream file = Files.newOutputStream(jar);
        JarOutputStream out = new JarOutputStream(file)) {
      out.putNextEntry(new JarEntry(entry));
      bytes.transferTo(out);
      out.closeEntry();
    }
    return jar;
  }

  private static String[] with(String flag, String... arguments) {
    return Stream.concat(Stream.of(flag), Stream.of(arguments)).toArray(String[]::new);
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
