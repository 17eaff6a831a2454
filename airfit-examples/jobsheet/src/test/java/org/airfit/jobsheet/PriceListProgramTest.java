package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PriceListProgramTest {

  private static final Path CANAL_ROW = Path.of("..", "shops", "canal-row", "check.json");

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(Object... args) {
    String[] words = new String[args.length + 1];
    words[0] = "pricelist";
    for (int i = 0; i < args.length; i++) {
      words[i + 1] = args[i].toString();
    }
    out.reset();
    err.reset();
    return Main.run(
        words,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String said() {
    return out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
  }

  private Path copied(String name, String from, String to) throws IOException {
    for (String file : List.of("check.json", "price-list.json", "profiles.csv")) {
      String text = Files.readString(CANAL_ROW.resolveSibling(file));
      if (file.equals(name)) {
        assertThat(text).contains(from);
        text = text.replace(from, to);
      }
      Files.writeString(folder.resolve(file), text);
    }
    return folder.resolve("check.json");
  }

  @Test
  void the_list_has_its_sheet_and_its_page() throws IOException {
    Path page = folder.resolve("canal.html");
    assertThat(run(CANAL_ROW, page)).as(err.toString(StandardCharsets.UTF_8)).isZero();
    assertThat(said())
        .contains(
            "PRICE LIST The spring price list",
            "Faults: 13 faults in 25 articles: 1 unsafe, 8 wrong answer, 3 answer open, 1 untidy;"
                + " figures that no part can have in 3 of them.",
            "Not read: 4 articles could not be read, for 5 reasons",
            "S-R38, parts[7].end: \"3/8 NPTT female\": 'NPTT' is not understood",
            "[P-K14, S-K14] rating below what it is sold with. Plug Knot, 1/4 NPT male is rated"
                + " for 150 psig",
            "[S-D38] C against Cv: cannot be. Socket Dunlin, 3/8 NPT male: C 9 dm³/(s·bar) stands"
                + " beside Cv 1.2",
            "vernier caliper 0.05 mm and every dimension read, one is taken for the other",
            "orphan adapter: 3 looked at, 1 found",
            "60 jobs were drawn from 3 kinds of tools and 3 kinds of places, with the seed 7.",
            "What would solve most jobs more: Hose",
            "50 ft, 3/8 NPT male at both ends",
            "Hose reaches:",
            "It is found and counted with the same jobs",
            "A list without a fault is not proven right",
            "Local codes");
    assertThat(Files.readString(page))
        .contains(
            "<h1>The spring price list</h1>",
            "cannot be",
            "Faults: unsafe",
            "<div class=\"do\">Look whether the rating is a slip",
            "What would solve more jobs",
            "An assembly is rated as its lowest part")
        .doesNotContain("http");
  }

  @Test
  void without_a_mix_no_jobs_are_spoken_of() throws IOException {
    Path file = copied("check.json", "\"mix\":", "\"//\":");
    assertThat(run(file, folder.resolve("x.html"))).isZero();
    assertThat(said()).doesNotContain("jobs").contains("C 9 dm³/(s·bar)", "Kv 1.04");
    assertThat(Files.readString(folder.resolve("x.html"))).doesNotContain("What would solve");
  }

  @Test
  void text_of_a_list_stays_text_on_the_page() throws IOException {
    Path file = copied("price-list.json", "\"id\": \"A-3P\"", "\"id\": \"<b>A & 3P\"");
    Files.writeString(file, Files.readString(file).replace("\"mix\":", "\"//\":"));
    Path page = folder.resolve("x.html");
    assertThat(run(file, page)).isZero();
    assertThat(Files.readString(page)).contains("&lt;b&gt;A &amp; 3P").doesNotContain("<b>");
  }

  @Test
  void the_program_refuses_in_one_line_and_writes_nothing_over() throws IOException {
    assertThat(run()).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .startsWith("give what is asked of a price list");
    Path file = copied("check.json", "\"jobs\": 60", "\"jobs\": 0");
    assertThat(run(file, folder.resolve("x.html"))).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8).lines())
        .singleElement()
        .asString()
        .contains("mix: jobs to draw must be in [1, 400], were 0");
    assertThat(folder.resolve("x.html")).doesNotExist();
    Path list = folder.resolve("price-list.json");
    Path good = copied("check.json", "\"jobs\": 60", "\"jobs\": 2");
    String before = Files.readString(list);
    assertThat(run(good, list)).isEqualTo(2);
    assertThat(Files.readString(list)).isEqualTo(before);
  }
}
