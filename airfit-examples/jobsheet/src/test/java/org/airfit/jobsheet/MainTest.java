package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class MainTest {

  private static final Path YARD = Path.of("..", "jobs", "boatyard");

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private String job = "";
  private String catalogue = "";

  @BeforeEach
  void read_the_boat_yard() throws IOException {
    job = Files.readString(YARD.resolve("weak-sander.json"));
    catalogue = Files.readString(YARD.resolve("catalogue.json"));
  }

  private Path page() {
    return folder.resolve("sheet.html");
  }

  /** The page with what the sheet rests on. */
  private Path reasons() {
    return folder.resolve("sheet-reasons.html");
  }

  private int run(String... args) {
    return Main.run(
        args,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  /** Runs the boat yard's files as they were changed. */
  private int runChanged() throws IOException {
    Files.writeString(folder.resolve("job.json"), job);
    Files.writeString(folder.resolve("catalogue.json"), catalogue);
    return run(folder.resolve("job.json").toString(), page().toString());
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String complained() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private static String change(String text, String from, String to) {
    assertThat(text).contains(from);
    return text.replace(from, to);
  }

  @Test
  void the_bundled_job_gives_a_sheet_from_plug_to_working() throws IOException {
    assertThat(run(YARD.resolve("weak-sander.json").toString(), page().toString()))
        .isZero();
    assertThat(complained()).isEmpty();
    assertThat(printed())
        .containsSubsequence(
            "THE PLUG AT HAND",
            "Candidate only",
            "Gannet",
            "none of these",
            "ITS THREAD",
            "1/4 NPT male",
            "THE AIR NOW",
            "too little",
            "old hose, 5/16 in",
            "Biggest restriction: old hose",
            "RECOMMENDED PARTS",
            "H-38",
            "enough",
            "rules",
            "BEFORE ANYONE CONNECTS THIS",
            "Local codes",
            "THE WORKING",
            "Reynolds number");
    assertThat(printed().lines().takeWhile(line -> !line.equals("THE WORKING")))
        .as("a hundred characters wide but for the working")
        .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(104));
  }

  @Test
  void the_page_needs_nothing_but_itself_and_holds_chart_outline_and_ruler() throws IOException {
    run(YARD.resolve("weak-sander.json").toString(), page().toString());
    String html = Files.readString(page());
    String reasons = Files.readString(reasons());
    for (String each : List.of(html, reasons)) {
      assertThat(each.replace("http://www.w3.org/2000/svg", ""))
          .doesNotContain("http:", "https:", "<script", "<link", "url(", "@import");
      assertThat(each)
          .contains("<!doctype html>", "<html lang=\"en\">", "<header", "<main", "<h1>");
    }
    assertThat(html)
        .containsSubsequence(
            "<h2>What was found</h2>",
            "<h2>Recommended parts</h2>",
            "<tfoot>",
            "Together",
            "<h2>Still open</h2>",
            "<h2>Before anyone connects this</h2>",
            "Depressurise before uncoupling",
            "Pressure before the change",
            "Pressure after the change",
            "Notes",
            "For the shop",
            "For the customer")
        .doesNotContain("<svg", "The working");
    assertThat(reasons)
        .contains("the pressure falls from 7.4 bar at the supply to", "50 mm", "true scale")
        .containsSubsequence("The plug at hand", "The air now", "Rule by rule", "The working");
    assertThat(reasons.split("<svg", -1))
        .as("outline, chart now, chart with the new parts, each chart for wide and narrow")
        .hasSize(6);
    assertThat(folder.toFile().list())
        .as("nothing half-written is left")
        .containsExactlyInAnyOrder("sheet.html", "sheet-reasons.html");
  }

  @Test
  void prices_are_shown_with_their_total_and_what_is_unknown_is_said() throws IOException {
    assertThat(run(YARD.resolve("weak-sander.json").toString(), page().toString()))
        .isZero();
    assertThat(printed().replaceAll("\\s+", " "))
        .contains(
            "; together 139.20 USD. Tax is left to the shop.",
            "1 S-12 Socket Gannet, stainless, 1/2 NPT male 38.90 USD 38.90 USD at the outlet: takes",
            "1 T-1 Sealing tape, roll 2.40 USD 2.40 USD seals 4 taper threads",
            "Together 139.20 USD. Tax is left to the shop. The parts in the line alone cost 136.80 USD.",
            "To be asked: Is there a dryer behind the compressor?");
    assertThat(Files.readString(page()))
        .contains("price, USD", "Together", ">139.20<", "Sealing tape, roll<", "Is there a dryer");
    out.reset();
    catalogue = change(catalogue, "\"price\": \"49.00\", ", "");
    catalogue = change(catalogue, "\"price\": \"36.00\", ", "");
    assertThat(runChanged()).isZero();
    assertThat(printed().replaceAll("\\s+", " "))
        .contains("Together 103.20 USD without Hose 1/2 in, 10 m, of unknown price. Tax is left");
    assertThat(Files.readString(page()))
        .contains("Together, as far as prices are known", ">to be asked<");
  }

  /** By hand: 38.90 + 10.60 + 36 + 41.50 + 9.80 + 2.40 + 9.20 + 2 × 1.30 + 8 = 159; the 1/2 in hose costs 13 more. */
  @Test
  void three_offers_are_told_to_the_shop_and_two_of_them_to_the_customer() throws IOException {
    assertThat(run(YARD.resolve("three-offers.json").toString(), page().toString()))
        .isZero();
    String text = printed().replaceAll("\\s+", " ");
    assertThat(text)
        .contains("Together 159.00 USD. Tax is left to the shop.")
        .contains("1 D-1 Drain valve 1/2 NPT 9.20 USD 9.20 USD lets water out")
        .contains("2 E-G Dust cap for Gannet plugs 1.30 USD 2.60 USD", "1 K-1 Wall hook for a hose")
        .contains("- Least money now: It costs 159.00 USD now.")
        .contains(
            "- Least money in a year: In the first year it costs ",
            ", of which 172.00 USD now and ")
        .contains(
            "1 × Hose 1/2 in, 10 m instead of 1 × Hose 3/8 in, 10 m. Now it costs 13.00 USD more")
        .contains("- Most margin: The shop earns ")
        .contains("Reckoned with 2500 h in the year at 0.16 USD per kWh, a mean flow of ");
    assertThat(Files.readString(page()))
        .contains("Least money now", "Least money in a year")
        .doesNotContain("earns")
        .doesNotContain("Most margin");
    assertThat(Files.readString(reasons()))
        .contains("Least money now", "Least money in a year", "Reckoned with 2500 h")
        .doesNotContain("earns")
        .doesNotContain("Most margin");
  }

  @Test
  void a_price_without_the_catalogue_s_currency_is_refused() throws IOException {
    catalogue = change(catalogue, "  \"currency\": \"USD\",\n", "");
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained()).contains("price", "needs the currency of the catalogue");
  }

  /** Such as 101299.99999999999: no sheet is worth so many digits. The working may have more of them. */
  @Test
  void no_number_has_more_digits_than_it_is_worth() throws IOException {
    run(YARD.resolve("weak-sander.json").toString(), page().toString());
    String page = Files.readString(page());
    assertThat(printed()).contains("stand above the atmosphere of 1.013 bar(a).");
    for (String all : List.of(printed(), page)) {
      assertThat(all).doesNotContainPattern("[0-9]{4,}\\.[0-9]{5,}");
      assertThat(all.split("(?i)the working", 2)[0])
          .isNotEqualTo(all)
          .doesNotContainPattern("[0-9]\\.[0-9]{5,}");
    }
  }

  @Test
  void a_word_before_the_files_starts_another_program() {
    String net = Path.of("..", "networks", "ferry-lane-ring.csv").toString();
    assertThat(run("network", net, page().toString())).isZero();
    assertThat(printed()).startsWith("NETWORK  ");
    out.reset();
    assertThat(run("set", Path.of("..", "sets", "workshop.csv").toString())).isZero();
    assertThat(printed()).contains("Which pairs can be told apart");
    assertThat(run("network")).isEqualTo(2);
    assertThat(run("set")).isEqualTo(2);
    assertThat(complained()).contains("give a network file", "give a set file");
  }

  @Test
  void two_runs_write_the_same() throws IOException {
    run(YARD.resolve("weak-sander.json").toString(), page().toString());
    String first = Files.readString(page());
    run(YARD.resolve("weak-sander.json").toString(), page().toString());
    assertThat(Files.readString(page())).isEqualTo(first);
  }

  @Test
  void without_the_groove_width_the_plug_stays_in_doubt_and_no_part_is_chosen() throws IOException {
    job = change(
        job,
        "\"tip length\": \"16.27 mm\",\n      \"groove width\": \"5.16 mm\"",
        "\"tip length\": \"16.25 mm\"");
    assertThat(runChanged()).isZero();
    assertThat(printed()).contains("Ambiguous", "Measure the ", "Not chosen yet");
    assertThat(Files.readString(reasons())).contains("Not chosen yet");
    assertThat(Files.readString(page()))
        .contains("Not chosen before the plug is known.", "<li>Measure the ")
        .doesNotContain("Recommended parts");
  }

  @Test
  void a_socket_alone_gets_the_ways_out() throws IOException {
    job = change(job, "\"where\":", "\"socketOnly\": true, \"where\":");
    assertThat(runChanged()).isZero();
    assertThat(printed()).contains("A socket alone cannot be identified", "Find its plug");
    assertThat(Files.readString(page())).contains("Replace the pair");
  }

  @Test
  void a_catalogue_may_take_its_profiles_from_the_shop_s_own_set() throws IOException {
    assertThat(run(YARD.resolve("weak-sander.json").toString(), page().toString()))
        .isZero();
    String before = printed();
    out.reset();
    int from = catalogue.indexOf("\"profiles\"");
    int to = catalogue.indexOf("\"parts\"");
    catalogue = catalogue.substring(0, from) + "\"profileSet\": \"workshop.csv\",\n  "
        + catalogue.substring(to);
    Files.copy(Path.of("..", "sets", "workshop.csv"), folder.resolve("workshop.csv"));
    assertThat(runChanged()).isZero();
    assertThat(printed())
        .contains("Ferry Lane workshop set (invented)")
        .isEqualToNormalizingWhitespace(before.replaceAll(
            "the set\\s+\"Ferry\\s+Lane\\s+Air\\s+Counter", "the set \"Ferry Lane workshop set"));
    catalogue = change(catalogue, "\"profileSet\"", "\"profiles\": [], \"profileSet\"");
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained()).contains("profileSet: stands beside profiles");
  }

  @Test
  void a_socket_alone_is_answered_with_the_sockets_the_set_knows() throws IOException {
    int from = catalogue.indexOf("\"profiles\"");
    int to = catalogue.indexOf("\"parts\"");
    catalogue = catalogue.substring(0, from) + "\"profileSet\": \"workshop.csv\",\n  "
        + catalogue.substring(to);
    Files.copy(Path.of("..", "sets", "workshop.csv"), folder.resolve("workshop.csv"));
    String before = job;
    job = change(
        before,
        "\"where\":",
        "\"socketOnly\": true, \"inUse\": [\"tern\", \"gannet\"], \"where\":");
    assertThat(runChanged()).isZero();
    assertThat(printed()).contains("Two-way socket (invented)");
    job = change(before, "\"where\":", "\"socketOnly\": true, \"inUse\": [\"owl\"], \"where\":");
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained()).contains("atHand.inUse: profile of the place must be one of tern");
    job = change(before, "\"where\":", "\"inUse\": [\"tern\"], \"where\":");
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained()).contains("goes with socketOnly");
  }

  @Test
  void a_job_that_nothing_fits_says_what_would_have_to_change() throws IOException {
    job = change(job, "\"reach\": \"10 m\"", "\"reach\": \"25 m\"");
    assertThat(runChanged()).isZero();
    assertThat(printed()).contains("Nothing in the catalogue fits", "10 m of hose, 25 m needed");
    assertThat(Files.readString(page())).contains("Nothing in the catalogue fits");
    assertThat(Files.readString(reasons())).contains("What would have to change");
  }

  @Test
  void a_tool_that_starves_is_shown_with_what_stops_it() throws IOException {
    job = change(job, "\"air\": \"22 scfm\"", "\"air\": \"30 scfm\"");
    assertThat(runChanged()).isZero();
    String front =
        "The table tells what is lost in front of old hose, 5/16 in, which lets too little";
    assertThat(printed().replaceAll("\\s+", " "))
        .contains("The tool starves: old hose, 5/16 in", front);
    assertThat(Files.readString(reasons())).contains("stops here", front);
  }

  @Test
  void thread_now_and_conditions_may_be_left_out() throws IOException {
    job = """
        {"airfitJob": 2, "job": "x", "customer": "y", "catalogue": "catalogue.json",
         "atHand": {"where": "a box"},
         "supply": {"pressure": "7 bar(g)", "temperature": "20 °C", "atmosphere": "1 bar(a)"},
         "line": [{"kind": "outlet", "end": "3/8 NPT male"}, {"kind": "coupling", "socket": "S-10"},
           {"kind": "hose", "reach": "5 m"}, {"kind": "coupling", "plug": "P-10"}],
         "tool": {"name": "z", "air": "10 L/s ANR", "pressure": "6 bar(g)", "inlet": "1/4 NPT female", "hammers": true}}
        """;
    assertThat(runChanged()).isZero();
    assertThat(printed())
        .contains("Nothing was read yet.", "Whip hose", "Ask for the highest pressure");
  }

  @Test
  void what_a_customer_adds_is_asked_of_the_parts() throws IOException {
    job = job.replace(
        "\"dragged\": true",
        "\"dragged\": true, \"marking\": \"two notches\", \"coldest\": \"-10 °C\", \"hottest\": \"50 °C\","
            + " \"profilesInUse\": [\"gannet\"]");
    assertThat(runChanged()).isZero();
    assertThat(printed()).contains("the job needs -10 °C to 50 °C");
    assertThat(Files.readString(reasons())).contains("two notches");
  }

  @Test
  void another_medium_is_refused_on_the_sheet() throws IOException {
    job = job.replace("\"dragged\": true", "\"dragged\": true, \"medium\": \"breathing air\"");
    assertThat(runChanged()).isZero();
    assertThat(printed()).contains("compressed air for tools only, not on breathing air");
  }

  @Test
  void a_refusal_is_wrapped_as_the_sheet_is() throws IOException {
    job = job.replace("\"dragged\": true", "\"dragged\": true, \"medium\": \"nitrogen\"");
    assertThat(runChanged()).isZero();
    assertThat(printed().split("\n", -1))
        .hasSizeGreaterThan(8)
        .allMatch(line -> line.length() <= 100);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"medium\": \"water\"}",
        "{\"medium\": \"water\", \"job\": \"\", \"customer\": \" \"}",
        "{\"medium\": [\"compressed air\", \"water\"], \"job\": 5, \"customer\": null}"
      })
  void a_refusal_names_nobody_where_the_file_does_not(String file) throws IOException {
    job = file;
    assertThat(runChanged()).isZero();
    assertThat(printed())
        .startsWith("JOB SHEET  Job without a title\n\nREFUSED\n")
        .contains("not on water");
    assertThat(Files.readString(page())).contains("<h1>Job without a title</h1>", ">Job sheet</p>");
  }

  @Test
  void a_line_end_in_a_refused_file_makes_no_line_of_its_own() throws IOException {
    job =
        "{\"medium\": \"wa\\nter\", \"job\": \"One\\nSAFE TO USE\", \"customer\": \"Two\\nSAFE TO USE\"}";
    assertThat(runChanged()).isZero();
    assertThat(printed().split("\n", -1))
        .contains("JOB SHEET  One SAFE TO USE", "for Two SAFE TO USE")
        .noneMatch(line -> line.startsWith("SAFE"));
  }

  @Test
  void a_medium_as_long_as_a_file_is_not_told_in_full() throws IOException {
    job = "{\"medium\": \"" + "gas ".repeat(100_000) + "\"}";
    assertThat(runChanged()).isZero();
    assertThat(printed()).contains("gas gas", "…").hasSizeLessThan(2_000);
  }

  @Test
  void an_empty_text_is_told_as_empty_with_what_is_accepted() throws IOException {
    String whole = job;
    job = whole.replace("\"dragged\": true", "\"dragged\": true, \"medium\": \"\"");
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained())
        .contains("conditions.medium: is empty; accepted: compressed air, breathing air")
        .contains("or leave it out")
        .hasLineCount(1);
    err.reset();
    job = whole.replace("\"90 psig\"", "\" \"");
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained()).contains("tool.pressure: is empty; write what is asked for");
  }

  @Test
  void a_pressure_below_a_vacuum_is_told_without_what_a_change_of_unit_rounds_off()
      throws IOException {
    job = job.replace("\"8.5 bar(g)\"", "\"-1.1 bar(g)\"");
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained()).contains("1.013 bar(a), was -1.1 bar(g)").doesNotContain("00000");
  }

  static Stream<Arguments> wrong_jobs() {
    return Stream.of(
        Arguments.of("\"22 scfm\"", "\"22 scmf\"", "tool.air: \"22 scmf\"", "accepted:"),
        Arguments.of(
            "\"length\": \"38 m\"",
            "\"length\": \"-38 m\"",
            "line[2].length: \"-38 m\"",
            "at least 0 m"),
        Arguments.of("\"90 psig\"", "\"90 psi\"", "tool.pressure: \"90 psi\"", "psig"),
        Arguments.of("\"90 psig\"", "\"0 psig\"", "tool.pressure", "must be above 0"),
        Arguments.of(
            "\"90 psig\"", "90", "tool.pressure: was 90", "in quotation marks, with its unit"),
        Arguments.of(", \"reach\": \"10 m\"", "", "line[5].reach: is missing", "such as \"10 m\""),
        Arguments.of(
            "\"reach\":",
            "\"raech\":",
            "line[5].reach: is missing",
            "\"raech\" stands there, which is most likely meant"),
        Arguments.of(
            "\"dragged\": true",
            "\"draged\": true",
            "conditions.draged: is no field here",
            "dragged"),
        Arguments.of(
            "\"dragged\": true",
            "\"dragged\": \"yes\"",
            "conditions.dragged: was the text \"yes\"",
            "true or false"),
        Arguments.of(
            "\"outdoors\"",
            "\"at sea\"",
            "conditions.place: was \"at sea\"",
            "indoors, outdoors, salt air, wash down, wash down with water"),
        Arguments.of(
            "\"1/2 NPT female\"", "\"1/2 NTP female\"", "line[3].end: \"1/2 NTP female\"", "NPT"),
        Arguments.of(
            "\"tip length\":",
            "\"tip lenght\":",
            "\"tip lenght\" is no dimension",
            "tip diameter, collar diameter"),
        Arguments.of(
            "digital caliper 0.01 mm",
            "ruler",
            "atHand.instrument: was \"ruler\"",
            "vernier caliper 0.05 mm"),
        Arguments.of(
            "\"pitches\": 5",
            "\"pitches\": 5.5",
            "atHand.thread.pitches: was 5.5",
            "a whole number"),
        Arguments.of("\"pitches\": 5", "\"pitches\": 0", "atHand.thread: ", "must be"),
        Arguments.of(
            "\"pressure\": \"8.5 bar(g)\"",
            "\"pressure\": \"5 bar(g)\"",
            "line[1].set: was 7.4 bar(g), above the supply of 5 bar(g)",
            "what stands in front of the regulator"),
        Arguments.of(
            "\"pressure\": \"8.5 bar(g)\"",
            "\"pressure\": \"60 to 72.5 psig\"",
            "line[1].set: was 7.4 bar(g), above the supply of 60 to 72.5 psig;",
            "what stands in front of the regulator"),
        Arguments.of(
            "\"temperature\": \"15 °C\"",
            "\"highest\": \"8 bar(g)\", \"temperature\": \"15 °C\"",
            "supply.highest: was 8 bar(g), below the supply of 8.5 bar(g)",
            "relief valve"),
        Arguments.of(
            "\"1.013 bar(a)\"",
            "\"1.013 bar(g)\"",
            "supply.atmosphere: \"1.013 bar(g)\"",
            "bar(a)"),
        Arguments.of("\"7.4 bar(g)\"", "\"-0.5 bar(g)\"", "line[1].set: ", "must be above 0"),
        Arguments.of(
            "\"fittings\": 6.0",
            "\"fittings\": -6.0",
            "line[2].fittings: ",
            "must be in [0, 1e6], was -6.0"),
        Arguments.of(
            "{\"name\": \"coupling at the outlet\"",
            "{\"part\": \"X-99\", \"name\": \"coupling at the outlet\"",
            "now[1].part: \"X-99\" is no part",
            "S-10, S-11"),
        Arguments.of(
            "\"catalogue\": \"catalogue.json\"",
            "\"catalogue\": \"none.json\"",
            "catalogue: was \"none.json\"; there is no such file: ",
            "none.json"),
        Arguments.of(
            "\"readings\":",
            "\"worn\": \"3 mm\", \"readings\":",
            "atHand.worn: wear allowance must be in [0, 2] mm",
            "scrap"),
        Arguments.of(
            "\"readings\":", "\"worn\": \"a little\", \"readings\":", "atHand.worn", "a little"),
        Arguments.of("\"line\": [", "\"line\": {\"a\": [", "weak", "JSON"),
        Arguments.of(
            "\"customer\":",
            "\"job\": \"twice\", \"customer\":",
            "job.json: line",
            "the field \"job\" stands twice in one object"));
  }

  @ParameterizedTest
  @MethodSource("wrong_jobs")
  void a_wrong_job_file_gets_one_line_and_exit_code_2(
      String from, String to, String what, String accepted) throws IOException {
    job = change(job, from, to);
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained().strip().lines()).hasSize(1);
    if (!what.equals("weak")) {
      assertThat(complained()).contains(what);
    }
    assertThat(complained()).contains(accepted).doesNotContain("\tat ", "Exception");
    assertThat(printed()).isEmpty();
    assertThat(page()).doesNotExist();
  }

  static Stream<Arguments> wrong_catalogues() {
    return Stream.of(
        Arguments.of(
            "\"bore\": \"9.5 mm\"",
            "\"bore\": \"0 mm\"",
            "parts[11]: bore must be above 0 mm, was 0 mm"),
        Arguments.of(
            "\"takes\": [\"tern\"]",
            "\"takes\": [\"turn\"]",
            "parts[4].takes[1]: \"turn\" is no profile of this catalogue"),
        Arguments.of(
            "\"kind\": \"hose\"",
            "\"kind\": \"pipe\"",
            "parts[11].kind: was \"pipe\"; accepted: socket, plug, hose, adapter"),
        Arguments.of(
            "\"id\": \"P-11\"",
            "\"id\": \"P-10\"",
            "parts[7].id: \"P-10\" is the id of parts[6] already"),
        Arguments.of(
            "\"criticalPressureRatio\": 0.27",
            "\"criticalPressureRatio\": 1.27",
            "parts[3].capacity.criticalPressureRatio: critical pressure ratio must be in [0, 1), was 1.27"),
        Arguments.of(
            "\"8.4 dm³/(s·bar)\"", "\"8.4 Cv\"", "parts[1].capacity.conductance: \"8.4 Cv\""),
        Arguments.of(
            "\"nominal\": \"11.90 mm\", \"deviation\": \"0.03 mm\"",
            "\"typical\": \"11.90 mm\"",
            "profiles[1].dimensions.tip diameter: holds no size"),
        Arguments.of(
            "\"nominal\": \"11.90 mm\"",
            "\"nominal\": \"0.469 mm\"",
            "inches typed as millimetres"),
        Arguments.of(
            "\"from\": \"invented\"",
            "\"from\": \"hearsay\"",
            "profiles[1].from: was \"hearsay\"; accepted: standard, measured, unverified, invented"),
        Arguments.of(
            "\"rated\": \"12 bar(g)\"",
            "\"rated\": \"0 bar(g)\"",
            "rating of part S-30 must be above 0"),
        Arguments.of(
            "\"drop\": \"8 psi\"",
            "\"drop\": \"800 psi\"",
            "rated drop must be above 0 and below the inlet pressure"));
  }

  @ParameterizedTest
  @MethodSource("wrong_catalogues")
  void a_wrong_catalogue_gets_one_line_and_exit_code_2(String from, String to, String what)
      throws IOException {
    catalogue = change(catalogue, from, to);
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained().strip().lines()).hasSize(1);
    assertThat(complained())
        .startsWith("catalogue.json: ")
        .contains(what)
        .doesNotContain("Exception");
    assertThat(page()).doesNotExist();
  }

  static Stream<Arguments> no_objects() {
    return Stream.of(
        Arguments.of("", "is empty"),
        Arguments.of("  \n", "is empty"),
        Arguments.of("[1, 2]", "holds a list; a JSON object is wanted"),
        Arguments.of("\"text\"", "holds the text \"text\""),
        Arguments.of("{\"job\": ", "is not JSON"),
        Arguments.of("job: x", "is not JSON"),
        Arguments.of("{} {}", "is not JSON"));
  }

  @ParameterizedTest
  @MethodSource("no_objects")
  void a_file_that_is_no_json_object_is_refused(String text, String what) throws IOException {
    job = text;
    assertThat(runChanged()).isEqualTo(2);
    assertThat(complained()).startsWith("job.json").contains(what);
    assertThat(complained().strip().lines()).hasSize(1);
  }

  @Test
  void a_file_that_is_not_there_or_not_utf8_is_refused() throws IOException {
    assertThat(run(folder.resolve("none.json").toString())).isEqualTo(2);
    assertThat(complained()).contains("there is no such file");
    Files.write(folder.resolve("latin.json"), new byte[] {'{', '"', (byte) 0xb0, '"', '}'});
    assertThat(run(folder.resolve("latin.json").toString())).isEqualTo(2);
    assertThat(complained()).contains("is not text in UTF-8");
    assertThat(run(folder.toString())).isEqualTo(2);
    assertThat(complained()).contains("can't be read");
  }

  @Test
  void a_page_that_cannot_be_written_is_told_and_nothing_printed() {
    assertThat(run(
            YARD.resolve("weak-sander.json").toString(),
            folder.resolve("none/sheet.html").toString()))
        .isEqualTo(2);
    assertThat(complained()).contains("can't be written");
    assertThat(printed()).isEmpty();
  }

  @Test
  void without_a_job_it_says_how_to_be_called() {
    assertThat(run()).isEqualTo(2);
    assertThat(complained()).startsWith("give a job file");
    assertThat(run("a", "b", "c")).isEqualTo(2);
  }

  /** What each form says of itself when it is called with nothing stands in the help too. */
  @ParameterizedTest
  @MethodSource("org.airfit.jobsheet.ProgramFormTest#words")
  void help_tells_every_form_as_it_is_called(String word) {
    assertThat(run("--help")).isZero();
    assertThat(complained()).isEmpty();
    assertThat(printed().lines()).allMatch(line -> line.length() <= 120);
    assertThat(run(word)).isEqualTo(2);
    String form =
        complained().substring(complained().indexOf(": " + word + " ") + 2).strip();
    assertThat(form).startsWith(word + " ");
    assertThat(printed()).contains("\n  " + form + "\n").contains("\n  JOB.json [PAGE.html]\n");
  }

  @Test
  void an_unknown_option_is_refused_in_one_line() {
    assertThat(run("--hlep")).isEqualTo(2);
    assertThat(complained())
        .isEqualToNormalizingNewlines(
            "--hlep: is no form of this program; --help tells them all\n");
  }

  @Test
  void an_unknown_option_behind_a_file_is_not_taken_for_the_name_of_a_page() {
    assertThat(run(job.toString(), "--text")).isEqualTo(2);
    assertThat(complained()).startsWith("--text: is no option of this program");
    assertThat(Path.of("--text")).doesNotExist();
  }

  @Test
  void names_with_signs_of_html_in_them_do_not_break_the_page() throws IOException {
    job = change(job, "Tern Creek Boatyard", "Tern & <b>Creek</b>");
    runChanged();
    assertThat(Files.readString(page()))
        .contains("Tern &amp; &lt;b&gt;Creek")
        .doesNotContain("<b>Creek");
  }
}
