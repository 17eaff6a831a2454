package org.airfit.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.airfit.files.Disk;
import org.airfit.files.Json;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.JobSheet;
import org.airfit.jobsheet.TextSheet;
import org.junit.jupiter.api.Test;

/**
 * What a page answers is what the program prints. The answers of the JVM are left in target/answers.json, with which a
 * script compares those of the JavaScript.
 */
class CallsTest {

  private static final Path JOBS = Path.of("..", "..", "jobs");

  /** A job and the files beside it and beside what it names, by name alone. */
  private static Map<String, String> filesOf(Path job, List<Path> read) throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put(String.valueOf(job.getFileName()), Files.readString(job));
    for (Path path : read) {
      files.put(String.valueOf(path.getFileName()), Files.readString(path));
    }
    return files;
  }

  private static List<Path> jobs() throws IOException {
    try (Stream<Path> files = Files.walk(JOBS)) {
      return files
          .filter(path -> path.toString().endsWith(".json"))
          .filter(path -> isJob(path))
          .sorted()
          .toList();
    }
  }

  private static boolean isJob(Path path) {
    try {
      return Files.readString(path).contains("\"airfitJob\"");
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void every_job_is_answered_as_by_the_program() throws Exception {
    List<Object> answers = new ArrayList<>();
    for (Path job : jobs()) {
      List<Path> read = new ArrayList<>();
      JobSheet sheet = JobSheet.of(Disk.job(job, read));
      Map<String, String> files = filesOf(job, read);
      String name = String.valueOf(job.getFileName());
      Map<String, Object> answer = Calls.sheet(name, new Given(files, Json::read));
      assertThat(answer.get("text")).as("%s", job).isEqualTo(TextSheet.of(sheet));
      answers.add(Map.of("name", name, "files", files, "answer", answer));
    }
    assertThat(answers).hasSizeGreaterThan(30);
    Files.writeString(Path.of("target", "answers.json"), Json.write(Map.of("sheets", answers)));
  }

  @Test
  void a_file_that_is_not_there_is_asked_for_by_its_name() {
    Given alone = new Given(Map.of("job.json", "{}"), Json::read);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> alone.open("../quay-street/catalogue.json"))
        .withMessage("catalogue.json: is not here yet; open that file too");
  }
}
