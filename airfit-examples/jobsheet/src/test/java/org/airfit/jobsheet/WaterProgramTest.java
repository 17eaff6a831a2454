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

class WaterProgramTest {

  private static final Path KILN_ROW = Path.of("..", "treatments", "kiln-row", "paint-shop.json");
  private static final Path CHAPEL_YARD =
      Path.of("..", "treatments", "chapel-yard", "print-works.json");

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(Object... args) {
    String[] words = new String[args.length + 1];
    words[0] = "water";
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

  private Path changed(Path example, String from, String to) throws IOException {
    String text = Files.readString(example);
    assertThat(text).contains(from);
    Path file = folder.resolve("water.json");
    Files.writeString(file, text.replace(from, to));
    return file;
  }

  @Test
  void the_paint_shop_has_its_sheet_and_its_page() throws IOException {
    Path page = folder.resolve("kiln.html");
    assertThat(run(KILN_ROW, page)).as(err.toString(StandardCharsets.UTF_8)).isZero();
    assertThat(said())
        .contains(
            "WATER AND PURITY Water in the spray guns of the paint shop",
            "As it stands: ISO 8573-1:2010 [1:4:2] is not reached: particles not reached (class 2"
                + " for 1); water not reached (Overloaded: dryer.",
            "Larger dryer, fine filter: ISO 8573-1:2010 [1:4:2] is reached.",
            "Drains, as it stands: Fit one at yard main: water can be there.",
            "yard main gets as cold as 15 °F: what falls out there freezes",
            "Water taken in: up to 23 gal in 8 h",
            "a new element for 95.00 USD is paid back in",
            "dryer: warm 5.47 gal at 95 °F",
            "Yard main, 240 ft long, is too flat: it falls 0.3 %, 0.72 ft in all; at least 1 % is"
                + " common practice",
            "These amounts take it that each dryer does what its maker says.",
            "Not for breathing air",
            "Water along the line, at its warmest with the dampest air",
            "Flow for which a rating holds",
            "Pressure loss of a clean element",
            "Payback of a new element of general filter",
            "is not counted: it has to be in the air that was told");
    assertThat(Files.readString(page))
        .contains(
            "<h1>Water in the spray guns of the paint shop</h1>",
            "role=\"img\" aria-label=\"The water along the train on a warm day",
            "Not for breathing air",
            "Overloaded: dryer.")
        .doesNotContain("common practice, no source", "τ");
  }

  /** The bars are to scale: the amounts in the picture are read back from its heights. */
  @Test
  void the_bars_of_the_picture_are_to_scale() throws IOException {
    Path page = folder.resolve("x.html");
    assertThat(run(KILN_ROW, page)).isZero();
    String text = Files.readString(page);
    String svg = text.substring(text.indexOf("<svg"), text.indexOf("</svg>"));
    double in = heights(svg, "pale").get(0);
    double drained = heights(svg, "dark").get(0);
    assertThat(in).as("23 gal of 25 on 190 px").isBetween(190.0 * 22.9 / 25.0, 190.0 * 23.1 / 25.0);
    assertThat(drained / in).isBetween(15.9 / 23.1, 16.1 / 22.9);
    assertThat(heights(svg, "short")).isEmpty();
  }

  private static java.util.List<Double> heights(String svg, String kind) {
    return java.util.regex.Pattern.compile("<rect class=\"" + kind + "\"[^>]*height=\"([0-9.]+)\"")
        .matcher(svg)
        .results()
        .map(found -> Double.valueOf(found.group(1)))
        .toList();
  }

  @Test
  void si_units_are_told_in_si() {
    assertThat(run(CHAPEL_YARD, folder.resolve("x.html"))).isZero();
    assertThat(said())
        .contains(
            "Desiccant, fine filters and carbon: ISO 8573-1:2010 [2:2:1] is reached; particles are"
                + " judged behind dust filter, and rust and scale of what follows it are not"
                + " counted.",
            "Water taken in: up to 57.6 L in 8 h",
            "The dew point at the end is at most -40.0 °C (frost point)")
        .doesNotContain(" gal", "psig", "Frost,");
  }

  @Test
  void liquid_that_goes_on_is_told_and_drawn() throws IOException {
    Path page = folder.resolve("x.html");
    Path file = changed(
        CHAPEL_YARD,
        "\"air\": \"18 to 43 °C\", \"drain\": true",
        "\"air\": \"18 to 43 °C\", \"drain\": false");
    assertThat(run(file, page)).isZero();
    assertThat(said()).contains("Aftercooler: up to", "Fit one at its lowest point");
    assertThat(heights(Files.readString(page), "short")).isNotEmpty();
  }

  @Test
  void without_a_purity_only_water_and_pressure_are_told() throws IOException {
    Path file = changed(KILN_ROW, "\"asked\": \"[1:4:2]\",", "");
    assertThat(run(file, folder.resolve("x.html"))).isZero();
    assertThat(said()).contains("Water taken in").doesNotContain("Purity, asked for");
  }

  /** The reason that decides stands in the few lines that a customer reads. */
  @Test
  void in_short_says_why_nobody_can_tell() throws IOException {
    Path untold = changed(KILN_ROW, ", \"vapour\": \"0.06 mg/m3\"", "");
    assertThat(run(untold, folder.resolve("x.html"))).isZero();
    assertThat(said()).contains("oil not told (Nobody told how much oil vapour is left.");
    assertThat(said())
        .contains("takes in the oil vapour of the air around it, one without oil too");
  }

  @Test
  void a_dryer_drains_itself_though_nobody_told_its_dew_point() throws IOException {
    for (String kind : new String[] {"desiccant dryer", "membrane dryer"}) {
      Path file = changed(
          CHAPEL_YARD,
          "\"kind\": \"desiccant dryer\", \"air\": \"15 to 42 °C\", \"dewPoint\": \"-40 °C\",",
          "\"kind\": \"" + kind + "\", \"air\": \"5 to 42 °C\",");
      assertThat(run(file, folder.resolve("x.html"))).isZero();
      assertThat(said())
          .contains("No pressure dew point is told of desiccant dryer", "drains itself")
          .doesNotContain("Fit one at desiccant dryer", "Desiccant dryer: up to");
    }
  }

  @Test
  void what_is_not_asked_is_said_once() throws IOException {
    assertThat(run(changed(KILN_ROW, "[1:4:2]", "[1:4:-]"), folder.resolve("x.html")))
        .isZero();
    assertThat(said()).contains("oil: not asked, told").doesNotContain("asked not asked");
  }

  @Test
  void an_element_that_saves_nothing_is_not_paid_back() throws IOException {
    assertThat(run(changed(KILN_ROW, "\"hours\": 4200", "\"hours\": 0"), folder.resolve("x.html")))
        .isZero();
    assertThat(said())
        .contains("new element paid back: saves nothing")
        .doesNotContain("is paid back in");
  }

  @Test
  void text_of_a_user_stays_text_on_the_page() throws IOException {
    Path page = folder.resolve("x.html");
    assertThat(run(changed(KILN_ROW, "\"yard main\"", "\"yard <b>& main\""), page))
        .isZero();
    assertThat(Files.readString(page)).contains("yard &lt;b&gt;&amp; main").doesNotContain("<b>");
  }

  @Test
  void the_program_refuses_in_one_line_and_writes_nothing_over() throws IOException {
    assertThat(run()).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).startsWith("give a file of water and purity");
    Path file = changed(KILN_ROW, "\"dewPoint\": \"38 °F\"", "\"dewPoint\": \"38\"");
    assertThat(run(file, folder.resolve("x.html"))).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8).lines())
        .singleElement()
        .asString()
        .contains("trains[1].stages[4].dewPoint");
    assertThat(folder.resolve("x.html")).doesNotExist();
    Path good = changed(KILN_ROW, "\"shift\": \"8 h\"", "\"shift\": \"10 h\"");
    String before = Files.readString(good);
    assertThat(run(good, good)).isEqualTo(2);
    assertThat(Files.readString(good)).isEqualTo(before);
  }
}
