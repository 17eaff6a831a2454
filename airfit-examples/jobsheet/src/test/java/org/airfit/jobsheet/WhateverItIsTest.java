package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.airfit.files.Csv;
import org.airfit.files.Document;
import org.airfit.files.JobFile;
import org.airfit.files.JobReceiver;
import org.airfit.files.Json;
import org.airfit.files.NetworkFile;
import org.airfit.files.WrongFileException;
import org.airfit.plant.ReceiverVerdict;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.run.ToolDemand;
import org.airfit.select.RuleOutcome;
import org.junit.jupiter.api.Test;

/**
 * What the customer has now, the receiver and a network are told as firmly as what is known of them allows: yes or no
 * whatever it is, or that it depends, and at which value it turns.
 */
class WhateverItIsTest {

  private static final Path JOBS = Path.of("..", "jobs");

  private static JobSheet sheet(String job) throws Exception {
    String catalogue = Files.readString(JOBS.resolve("quay-street/catalogue.json"));
    return JobSheet.of(JobFile.read(new Document(
        "job.json",
        Json.read("job.json", job),
        name -> Document.of(name, Json.read(name, catalogue)))));
  }

  private static String job(String need, String now) {
    return """
        {
          "airfitJob": 2, "job": "An old hose", "customer": "Fenwick (invented)", "catalogue": "catalogue.json",
          "supply": {"pressure": "100 psig", "temperature": "68 °F", "altitude": "0 ft"},
          "line": [
            {"kind": "outlet", "end": "1/2 NPT female"},
            {"kind": "coupling"}, {"kind": "hose", "reach": "25 ft"}, {"kind": "coupling"}
          ],
          "now": [%s],
          "tool": {"name": "Grinder", "air": "12 scfm", "pressure": "%s", "inlet": "1/4 NPT female"}
        }
        """.formatted(now, need);
  }

  private static final String HOSE =
      "{\"name\": \"old hose\", \"size\": \"1/4 in hose\", \"length\": \"20 ft\", \"wall\": \"rubber hose\"}";

  private static String text(JobSheet sheet) {
    return TextSheet.of(sheet).replaceAll("\\s+", " ");
  }

  private static double psi(org.airfit.run.RunResult result) {
    return result.fold(delivered -> delivered.atToolGauge().psi(), starved -> 0.0);
  }

  @Test
  void what_is_connected_now_is_judged_at_both_ends() throws Exception {
    JobSheet any = sheet(job("50 psig", HOSE));
    double worst = psi(any.job().now().orElseThrow().result());
    double best = psi(any.job().now().orElseThrow().resultAtBest());
    assertThat(best - worst).as("bore and wall decide much").isGreaterThan(10.0);
    int between = (int) Math.round((best + worst) / 2.0);
    JobSheet depends = sheet(job(between + " psig", HOSE));
    assertThat(depends.job().now().orElseThrow().outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(text(depends))
        .contains("Now: It depends on what is not known: at the tool from ")
        .contains(
            "bore of old hose",
            "It is enough if the ",
            "Told with all that is not known at its worst:")
        .contains("Biggest restriction, with all that is not known at its worst: old hose.")
        .contains("now: not known exactly, and judged at both ends of what it may be: old hose (");
    assertThat(PageSheet.of(depends))
        .contains("It depends on what is not known: at the tool from ");
    assertThat(PageReasons.of(depends))
        .contains("It depends on what is not known: at the tool from ");
    JobSheet never = sheet(job((int) Math.ceil(best + 1.0) + " psig", HOSE));
    assertThat(text(never))
        .contains(": too little, whatever it is of what is not known.")
        .doesNotContain("Now: It depends");
    JobSheet always = sheet(job((int) Math.floor(worst - 1.0) + " psig", HOSE));
    assertThat(text(always)).containsPattern("Now: At the tool at least [0-9.]+ psig .*enough");
  }

  /** A rating as a catalogue prints it: b was not told, so that both ends count, and what was taken is told. */
  @Test
  void a_coupling_of_now_may_have_any_rating_that_a_part_may_have() throws Exception {
    JobSheet sheet = sheet(job(
        "50 psig",
        "{\"name\": \"old coupling\", \"capacity\": \"12 scfm at 100 psig, 5 psi drop\"}"));
    assertThat(text(sheet))
        .containsPattern("old coupling \\(gauge pressures .*b not told: from 0 to 0.528");
    assertThat(psi(sheet.job().now().orElseThrow().result())).isBetween(94.0, 96.0);
  }

  private static String receiver(String volume, String need) throws Exception {
    String told = Files.readString(JOBS.resolve("pier/receiver-for-blasting.json"));
    assertThat(told).contains("240 US gal", "\"pressure\": \"80 psig\"");
    return told.replace("240 US gal", volume)
        .replace("\"pressure\": \"80 psig\"", "\"pressure\": \"" + need + "\"");
  }

  /** With a need of 60 psig 120 gal are enough and with one of 100 too few: of a range it depends. */
  @Test
  void a_receiver_is_met_too_small_or_depends_by_what_the_tool_may_need() throws Exception {
    ReceiverAnswer low = sheet(receiver("120 US gal", "60 psig")).receiver().orElseThrow();
    assertThat(low.verdict()).hasValue(ReceiverVerdict.MET);
    ReceiverAnswer high = sheet(receiver("120 US gal", "100 psig")).receiver().orElseThrow();
    assertThat(high.verdict()).hasValue(ReceiverVerdict.TOO_SMALL);
    JobSheet sheet = sheet(receiver("120 US gal", "60 to 100 psig"));
    ReceiverAnswer between = sheet.receiver().orElseThrow();
    assertThat(between.use().orElseThrow().verdict())
        .as("at worst")
        .isEqualTo(ReceiverVerdict.TOO_SMALL);
    assertThat(between.verdict()).hasValue(ReceiverVerdict.DEPENDS);
    GaugePressure turns = between.turning().orElseThrow();
    assertThat(between.receiver().use(sheet.requirement(), turns).verdict())
        .isEqualTo(ReceiverVerdict.MET);
    assertThat(between
            .receiver()
            .use(sheet.requirement(), GaugePressure.ofPsi(turns.psi() + 0.1))
            .verdict())
        .isNotEqualTo(ReceiverVerdict.MET);
    assertThat(text(sheet))
        .contains("The receiver for this user: depends on what is not known.")
        .contains("It is met if the tool needs at most ")
        .doesNotContain("NOT MET, the receiver is too small");
    assertThat(sheet(receiver("40 US gal", "60 to 100 psig"))
            .receiver()
            .orElseThrow()
            .verdict())
        .as("too small with the least need too")
        .hasValue(ReceiverVerdict.TOO_SMALL);
  }

  /** A Cv that is told is found again beside the range of C that it leaves open; in SI units C alone is told. */
  @Test
  void a_cv_stands_beside_the_range_of_a_conductance_in_us_units() throws Exception {
    String cv = "{\"name\": \"old coupler\", \"capacity\": \"Cv 0.3\"}";
    String us = job("84 psig", cv);
    assertThat(text(sheet(us)))
        .contains("No single answer settles it", "dm³/(s·bar), a Cv of 0.3 with any xT reckoned");
    assertThat(text(sheet(us.replace("\"airfitJob\": 2,", "\"airfitJob\": 2, \"units\": \"SI\","))))
        .contains("No single answer settles it")
        .doesNotContain("a Cv of");
    assertThat(text(sheet(
            us.replace("Cv 0.3", "11 scfm full flow at 90 psig").replace("84 psig", "40 psig"))))
        .containsPattern(
            "dm³/\\(s·bar\\) \\(a Cv of [0-9.]+ has the least of that, one of [0-9.]+ the most\\)");
  }

  /** Where the air of the tool is a range, the most with which the receiver does is told. */
  @Test
  void a_receiver_tells_with_which_air_of_the_tool_it_is_met() throws Exception {
    String told = Files.readString(JOBS.resolve("pier/receiver-for-blasting.json"));
    assertThat(told).contains("\"air\": \"");
    String range = told.replaceFirst("\"air\": \"[^\"]*\"", "\"air\": \"10 to 90 scfm\"")
        .replace("240 US gal", "120 US gal");
    for (String job :
        new String[] {range, range.replace("\"volume\"", "\"to\": \"100 psig\", \"volume\"")}) {
      JobSheet sheet = sheet(job);
      double most = sheet.receiver().orElseThrow().turningAir().orElseThrow().cubicFeetPerMinute();
      assertThat(most).isBetween(10.0, 90.0);
      assertThat(text(sheet)).contains("It is met if the tool takes at most ");
      assertThat(isMet(sheet, most * 0.999)).isTrue();
      assertThat(isMet(sheet, most * 1.001)).isFalse();
    }
  }

  /** With the parts of a sheet and so much air, which is drawn down to what the tool then needs or the job tells. */
  private static boolean isMet(JobSheet sheet, double scfm) {
    FreeAirFlow air = FreeAirFlow.parse(scfm + " scfm");
    JobReceiver receiver = sheet.receiver().orElseThrow().receiver();
    GaugePressure least = receiver
        .to()
        .orElseGet(() -> JobSheet.shown(sheet.selection().orElseThrow())
            .orElseThrow()
            .run()
            .supplyNeeded(ToolDemand.fixed("cabinet", air), sheet.requirement().least())
            .orElseThrow()
            .neededGauge());
    return receiver.use(sheet.requirement(), least, Range.exactly(air)).verdict()
        == ReceiverVerdict.MET;
  }

  private static final String SHED = """
      record,name,from,to,bore,length,roughness,capacity,set,droop,droopAt,tool,air,needs,pressure,units,temperature,\
      atmosphere,customer,follows
      network,Shed,,,,,,,,,,,,,,US,68 °F,14.7 psia,K. (invented),
      supply,,,room,,,,,,,,,,,110 psig,,,,,
      part,filter,room,a,,,,"%s",,,,,,,,,,,,
      drop,bench,a,,0.5 in,10 ft,0.01 mm,,,,,grinder,30 scfm,%s,,,,,,no
      """;

  private static NetworkSheet network(String rating, String needs) throws WrongFileException {
    return NetworkSheet.of(NetworkFile.read(
        Document.of("shed.csv", Csv.read("shed.csv", SHED.formatted(rating, needs)))));
  }

  private static String text(NetworkSheet sheet) {
    return NetworkText.of(sheet).replaceAll("\\s+", " ");
  }

  /** A rating without b is no longer refused: the least of it is taken, and what that means for the drops is told. */
  @Test
  void a_part_of_a_network_may_have_any_rating_that_a_part_may_have() throws Exception {
    for (String rating : new String[] {
      "Cv 0.9",
      "Kv 0.8",
      "20 scfm at 100 psig, 5 psi drop",
      "C 4 dm3/(s bar)",
      "S 20 mm2",
      "20 scfm full flow at 90 psig"
    }) {
      NetworkSheet sheet = network(rating, "60 psig");
      assertThat(sheet.job().branches().get(0).capacity().orElseThrow().isExact())
          .as(rating)
          .isFalse();
      assertThat(text(sheet))
          .as(rating)
          .contains("Not known exactly: filter: the least that its rating allows taken (");
    }
  }

  @Test
  void a_network_of_which_not_all_is_known_says_which_drops_that_decides() throws Exception {
    String rating = "C 3 dm3/(s bar)";
    NetworkSheet any = network(rating, "60 psig");
    double worst = atBench(any, false);
    double best = atBench(any, true);
    assertThat(best - worst).isGreaterThan(2.0);
    long between = Math.round((worst + best) / 2.0);
    assertThat(text(network(rating, between + " psig")))
        .contains("it depends on what is not known at the drop: bench. Weakest is bench with ")
        .contains(" at worst, needed ", "): it depends; gets ", ") at worst")
        .contains("To change: settle first what is not known, see \"Not known exactly\"")
        .doesNotContain("too little at", "one of at least", "then every drop has enough")
        .contains(
            "That is with the worst of what is not known exactly; with the best of it there is enough at"
                + " bench: it depends");
    assertThat(text(network(rating, (long) (best + 2.0) + " psig")))
        .contains("with the best of it the same drops are short.");
    assertThat(text(network(rating, (long) (worst - 1.0) + " psig")))
        .contains("with the best of it all have enough too.");
    assertThat(text(network("C 3 dm3/(s bar), b 0.3", between + " psig")))
        .doesNotContain("not known exactly", "Not known exactly");
  }

  /** 1/2 in measures 12.7 mm and a 3/8 in hose by ISO 1307 at most 10.3 mm: one of the two is a slip. */
  @Test
  void a_bore_that_is_none_of_the_size_is_told_in_now_and_of_a_pipe() throws Exception {
    String slip =
        "\"size\": \"3/8 in hose\", \"bore\": \"0.5 in\", \"length\": \"25 ft\", \"wall\": \"rubber hose\"";
    assertThat(text(sheet(job("50 psig", "{\"name\": \"old hose\", " + slip + "}"))))
        .contains(
            "\"0.5 in\" in now[1].bore is no bore of \"3/8 in hose\" in now[1].size, which measures ");
    assertThat(text(
            sheet(job("50 psig", "{\"name\": \"old hose\", " + slip.replace("0.5", "0.37") + "}"))))
        .doesNotContain("is no bore of");
    String pipe = "\"line\": [{\"kind\": \"pipe\", %s},";
    assertThat(text(sheet(job("50 psig", HOSE).replace("\"line\": [", pipe.formatted(slip)))))
        .contains("\"0.5 in\" in line[1].bore is no bore of \"3/8 in hose\" in line[1].size");
    String steel = "\"size\": \"1/2 in sch 40\", \"bore\": \"%s in\", \"length\": \"20 ft\","
        + " \"wall\": \"commercial steel\"";
    assertThat(text(sheet(
            job("50 psig", HOSE).replace("\"line\": [", pipe.formatted(steel.formatted("0.9"))))))
        .contains("\"0.9 in\" in line[1].bore is no bore of \"1/2 in sch 40\" in line[1].size");
    assertThat(text(sheet(
            job("50 psig", HOSE).replace("\"line\": [", pipe.formatted(steel.formatted("0.622"))))))
        .doesNotContain("is no bore of");
  }

  /** A coupling told by a flow alone may be changed, with the Cv that US catalogues print beside its C. */
  @Test
  void a_part_to_change_in_us_units_is_told_with_its_cv() throws Exception {
    assertThat(text(network("20 scfm full flow at 90 psig", "100 psig")))
        .containsPattern(
            "filter: one of at least [0-9.]+ dm³/\\(s·bar\\) \\(a Cv of at least [0-9.]+ has that\\)");
  }

  private static double atBench(NetworkSheet sheet, boolean isBest) {
    return (isBest ? sheet.atBest().orElseThrow() : sheet.all())
        .<Double>fold(solved -> solved.tools().get(0).atTool().psi(), none -> Double.NaN);
  }

  /** The text says what a rating does not tell, as the page of reasons does. */
  @Test
  void the_text_tells_what_was_taken_for_what_the_parts_do_not_tell() throws Exception {
    JobSheet sheet = sheet(job("60 psig", HOSE)
        .replace(
            "{\"kind\": \"coupling\"}, {\"kind\": \"hose\"",
            "{\"kind\": \"filter\", \"part\": {\"end\": \"1/2 NPT male\", \"otherEnd\": \"1/2 NPT female\","
                + " \"capacity\": \"60 scfm at 100 psig, 5 psi drop\", \"rated\": \"200 psig\"}},"
                + " {\"kind\": \"coupling\"}, {\"kind\": \"hose\""));
    String taken = Objects.requireNonNull(TakenForParts.of(sheet).get("filter"));
    assertThat(taken).contains("b not told: from 0 to 0.528");
    assertThat(text(sheet))
        .contains(
            "Taken for what the parts do not tell: - filter: " + taken.replaceAll("\\s+", " "));
  }

  /** Nobody told how long an old hose is: that it reaches 50 ft is no fact, though its loss is that of 50 ft. */
  @Test
  void an_old_hose_of_unknown_length_is_to_be_measured() throws Exception {
    String hose = "{\"kind\": \"hose\", \"reach\": \"25 ft\"}";
    String old =
        "{\"kind\": \"hose\", \"reach\": \"20 to 50 ft\", \"part\": \"3/8 in hose, old%s\"%s}";
    JobSheet untold = sheet(job("60 psig", HOSE).replace(hose, old.formatted("", "")));
    assertThat(text(untold))
        .contains(
            "length not told: from the nearest to the farthest that it may have to reach; its loss is that of"
                + " the farthest (common practice, no source)")
        .contains("Hose reaches: ask. 20 ft to 50 ft of hose, 20 ft to 50 ft needed.")
        .contains("Measure how long it is");
    for (JobSheet told : List.of(
        sheet(job("60 psig", HOSE).replace(hose, old.formatted(", 50 ft", ""))),
        sheet(job("60 psig", HOSE)
            .replace(hose, old.formatted("", ", \"measuredLength\": \"50 ft\""))))) {
      assertThat(text(told))
          .contains("Hose reaches: met. 50 ft of hose")
          .doesNotContain("length not told");
    }
  }

  /** A hose named 3/8 in measures 8.7 to 10.3 mm by ISO 1307, table 1: half an inch is no such bore. */
  @Test
  void a_hose_whose_bore_is_none_of_its_name_is_questioned_with_its_place() throws Exception {
    String hose =
        "{\"kind\": \"hose\", \"reach\": \"25 ft\", \"part\": {\"hose\": \"3/8 in\", \"bore\": \"%s\","
            + " \"length\": \"25 ft\", \"wall\": \"smooth rubber hose\", \"end\": \"3/8 NPT male\"}}";
    String reach = "{\"kind\": \"hose\", \"reach\": \"25 ft\"}";
    assertThat(text(sheet(job("60 psig", HOSE).replace(reach, hose.formatted("0.5 in")))))
        .contains(
            "\"0.5 in\" in line[3].part.bore is no bore of a hose named 3/8 in, which measures"
                + " 0.3425 in to 0.4055 in (8.7 mm to 10.3 mm)");
    for (String right :
        new String[] {"9.5 mm", "3/8 in", "8.7 mm", "10.3 mm", "0.34 in", "0.41 in"}) {
      assertThat(text(sheet(job("60 psig", HOSE).replace(reach, hose.formatted(right)))))
          .as(right)
          .doesNotContain("is no bore of a hose");
    }
  }
}
