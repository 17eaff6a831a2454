package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What somebody at a counter writes who knows the trade and not the file. */
class ClerksSlipsTest {

  private static final Path YARD = Path.of("..", "jobs", "boatyard");

  private static final String TOOL =
      "{\"name\": \"grinder\", \"air\": \"11 scfm\", \"pressure\": \"80 psig\", \"inlet\": \"1/4 NPT female\"}";

  @TempDir
  Path folder;

  private Path job(String line, String tool) throws IOException {
    Files.writeString(folder.resolve("job.json"), """
        {
          "airfitJob": 2, "job": "slips", "customer": "invented", "catalogue": "catalogue.json",
          "supply": {"pressure": "100 to 125 psig"},
          "line": [{"kind": "outlet", "end": "1/2 NPT female"}, %s]%s
        }
        """.formatted(
            line, tool.isEmpty() ? "" : ", \"tool\": " + tool));
    Files.copy(YARD.resolve("catalogue.json"), folder.resolve("catalogue.json"));
    return folder.resolve("job.json");
  }

  private String refused(String line, String tool) throws IOException {
    Path job = job(line, tool);
    WrongFileException wrong = catchThrowableOfType(WrongFileException.class, () -> Disk.job(job));
    assertThat(wrong).isNotNull();
    return String.valueOf(wrong.getMessage());
  }

  @Test
  void a_splitter_with_one_line_is_refused_in_words_of_the_file() throws Exception {
    String line =
        "{\"tool\": " + TOOL + ", \"line\": [{\"kind\": \"hose\", \"reach\": \"10 ft\"}]}";
    assertThat(refused("{\"kind\": \"splitter\", \"lines\": [" + line + "]}", ""))
        .startsWith(
            "job.json: line[2].lines: holds one line only, to grinder: put what stands in that line")
        .contains("\"tool\" of the job", "\"othersTake\"", "\"count\"")
        .doesNotContain("slots", "layout");
  }

  @Test
  void one_with_none_is_refused_too() throws Exception {
    assertThat(refused("{\"kind\": \"splitter\", \"lines\": []}", TOOL))
        .startsWith("job.json: line[2].lines: is empty; a splitter leads to two lines or more");
  }

  @Test
  void one_line_with_what_others_take_is_enough() throws Exception {
    String line =
        "{\"tool\": " + TOOL + ", \"line\": [{\"kind\": \"hose\", \"reach\": \"10 ft\"}]}";
    Path job =
        job("{\"kind\": \"splitter\", \"othersTake\": \"10 scfm\", \"lines\": [" + line + "]}", "");
    assertThat(Disk.job(job).requirement().layout().lines()).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({"id, H-1", "kind, hose", "price, 12.50", "cost, 8.00"})
  void what_belongs_to_a_catalogue_is_refused_in_a_part_that_is_there(String field, String value)
      throws Exception {
    String hose = "{\"kind\": \"hose\", \"part\": {\"" + field + "\": \"" + value
        + "\", \"hose\": \"3/8 in\", \"bore\": \"9.5 mm\", \"length\": \"28 ft\","
        + " \"wall\": \"smooth rubber hose\", \"end\": \"3/8 in hose\"}}";
    assertThat(refused(hose, TOOL))
        .startsWith("job.json: line[2].part." + field
            + ": belongs to a part of a catalogue; a part that is there needs none");
  }

  @ParameterizedTest
  @CsvSource({
    "4 psig, 30 psig, true",
    "4 psig, 80 psig, false",
    "9 psig, 80 psig, true",
  })
  void a_limit_below_what_the_tool_needs_is_never_said_to_be_meant(
      String notAbove, String needed, boolean isNamed) throws Exception {
    String tool =
        TOOL.replace("80 psig", needed).replace("}", ", \"notAbove\": \"" + notAbove + "\"}");
    String remarks = Disk.job(job("{\"kind\": \"hose\", \"reach\": \"10 ft\"}", tool))
        .remarks()
        .toString();
    assertThat(remarks).contains("\"" + notAbove + "\" in tool.notAbove");
    assertThat(remarks.contains(" meant, or another unit?")).isEqualTo(isNamed);
  }

  @ParameterizedTest
  @CsvSource({
    "3/4 garden hose, a garden hose is for water",
    "1/4 NTP, nearest: NPT",
    "1/4 NTP male, nearest: NPT",
    "G1/4 femal, nearest: female"
  })
  void a_mistyped_end_is_told_with_its_place(String end, String told) throws Exception {
    assertThat(refused(
            "{\"kind\": \"hose\", \"reach\": \"10 ft\"}", TOOL.replace("1/4 NPT female", end)))
        .startsWith("job.json: tool.inlet: ")
        .contains(told);
  }
}
