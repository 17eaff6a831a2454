package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Works every line once more that a lesson, a solution or the key works with a pencil: from what it prints itself. */
class PencilLinesTest {

  private static final Pattern FORMULA = Pattern.compile("\\$\\$([\\s\\S]+?)\\$\\$|\\$([^$]+?)\\$");

  private static List<String> lines(Path notebook) throws IOException {
    JsonObject json = JsonParser.parseString(Files.readString(notebook)).getAsJsonObject();
    List<String> lines = new ArrayList<>();
    for (JsonElement cell : json.getAsJsonArray("cells")) {
      if (!"markdown".equals(cell.getAsJsonObject().get("cell_type").getAsString())) {
        continue;
      }
      StringBuilder source = new StringBuilder();
      cell.getAsJsonObject()
          .getAsJsonArray("source")
          .forEach(line -> source.append(line.getAsString()));
      FORMULA.matcher(source).results().forEach(found -> {
        String formula = found.group(1) == null ? found.group(2) : found.group(1);
        lines.addAll(Arrays.asList(formula
            .replaceAll("\\\\(begin|end)\\{aligned\\}|&", "")
            .split("\\\\\\\\(\\[\\w+\\])?", -1)));
      });
    }
    return lines;
  }

  private static List<Path> notebooks(String folder) throws IOException {
    try (Stream<Path> files = Files.list(Path.of(folder))) {
      return files.filter(file -> file.toString().endsWith(".ipynb")).sorted().toList();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"..", "../solutions"})
  void the_numbers_of_a_formula_give_the_number_behind_it(String folder) throws IOException {
    int compared = 0;
    for (Path notebook : notebooks(folder)) {
      for (String line : lines(notebook)) {
        assertThat(PencilLine.disagreements(line)).as(notebook.toString()).isEmpty();
        compared += PencilLine.compared(line);
      }
    }
    assertThat(compared).isGreaterThan(40);
  }

  @Test
  void the_way_that_the_key_tells_gives_its_answer() throws IOException {
    List<String> key;
    try (Stream<String> lines =
        Files.lines(Path.of("src/main/resources/org/airfit/lesson/exercises.txt"))) {
      key = lines.filter(line -> line.contains(" | ") && !line.startsWith("#")).toList();
    }
    int compared = 0;
    for (String line : key) {
      String told = line.substring(line.lastIndexOf(" | ") + 3)
          .replaceAll(
              "[ ](psia|psi|psig|cfm|scfm|mm|in²|in|L/s|kg/s|lb/ft³|g/s|per inch)(?![\\w²])", "");
      for (String part : told.split("[;:,] |\\. |, so|, as|\\.$", -1)) {
        assertThat(PencilLine.disagreements(part)).as(line.substring(0, 2)).isEmpty();
        compared += PencilLine.compared(part);
      }
    }
    assertThat(compared).isGreaterThan(15);
  }

  @Test
  void a_number_that_its_own_line_does_not_give_is_found() {
    assertThat(PencilLine.disagreements("2.70 / 0.033 = 83")).hasSize(1);
    assertThat(PencilLine.disagreements("2.70 / 0.0327 = 83")).isEmpty();
    assertThat(PencilLine.disagreements("\\lambda = \\frac{1}{6.281^2} = 0.0254\\,\\text{psi}"))
        .hasSize(1);
    assertThat(PencilLine.disagreements("\\sqrt{1 - 0.815^2} = 0.579")).isEmpty();
    assertThat(PencilLine.disagreements("-2 \\log_{10}(0.000590 + 0.000151) = 6.260"))
        .isEmpty();
    assertThat(PencilLine.disagreements("2 \\ln(104.7 / 79.1) = 0.56")).isEmpty();
    assertThat(PencilLine.compared("p_1 = x + 2 = 7")).isZero();
    assertThat(PencilLine.compared("20 \\,\\text{mm} = 0.79 \\,\\text{in}")).isZero();
    assertThat(PencilLine.compared("(2/2.4)^{3} = 0.579 = 0.58")).isEqualTo(2);
  }
}
