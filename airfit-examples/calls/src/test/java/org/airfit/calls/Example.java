package org.airfit.calls;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.airfit.files.Disk;
import org.airfit.files.Json;
import org.airfit.files.WrongFileException;

/** The jobs, catalogues and sets of the examples. */
final class Example {

  static final Path JOBS = Path.of("..", "jobs");

  static final Path SETS = Path.of("..", "sets");

  private Example() {}

  static List<Path> jobs() throws IOException {
    return json("\"airfitJob\"");
  }

  static List<Path> catalogues() throws IOException {
    return json("\"parts\"");
  }

  private static List<Path> json(String word) throws IOException {
    List<Path> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(JOBS)) {
      for (Path path :
          files.filter(path -> path.toString().endsWith(".json")).sorted().toList()) {
        if (Files.readString(path).contains(word)) {
          found.add(path);
        }
      }
    }
    return found;
  }

  /** A job and the files beside it and beside what it names, by name alone. */
  static Map<String, String> filesOf(Path job) throws IOException, WrongFileException {
    List<Path> read = new ArrayList<>();
    Disk.job(job, read);
    Map<String, String> files = new LinkedHashMap<>();
    files.put(String.valueOf(job.getFileName()), Files.readString(job));
    for (Path path : read) {
      files.put(String.valueOf(path.getFileName()), Files.readString(path));
    }
    return files;
  }

  static String workshop() throws IOException {
    return Files.readString(SETS.resolve("workshop.csv"));
  }

  static String boatyard() throws IOException {
    return Files.readString(JOBS.resolve("boatyard").resolve("catalogue.json"));
  }

  @SuppressWarnings("unchecked")
  static Map<String, Object> plain(Path file) throws IOException, WrongFileException {
    return (Map<String, Object>)
        Json.read(String.valueOf(file.getFileName()), Files.readString(file));
  }

  /** What stands in an answer under a name; it must be there. */
  static Object at(Object map, String name) {
    return Objects.requireNonNull(((Map<?, ?>) map).get(name), name);
  }

  static List<?> list(Object map, String name) {
    return (List<?>) at(map, name);
  }
}
