package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the help says of each form is what the program does. */
class ProgramFormTest {

  private static final Path ROOT = Path.of("..", "..");

  @TempDir
  private Path folder;

  private record Told(int code, String out, String err) {}

  private static Told run(String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code = Main.run(
        words,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
    return new Told(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  static Stream<ProgramForm> forms() {
    return ProgramForm.ALL.stream();
  }

  static Stream<ProgramForm> forms_with_a_word() {
    return forms().filter(form -> !form.word().isEmpty());
  }

  static Stream<String> words() {
    return forms_with_a_word().map(ProgramForm::word);
  }

  @Test
  void every_word_that_starts_a_program_has_a_form_and_every_form_a_program() throws IOException {
    String source = Files.readString(Path.of("src/main/java/org/airfit/jobsheet/Main.java"));
    assertThat(Pattern.compile("case \"([a-z]+)\" -> [A-Za-z]+Program")
            .matcher(source)
            .results())
        .extracting(found -> found.group(1))
        .containsExactlyInAnyOrderElementsOf(
            forms_with_a_word().map(ProgramForm::word).toList());
  }

  @Test
  void the_help_of_all_names_each_form_with_a_sentence() {
    Told told = run("--help");
    assertThat(told.code()).isZero();
    assertThat(told.err()).isEmpty();
    assertThat(run("-h")).isEqualTo(told);
    for (ProgramForm form : ProgramForm.ALL) {
      assertThat(told.out()).contains("\n  " + form.call() + "\n      ");
    }
    assertThat(told.out().lines())
        .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(120));
  }

  @ParameterizedTest
  @MethodSource("forms_with_a_word")
  void the_help_of_a_word_tells_its_files_and_an_example(ProgramForm form) {
    Told told = run(form.word(), "--help");
    assertThat(told.code()).isZero();
    assertThat(told.err()).isEmpty();
    assertThat(run(form.word(), "file", "-h")).isEqualTo(told);
    assertThat(told.out())
        .startsWith("java -jar airfit-jobsheet.jar " + form.call() + "\n\n  ")
        .contains("\n  reads    ", "\n  writes   ")
        .contains("\n  example  java -jar airfit-jobsheet.jar " + form.word() + " ")
        .contains("Exit code 0")
        .doesNotContain("\n  --version");
    assertThat(told.out().lines())
        .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(120));
  }

  @Test
  void behind_a_job_file_the_help_is_that_of_the_job_sheet() {
    assertThat(run("my-job.json", "--help").out())
        .startsWith("java -jar airfit-jobsheet.jar JOB.json [PAGE.html]\n");
  }

  @ParameterizedTest
  @MethodSource("forms")
  void the_documents_that_the_help_names_are_there_and_tell_the_form(ProgramForm form)
      throws IOException {
    List<String> documents = Pattern.compile("docs/[a-z-]+\\.md")
        .matcher(form.help())
        .results()
        .map(MatchResult::group)
        .toList();
    for (String document : documents) {
      assertThat(ROOT.resolve(document)).exists();
    }
    if (!form.word().isEmpty() && !form.word().equals("joint")) {
      String last = documents.get(documents.size() - 1);
      assertThat(Files.readString(ROOT.resolve(last)))
          .as(last)
          .contains("airfit-jobsheet.jar " + form.word() + " ");
    }
  }

  /** The call of the example, its files seen from here, and what it writes in a folder of its own. */
  private List<String> example(ProgramForm form) {
    String line = form.help()
        .lines()
        .filter(told -> told.startsWith("  example "))
        .findFirst()
        .orElseThrow();
    List<String> words = new ArrayList<>();
    Matcher word = Pattern.compile("\"([^\"]*)\"|(\\S+)")
        .matcher(line.substring(line.indexOf(".jar") + ".jar".length()));
    while (word.find()) {
      String said = word.group(1) == null ? word.group(2) : word.group(1);
      boolean isRead = said.startsWith("airfit-examples/");
      boolean isWritten = !isRead && (said.endsWith(".json") || said.endsWith(".html"));
      words.add(
          isRead
              ? ROOT.resolve(said).toString()
              : isWritten ? folder.resolve(said).toString() : said);
    }
    if (form.files().contains("[PAGE.html]")) {
      words.add(folder.resolve("page.html").toString());
    }
    return words;
  }

  @ParameterizedTest
  @MethodSource("forms")
  void the_example_of_a_form_works_and_writes_what_the_help_says(ProgramForm form)
      throws IOException {
    Told told = run(example(form).toArray(String[]::new));
    assertThat(told.err()).isEmpty();
    assertThat(told.code()).isZero();
    assertThat(told.out()).isNotBlank();
    if (form.writes().startsWith("PAGE.html")) {
      assertThat(folder.resolve("page.html")).content().contains("<!doctype html>");
    }
    assertThat(folder.resolve("page-reasons.html").toFile().exists())
        .isEqualTo(form.writes().contains("-reasons.html"));
    if (form.word().equals("interview")) {
      assertThat(folder.resolve("job.json")).content().contains("\"catalogue\"");
    }
  }

  @Test
  void the_version_is_that_of_the_project_in_one_line() throws IOException {
    Matcher version = Pattern.compile("(?m)^  <version>(.*)</version>$")
        .matcher(Files.readString(ROOT.resolve("pom.xml")));
    assertThat(version.find()).isTrue();
    assertThat(run("--version"))
        .isEqualTo(new Told(0, "airfit-jobsheet " + version.group(1) + System.lineSeparator(), ""));
  }

  @ParameterizedTest
  @MethodSource("forms_with_a_word")
  void a_wrong_call_is_told_in_one_line_and_nothing_is_printed(ProgramForm form) {
    for (Told told : List.of(
        run(form.word()),
        run(form.word(), "--no-such-option", "--no-such-option"),
        run(form.word(), "a", "b", "c", "d"))) {
      assertThat(told.code()).isEqualTo(2);
      assertThat(told.out()).isEmpty();
      assertThat(told.err().lines()).hasSize(1);
    }
  }

  @Test
  void a_word_that_is_neither_a_form_nor_a_file_is_told_so() {
    Told told = run("netwrok", "ring.csv");
    assertThat(told.code()).isEqualTo(2);
    assertThat(told.err().strip())
        .isEqualTo(
            "netwrok: is neither a form of this program nor a file here; --help tells them all");
    assertThat(run("no-such-job.json").err()).contains("there is no such file");
  }
}
