package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.quantity.ReferenceState;
import org.airfit.select.DeviceKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The words of a reader who looks one up: each thing once, and no word of the sheets and lessons left out. */
class GlossaryTest {

  private static final Path ROOT = Path.of("..");

  /** The words of the first column, those of a row that has several each for itself. */
  private static List<String> words() throws IOException {
    return Files.readAllLines(ROOT.resolve("docs/glossary.md")).stream()
        .filter(line -> line.startsWith("| "))
        .map(line -> line.split("\\|", -1)[1].strip())
        .filter(word -> !word.equals("word"))
        .flatMap(words -> Arrays.stream(words.split(", ", -1)))
        .toList();
  }

  @Test
  void no_word_stands_for_two_things() throws IOException {
    List<String> words = words();
    assertThat(words).hasSizeGreaterThan(100).doesNotHaveDuplicates();
  }

  /** What the line of a job may have is printed on sheets by these words. */
  @Test
  void every_kind_of_part_in_a_line_is_explained() throws IOException {
    assertThat(words())
        .containsAll(Stream.of(DeviceKind.values())
            .filter(kind -> kind != DeviceKind.OTHER)
            .map(DeviceKind::toString)
            .toList());
  }

  @Test
  void the_states_that_flows_are_marked_with_are_explained() throws IOException {
    String whole = Files.readString(ROOT.resolve("docs/glossary.md"));
    assertThat(ReferenceState.wellKnown()).isNotEmpty();
    assertThat(words()).contains("ANR", "scfm", "normal litre");
    assertThat(whole).contains("DIN 1343", "ISO 8778", "68 °F");
  }

  /** Words of flow and statistics, that are no daily words; each is looked for in what the lessons print. */
  private static final List<String> TECHNICAL = List.of(
      "ANR",
      "scfm",
      "Mach number",
      "Reynolds number",
      "misfit",
      "friction factor",
      "Colebrook",
      "isothermal",
      "adiabatic",
      "turbulent",
      "laminar",
      "viscosity",
      "chi-square",
      "likelihood",
      "prior",
      "covariance",
      "standard deviation",
      "sonic conductance",
      "critical pressure ratio",
      "droop",
      "dew point",
      "relief valve",
      "ferrule",
      "duty",
      "residual",
      "near copy",
      "Cv",
      "Kv",
      "pressure dew point",
      "frost point",
      "saturation pressure",
      "relative humidity",
      "humidity ratio",
      "artificial demand",
      "aftercooler",
      "drip leg",
      "purge");

  @Test
  void technical_words_of_the_lessons_and_the_documents_are_explained() throws IOException {
    String lessons = text();
    Set<String> words =
        words().stream().map(word -> word.toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
    Set<String> unexplained = new TreeSet<>();
    for (String word : TECHNICAL) {
      if (lessons.contains(word.toLowerCase(Locale.ROOT))
          && !words.contains(word.toLowerCase(Locale.ROOT))) {
        unexplained.add(word);
      }
    }
    assertThat(unexplained).isEmpty();
    assertThat(TECHNICAL.stream().filter(word -> lessons.contains(word.toLowerCase(Locale.ROOT))))
        .as("of words that nobody prints the test would say nothing")
        .hasSizeGreaterThan(20);
  }

  private static String text() throws IOException {
    StringBuilder all = new StringBuilder();
    for (String folder : List.of("notebooks", "docs")) {
      try (Stream<Path> files = Files.list(ROOT.resolve(folder))) {
        for (Path file : files
            .filter(file -> !file.endsWith("glossary.md"))
            .filter(
                file -> file.toString().endsWith(".ipynb") || file.toString().endsWith(".md"))
            .toList()) {
          all.append(Files.readString(file).toLowerCase(Locale.ROOT));
        }
      }
    }
    return all.toString();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"ANR", "Mach number", "Reynolds number", "misfit", "dew point", "set pressure"})
  void a_word_that_was_missing_stands_there(String word) throws IOException {
    assertThat(words()).contains(word);
  }
}
