package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.reflect.Method;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every program of the documents and of the javadoc can be pasted: it is taken out as it stands, compiled as a whole
 * file with the core alone, run, and what it prints is compared with what the text says that it prints.
 *
 * <p>What a program prints stands in comments behind {@code println}, or below a program of a document as text. The
 * programs of docs/embedding.md need more than the core; a test of the counter service takes care of them.
 */
class SnippetsTest {

  private static final Path ROOT = Path.of("..");
  private static final Path SOURCES = Path.of("src/main/java/org/airfit");
  private static final String ELSEWHERE = "embedding.md";

  private static final Pattern FENCED = Pattern.compile(
      "(?ms)^```java\n(.*?)^```$(?:(?:(?!```).){0,99}\n\nIt prints:\n\n```text\n(.*?)^```$)?");
  private static final Pattern IN_JAVADOC =
      Pattern.compile("(?ms)^ *\\* <pre>\\{@code\n(.*?)^ *\\* }</pre>$");
  private static final Pattern STAR = Pattern.compile("(?m)^ *\\* ?");
  private static final Pattern NAME =
      Pattern.compile("(?m)^(?:public final )?class ([A-Za-z]+) \\{$");

  /** A statement that prints, the comment behind it, and the comments on the lines below it. */
  private static final Pattern PRINTED = Pattern.compile(
      "System\\.out\\.print(?:ln|f)\\((?:\"[^\"\n]*\"|[^;\"])*;((?: *//[^\n]*)?(?:\n *//[^\n]*)*)");

  private static final Pattern SLASHES = Pattern.compile("(?m)^ *// ?");

  /** Packages whose main types show how they are asked; each exported package has an example of its own. */
  private static final int LEAST_PROGRAMS = 90;

  @TempDir
  private static Path folder;

  private static List<Program> programs = List.of();

  /**
   * A program.
   *
   * @param place the document or source that holds it
   * @param name its class
   * @param source its text
   * @param printed what it prints, by the document
   */
  record Program(String place, String name, String source, String printed) {

    @Override
    public String toString() {
      return name + " of " + place;
    }
  }

  static Stream<Program> programs() {
    return programs.stream();
  }

  @BeforeAll
  static void all_programs_are_compiled_in_one_run() throws IOException {
    programs = found();
    List<String> words = new ArrayList<>(List.of(
        "-proc:none",
        "-nowarn",
        "--release",
        "17",
        "-encoding",
        "UTF-8",
        "-cp",
        core().toString(),
        "-d",
        folder.toString()));
    for (Program program : programs) {
      Path file = folder.resolve(program.name() + ".java");
      Files.writeString(file, program.source());
      words.add(file.toString());
    }
    StringWriter said = new StringWriter();
    PrintWriter told = new PrintWriter(said);
    int failed =
        ToolProvider.findFirst("javac").orElseThrow().run(told, told, words.toArray(String[]::new));
    assertThat(failed).as(said.toString()).isZero();
  }

  private static List<Program> found() throws IOException {
    List<Program> all = new ArrayList<>();
    for (Path document : documents()) {
      FENCED
          .matcher(Files.readString(document))
          .results()
          .forEach(block ->
              all.add(program(document.getFileName().toString(), block.group(1), block.group(2))));
    }
    try (Stream<Path> sources = Files.walk(SOURCES)) {
      for (Path source :
          sources.filter(file -> file.toString().endsWith(".java")).sorted().toList()) {
        IN_JAVADOC
            .matcher(Files.readString(source))
            .results()
            .forEach(block ->
                all.add(program(SOURCES.relativize(source).toString(), unstarred(block), "")));
      }
    }
    return all;
  }

  private static List<Path> documents() throws IOException {
    List<Path> all =
        new ArrayList<>(List.of(ROOT.resolve("README.md"), ROOT.resolve("DEVELOPERS.md")));
    try (Stream<Path> files = Files.list(ROOT.resolve("docs"))) {
      files
          .filter(file -> file.toString().endsWith(".md") && !file.endsWith(ELSEWHERE))
          .sorted()
          .forEach(all::add);
    }
    return all;
  }

  private static String unstarred(MatchResult block) {
    return STAR.matcher(block.group(1)).replaceAll("");
  }

  private static Program program(String place, String source, String below) {
    Matcher name = NAME.matcher(source);
    assertThat(name.find()).as("a class in %s: %s", place, source).isTrue();
    String printed = below != null && !below.isEmpty()
        ? below
        : PRINTED
            .matcher(source)
            .results()
            .map(SnippetsTest::comment)
            .collect(Collectors.joining());
    return new Program(place, name.group(1), source, printed);
  }

  private static String comment(MatchResult statement) {
    return SLASHES.matcher(statement.group(1)).replaceAll("");
  }

  private static Path core() {
    try {
      URI place =
          Length.class.getProtectionDomain().getCodeSource().getLocation().toURI();
      return Path.of(place);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  /** One file for each: the second of two would take the place of the first. */
  @Test
  void every_program_has_a_name_of_its_own() {
    assertThat(programs).extracting(Program::name).doesNotHaveDuplicates();
    assertThat(programs).hasSizeGreaterThan(LEAST_PROGRAMS);
  }

  @Test
  void every_exported_package_shows_an_example() throws IOException {
    try (Stream<Path> packages = Files.list(SOURCES)) {
      List<String> named = packages
          .filter(folder -> !folder.endsWith("internal") && Files.isDirectory(folder))
          .map(folder -> folder.getFileName() + File.separator + "package-info.java")
          .sorted()
          .toList();
      assertThat(programs).extracting(Program::place).containsAll(named);
    }
  }

  /** A program that prints nothing, or says nothing of what it prints, shows nothing. */
  @ParameterizedTest
  @MethodSource("programs")
  void a_program_prints_what_the_text_says(Program program) throws Exception {
    String printed = printed(program.name());
    assertThat(squeezed(program.printed())).as(printed).isNotEmpty().isEqualTo(squeezed(printed));
  }

  private static String printed(String name) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream before = System.out;
    try (URLClassLoader loader = new URLClassLoader(
            new URL[] {folder.toUri().toURL()}, SnippetsTest.class.getClassLoader());
        PrintStream caught = new PrintStream(out, true, StandardCharsets.UTF_8)) {
      Method main = Class.forName(name, true, loader).getDeclaredMethod("main", String[].class);
      main.setAccessible(true);
      System.setOut(caught);
      main.invoke(null, (Object) new String[0]);
    } finally {
      System.setOut(before);
    }
    return out.toString(StandardCharsets.UTF_8);
  }

  /** The text breaks long lines. */
  private static String squeezed(String text) {
    return text.replaceAll("\\s+", "");
  }

  /** The check can fail: a program with another output, and one that does not compile. */
  @Test
  void a_planted_fault_is_noticed() {
    Program wrong = program(
        "planted",
        "class P {\n  void x() {\n    System.out.println(1.0); // 2.0\n    // 3.0\n  }\n}\n",
        "");
    assertThat(wrong.printed()).isEqualTo("2.0\n3.0");
    assertThat(PRINTED
            .matcher("System.out.println(a(1), 2);\n  int x; // not printed")
            .results())
        .singleElement()
        .extracting(SnippetsTest::comment)
        .isEqualTo("");
    assertThat(FENCED.matcher("```java\nint x;\n```\n").results()).hasSize(1);
    assertThat(IN_JAVADOC.matcher(" * <pre>{@code\n * int x;\n * }</pre>\n").results())
        .extracting(block -> unstarred(block))
        .containsExactly("int x;\n");
  }
}
