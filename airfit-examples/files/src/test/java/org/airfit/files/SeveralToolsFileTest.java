package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Range;
import org.airfit.select.Layout;
import org.airfit.select.Requirement;
import org.airfit.select.Slot;
import org.airfit.select.ToolLine;
import org.junit.jupiter.api.Test;

/** Several tools behind a splitter, others who take air, and pipe behind the outlet, in a job file. */
class SeveralToolsFileTest {

  private static final Path JOBS = Path.of("..", "jobs");

  private static Job read(String... changes) throws IOException, WrongFileException {
    String job = Files.readString(JOBS.resolve("body-shop").resolve("three-on-one-drop.json"));
    for (int i = 0; i < changes.length; i += 2) {
      assertThat(job).contains(changes[i]);
      job = job.replace(changes[i], changes[i + 1]);
    }
    String catalogue = Files.readString(JOBS.resolve("quay-street").resolve("catalogue.json"));
    return JobFile.read(new Document(
        "job.json",
        Json.read("job.json", job),
        name -> Document.of(name, Json.read(name, catalogue))));
  }

  private static void assertRefused(String message, String... changes) {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(changes))
        .withMessageContaining(message);
  }

  @Test
  void a_splitter_leads_to_lines_with_a_tool_each() throws Exception {
    Job job = read();
    Layout layout = job.requirement().layout();
    assertThat(job.toolName()).isEqualTo("2 × sander, air ratchet");
    assertThat(layout.slots()).hasSize(2);
    assertThat(layout.lines())
        .extracting(line -> line.tool().orElseThrow())
        .containsExactly("sander", "air ratchet");
    assertThat(layout.lines()).extracting(ToolLine::count).containsExactly(2, 1);
    assertThat(job.requirement().toEachTool())
        .extracting(way -> way.demand().cubicFeetPerMinute())
        .usingElementComparator((one, other) -> Math.abs(one - other) < 1.0e-9 ? 0 : 1)
        .containsExactly(12.0, 6.0);
    assertThat(job.requirement().demand().cubicFeetPerMinute()).isBetween(29.999, 30.001);
  }

  @Test
  void a_slot_without_a_name_is_called_by_its_kind_and_its_tool() throws Exception {
    Layout layout = read("\"name\": \"hose to a sander\", ", "").requirement().layout();
    assertThat(layout.lines().get(0).slots().get(1).name()).isEqualTo("hose to sander");
  }

  @Test
  void the_only_tool_must_not_stand_beside_lines() {
    assertRefused(
        "tool: stands beside the lines of a splitter",
        "\"conditions\"",
        "\"tool\": {\"name\": \"a\", \"air\": \"9 scfm\", \"pressure\": \"85 psig\","
            + " \"inlet\": \"1/4 NPT female\"}, \"conditions\"");
  }

  @Test
  void what_is_wrong_in_a_line_is_told_by_its_place() {
    assertRefused(
        "line[4].lines[1].line[2].reach: ", "\"reach\": \"25 ft\"", "\"raech\": \"25 ft\"");
    assertRefused("line[4].lines[1].tool.air", "\"12 scfm\"", "\"12 scmf\"");
    assertRefused("line[4].lines[1]", "\"count\": 2", "\"count\": 0");
    assertRefused("line[4]", "\"lines\"", "\"linse\"");
  }

  @Test
  void others_take_air_from_a_splitter_on_the_way() throws Exception {
    Requirement job = read(
            "of the drop\", \"set\": \"110 psig\"}",
            "of the drop\", \"set\": \"110 psig\"},"
                + " {\"kind\": \"splitter\", \"othersTake\": \"5 to 8 scfm\"}")
        .requirement();
    Slot.Splitter splitter = (Slot.Splitter) job.layout().slot("splitter").orElseThrow();
    assertThat(splitter.others()).contains(Range.parse("5 to 8 scfm", FreeAirFlow::parse));
  }

  private static final String HOSE =
      "{\"kind\": \"hose\", \"name\": \"hose to the ratchet\", \"reach\": \"25 ft\"}";

  private static String tool(String name) {
    return "\"tool\": {\"name\": \"" + name + "\", \"air\": \"3 scfm\", \"pressure\": \"85 psig\","
        + " \"inlet\": \"1/4 NPT female\"}";
  }

  /** A fourth line to a splitter with lines of its own, so many times. */
  private static String bench(String count, String beside, String name) {
    return "\"lines\": [{" + count + beside
        + "\"line\": [{\"kind\": \"hose\", \"reach\": \"30 ft\"},"
        + " {\"kind\": \"splitter\"" + name + ", \"lines\": [{\"count\": 2, " + tool("pin nailer")
        + ", \"line\": [{\"kind\": \"hose\", \"reach\": \"6 ft\"}]}, {" + tool("stapler")
        + ", \"line\": [{\"kind\": \"hose\", \"reach\": \"6 ft\"}]}]}]},";
  }

  private static final String NAMED = ", \"name\": \"bench manifold\"";

  @Test
  void a_line_may_end_in_a_splitter_with_lines_of_its_own() throws Exception {
    Job job = read("\"lines\": [", bench("\"count\": 2, ", "", NAMED));
    Layout layout = job.requirement().layout();
    assertThat(job.toolName()).isEqualTo("4 × pin nailer, 2 × stapler, 2 × sander, air ratchet");
    assertThat(layout.lines().get(0).slots())
        .extracting(Slot::name)
        .containsExactly("hose to bench manifold", "bench manifold");
    assertThat(layout.lines().get(0).lines())
        .extracting(line -> line.tool().orElseThrow())
        .containsExactly("pin nailer", "stapler");
    assertThat(job.requirement().toEachTool())
        .extracting(way -> way.way().orElseThrow())
        .containsExactly(
            "lines 1 to 4, pin nailer",
            "lines 5 and 6, stapler",
            "lines 7 and 8, sander",
            "line 9, air ratchet");
    assertThat(job.requirement().demand().cubicFeetPerMinute()).isBetween(47.999, 48.001);
  }

  @Test
  void what_is_wrong_behind_the_second_splitter_is_told_by_its_place() throws Exception {
    String two = bench("\"count\": 2, ", "", NAMED);
    assertRefused(
        "line[4].lines[1].line[2].lines[2].line[1].reach: ",
        "\"lines\": [",
        two.replace(
            "\"line\": [{\"kind\": \"hose\", \"reach\": \"6 ft\"}]}]",
            "\"line\": [{\"kind\": \"hose\", \"raech\": \"6 ft\"}]}]"));
    assertRefused(
        "line[4].lines[1].tool: stands beside the lines of the splitter at the end of this line",
        "\"lines\": [",
        bench("", tool("a") + ", ", NAMED));
    assertRefused(
        "line[4].lines[1].tool: is missing",
        "\"lines\": [",
        "\"lines\": [{\"line\": [{\"kind\": \"hose\", \"reach\": \"30 ft\"}]},");
    assertRefused(
        "line[4].lines[1].line[3]: stands behind a splitter with lines",
        "\"lines\": [",
        two.substring(0, two.length() - 3) + ", {\"kind\": \"hose\", \"reach\": \"6 ft\"}]},");
    Layout unnamed = read("\"lines\": [", bench("", "", "")).requirement().layout();
    assertThat(unnamed.lines().get(0).slots())
        .extracting(Slot::name)
        .containsExactly("hose", "splitter");
  }

  @Test
  void a_regulator_in_a_line_that_is_set_higher_than_one_in_front_of_it_is_told() throws Exception {
    Job job = read(HOSE, "{\"kind\": \"regulator\", \"set\": \"120 psig\"}, " + HOSE);
    assertThat(job.remarks())
        .anyMatch(remark ->
            remark.startsWith("\"regulator to air ratchet\" in line[4].lines[2].line[2] is"
                + " set higher than \"filter-regulator of the drop\" in front of it"));
  }

  @Test
  void a_pipe_behind_the_outlet_has_ends() throws Exception {
    String regulator =
        "{\"kind\": \"filter regulator\", \"name\": \"filter-regulator of the drop\","
            + " \"set\": \"110 psig\"}";
    String pipe = ", {\"kind\": \"pipe\", \"name\": \"to the booth\", \"bore\": \"0.82 in\","
        + " \"length\": \"20 ft\", \"wall\": \"galvanized\", \"end\": \"1/2 NPT male\"";
    Layout layout = read(regulator, regulator + pipe + "}").requirement().layout();
    Slot.Pipe slot = (Slot.Pipe) layout.slot("to the booth").orElseThrow();
    assertThat(slot.pipe().downstream()).isEqualTo(End.parse("1/2 NPT male"));
    assertRefused(
        "line[4].end: is missing",
        regulator,
        regulator + pipe.replace(", \"end\": \"1/2 NPT male\"", "") + "}");
  }
}
