package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.airfit.files.Disk;
import org.airfit.files.Job;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.select.Requirement;
import org.airfit.select.Slot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The interview about a job of several tools, of one of which nothing is told but its name. */
class InterviewOfLinesTest {

  private static final Path CATALOGUE = Path.of("..", "jobs", "quay-street", "catalogue.json");

  private static final String START = """
      {
        "job": "Three people on one drop",
        "customer": "Lowfield Body Works (invented)",
        "supply": {"pressure": "105 to 125 psig", "highest": "125 psig"},
        "line": [
          {"kind": "outlet", "end": "1/2 NPT female"},
          {"kind": "splitter", "lines": [
            {
              "count": 2,
              "tool": {
                "name": "sander", "air": "12 scfm", "pressure": "85 psig", "inlet": "1/4 NPT female",
                "hammers": false
              },
              "line": [
                {"kind": "coupling", "profile": "curlew"},
                {"kind": "hose", "reach": "40 to 60 ft"},
                {"kind": "coupling", "name": "at the sander", "profile": "curlew"}
              ]
            },
            {
              "tool": {"name": "ratchet"},
              "line": [
                {"kind": "hose", "reach": "25 ft"},
                {"kind": "coupling", "profile": "curlew"},
                {"kind": "hose", "reach": "2 to 30 ft"}
              ]
            }
          ]}
        ],
        "conditions": {"medium": "compressed air", "place": "indoors", "air": "dry"}
      }
      """;

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  private Path job() {
    return folder.resolve("job.json");
  }

  private String run(String typed, String start) throws Exception {
    Path file = folder.resolve("start.json");
    Files.writeString(file, start);
    out.reset();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Main.run(
        new String[] {"interview", file.toString(), CATALOGUE.toString(), job().toString()},
        new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)),
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
    assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
    return out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
  }

  private static List<Requirement> ways(Job job) {
    return job.requirement().toEachTool();
  }

  @Test
  void what_a_line_lacks_is_asked_first_by_the_name_of_the_line() throws Exception {
    String talk = run("6 scfm\n85 psig\n", START);
    assertThat(talk)
        .contains("1. Line 3, ratchet: How much air does the tool take?")
        .contains("2. Line 3, ratchet: What pressure must the tool have while it works?")
        .contains("3. Line 3, ratchet: What thread does the inlet of the tool have?")
        .contains("Nothing can be chosen before this is known: - Line 3, ratchet: What thread does"
            + " the inlet of the tool have? Written: ");
    assertThat(Files.readString(job())).contains("\"6 scfm\"");
  }

  /** Each answer goes to its line, the saved job opens again, and what it tells is not asked once more. */
  @Test
  void the_answers_of_each_line_are_saved_with_it_and_the_job_opens_again() throws Exception {
    String necessary = "6 scfm\n85 psig\n1/4 NPT female\n";
    String talk = run(necessary + "200 psig\n", START);
    assertThat(talk)
        .contains("4. Lines 1 and 2, sander: What is the highest pressure that the maker");
    Job saved = Disk.job(job());
    assertThat(ways(saved).get(0).toolRating()).contains(GaugePressure.parse("200 psig"));
    assertThat(ways(saved).get(1).toolRating()).isEmpty();
    assertThat(ways(saved).get(1).least()).isEqualTo(GaugePressure.parse("85 psig"));

    String again = run("150 psig\n", Files.readString(job()));
    assertThat(again)
        .contains("1. Line 3, ratchet: What is the highest pressure that the maker")
        .doesNotContain("Lines 1 and 2, sander: What is the highest")
        .doesNotContain("Lines 1 and 2, sander: What does the tool do?")
        .doesNotContain("How much air");
    assertThat(ways(Disk.job(job())).get(1).toolRating()).contains(GaugePressure.parse("150 psig"));
  }

  /** The ratchet hangs on a manifold behind the splitter, and both are there twice: its lines are 3 and 4. */
  private static final String BENCHES = START
      .replace(
          "\"tool\": {\"name\": \"ratchet\"},",
          "\"count\": 2, \"line\": [{\"kind\": \"hose\", \"reach\": \"10 ft\"}, {\"kind\": \"splitter\", \"name\":"
              + " \"bench manifold\", \"othersTake\": \"2 scfm\", \"lines\": [{\"tool\": {\"name\": \"ratchet\"},")
      .replace(
          "{\"kind\": \"hose\", \"reach\": \"2 to 30 ft\"}\n        ]",
          "{\"kind\": \"hose\", \"reach\": \"2 to 30 ft\"}\n        ]}]}]");

  @Test
  void a_tool_behind_a_second_splitter_is_asked_about_and_told_in_its_line() throws Exception {
    assertThat(BENCHES).contains("bench manifold", "]}]}]");
    String talk = run("6 scfm\n85 psig\n1/4 NPT female\n", BENCHES);
    assertThat(talk)
        .contains("1. Lines 3 and 4, ratchet: How much air does the tool take?")
        .doesNotContain("bench manifold: How much air")
        .contains("The catalogue has no splitter with 4 outlets for splitter");
    Job saved = Disk.job(job());
    assertThat(ways(saved)).hasSize(2);
    assertThat(ways(saved).get(1).least()).isEqualTo(GaugePressure.parse("85 psig"));
    assertThat(saved.requirement().layout().lines().get(1).lines()).hasSize(1);
    assertThat(saved.requirement().layout().slot("hose to bench manifold")).isPresent();
    assertThat(saved.requirement().layout().slot("hose to ratchet 2")).isPresent();
  }

  /** Two hoses of the third line have no name of their own: it is the second whose reach is not known. */
  @Test
  void how_far_a_hose_reaches_is_asked_and_told_to_that_hose() throws Exception {
    String whole = START.replace(
        "{\"name\": \"ratchet\"}",
        "{\"name\": \"ratchet\", \"air\": \"6 scfm\", \"pressure\": \"85 psig\", \"inlet\": \"1/4 NPT"
            + " female\", \"hammers\": false, \"notAbove\": \"200 psig\"}");
    String talk = run("\n".repeat(30), whole);
    assertThat(talk)
        .contains("Hose to sander: How long must it be at least, to reach?")
        .contains("Hose to ratchet 2: How long must it be at least, to reach?")
        .doesNotContain("Hose to ratchet: How long")
        .contains("All was asked that can change the proposal.")
        .contains("Not known, and better asked before anything is connected: - Hose to ratchet 2:");
    assertThat(Disk.job(job()).requirement().layout().slot("hose to ratchet 2").orElseThrow())
        .isEqualTo(Slot.hose("hose to ratchet 2", Range.parse("2 to 30 ft", Length::parse)));
    int questions = talk.split("Hose to ratchet 2: How long", -1)[0].split("> ", -1).length - 1;
    run("\n".repeat(questions) + "25 ft\n", whole);
    assertThat(Disk.job(job()).requirement().layout().slot("hose to ratchet 2").orElseThrow())
        .isEqualTo(Slot.hose("hose to ratchet 2", Length.parse("25 ft")));
    assertThat(Disk.job(job()).requirement().layout().slot("hose to ratchet").orElseThrow())
        .isEqualTo(Slot.hose("hose to ratchet", Length.parse("25 ft")));
  }
}
