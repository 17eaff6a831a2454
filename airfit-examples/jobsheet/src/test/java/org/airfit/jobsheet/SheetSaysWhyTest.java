package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sheet names all places of a part, all that is lost on the way, and the reason of what it says. */
class SheetSaysWhyTest {

  private static final Path CATALOGUE = Path.of("..", "jobs", "quay-street", "catalogue.json");

  private static final String JOB = """
      {
        "airfitJob": 2, "job": "two whip hoses", "customer": "invented", "catalogue": "%s",
        "supply": {"pressure": "110 to 125 psig"},
        "line": [
          {"kind": "regulator", "set": "95 psig", "curve": "90 psig at 0 scfm; 86 psig at 20 scfm; 80 psig at 40 scfm;"},
          {"kind": "pipe", "bore": "0.82 in", "length": "30 ft", "wall": "galvanized"},
          {"kind": "outlet", "end": "1/2 NPT female"},
          {"kind": "coupling", "profile": "plover"},
          {"kind": "hose", "reach": "3 ft"},
          {"kind": "coupling", "name": "between", "profile": "plover"},
          {"kind": "hose", "name": "hose of the tool", "reach": "3 ft"},
          {"kind": "coupling", "name": "at the tool", "profile": "plover"}
        ],
        "now": [
          {"name": "old coupling", "capacity": "40 scfm at 100 psig, 5 psi drop, b 0.3"},
          {"name": "hose", "bore": "6.5 mm", "length": "25 to 35 ft", "wall": "smooth rubber hose"}
        ],
        "tool": {
          "name": "Ratchet", "air": "12 scfm", "pressure": "80 psig", "inlet": "1/4 NPT female", "notAbove": "150 psig"
        },
        "conditions": {"place": "indoors"}
      }
      """;

  @TempDir
  Path folder;

  private String text = "";
  private String page = "";
  private String reasons = "";

  @BeforeEach
  void print() throws Exception {
    Path job = folder.resolve("job.json");
    Files.writeString(
        job, JOB.formatted(CATALOGUE.toAbsolutePath().normalize().toString().replace('\\', '/')));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
    Path html = folder.resolve("page.html");
    assertThat(Main.run(
            new String[] {job.toString(), html.toString()},
            new ByteArrayInputStream(new byte[0]),
            print,
            print))
        .as(out.toString(StandardCharsets.UTF_8))
        .isZero();
    text = out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
    page = plain(Files.readString(html));
    reasons = plain(Files.readString(folder.resolve("page-reasons.html")));
  }

  private static String plain(String html) {
    return html.replaceAll("<[^>]+>", " ").replaceAll("\\s+", " ");
  }

  @Test
  void two_pieces_of_one_part_are_told_with_both_places() {
    assertThat(page)
        .contains("Whip hose 3/8 in, rubber, 3 ft, with swivel , hose; hose of the tool");
    assertThat(page).contains(", coupling; between").contains(", between; at the tool");
  }

  /** 12 scfm lie 12/20 of the way from 90 to 86 psig: by hand 2.4 psi, of a setting of 95 psig as of 90. */
  @Test
  void the_regulator_at_the_supply_stands_first_among_the_losses() {
    String row =
        "gain without it regulator at the supply 2.4 psi note: set to 95 psig; what it takes down"
            + " to that is no loss.";
    assertThat(text.split(row, -1)).as(text).hasSize(3); // now, and with the parts proposed
    assertThat(reasons)
        .contains("regulator at the supply set to 95 psig; what it takes down to that is no loss.");
  }

  @Test
  void the_biggest_restriction_says_why_it_is_that() {
    assertThat(text)
        .containsPattern(
            "Biggest restriction, with all that is not known at its worst: hose. Without its loss"
                + " the tool would gain most: [0-9.]+ psi.");
    assertThat(page).contains("Without its loss the tool would gain most:");
    assertThat(reasons).contains("Without its loss the tool would gain most:");
  }

  /** Where the answer is read, and not in the documents alone. */
  @Test
  void a_curve_at_another_setting_is_told_with_the_answer() {
    assertThat(text)
        .contains(
            "line[1].curve: its maker's curve is drawn at a setting of 90 psig; at 95 psig it is"
                + " taken to droop by as much at the same flow, which is our choice.");
  }

  @Test
  void what_was_taken_for_an_exact_rating_is_told_and_a_length_may_be_a_range() {
    assertThat(text)
        .contains(
            "now: taken for what is not told: old coupling (gauge pressures of the rating counted"
                + " from 1.01325 bar(a); air of the rating taken as 20 °C")
        .contains(
            "now: not known exactly, and judged at both ends of what it may be: hose (told as a"
                + " range).");
  }
}
