package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.airfit.notebooks.kernel.JavaKernel;
import org.dflib.jjava.jupyter.kernel.display.DisplayData;
import org.dflib.jjava.jupyter.kernel.display.mime.MIMEType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Runs every cell of notebooks without Jupyter and compares what it shows with what was committed. The kernel has
 * only what notebooks/kernel/README.md lists, so a notebook that asks for more fails here.
 */
class NotebooksTest {

  private static final Path FOLDER = Path.of("..");

  static List<Path> notebooks() throws IOException {
    try (Stream<Path> files = Files.walk(FOLDER, 2)) {
      return files
          .filter(file -> file.toString().endsWith(".ipynb"))
          .filter(file -> !file.toString().contains(".ipynb_checkpoints"))
          .map(FOLDER::relativize)
          .sorted()
          .toList();
    }
  }

  /** A night has time for all, a build for every third; all are run under Jupyter in `.ci/run`. */
  static List<Path> notebooksOfTheBuild() throws IOException {
    List<Path> all = notebooks();
    int every = System.getProperty("night") == null ? 3 : 1;
    return IntStream.range(0, all.size())
        .filter(place -> place % every == 0)
        .mapToObj(all::get)
        .toList();
  }

  @ParameterizedTest
  @MethodSource("notebooksOfTheBuild")
  void a_notebook_runs_and_shows_what_was_committed(Path notebook) throws IOException {
    JsonObject file =
        JsonParser.parseString(Files.readString(FOLDER.resolve(notebook))).getAsJsonObject();
    JavaKernel kernel = JavaKernel.smallest(
        List.of(System.getProperty("java.class.path").split(File.pathSeparator)));
    kernel.onStartup();
    try {
      for (JsonElement element : file.getAsJsonArray("cells")) {
        JsonObject cell = element.getAsJsonObject();
        if ("code".equals(cell.get("cell_type").getAsString())) {
          check(kernel, cell, notebook + ", cell " + cell.get("id").getAsString());
        }
      }
    } finally {
      kernel.onShutdown(false);
    }
  }

  static List<Path> solutions() throws IOException {
    return notebooks().stream().filter(file -> file.startsWith("solutions")).toList();
  }

  static List<Path> lessons() throws IOException {
    return notebooks().stream().filter(file -> file.getNameCount() == 1).toList();
  }

  @ParameterizedTest
  @MethodSource("solutions")
  void a_solution_answers_every_exercise_rightly(Path solution) throws IOException {
    int lesson = Integer.parseInt(solution.getFileName().toString().substring(0, 2));
    String shown = Files.readString(FOLDER.resolve(solution));
    assertThat(Exercises.of(lesson).ids())
        .hasSizeBetween(3, 5)
        .allSatisfy(id -> assertThat(shown).contains("\"" + id + ": right"));
    assertThat(FOLDER.resolve("exercises").resolve(solution.getFileName())).exists();
  }

  @ParameterizedTest
  @MethodSource("lessons")
  void a_lesson_compares_at_least_two_numbers_with_published_ones_and_has_its_page(Path lesson)
      throws IOException {
    String shown = Files.readString(FOLDER.resolve(lesson));
    assertThat(shown.split("% \\| ±", -1)).hasSizeGreaterThan(2);
    assertThat(FOLDER
            .resolve("pages")
            .resolve(lesson.getFileName().toString().replace(".ipynb", ".html")))
        .exists();
  }

  private static void check(JavaKernel kernel, JsonObject cell, String where) {
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    PrintStream before = System.out;
    System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
    DisplayData shown;
    try {
      shown = kernel.eval(text(cell.get("source")));
    } finally {
      System.setOut(before);
    }
    StringBuilder stream = new StringBuilder();
    for (JsonElement element : cell.getAsJsonArray("outputs")) {
      JsonObject output = element.getAsJsonObject();
      if ("stream".equals(output.get("output_type").getAsString())) {
        stream.append(text(output.get("text")));
      } else {
        JsonObject data = output.getAsJsonObject("data");
        assertThat(shown).as(where).isNotNull();
        for (String type : data.keySet()) {
          assertThat(String.valueOf(DisplayData.emptyIfNull(shown).getData(MIMEType.parse(type))))
              .as(where)
              .isEqualTo(text(data.get(type)));
        }
      }
    }
    assertThat(printed.toString(StandardCharsets.UTF_8)).as(where).isEqualTo(stream.toString());
  }

  private static String text(JsonElement lines) {
    if (!(lines instanceof JsonArray array)) {
      return lines.getAsString();
    }
    StringBuilder joined = new StringBuilder();
    array.forEach(line -> joined.append(line.getAsString()));
    return joined.toString();
  }
}
