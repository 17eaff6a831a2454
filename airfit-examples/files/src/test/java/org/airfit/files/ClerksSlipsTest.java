package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.select.Part;
import org.airfit.select.Slot;
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

  /** A dash for a stroke is no range: it is read as threads per inch, and what was most likely meant is named. */
  @Test
  void a_dash_in_a_thread_names_the_size_that_is_meant() throws Exception {
    String line =
        "{\"kind\": \"pipe\", \"bore\": \"16 mm\", \"length\": \"2 m\", \"wall\": \"galvanized\","
            + " \"end\": \"1-2 NPT female\"}, {\"kind\": \"coupling\"}";
    assertThat(refused(line, TOOL))
        .contains("line[2].end", "1 NPT female has 11.5 threads per inch, not 2")
        .contains("or size 1/2 if that is meant")
        .doesNotContain("no range");
  }

  /** What somebody read on a hose that is there, beside its words or its id. */
  @Test
  void what_was_read_on_a_hose_stands_beside_its_part() throws Exception {
    String hose = "{\"kind\": \"hose\", \"part\": \"3/8 in hose, old, 25 ft\"%s}";
    Path job = job(hose.formatted(", \"rated\": \"250 psig\", \"measuredBore\": \"9.4 mm\""), TOOL);
    Part.Hose there = ((Slot.Hose)
            Disk.job(job).requirement().layout().slot("hose").orElseThrow())
        .hose()
        .orElseThrow();
    assertThat(there.facts().rating()).contains(GaugePressure.ofPsi(250.0));
    assertThat(there.conduit().bore()).isEqualTo(Length.ofMillimetres(9.4));
    assertThat(there.widestBore()).isEqualTo(Length.ofMillimetres(9.4));
    assertThat(Disk.job(job).remarks()).noneMatch(remark -> remark.contains("9.4 mm"));
  }

  @Test
  void a_measured_bore_that_the_name_cannot_have_is_told() throws Exception {
    Path job = job(
        "{\"kind\": \"hose\", \"part\": \"3/8 in hose, old, 25 ft\", \"measuredBore\": \"6.3 mm\"}",
        TOOL);
    assertThat(Disk.job(job).remarks())
        .anyMatch(
            remark -> remark.contains("6.3 mm") && remark.contains("one of the two is a slip"));
  }

  /** The catalogue tells what its maker allows: what somebody reads on another hose does not raise it. */
  @Test
  void a_rating_above_that_of_the_catalogue_does_not_count() throws Exception {
    String hose = "{\"kind\": \"hose\", \"part\": \"H-38\", \"rated\": \"400 psig\"}";
    Path job = job(hose, TOOL);
    Part.Hose there = ((Slot.Hose)
            Disk.job(job).requirement().layout().slot("hose").orElseThrow())
        .hose()
        .orElseThrow();
    assertThat(there.facts().rating().orElseThrow().psi()).isLessThan(399.0);
    assertThat(Disk.job(job).remarks())
        .anyMatch(remark -> remark.startsWith("\"400 psig\" in line[2].rated is above the ")
            && remark.contains("the lower of the two counts"));
  }

  /** What is refused is told as it was typed, and what a name may measure first in the unit of the slip. */
  @Test
  void what_was_read_on_a_hose_is_told_back_as_it_was_typed() throws Exception {
    String hose = "{\"kind\": \"hose\", \"part\": \"3/8 in hose, old, 25 ft\", \"%s\": \"%s\"}";
    assertThat(refused(hose.formatted("rated", "0 psig"), TOOL))
        .contains("line[2].rated: must be above 0, was 0 psig");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(refused(hose.formatted("measuredBore", "0 in"), TOOL))
        .contains("line[2].measuredBore: must be above 0, was 0 in");
    Files.delete(folder.resolve("catalogue.json"));
    Path job = job(hose.formatted("measuredBore", "1/4 in"), TOOL);
    assertThat(Disk.job(job).remarks())
        .anyMatch(remark -> remark.contains("which measures 0.") && remark.contains(" in (8"));
  }

  @Test
  void what_was_read_on_a_hose_goes_with_one_that_is_there() throws Exception {
    assertThat(refused("{\"kind\": \"hose\", \"reach\": \"25 ft\", \"rated\": \"250 psig\"}", TOOL))
        .contains("line[2].rated: is read on a part that is there; tell its part, or leave it out");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(refused(
            "{\"kind\": \"hose\", \"part\": {\"hose\": \"3/8 in\", \"length\": \"25 ft\","
                + " \"wall\": \"hose, old\", \"end\": \"3/8 NPT male\"}, \"measuredBore\": \"9.4"
                + " mm\"}",
            TOOL))
        .contains("line[2].measuredBore: stands beside the data of the part; put it among them, as"
            + " \"bore\"");
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
