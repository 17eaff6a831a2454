package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import org.airfit.files.Csv;
import org.airfit.files.Document;
import org.airfit.files.JobFile;
import org.airfit.files.Json;
import org.airfit.files.NetworkFile;
import org.airfit.files.WrongFileException;
import org.airfit.network.NetworkResult;
import org.junit.jupiter.api.Test;

/** A regulator's curve as its maker draws it, in a job and in a network. */
class RegulatorCurvesTest {

  private static final Path JOBS = Path.of("..", "jobs");

  private static final String BEHIND = """
        {"kind": "regulator", "set": "90 psig", "part": {
          "end": "1/2 NPT male", "otherEnd": "1/2 NPT female", "rated": "200 psig",
          "capacity": "C 30 dm3/(s bar), b 0.3", %s}},
      """;

  private static final String OF_CATALOGUE = """
      {"kind": "regulator", "id": "RX", "name": "Regulator X", "price": "30.00", "rated": "200 psig",
       "end": "1/2 NPT male", "otherEnd": "1/2 NPT female", "capacity": "C 30 dm3/(s bar), b 0.3",
       "curve": "90 psig at 0 scfm; 88 psig at 10 scfm; 80 psig at 40 scfm"},
      """;

  private static JobSheet sheet(String first, String behind, String air) throws Exception {
    return sheet(first, behind, air, "", "70 psig");
  }

  private static JobSheet sheet(
      String first, String behind, String air, String now, String pressure) throws Exception {
    String job = """
        {
          "airfitJob": 2, "job": "A curve", "customer": "Fenwick (invented)", "catalogue": "catalogue.json",
          "supply": {"pressure": "120 psig", "temperature": "68 °F", "altitude": "0 ft"},
          "line": [
            %s
            {"kind": "outlet", "end": "1/2 NPT female"},
            %s
            {"kind": "coupling"}, {"kind": "hose", "reach": "25 ft"}, {"kind": "coupling"}
          ],
          "tool": {"name": "Grinder", "air": "%s", "pressure": "%s", "inlet": "1/4 NPT female"}
          %s
        }
        """.formatted(first, behind, air, pressure, now);
    String catalogue = Files.readString(JOBS.resolve("quay-street/catalogue.json"))
        .replace("\"parts\": [", "\"parts\": [" + OF_CATALOGUE);
    return JobSheet.of(JobFile.read(new Document(
        "job.json",
        Json.read("job.json", job),
        name -> Document.of(name, Json.read(name, catalogue)))));
  }

  private static double psi(JobSheet sheet) {
    return JobSheet.shown(sheet.selection().orElseThrow())
        .orElseThrow()
        .result()
        .fold(delivered -> delivered.atToolGauge().psi(), starved -> Double.NaN);
  }

  private static String text(JobSheet sheet) {
    return TextSheet.of(sheet).replaceAll("\\s+", " ");
  }

  private static final String CURVE =
      "\"curve\": \"90 psig at 0 scfm; 88 psig at 10 scfm; 80 psig at 40 scfm\"";

  /** Between 10 and 40 scfm it loses 8 psi on 30 scfm: at 14.5 scfm 3.2 psi, as much as a straight 6.4 psi at 29. */
  @Test
  void a_curve_counts_between_its_points_as_a_droop_does() throws Exception {
    double drawn = psi(sheet("", BEHIND.formatted(CURVE), "14.5 scfm"));
    double straight = psi(sheet(
        "", BEHIND.formatted("\"droop\": \"6.4 psi\", \"atFlow\": \"29 scfm\""), "14.5 scfm"));
    assertThat(drawn).isCloseTo(straight, within(0.01));
    String first = "{\"kind\": \"regulator\", \"set\": \"90 psig\", %s},";
    assertThat(psi(sheet(first.formatted(CURVE), "", "14.5 scfm")))
        .as("first of all")
        .isCloseTo(
            psi(sheet(
                first.formatted("\"droop\": \"6.4 psi\", \"atFlow\": \"29 scfm\""),
                "",
                "14.5 scfm")),
            within(0.01));
  }

  @Test
  void a_regulator_of_the_catalogue_that_is_there_keeps_its_curve() throws Exception {
    String byId = "{\"kind\": \"regulator\", \"set\": \"90 psig\", \"part\": \"RX\"},";
    assertThat(psi(sheet("", byId, "14.5 scfm")))
        .isCloseTo(psi(sheet("", BEHIND.formatted(CURVE), "14.5 scfm")), within(1.0e-9));
    assertThat(text(sheet("", byId, "44 scfm"))).contains("behind the end of its curve");
  }

  @Test
  void behind_the_end_of_a_curve_the_sheet_says_that_it_depends() throws Exception {
    String shorter = "\"curve\": \"90 psig at 0 scfm; 88 psig at 10 scfm\"";
    assertThat(text(sheet("", BEHIND.formatted(shorter), "12 scfm")))
        .contains("behind the end of its curve is at most ");
    assertThat(text(sheet("", BEHIND.formatted(shorter), "10 scfm")))
        .doesNotContain("of its curve");
    assertThat(text(sheet(
            "{\"kind\": \"regulator\", \"set\": \"90 psig\", " + shorter + "},", "", "12 scfm")))
        .contains("droop of the regulator at the supply is at most ");
  }

  /** Up to its end a curve is known exactly; behind it the text says what was taken. */
  @Test
  void a_regulator_that_is_connected_now_is_known_up_to_the_end_of_its_curve() throws Exception {
    assertThat(text(now("12 scfm"))).doesNotContain("now: not known", "()", "Told with all");
    assertThat(text(now("44 scfm")))
        .contains(
            "old reg (behind the end of its curve not told: from its droop there to all that it"
                + " is set to)");
  }

  /**
   * At 86 psig the curve gives 10 scfm + 30 scfm · (88 − 86) / (88 − 80) = 17.5 scfm, and no more at best; at 80 psig
   * and less more may flow behind its end.
   */
  @Test
  void what_a_run_carries_within_a_curve_is_no_more_at_best() throws Exception {
    JobSheet within = now("44 scfm", "86 psig");
    assertThat(text(within))
        .contains("At 86 psig (5.93 bar(g)) this run carries up to 17.5 scfm")
        .doesNotContain("at its best it is more");
    assertThat(text(now("44 scfm", "70 psig")))
        .contains("this run carries at least 40 scfm", "at its best it is more");
  }

  private static JobSheet now(String air, String pressure) throws Exception {
    return sheet("", "", air + "\", \"notAbove\": \"150 psig", NOW.formatted(CURVE), pressure);
  }

  private static final String NOW = """
      , "now": [{"name": "old reg", "set": "90 psig", "capacity": "C 30 dm3/(s bar), b 0.3", %s}]
      """;

  private static JobSheet now(String air) throws Exception {
    return now(air, "70 psig");
  }

  private static final String BEFORE_A_COUPLER = """
      , "now": [{"name": "old reg", "set": "%s", "capacity": "C 30 dm3/(s bar), b 0.3", %s},
                {"name": "old coupler", "capacity": "C 8 dm3/(s bar), b 0.3"}]
      """;

  private static String nowBeforeACoupler(String set, String curve, String pressure)
      throws Exception {
    return text(sheet("", "", "44 scfm", BEFORE_A_COUPLER.formatted(set, curve), pressure));
  }

  /** The coupler passes 44 scfm with ease: it is the regulator of which nobody told what it holds. */
  @Test
  void behind_the_end_of_its_curve_a_regulator_is_named_and_not_the_part_behind_it()
      throws Exception {
    String now = nowBeforeACoupler("90 psig", CURVE, "70 psig");
    assertThat(now)
        .contains(
            "The curve of the maker of old reg ends at 40 scfm, and more than that flows through"
                + " it: what it holds then is not known.")
        .contains("droop of old reg behind the end of its curve is at most ")
        .contains("What it holds is not told; with all that it may droop it holds ")
        .doesNotContain("old coupler, which lets too little through", "old coupler does not let");
    String longer = "\"curve\": \"90 psig at 0 scfm; 88 psig at 50 scfm\"";
    assertThat(nowBeforeACoupler("90 psig", longer, "70 psig")).doesNotContain("is not known.");
  }

  /**
   * Needing 82 psig. By hand, at 102 psia in front the coupler has 0.381 of its choked flow: 0.0755 × 0.7 × 102 psi =
   * 5.4 psi are lost in it, and 0.1 psi in the regulator, so that it turns at 87.5 psig.
   */
  @Test
  void a_regulator_of_now_may_be_set_somewhere_in_a_range() throws Exception {
    String stiff = "\"curve\": \"90 psig at 0 scfm; 89.9 psig at 50 scfm\"";
    assertThat(nowBeforeACoupler("80 to 90 psig", stiff, "82 psig"))
        .contains("old reg (its setting told as a range)")
        .containsPattern("enough if the setting of old reg is at least 87[.][45] psig")
        .contains("(80 to 90 psig told)")
        .contains("Behind old reg it may be as little as 80 psig");
    assertThat(nowBeforeACoupler("80 to 90 psig", stiff, "70 psig"))
        .contains("At the tool at least ");
    assertThat(nowBeforeACoupler("80 psig", stiff, "82 psig"))
        .contains("Behind old reg no more than 80 psig")
        .contains("stand, even while no air flows, and the tool needs 82 psig")
        .doesNotContain("The supply itself");
  }

  @Test
  void what_is_no_curve_is_refused_in_one_line_with_its_place() {
    refused(
        "\"curve\": \"90 psig at 0 scfm; 91 psig at 10 scfm\"",
        "must be at most that of the point before");
    refused("\"curve\": \"90 psig at 5 scfm; 80 psig at 10 scfm\"", "must be at no flow");
    refused("\"curve\": \"90 psig\"", "is no point of a curve");
    refused("\"curve\": \"90 psig at 0 scfm\"", "at least 2");
    refused(CURVE + ", \"droop\": \"6 psi\", \"atFlow\": \"30 scfm\"", "stands beside droop");
  }

  private static void refused(String curve, String why) {
    assertThatThrownBy(() -> sheet("", BEHIND.formatted(curve), "12 scfm"))
        .isInstanceOfSatisfying(WrongFileException.class, wrong -> {
          assertThat(wrong.place()).isEqualTo("line[2].part.curve");
          assertThat(wrong.getMessage()).contains(why).doesNotContain("\n");
        });
  }

  private static final String SHED = """
      record,name,from,to,bore,length,roughness,capacity,set,droop,droopAt,curve,tool,air,needs,pressure,units,\
      temperature,atmosphere,customer,follows
      network,Shed,,,,,,,,,,,,,,,US,68 °F,14.7 psia,K. (invented),
      supply,,,room,,,,,,,,,,,,120 psig,,,,,
      regulator,bay,room,a,,,,"C 30 dm3/(s bar), b 0.3",90 psig,%s,,,,,,,,,
      drop,bench,a,,0.5 in,10 ft,0.01 mm,,,,,,grinder,%s,60 psig,,,,,,no
      """;

  private static NetworkSheet network(String droop, String air) throws WrongFileException {
    return NetworkSheet.of(NetworkFile.read(
        Document.of("shed.csv", Csv.read("shed.csv", SHED.formatted(droop, air)))));
  }

  private static double bench(NetworkSheet sheet) {
    return sheet
        .all()
        .<Double>fold(solved -> solved.tools().get(0).atTool().psi(), none -> Double.NaN);
  }

  @Test
  void a_network_holds_what_the_curve_tells_and_says_where_it_ends() throws Exception {
    String curve = ",,90 psig at 0 scfm; 88 psig at 10 scfm; 80 psig at 40 scfm";
    assertThat(bench(network(curve, "14.5 scfm")))
        .isCloseTo(bench(network("6.4 psi,29 scfm,", "14.5 scfm")), within(0.01));
    assertThat(NetworkText.of(network(curve, "14.5 scfm"))).doesNotContain("Not told");
    NetworkSheet behind = network(curve, "44 scfm");
    assertThat(NetworkText.of(behind).replaceAll("\\s+", " "))
        .contains("Not told: what is held behind bay with 44", "(its curve ends at 40 scfm)");
    assertThat(bench(behind)).as("as at the end of the curve").isBetween(70.0, 80.0);
  }

  @Test
  void behind_the_end_of_a_curve_a_network_says_that_it_depends_and_proposes_no_setting()
      throws Exception {
    String curve = ",,90 psig at 0 scfm; 88 psig at 10 scfm; 80 psig at 40 scfm";
    assertThat(NetworkText.of(network(curve, "44 scfm")).replaceAll("\\s+", " "))
        .contains("All at once: it depends on what is not known at the drop: bench.")
        .contains("with at most ", ": it depends; gets ")
        .contains("To change: settle first what is not known, see \"Not told\"")
        .doesNotContain("has what it needs", "at least 7", "nothing: no drop is short");
    NetworkSheet tooLittle = NetworkSheet.of(NetworkFile.read(Document.of(
        "shed.csv",
        Csv.read("shed.csv", SHED.formatted(curve, "44 scfm").replace("60 psig", "82 psig")))));
    assertThat(NetworkText.of(tooLittle).replaceAll("\\s+", " "))
        .contains("All at once: too little at the drop: bench.")
        .contains("of no change tried it is told that it is enough for bench")
        .doesNotContain("then every drop has enough", "which is enough", "still missing");
    assertThat(NetworkPage.of(network(curve, "44 scfm"))).contains("it depends", "at most 7");
    assertThat(NetworkText.of(network(curve, "39 scfm")).replaceAll("\\s+", " "))
        .contains("the drop has what it needs.")
        .doesNotContain("it depends");
  }

  /** What a regulator holds changes nothing at a supply. */
  @Test
  void drops_that_do_not_hang_on_the_regulator_stay_told() throws Exception {
    String curve = ",,90 psig at 0 scfm; 88 psig at 10 scfm; 80 psig at 40 scfm";
    String shed = SHED.formatted(curve, "44 scfm")
        + "drop,yard,room,,0.5 in,10 ft,0.01 mm,,,,,,grinder,10 scfm,60 psig,,,,,,no\n";
    assertThat(CurveEnds.untold(
            NetworkFile.read(Document.of("shed.csv", Csv.read("shed.csv", shed))), solved(shed)))
        .containsExactlyInAnyOrder("a", "bench");
  }

  private static NetworkResult.Solved solved(String shed) throws WrongFileException {
    return NetworkSheet.of(NetworkFile.read(Document.of("shed.csv", Csv.read("shed.csv", shed))))
        .all()
        .fold(solved -> solved, none -> {
          throw new AssertionError(none.reason());
        });
  }
}
