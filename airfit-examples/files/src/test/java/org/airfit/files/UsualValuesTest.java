package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A slip of the decimal point or the unit is asked about, never refused and never corrected. */
class UsualValuesTest {

  private static final Path JOBS = Path.of("..", "jobs");

  @TempDir
  Path folder;

  /** The questions about a job whose tool and supply are told so. */
  private List<String> questions(String tool, String supply)
      throws IOException, WrongFileException {
    Files.createDirectories(folder.resolve("jobs/x"));
    Path job = folder.resolve("jobs/x/job.json");
    String catalogue = JOBS.toAbsolutePath().normalize() + "/boatyard/catalogue.json";
    Files.copy(Path.of(catalogue), folder.resolve("jobs/x/catalogue.json"));
    Files.writeString(
        job,
        "{\"airfitJob\": 2, \"job\": \"x\", \"customer\": \"y\", \"catalogue\": \"catalogue.json\","
            + "\"supply\": {\"pressure\": \"" + supply + "\"},"
            + "\"line\": [{\"kind\": \"outlet\", \"end\": \"1/2 NPT female\"}, {\"kind\": \"coupling\"}],"
            + "\"tool\": {\"name\": \"z\", \"inlet\": \"1/4 NPT female\", " + tool + "}}");
    return Disk.job(job).remarks().stream()
        .filter(remark -> remark.endsWith("?"))
        .toList();
  }

  private List<String> ofMarking(String marking) throws IOException, WrongFileException {
    return questions("\"marking\": \"" + marking + "\"", "7.4 bar(g)");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "63 bar 400 l/min | a tool needs 1 to 10 bar(g) (15 to 150 psig) as a rule. Is 6.3 bar(g) (91.4 psig) meant, or another unit?",
        "0.63 bar 400 l/min | Is 6.3 bar(g) (91.4 psig) meant, or another unit?",
        "900 psi 4 CFM | needs 15 to 150 psig (1 to 10 bar(g)) as a rule. Is 90 psig (6.21 bar(g)) meant, or another unit?",
        "6.3 psi 4 CFM | Is 63 psig (4.34 bar(g)) meant, or another unit?",
        "6.3 bar 40 l/min | a tool takes 57 to 3400 L/min (2 to 120 scfm) of free air as a rule. Is 6.",
        "6.3 bar 40000 l/min | Is its unit right?",
        "6.3 bar 6000 l/min | of free air as a rule. Is ",
        "max 63 bar, 400 l/min | a tool is made for 2 to 16 bar(g) (30 to 230 psig) at most as a rule.",
      })
  void a_marking_off_by_a_digit_is_asked_about(String marking, String question) throws Exception {
    List<String> asked = ofMarking(marking);
    assertThat(asked).hasSize(1);
    assertThat(asked.get(0))
        .startsWith("\"" + marking + "\" in tool.marking: ")
        .contains(question)
        .endsWith("?");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "6.3 bar 400 l/min",
        "90 psi 4 CFM",
        "avg 4 CFM 90 psi",
        "1 bar 60 l/min",
        "10 bar 3000 l/min",
        "max 16 bar 400 l/min",
        "29 psi 12 CFM",
      })
  void a_usual_marking_is_not_asked_about(String marking) throws Exception {
    assertThat(ofMarking(marking)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"74 bar(g), 1", "16.4 bar(g), 0", "16.6 bar(g), 1", "3.1 bar(g), 0", "2.9 bar(g), 1"})
  void the_supply_is_asked_about_outside_its_limits(String supply, int questions) throws Exception {
    List<String> asked = questions("\"air\": \"10 scfm\", \"pressure\": \"2 bar(g)\"", supply);
    assertThat(asked).hasSize(questions);
    assertThat(asked)
        .allMatch(remark -> remark.contains(" in supply.pressure: a supply stands at "));
  }

  @Test
  void what_blasts_takes_more_than_a_tool() throws Exception {
    String air = "\"air\": \"300 scfm\", \"pressure\": \"90 psig\"";
    assertThat(questions(air + ", \"blasts\": true", "110 psig")).isEmpty();
    Files.delete(folder.resolve("jobs/x/catalogue.json"));
    assertThat(questions(air, "110 psig"))
        .singleElement()
        .asString()
        .startsWith("\"300 scfm\" in tool.air: a tool takes 2 to 120 scfm (57 to 3400 L/min)");
  }

  @Test
  void a_tool_that_needs_more_than_its_maker_allows_is_asked_about() throws Exception {
    String tool = "\"air\": \"10 scfm\", \"pressure\": \"90 psig\", \"notAbove\": \"%s\"";
    assertThat(questions(String.format(tool, "90 psig"), "110 psig")).isEmpty();
    Files.delete(folder.resolve("jobs/x/catalogue.json"));
    assertThat(questions(String.format(tool, "89 psig"), "110 psig"))
        .containsExactly(
            "The tool needs more than its maker allows, as tool.notAbove says: is one of the two wrong?");
  }

  static Stream<Path> examples() throws IOException {
    try (Stream<Path> files = Files.walk(JOBS)) {
      return files
          .filter(file -> file.toString().endsWith(".json"))
          .filter(file -> !List.of("catalogue.json", "letterhead.json", "nitrogen.json")
              .contains(String.valueOf(file.getFileName())))
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void no_example_is_asked_about(Path job) throws Exception {
    assertThat(Disk.job(job).remarks()).noneMatch(remark -> remark.endsWith("?"));
  }
}
