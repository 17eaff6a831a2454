package org.airfit.counter;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Pastes every program of docs/embedding.md whole into an empty folder, compiles it with the libraries that the
 * document names for it, runs it, and compares what it prints with what stands below it; and the same for the examples
 * of the packages that read and write files, which have what they print in comments.
 */
class EmbeddingDocumentTest {

  private static final Path DOCUMENT = Path.of("..", "..", "docs", "embedding.md");
  private static final int MOST_LINES = 60;
  private static final int LONGEST = 120; // seconds

  /** A program and, below it, what it prints. */
  private static final Pattern PROGRAM =
      Pattern.compile("(?ms)^```java\n(.*?)^```\n\nIt prints:\n\n```text\n(.*?)^```$");

  private static final Pattern NAME = Pattern.compile("(?m)^(?:public final )?class ([A-Za-z]+)");

  /** The module whose packages show examples that need its libraries; those of the core are run by the core's tests. */
  private static final Path FILES = Path.of("..", "files", "src/main/java/org/airfit/files");

  private static final Pattern EXAMPLE =
      Pattern.compile("(?ms)^ \\* <pre>\\{@code\n(.*?)^ \\* }</pre>$");

  /** The comment behind a statement that prints, or on the lines below it. */
  private static final Pattern PRINTED =
      Pattern.compile("System\\.out\\.println\\(.*\\);(?:\\s+// (.*))");

  @TempDir
  private Path folder;

  /**
   * A program of the document.
   *
   * @param name its class
   * @param source its text
   * @param printed what it prints, by the document
   */
  record Program(String name, String source, String printed) {

    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Program> programs() throws IOException {
    List<Program> programs = new ArrayList<>();
    Matcher found = PROGRAM.matcher(Files.readString(DOCUMENT));
    while (found.find()) {
      Matcher name = NAME.matcher(found.group(1));
      assertThat(name.find()).as(found.group(1)).isTrue();
      programs.add(new Program(name.group(1), found.group(1), found.group(2)));
    }
    return programs.stream();
  }

  static Stream<Program> examples() throws IOException {
    List<Program> examples = new ArrayList<>();
    for (String folder : List.of("", "json", "kept")) {
      String source = Files.readString(FILES.resolve(folder).resolve("package-info.java"));
      Matcher example = EXAMPLE.matcher(source);
      assertThat(example.find())
          .as("an example of the package files %s", folder)
          .isTrue();
      String program = example.group(1).replaceAll("(?m)^ \\* ?", "");
      Matcher name = NAME.matcher(program);
      assertThat(name.find()).as(program).isTrue();
      String printed = PRINTED
          .matcher(program)
          .results()
          .map(line -> line.group(1))
          .collect(Collectors.joining());
      assertThat(printed).as(program).isNotEmpty();
      examples.add(new Program(name.group(1), program, printed));
    }
    return examples.stream();
  }

  @Test
  void every_line_of_java_in_the_document_is_of_a_program() throws IOException {
    String document = Files.readString(DOCUMENT);
    assertThat(document.split("(?m)^```java$", -1)).hasSize(1 + (int) programs().count());
    assertThat(programs().map(Program::name))
        .containsExactly("FirstAnswer", "ShopProgram", "Errors", "PartAsJson", "Claim");
  }

  @Test
  void the_shop_has_no_more_lines_than_its_heading_says() throws IOException {
    Program shop = programs()
        .filter(program -> program.name().equals("ShopProgram"))
        .findFirst()
        .orElseThrow();
    assertThat(shop.source().lines().count()).isLessThanOrEqualTo(MOST_LINES);
    assertThat(shop.source()).doesNotContain("spring");
  }

  /** The Kotlin of the document is compiled by its own module, in the profile kotlin. */
  @Test
  void the_kotlin_of_the_document_is_that_of_its_module() throws IOException {
    Matcher kotlin =
        Pattern.compile("(?ms)^```kotlin\n(.*?)^```$").matcher(Files.readString(DOCUMENT));
    assertThat(kotlin.find()).isTrue();
    assertThat(Path.of("..", "kotlin", "src/test/kotlin/org/airfit/kotlin/FirstAnswer.kt"))
        .hasContent(kotlin.group(1));
  }

  @ParameterizedTest
  @MethodSource({"programs", "examples"})
  void a_program_prints_what_the_document_says(Program program) throws Exception {
    Path source = folder.resolve(program.name() + ".java");
    Files.writeString(source, program.source());
    String libraries = libraries(program.source());
    String javac = run(List.of(
        tool("javac"), "-proc:none", "--release", "17", "-cp", libraries, source.toString()));
    assertThat(folder.resolve(program.name() + ".class")).as(javac).exists();

    String printed = run(List.of(
        tool("java"),
        "-Dslf4j.provider=org.slf4j.nop.NOPServiceProvider",
        "-Dslf4j.internal.verbosity=ERROR",
        "-Dfile.encoding=UTF-8",
        "-Dstdout.encoding=UTF-8",
        "-cp",
        folder + File.pathSeparator + libraries,
        program.name()));

    // The document breaks long lines.
    assertThat(printed.replaceAll("\\s+", ""))
        .as(printed)
        .isEqualTo(program.printed().replaceAll("\\s+", ""));
  }

  private static String tool(String name) {
    return Path.of(System.getProperty("java.home"), "bin", name).toString();
  }

  /** What a project has that depends on the artifact that the program needs, and no more. */
  private static String libraries(String source) {
    Predicate<String> ours = source.contains("org.airfit.counter")
        ? entry -> true
        : source.contains("org.airfit.files")
            ? entry -> isOf(entry, "airfit-core") || isOf(entry, "files") || isJackson(entry)
            : entry -> isOf(entry, "airfit-core");
    Map<String, String> found = new LinkedHashMap<>();
    for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
      if (!entry.isEmpty() && ours.test(entry)) {
        found.put(Path.of(entry).toAbsolutePath().toString(), entry);
      }
    }
    return found.keySet().stream().collect(Collectors.joining(File.pathSeparator));
  }

  /** Its classes as Maven compiled them, or its jar. */
  private static boolean isOf(String entry, String module) {
    String path = Path.of(entry).toAbsolutePath().normalize().toString().replace('\\', '/');
    String artifact = module.startsWith("airfit-") ? module : "airfit-" + module;
    return path.endsWith("/" + module + "/target/classes")
        || path.matches(".*/" + artifact + "-[0-9][^/]*\\.jar");
  }

  private static boolean isJackson(String entry) {
    return entry.contains("jackson-");
  }

  private String run(List<String> command) throws Exception {
    Path out = folder.resolve("out.txt");
    Process process = new ProcessBuilder(command)
        .directory(folder.toFile())
        .redirectErrorStream(true)
        .redirectOutput(out.toFile())
        .start();
    try {
      assertThat(process.waitFor(LONGEST, TimeUnit.SECONDS))
          .as(command.toString())
          .isTrue();
    } finally {
      process.destroyForcibly();
    }
    return Files.readString(out, StandardCharsets.UTF_8);
  }
}
