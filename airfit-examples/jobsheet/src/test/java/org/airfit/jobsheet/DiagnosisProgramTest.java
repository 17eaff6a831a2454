package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DiagnosisProgramTest {

  private static final Path EXAMPLE =
      Path.of("..", "diagnoses", "saddler-lane", "slow-grinder.json");

  @TempDir
  private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    return Main.run(
        args,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String page(String file) throws IOException {
    Path json = folder.resolve("slow.json");
    Files.writeString(json, file);
    Path page = folder.resolve("page.html");
    assertThat(run("diagnosis", json.toString(), page.toString()))
        .as(err.toString(StandardCharsets.UTF_8))
        .isZero();
    return Files.readString(page);
  }

  @Test
  void text_and_page_say_the_same_and_name_what_cannot_be_told_apart() throws IOException {
    String page = page(Files.readString(EXAMPLE));
    String text = out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
    for (String sheet : new String[] {text, page.replaceAll("\\s+", " ")}) {
      assertThat(sheet)
          .contains(
              "cannot be told apart by these readings",
              "restriction in coupling",
              "bore of hose",
              "Read gauge A behind coupling while it runs",
              "One fault at a time is judged",
              "1.84 bar less",
              "as told",
              "Let the pressure out first",
              "Never feel for a leak with a hand",
              "Energy isolation");
    }
    assertThat(text)
        .contains("THE WORKING", "Loss beyond what was told", "(common practice, no source)")
        .doesNotContain("100 %");
    assertThat(page)
        .doesNotContain("THE WORKING", "100 %")
        .contains("<title>Diagnosis: The grinder");
  }

  @Test
  void one_reading_more_names_the_hose_in_the_units_that_were_typed() throws IOException {
    String more = Files.readString(EXAMPLE).replace("\"readings\": [", """
            "readings": [
              {"gauge": "gauge B", "behind": "drop", "atRest": "7.1 bar(g)", "running": "6.9 bar(g)"},
              {"gauge": "gauge A", "behind": "filter", "atRest": "7.0 bar(g)", "running": "6.7 bar(g)"},
              {"gauge": "gauge A", "behind": "coupling", "atRest": "7.0 bar(g)", "running": "6.6 bar(g)"},
            """);
    String page = page(more);
    assertThat(page).contains("hose, which is narrower inside than told: bore of 6", " mm");
    assertThat(page(more.replace("\"title\"", "\"units\": \"US\", \"title\"")))
        .contains("narrower inside than told: bore of 0.2", " in", "psig")
        .doesNotContain("bar(g)");
  }

  @Test
  void a_wrong_file_gets_one_line_and_no_page() throws IOException {
    Path json = folder.resolve("slow.json");
    Files.writeString(json, Files.readString(EXAMPLE).replace("\"1.6\"", "\"two\""));
    Path page = folder.resolve("page.html");
    assertThat(run("diagnosis", json.toString(), page.toString())).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains("slow.json: gauges[1].class", "EN 837-1")
        .hasLineCount(1);
    assertThat(page).doesNotExist();
    Files.writeString(json, Files.readString(EXAMPLE));
    assertThat(run("diagnosis", json.toString(), json.toString())).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("is not written over");
    assertThat(run("diagnosis")).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("diagnosis DIAGNOSIS.json");
  }
}
