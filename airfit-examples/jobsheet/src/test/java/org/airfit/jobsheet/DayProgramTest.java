package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.airfit.files.Csv;
import org.airfit.files.DayFile;
import org.airfit.files.DayJob;
import org.airfit.files.Document;
import org.airfit.files.Json;
import org.airfit.files.WrongFileException;
import org.airfit.network.DayChange;
import org.airfit.network.DayCost;
import org.airfit.network.DayPrice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DayProgramTest {

  private static final Path SMITHY = Path.of("..", "days", "lock-street", "smithy.json");

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    return Main.run(
        args,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String said() {
    return out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
  }

  @Test
  void the_program_refuses_in_one_line() throws IOException {
    assertThat(run("day")).isEqualTo(2);
    assertThat(run("day", folder.resolve("none.json").toString())).isEqualTo(2);
    Files.writeString(folder.resolve("empty.json"), "{}");
    assertThat(run("day", folder.resolve("empty.json").toString())).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains("give a day file", "there is no such file", "airfitDay: is missing");
    assertThat(out.toString(StandardCharsets.UTF_8)).isEmpty();
  }

  /**
   * By hand, while the hammer strikes: 1500 − 588 L/min over 20 s, and more with grinder and leaks, take 500 L down by
   * 0.6 bar at least. It begins between cut-in and cut-out, so nobody needs more than is there.
   */
  @Test
  void text_and_page_tell_the_same() throws IOException {
    Path page = folder.resolve("page.html");
    assertThat(run("day", SMITHY.toString(), page.toString()))
        .as(err.toString(StandardCharsets.UTF_8))
        .isZero();
    String html = Files.readString(page).replaceAll("\\s+", " ");
    assertThat(said())
        .contains(
            "DAY Small shop, a morning",
            "Every user has the pressure it needs as long as the walls keep the receivers warm, and not",
            "Nearest to its need comes grinder with",
            "Taken by what needs no pressure, such as leaks:",
            "Without their heat",
            "The header has one pressure",
            "Receiver protection",
            "D = M + S1 − S2");
    for (String text : new String[] {said(), html}) {
      assertThat(text)
          .contains(
              "power hammer",
              "in the busiest hour",
              "Artificial demand, taken only because the pressure was higher than needed",
              "A regulator in front of the header: no setting")
          .containsIgnoringCase("Each of these days was gone through again");
    }
    assertThat(html)
        .contains("class=\"roomy\"", "class=\"narrow\"", "aria-label=\"The pressure over the day")
        .doesNotContain("NaN", "Infinity");
  }

  private static DaySheet sheet(String what, String instead)
      throws WrongFileException, IOException {
    String smithy = Files.readString(SMITHY);
    assertThat(smithy).contains(what);
    return sheet(smithy.replace(what, instead));
  }

  private static DaySheet sheet(String text) throws WrongFileException {
    DayJob job = DayFile.read(new Document(
        "day.json",
        Json.read("day.json", text),
        path -> Document.of(
            path, Csv.read(path, "time,flow\n07:00,150 L/min ANR\n07:05,150 L/min ANR\n"))));
    return DaySheet.of(job);
  }

  /** The hammer needs more than is left of 500 L after a slow start: a larger receiver is found by trying it. */
  @Test
  void who_is_short_is_told_with_what_helps() throws Exception {
    DaySheet sheet = sheet("\"startDelay\": \"5 s\"", "\"startDelay\": \"60 s\"");
    assertThat(sheet.day().isShort()).isTrue();
    String text = DayText.of(sheet).replaceAll("\\s+", " ");
    assertThat(text)
        .contains("Below their need: ", "receiver of ", " L in place of 500 L: every user has what")
        .contains("Cut-in and cut-out of every compressor", "higher: every user has what it needs")
        .contains("every user has what it needs, but not without heat from the walls (")
        .contains("More pressure at the supply does not help");
  }

  /** Without a price no money is told anywhere. With one, text and page tell it, and what a change saves. */
  @Test
  void money_is_told_where_electricity_has_a_price() throws Exception {
    DaySheet unpriced = sheet("\"electricity\": \"0.30 EUR\",\n  \"timesInYear\": 220,", "");
    assertThat(DayText.of(unpriced) + DayPage.of(unpriced))
        .doesNotContainIgnoringCase("money")
        .doesNotContain("EUR", "electricity");
    DaySheet sheet = sheet("\"startDelay\": \"5 s\"", "\"startDelay\": \"60 s\"");
    DayPrice price = sheet.job().price().orElseThrow();
    DayCost cost = price.mostCost(sheet.day());
    // the loaded energy by the price is most of it: 4.6 kW for some of 3 h
    double energy = 0.30 * sheet.day().energy().kilowattHours();
    assertThat(cost.perDay().amount().doubleValue()).isBetween(0.8 * energy, 1.2 * energy);
    String html = DayPage.of(sheet).replaceAll("\\s+", " ");
    String text = DayText.of(sheet).replaceAll("\\s+", " ");
    for (String told : new String[] {text, html}) {
      assertThat(told)
          .contains(
              "for the electricity of this day", "in a year with 220 such days, at 0.30 EUR a kWh.")
          .contains(cost.perDay().format(2), cost.perYear().format(0))
          .containsPattern(" more a day, |; saves ")
          .contains("Money is that of electricity alone");
    }
    assertThat(text).contains("E = El + Ei + Er", "Kn = n × K");
    DayChange raised = sheet.changes().stream()
        .filter(change -> change.kind() == DayChange.Kind.BANDS)
        .findFirst()
        .orElseThrow();
    DayCost saved = price.mostSaved(sheet.day(), raised.result());
    assertThat(saved.kilowattHours()).isNegative();
    String atLeast = saved.perYear().times(-1.0).format(0);
    assertThat(text)
        .containsPattern("; costs [0-9. to]+ EUR more a day, "
            + atLeast.substring(0, atLeast.indexOf(' ')) + "( to [0-9]+)? EUR more in a year");
  }

  @Test
  void averages_are_told_to_hide_peaks() throws Exception {
    DaySheet sheet = sheet(
        Files.readString(SMITHY)
            .replace("6.0 bar(g)", "5.0 bar(g)")
            .replace(
                "{\"name\": \"leaks\"",
                "{\"name\": \"line\", \"needs\": \"5 bar(g)\", \"recording\": {\"file\": \"line.csv\","
                    + " \"averagedOver\": \"5 min\", \"most\": \"2500 L/min ANR\"}}, {\"name\": \"leaks\""));
    assertThat(sheet.day().isShort()).isFalse();
    assertThat(sheet.bunched()).isPresent();
    assertThat(DayText.of(sheet).replaceAll("\\s+", " "))
        .contains("Recorded were line, averages of 5 min: a peak that is shorter does not show.")
        .contains("these fall below their need");
  }

  @Test
  void a_clock_tells_the_day_after() throws Exception {
    DaySheet sheet = sheet("\"06:00\"", "\"05:30\"");
    assertThat(sheet.clock(Duration.ofHours(18))).isEqualTo("23:30:00");
    assertThat(sheet.clock(Duration.ofMinutes(18 * 60 + 45))).isEqualTo("00:15:00 (day 2)");
    assertThat(DayWords.said(Duration.ofMillis(7_260))).isEqualTo("7.3 s");
    assertThat(DayWords.said(Duration.ofSeconds(125))).isEqualTo("2 min 5 s");
    assertThat(DayWords.said(Duration.ofHours(2))).isEqualTo("2 h");
  }
}
