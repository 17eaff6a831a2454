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
    assertThat(layout.slots()).hasSize(3);
    assertThat(layout.lines()).extracting(ToolLine::tool).containsExactly("sander", "air ratchet");
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
        "line[5].lines[1].line[2].reach: ", "\"reach\": \"25 ft\"", "\"raech\": \"25 ft\"");
    assertRefused("line[5].lines[1].tool.air", "\"12 scfm\"", "\"12 scmf\"");
    assertRefused("line[5].lines[1]", "\"count\": 2", "\"count\": 0");
    assertRefused("line[5]", "\"lines\"", "\"linse\"");
  }

  @Test
  void others_take_air_from_a_splitter_on_the_way() throws Exception {
    Requirement job = read(
            "\"name\": \"filter of the drop\"}",
            "\"name\": \"filter of the drop\"},"
                + " {\"kind\": \"splitter\", \"othersTake\": \"5 to 8 scfm\"}")
        .requirement();
    Slot.Splitter splitter = (Slot.Splitter) job.layout().slot("splitter").orElseThrow();
    assertThat(splitter.others()).contains(Range.parse("5 to 8 scfm", FreeAirFlow::parse));
  }

  /** A line behind a line is refused with both ways out; the second of them is read. */
  @Test
  void a_splitter_with_lines_in_a_line_is_refused_with_what_to_do() throws Exception {
    String hose = "{\"kind\": \"hose\", \"name\": \"hose to the ratchet\", \"reach\": \"25 ft\"}";
    assertRefused(
        "line[5].lines[2].line[2].lines: stand behind a splitter in a line, and parts are chosen for one"
            + " splitter with lines. Put these lines among those of the first splitter",
        hose,
        "{\"kind\": \"splitter\", \"lines\": [{\"tool\": {\"name\": \"a\", \"air\": \"3 scfm\","
            + " \"pressure\": \"85 psig\", \"inlet\": \"1/4 NPT female\"}, \"line\": [" + hose
            + "]}]}");
    Requirement job = read(
            hose,
            hose + ", {\"kind\": \"splitter\", \"name\": \"tee\", \"othersTake\": \"5 scfm\"}")
        .requirement();
    assertThat(((Slot.Splitter) job.layout().slot("tee").orElseThrow()).others())
        .contains(Range.parse("5 scfm", FreeAirFlow::parse));
  }

  @Test
  void a_pipe_behind_the_outlet_has_ends() throws Exception {
    String regulator =
        "{\"kind\": \"regulator\", \"name\": \"regulator of the drop\", \"set\": \"110 psig\"}";
    String pipe = ", {\"kind\": \"pipe\", \"name\": \"to the booth\", \"bore\": \"0.82 in\","
        + " \"length\": \"20 ft\", \"wall\": \"galvanized\", \"end\": \"1/2 NPT male\"";
    Layout layout = read(regulator, regulator + pipe + "}").requirement().layout();
    Slot.Pipe slot = (Slot.Pipe) layout.slot("to the booth").orElseThrow();
    assertThat(slot.pipe().downstream()).isEqualTo(End.parse("1/2 NPT male"));
    assertRefused(
        "line[5].end: is missing",
        regulator,
        regulator + pipe.replace(", \"end\": \"1/2 NPT male\"", "") + "}");
  }
}
