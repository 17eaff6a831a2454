package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.notebooks.kernel.CellException;
import org.airfit.notebooks.kernel.JavaKernel;
import org.junit.jupiter.api.Test;

/**
 * What the notebooks ask of a kernel is what notebooks/kernel/README.md lists: each thing that is listed is used, and
 * nothing else. {@link NotebooksTest} runs them in a kernel that has no more.
 */
class ContractTest {

  private static final Path FOLDER = Path.of("..");
  private static final Path README = FOLDER.resolve("kernel").resolve("README.md");

  /** The functions that Java kernels bring along, as the usual ones document them. */
  private static final Pattern FUNCTION = Pattern.compile(
      "(?<![.\\w])(display|render|updateDisplay|eval|lineMagic|cellMagic|printf)\\(");

  private static final Pattern RENDERED =
      Pattern.compile("(?s)(?<![.\\w])render\\(.*?\"([a-z]+/[a-z+]+)\"\\)");

  private static final Pattern MAGIC = Pattern.compile("(?m)^\\s*(%{1,2}[a-z]+)");

  private static List<String> cells() throws IOException {
    List<String> cells = new ArrayList<>();
    for (Path notebook : NotebooksTest.notebooks()) {
      JsonObject file =
          JsonParser.parseString(Files.readString(FOLDER.resolve(notebook))).getAsJsonObject();
      for (JsonElement element : file.getAsJsonArray("cells")) {
        JsonObject cell = element.getAsJsonObject();
        if ("code".equals(cell.get("cell_type").getAsString())) {
          StringBuilder source = new StringBuilder();
          cell.getAsJsonArray("source").forEach(line -> source.append(line.getAsString()));
          cells.add(source.toString());
        }
      }
    }
    return cells;
  }

  private static Set<String> found(Pattern pattern, String text) {
    Set<String> found = new TreeSet<>();
    Matcher matcher = pattern.matcher(text);
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    return found;
  }

  /** The rows of the table, as one text. */
  private static String listed() throws IOException {
    String readme = Files.readString(README);
    String table =
        readme.substring(readme.indexOf("\n| what | form"), readme.indexOf("\nA notebook"));
    assertThat(table.lines().count()).isGreaterThan(5);
    return table;
  }

  @Test
  void the_notebook_functions_and_forms_that_are_listed_are_those_that_are_used()
      throws IOException {
    String all = String.join("\n", cells());
    assertThat(found(FUNCTION, all)).isEqualTo(found(FUNCTION, listed())).containsExactly("render");
    assertThat(found(RENDERED, all))
        .isEqualTo(found(RENDERED, listed()))
        .containsExactly("image/svg+xml", "text/html", "text/markdown");
  }

  @Test
  void the_magics_that_are_listed_are_those_that_are_used() throws IOException {
    assertThat(found(MAGIC, String.join("\n", cells())))
        .isEqualTo(found(Pattern.compile("`(%{1,2}[a-z]+)"), listed()))
        .containsExactly("%jars");
  }

  /** Such as a notebook with a function or a class that another kernel may not bring along. */
  @Test
  void the_smallest_kernel_has_nothing_that_is_not_listed() {
    JavaKernel kernel = JavaKernel.smallest(List.of());
    kernel.onStartup();
    try {
      assertThat(kernel.evalRaw("List.of(1, 2).size()")).isEqualTo(2);
      assertThat(kernel.evalRaw("render(\"<svg/>\", \"image/svg+xml\")")).isNotNull();
      for (String cell : List.of(
          "display(\"a\")",
          "printf(\"a\")",
          "Pattern.compile(\"a\")",
          "new BigDecimal(1)",
          "Path.of(\"a\")",
          "new ConcurrentHashMap<String, String>()")) {
        assertThatThrownBy(() -> kernel.evalRaw(cell)).as(cell).isInstanceOf(CellException.class);
      }
      assertThatThrownBy(() -> kernel.evalRaw("%classpath a.jar")).isInstanceOf(Exception.class);
    } finally {
      kernel.onShutdown(false);
    }
  }
}
