package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import org.airfit.files.Disk;
import org.airfit.files.Job;
import org.airfit.files.NetworkJob;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.safety.Medium;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Jobs as they come to a counter, each with what a practitioner must find on the sheet. */
class JobsOfManyKindsTest {

  private static final Path YARD = Path.of("..", "jobs", "boatyard");
  private static final String YARD_REGULATOR =
      "{\"kind\": \"regulator\", \"name\": \"regulator of the yard\", \"set\": \"7.4 bar(g)\", \"droop\": \"0 bar\"},";

  @TempDir
  Path folder;

  /** The sheet of the boat yard's job, changed: pairs of what stands there and what shall stand there instead. */
  private String sheet(String... changes) throws IOException {
    return sheetOf("weak-sander.json", changes);
  }

  private void prepare(String file, String... changes) throws IOException {
    String job = Files.readString(YARD.resolve(file));
    for (int i = 0; i < changes.length; i += 2) {
      assertThat(job).contains(changes[i]);
      job = job.replace(changes[i], changes[i + 1]);
    }
    Files.writeString(folder.resolve("job.json"), job);
    Files.copy(
        YARD.resolve("catalogue.json"),
        folder.resolve("catalogue.json"),
        StandardCopyOption.REPLACE_EXISTING);
  }

  private int program(ByteArrayOutputStream out, ByteArrayOutputStream err) {
    return Main.run(
        new String[] {
          folder.resolve("job.json").toString(), folder.resolve("sheet.html").toString()
        },
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String sheetOf(String file, String... changes) throws IOException {
    prepare(file, changes);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code = program(out, err);
    assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
    assertThat(code).isZero();
    return out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
  }

  @Test
  void a_weak_impact_wrench_on_small_hose_gets_a_wider_one_and_a_whip_hose() throws IOException {
    assertThat(sheet(
            "\"Orbital sander\"",
            "\"Impact wrench\"",
            "\"22 scfm\"",
            "\"25 scfm\"",
            "\"inlet\": \"1/4 NPT female\"",
            "\"inlet\": \"1/4 NPT female\", \"hammers\": true"))
        .contains(
            "too little",
            "Biggest restriction: old hose",
            "H-38",
            "Whip hose",
            "Retainer on percussion tools");
  }

  @Test
  void a_range_that_starves_at_its_worst_is_not_told_as_if_it_starved() throws IOException {
    assertThat(sheet("\"air\": \"22 scfm\"", "\"air\": \"5 to 120 scfm\""))
        .contains(
            "AIR NOW ----------- It depends on what is not known: at the tool from nothing to ")
        .doesNotContain(
            "Recommended parts: The tool starves", "AIR NOW ----------- The tool starves");
    assertThat(sheet()).doesNotContain("At the worst of what was told");
  }

  @Test
  void a_spray_gun_is_not_given_more_pressure_than_its_maker_allows() throws IOException {
    assertThat(sheet(
            "\"Orbital sander\"",
            "\"Spray gun\"",
            "\"22 scfm\"",
            "\"12 scfm\"",
            "\"90 psig\"",
            "\"50 psig\"",
            "\"110 psig\"",
            "\"60 psig\""))
        .contains("a regulator in front of it must be set to at most 4.14 bar(g)");
  }

  @Test
  void a_supply_above_what_the_air_model_was_held_against_is_told_of() throws IOException {
    assertThat(sheet("\"8.5 bar(g)\"", "\"120 bar(g)\""))
        .contains("Outside the range of the air model", "Above 100 bar(g)");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(sheet()).doesNotContain("air model");
  }

  /** The supply can stand at 8.5 bar(g), the sander's maker allows 7.58: only the regulator keeps it within. */
  @Test
  void the_tools_limit_is_told_as_met_while_the_regulator_holds() throws IOException {
    assertThat(sheet())
        .contains("Tool is not over-pressured: met while the regulator holds.")
        .contains("7.4 bar(g) while the regulator holds and 8.5 bar(g) if it fails")
        .contains("Regulator: Met while the regulator holds.")
        .contains("If the regulator fails:");
    assertThat(Files.readString(folder.resolve("sheet.html")))
        .contains("If the regulator fails.", "8.5 bar(g) if it fails", "US federal law");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(sheet(YARD_REGULATOR, ""))
        .contains("Tool is not over-pressured: NOT MET.")
        .contains("is up to 8.5 bar(g), its maker allows 7.58 bar(g)");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(sheet("\"7.4 bar(g)\"", "\"7.4 bar(g)\", \"ifFails\": \"7.5 bar(g)\""))
        .contains("Tool is not over-pressured: met. The dead-end");
  }

  /** The file says 8.5 in front of the regulator and 9 behind it: one of the two is wrong. */
  @Test
  void a_failed_regulator_that_stands_above_its_supply_is_refused_in_one_line() throws IOException {
    prepare("weak-sander.json", "\"7.4 bar(g)\"", "\"7.4 bar(g)\", \"ifFails\": \"9 bar(g)\"");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    assertThat(program(out, err)).isNotZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).isEmpty();
    assertThat(err.toString(StandardCharsets.UTF_8).strip())
        .contains("pressure behind a failed regulator must be at most the highest of 8.5 bar(g)"
            + " in front of it, was 9 bar(g)")
        .doesNotContain("\n");
  }

  @Test
  void the_flow_is_judged_at_cut_in() throws IOException {
    String usual = sheet("\"7.4 bar(g)\"", "\"6.9 bar(g)\"");
    Files.delete(folder.resolve("catalogue.json"));
    String low = sheet("\"8.5 bar(g)\"", "\"6.9 to 8.5 bar(g)\"");
    String arrives =
        usual.substring(usual.indexOf("Now: At the tool"), usual.indexOf("Recommended parts:"));
    assertThat(low).contains(arrives);
  }

  @Test
  void a_paint_a_blasting_and_a_nailing_job_get_their_own_cautions() throws IOException {
    assertThat(sheet("\"inlet\": \"1/4", "\"paints\": true, \"inlet\": \"1/4"))
        .contains("Oil in a paint line")
        .doesNotContain("Blasting nozzle", "Muzzle contact");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(sheet("\"inlet\": \"1/4", "\"blasts\": true, \"inlet\": \"1/4"))
        .contains("Blasting nozzle", "Air for a blaster's hood")
        .doesNotContain("Oil in a paint line");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(sheet("\"inlet\": \"1/4", "\"feedsFasteners\": true, \"inlet\": \"1/4"))
        .as("judged at 8.5 bar(g), which are 123 psig")
        .contains(
            "Muzzle contact safety",
            "8.5 bar(g) at the tool, asked for above 6.895 bar(g) (100 psig)");
  }

  /** What is lost now is not said of the parts that cure it. */
  @Test
  void a_caution_says_which_run_it_speaks_of_and_to_depressurise_comes_first() throws IOException {
    String sheet = sheet();
    assertThat(sheet.substring(sheet.indexOf("BEFORE ANYONE CONNECTS THIS")))
        .startsWith(
            "BEFORE ANYONE CONNECTS THIS --------------------------- - Depressurise before uncoupling:")
        .contains("Whip restraint", "Eye protection")
        .contains("rules of US federal law", "Other places have other rules")
        .contains("More than a tenth of the pressure is lost (now)");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(sheet("\"roughness\": \"0.045 mm\"", "\"wall\": \"smooth plastic\""))
        .contains("Plastic pipe for compressed air:");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(sheet("\"roughness\": \"0.02 mm\"", "\"wall\": \"smooth plastic\""))
        .as("the old hose goes")
        .contains("Plastic pipe for compressed air (now):");
  }

  @Test
  void rules_of_a_place_and_of_the_yard_are_judged_and_named() throws IOException {
    Files.writeString(folder.resolve("yard.csv"), """
        jurisdiction,citation,text,quantity,operator,limit,unit,source,basis
        Tern Creek yard,rule 7,no more than 25 psi at a gun,cleaning pressure,<=,25,psi,notice,read
        """);
    assertThat(sheetOf(
            "blow-gun.json",
            "\"rankedBy\"",
            "\"rules\": {\"place\": \"US-CA\", \"own\": \"yard.csv\"}, \"rankedBy\""))
        .contains("rule 7: not allowed, 1.931 bar(g) against at most 1.724 bar(g) (25 psig)")
        .contains("rules of US federal law, US-CA, Tern Creek yard, as far as airfit holds them");
  }

  /** Less than 30 psi at a blocked nozzle in general industry and construction, at most 30 psi elsewhere. */
  @Test
  void a_blow_gun_that_lets_the_pressure_off_is_served_with_guards_to_wear() throws IOException {
    assertThat(sheetOf("blow-gun.json"))
        .contains("Cleaning pressure is kept down: met.")
        .contains("1.931 bar(g) against less than 2.068 bar(g) (30 psig)")
        .contains("the parts in its line cost least", "Together", "USD")
        .contains("Guards when cleaning with air", "never point it at a person");
  }

  @Test
  void a_blow_gun_with_the_whole_supply_at_its_blocked_nozzle_is_not_served() throws IOException {
    assertThat(sheetOf("blow-gun.json", ",\n    \"atBlockedNozzle\": \"28 psig\"", ""))
        .contains("Nothing in the catalogue fits. What would have to change:")
        .contains("Cleaning pressure is kept down: NOT MET.")
        .contains("Take a gun that lets the pressure off when its nozzle is blocked");
  }

  @Test
  void a_blow_gun_at_exactly_thirty_psi_is_a_question_which_rule_holds() throws IOException {
    assertThat(sheetOf("blow-gun.json", "\"28 psig\"", "\"30 psig\""))
        .contains("Cleaning pressure is kept down: ask.")
        .contains("ask which of them holds at this place")
        .doesNotContain("Nothing in the catalogue fits");
  }

  @Test
  void where_the_catalogue_has_no_adapter_the_sheet_names_the_standard_one() throws IOException {
    assertThat(sheet("\"inlet\": \"1/4 NPT female\"", "\"inlet\": \"G 1 female\""))
        .contains("Nothing in the catalogue fits")
        .contains("Ends mate: NOT MET.", "are not joined", "Between them go");
  }

  /** R is the male thread: a sheet that reads R 1/4 female as Rc 1/4 says so to whoever wrote Rp 1/4 so. */
  @Test
  void an_end_that_may_be_meant_otherwise_is_told_on_sheet_and_page() throws IOException {
    String remark =
        "read as Rc 1/4 female: R marks the male thread, the female taper thread is marked Rc and the"
            + " female parallel one Rp; write Rp 1/4 if that is meant.";
    assertThat(sheet("\"inlet\": \"1/4 NPT female\"", "\"inlet\": \"R 1/4 female\""))
        .contains("In the job: \"R 1/4 female\" in tool.inlet: " + remark)
        .doesNotContain("In the catalogue:");
    assertThat(Files.readString(folder.resolve("sheet-reasons.html")))
        .contains("<li>In the job: &quot;R 1/4 female&quot; in tool.inlet: " + remark);
    assertThat(Files.readString(folder.resolve("sheet.html")))
        .contains("<li>Was the job read as it is meant?");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(sheet("\"end\": \"1/2 NPT female\"", "\"end\": \"3-8 NPT female\""))
        .contains(
            "In the job: \"3-8 NPT female\" in line[3].end: read as size 3 with 8 threads per inch");
    Files.delete(folder.resolve("catalogue.json"));
    assertThat(sheet("\"inlet\": \"1/4 NPT female\"", "\"inlet\": \"Rc 1/4 female\""))
        .contains("IN SHORT")
        .doesNotContain("may be meant otherwise");
  }

  /** Of a catalogue with many of them three are told, and how many more there are. */
  @Test
  void the_ends_of_the_catalogue_are_remarked_on_as_well_and_many_are_counted() throws Exception {
    String catalogue = Files.readString(YARD.resolve("catalogue.json"));
    Files.copy(YARD.resolve("weak-sander.json"), folder.resolve("job.json"));
    for (int changed : new int[] {1, 3, 5}) {
      String other = catalogue;
      for (int i = 0; i < changed; i++) {
        other = other.replaceFirst(
            "(nd\": )\"[0-9/]+ NPT (male|female)\"", "$1\"R 3/8-19 " + "FEMALE\"");
      }
      Files.writeString(folder.resolve("catalogue.json"), other);
      Job job = Disk.job(folder.resolve("job.json"));
      assertThat(job.catalogue().remarks()).hasSize(changed);
      String text = TextSheet.of(JobSheet.of(job)).replaceAll("\\s+", " ");
      assertThat(text.split("In the catalogue: \"R 3/8-19 FEMALE\" in parts\\[", -1))
          .hasSize(1 + Math.min(3, changed));
      assertThat(text.contains("In the catalogue: 2 more that may be meant otherwise."))
          .isEqualTo(changed == 5);
    }
  }

  @Test
  void answering_a_job_does_not_change_it() throws Exception {
    Job job = Disk.job(YARD.resolve("weak-sander.json"));
    assertThat(JobSheet.of(job).requirement().profile()).contains("gannet");
    assertThat(job.requirement().profile()).isEmpty();
  }

  @Test
  void a_metric_thread_is_named_and_kept_from_the_air() throws IOException {
    assertThat(sheet(
            "\"firstCrest\": \"13.14 mm\"",
            "\"firstCrest\": \"13.9 mm\"",
            "\"overPitches\": \"7.06 mm\"",
            "\"overPitches\": \"7.5 mm\"",
            "\"lastCrest\": \"13.70 mm\"",
            "\"lastCrest\": \"13.9 mm\""))
        .contains("Looks like M14x1.5 male", "not a pipe thread", "does not mate with")
        .contains("must not be put under pressure");
  }

  @Test
  void a_leaf_of_a_gauge_alone_leaves_the_thread_open() throws IOException {
    assertThat(sheet(
            "\"pitches\": 5,",
            "\"leafPerInch\": 19,",
            "\"overPitches\": \"7.06 mm\",",
            "\"taperSeen\": true, \"flankAngle\": 60,"))
        .contains("Likely 1/4 NPT male", "the leaf of the pitch gauge was misread")
        .contains("count five pitches or more");
    assertThat(sheet(
            "\"pitches\": 5,",
            "\"female\": true, \"leafPitch\": \"1.5 mm\",",
            "\"overPitches\": \"7.06 mm\",",
            ""))
        .contains("None of the known threads fits", "check: is it metric");
  }

  @Test
  void an_inherited_tool_with_an_unmarked_plug_is_a_candidate_and_no_more() throws IOException {
    assertThat(sheet()).contains("Candidate only", "none of these", "1/4 NPT male");
  }

  @Test
  void wear_is_allowed_for_unless_the_plug_is_as_new() throws IOException {
    // 0.17 mm below a Gannet: worn, or no Gannet
    assertThat(sheet("\"11.92 mm\"", "\"11.77 mm\""))
        .contains("Candidate only", "Gannet", "Wear of up to 0.2 mm was allowed for")
        .contains("It fits with wear only, and a near copy may be smaller there");
  }

  @Test
  void a_plug_said_to_be_as_new_is_not_taken_for_a_worn_one() throws IOException {
    assertThat(sheet(
            "\"11.92 mm\"", "\"11.70 mm\"", "\"readings\"", "\"worn\": \"as new\", \"readings\""))
        .contains("The plug was taken as new")
        .doesNotContain("Candidate only");
  }

  @Test
  void without_near_copies_about_nothing_more_is_asked_for() throws IOException {
    assertThat(sheet("\"readings\"", "\"noNearCopies\": true, \"readings\""))
        .contains("No near copies are about, as the job says", "none of these")
        .doesNotContain("read also", "a near copy of one");
  }

  @Test
  void a_length_in_inches_is_told_and_stands_among_what_the_plug_may_be() throws IOException {
    assertThat(sheet("\"16.27 mm\"", "\"0.64 mm\"").replaceAll("\\s+", " "))
        .contains("Two readings agree with Gannet; read the third again, the tip length (L_g)")
        .contains("0.64 looks like inches")
        .contains("Gannet, with a slip: inches typed as millimetres")
        .contains("not chosen before the plug is known");
  }

  @Test
  void a_socket_without_its_plug_is_not_identified_but_given_ways_out() throws IOException {
    String readings = Files.readString(YARD.resolve("weak-sander.json"));
    int from = readings.indexOf("\"instrument\"");
    int to = readings.indexOf("},\n  \"supply\"");
    assertThat(sheet(readings.substring(from, to), "\"socketOnly\": true\n  "))
        .contains("Find its plug", "Fit a universal socket", "Follow one of the ways above")
        .doesNotContain("Candidate only");
  }

  /** The plug decides the parts; the pressure that can occur, and what to look out for, stands already. */
  @Test
  void the_worst_case_is_told_also_where_the_plug_is_not_known() throws IOException {
    String readings = Files.readString(YARD.resolve("weak-sander.json"));
    String read = readings.substring(
        readings.indexOf("\"instrument\""), readings.indexOf("},\n  \"supply\""));
    for (String atHand : new String[] {
      "\"socketOnly\": true\n  ",
      "\"noNearCopies\": false\n  ",
      "\"instrument\": \"digital caliper 0.01 mm\", \"readings\": {\"tip diameter\": \"5 mm\"}\n  "
    }) {
      assertThat(
              sheet(read, atHand, "\"name\": \"Orbital", "\"hammers\": true, \"name\": \"Orbital"))
          .contains("not chosen before the plug is known")
          .contains("Tool is not over-pressured: met while the regulator holds.")
          .contains("If the regulator fails:", "8.5 bar(g) if it fails")
          .contains("Whip restraint:", "Eye protection:", "Retainer on percussion tools:");
      Files.delete(folder.resolve("catalogue.json"));
      assertThat(sheet(read, atHand, YARD_REGULATOR, ""))
          .contains("Tool is not over-pressured: NOT MET.")
          .doesNotContain("Retainer on percussion tools:");
      assertThat(Files.readString(folder.resolve("sheet.html")))
          .contains("Tool is not over-pressured: NOT MET.", "Whip restraint");
      Files.delete(folder.resolve("catalogue.json"));
      assertThat(sheet(
              read,
              atHand,
              "\"name\": \"Orbital",
              "\"atBlockedNozzle\": \"60 psig\", \"name\": \"Orbital"))
          .contains("Cleaning pressure is kept down: NOT MET.", "not allowed, 4.137 bar(g) against")
          .contains("Guards when cleaning with air:");
      Files.delete(folder.resolve("catalogue.json"));
    }
  }

  @Test
  void an_outdoor_kit_that_is_dropped_and_dragged_is_stainless_with_a_guarded_sleeve()
      throws IOException {
    assertThat(sheet()).contains("S-11").doesNotContain("open sleeve that an edge can pull back");
  }

  /** The hose is there already and costs nothing, but nobody knows what it is rated for, or what went through it. */
  @Test
  void an_old_hose_with_open_questions_is_not_recommended_before_a_new_one() throws IOException {
    String catalogue = Files.readString(YARD.resolve("catalogue.json"));
    String unmarked = catalogue.replace(
        "\"keptFor\": \"lubricated\", \"alreadyThere\": true", "\"alreadyThere\": true");
    assertThat(unmarked).isNotEqualTo(catalogue);
    int hose = unmarked.indexOf("\"H-13\"");
    String unrated = unmarked.substring(0, hose)
        + unmarked.substring(hose).replaceFirst(" \"rated\": \"15 bar\\(g\\)\",", "");
    Files.writeString(folder.resolve("unmarked.json"), unrated);
    String sheet = sheet("\"catalogue.json\"", "\"unmarked.json\"");
    assertThat(sheet).contains("1 × H-38").doesNotContain("(there already)");
    Files.writeString(
        folder.resolve("unmarked.json"),
        unrated
            .replace("\"length\": \"10 m\"", "\"length\": \"9 m\"")
            .replaceFirst("(H-13[^}]*)\"length\": \"9 m\"", "$1\"length\": \"10 m\""));
    assertThat(sheet("\"catalogue.json\"", "\"unmarked.json\""))
        .contains("H-13", "(there already)")
        .contains("Still to be asked before it meets every rule: Parts are rated.")
        .contains(
            "It breaks no rule, but whether it meets every rule depends on what is still to be"
                + " asked. Parts are rated: No rating is known of Hose 1/2 in, 10 m")
        .doesNotContain("combinations that meet every rule");
  }

  @Test
  void on_a_line_of_which_nothing_is_known_the_hose_for_oiled_air_stays_where_it_is()
      throws IOException {
    assertThat(sheet("    \"dragged\": true,\n    \"air\": \"dry\"", "    \"dragged\": true"))
        .contains("1 × H-38", "Ask whether the line has a lubricator")
        .doesNotContain("(there already)");
  }

  @Test
  void a_percussion_tool_is_asked_for_its_whip_hose_until_the_job_tells_of_one()
      throws IOException {
    String inlet = "\"inlet\": \"1/4 NPT female\"";
    assertThat(sheet(inlet, inlet + ", \"hammers\": true"))
        .contains("Whip hose before a percussion tool: ask.")
        .contains("a short whip hose must go between");
    assertThat(sheet(inlet, inlet + ", \"hammers\": true, \"whipHose\": true"))
        .contains("Whip hose before a percussion tool: met.");
    assertThat(sheet(inlet, inlet + ", \"hammers\": true, \"whipHose\": false"))
        .contains("Whip hose before a percussion tool: NOT MET.")
        .doesNotContain("Does the percussion tool hang on a whip hose?");
  }

  @Test
  void hot_air_is_held_against_what_the_makers_of_the_parts_allow() throws IOException {
    assertThat(sheet("\"15 °C\"", "\"95 °C\""))
        .contains("Temperature suits the parts: ask. The air of the supply has 95 °C");
  }

  @Test
  void dry_and_lubricated_lines_do_not_share_a_hose() throws IOException {
    String dry = sheet();
    Files.delete(folder.resolve("catalogue.json"));
    String oiled = sheet("\"air\": \"dry\"", "\"air\": \"lubricated\"");
    assertThat(parts(dry)).contains("H-38").doesNotContain("H-13");
    assertThat(oiled).contains("lubricated");
  }

  private static String parts(String sheet) {
    return sheet.substring(
        sheet.indexOf("RECOMMENDED PARTS"), sheet.indexOf("BEFORE ANYONE CONNECTS THIS"));
  }

  @Test
  void pressure_above_what_the_parts_are_rated_for_is_refused() throws IOException {
    assertThat(sheet("\"8.5 bar(g)\"", "\"17 bar(g)\""))
        .contains("17 bar(g) can occur; too weak:")
        .contains("Nothing in the catalogue fits. What would have to change:");
  }

  @Test
  void where_nothing_in_stock_reaches_the_sheet_says_what_would_have_to_change()
      throws IOException {
    assertThat(sheet("\"reach\": \"10 m\"", "\"reach\": \"90 m\""))
        .contains("90 m needed")
        .contains("Nothing in the catalogue fits. What would have to change:");
  }

  /** Before anything is computed, with a known plug, an unknown one, none, or only a socket. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "breathing air",
        "oxygen",
        "welding gas",
        "water",
        "nitrogen",
        "steam",
        "hydraulic oil",
        "argon"
      })
  void anything_but_compressed_air_is_refused_with_whatever_plug(String medium) throws IOException {
    String[][] hands = {
      {},
      {"\"tip diameter\": \"11.92 mm\"", "\"tip diameter\": \"19.92 mm\""},
      {"\"where\":", "\"socketOnly\": true, \"where\":"},
      {"\"catalogue\": \"catalogue.json\"", "\"catalogue\": \"none.json\""},
      {"\"22 scfm\"", "\"no air at all\""}
    };
    for (String[] hand : hands) {
      Files.deleteIfExists(folder.resolve("catalogue.json"));
      List<String> changes = new ArrayList<>(List.of(hand));
      changes.add("\"dragged\": true");
      changes.add("\"dragged\": true, \"medium\": \"" + medium + "\"");
      String sheet = sheet(changes.toArray(String[]::new));
      assertThat(sheet)
          .contains("REFUSED", "compressed air for tools only, not on", medium)
          .contains("Nothing was computed and no part was chosen.")
          .doesNotContain("IN SHORT", "Candidate", "bar(g)", "RECOMMENDED", "Δp");
      assertThat(Files.readString(folder.resolve("sheet.html")))
          .contains("Refused", medium)
          .doesNotContain("Recommended parts");
    }
  }

  @Test
  void compressed_air_is_not_refused() throws IOException {
    assertThat(sheet("\"dragged\": true", "\"dragged\": true, \"medium\": \"Compressed Air\""))
        .contains("RECOMMENDED PARTS");
  }

  @Test
  void a_job_read_by_a_program_is_refused_by_its_sheet() throws Exception {
    Job job = Disk.job(YARD.resolve("weak-sander.json"));
    Job nitrogen = job.withRequirement(
        job.requirement().toBuilder().medium(Medium.NITROGEN).build());
    JobSheet sheet = JobSheet.of(nitrogen);
    assertThat(sheet.plug()).isEmpty();
    assertThat(sheet.now()).isEmpty();
    assertThat(sheet.selection()).isEmpty();
    assertThat(TextSheet.of(sheet)).contains("not on nitrogen", "suffocates").doesNotContain("bar");
    assertThat(PageSheet.of(sheet)).contains("not on nitrogen");
  }

  @ParameterizedTest
  @ValueSource(strings = {"oxygen", "nitrogen", "argon"})
  void networks_and_sets_for_another_medium_are_refused_in_one_line(String medium)
      throws IOException {
    String ring = Files.readString(Path.of("..", "networks", "ferry-lane-ring.csv"));
    String set = Files.readString(Path.of("..", "sets", "workshop.csv"));
    Files.writeString(folder.resolve("ring.csv"), withMedium(ring, medium));
    Files.writeString(folder.resolve("set.csv"), withMedium(set, medium));
    Files.writeString(
        folder.resolve("set.json"), "{\"set\": \"x\", \"medium\": \"" + medium + "\"}");
    for (String[] args :
        new String[][] {{"network", "ring.csv"}, {"set", "set.csv"}, {"set", "set.json"}}) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      ByteArrayOutputStream err = new ByteArrayOutputStream();
      int code = Main.run(
          new String[] {
            args[0],
            folder.resolve(args[1]).toString(),
            folder.resolve("p.html").toString()
          },
          new PrintStream(out, true, StandardCharsets.UTF_8),
          new PrintStream(err, true, StandardCharsets.UTF_8));
      assertThat(code).isEqualTo(2);
      assertThat(out.toString(StandardCharsets.UTF_8)).isEmpty();
      assertThat(err.toString(StandardCharsets.UTF_8).strip().lines()).hasSize(1);
      assertThat(err.toString(StandardCharsets.UTF_8))
          .contains("compressed air for tools only, not on", medium, "Not for ");
      assertThat(folder.resolve("p.html")).doesNotExist();
    }
  }

  /** The table with a column for the medium, told in the last row, behind a fault in the first. */
  private static String withMedium(String table, String medium) {
    List<String> lines = new ArrayList<>(table.lines().toList());
    int width = lines.get(0).split(",", -1).length;
    lines.set(0, lines.get(0) + ",medium");
    String last = lines.remove(lines.size() - 1);
    lines.add(last + ",".repeat(width - last.split(",", -1).length + 1) + medium);
    return String.join("\n", lines) + "\n";
  }

  private static NetworkResult.Solved steady(Network network) {
    return (NetworkResult.Solved) network.solve();
  }

  @Test
  void a_ring_main_with_six_drops_is_told_drop_by_drop_on_one_sheet() throws Exception {
    Path file = Path.of("..", "networks", "ferry-lane-ring.csv");
    Path page = folder.resolve("ring.html");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream terminal = new PrintStream(out, true, StandardCharsets.UTF_8);
    assertThat(
            NetworkProgram.run(new String[] {file.toString(), page.toString()}, terminal, terminal))
        .isZero();
    String sheet = out.toString(StandardCharsets.UTF_8);
    NetworkJob job = Disk.network(file);
    NetworkResult.Solved solved = steady(job.network());
    assertThat(job.drops()).hasSize(6);
    for (int i = 0; i < 6; i++) {
      String at =
          new NetworkAmounts(UnitSystem.SI).pressure(solved.tools().get(i).atTool());
      assertThat(sheet)
          .contains(job.drops().get(i).name() + ", " + job.drops().get(i).tool() + ": " + at);
      assertThat(Files.readString(page)).contains(job.drops().get(i).name());
    }
    double supplied = solved.supplies().get(0).given().kilogramsPerSecond();
    assertThat(solved.taken().kilogramsPerSecond())
        .as("mass")
        .isCloseTo(supplied, within(1.0e-9 * supplied));
    for (String junction : new String[] {"door", "W", "NW", "N", "NE", "E"}) {
      double gained = solved.branches().stream()
          .mapToDouble(branch -> branch.massFlow().kilogramsPerSecond()
              * ((branch.to().equals(junction) ? 1.0 : 0.0)
                  - (branch.from().equals(junction) ? 1.0 : 0.0)))
          .sum();
      assertThat(gained).as(junction).isCloseTo(0.0, within(1.0e-9 * supplied));
    }
    assertThat(sheet)
        .as(
            "only the impact wrench on the long narrow hose is short, and its hose is what to change")
        .contains(
            "too little at 1 of 6 drops: slipway",
            "To change: slipway: a 13 mm hose instead of 9.5 mm")
        .contains(
            "room header: cut off: mast shop, rigging, blasting, hull bay, paint room, slipway")
        .containsPattern(
            "no further drop falls short with one of\\s+these closed: west leg, north-west leg,")
        .contains("south leg: no further drop falls short, but slipway has still less: 5.9")
        .doesNotContain("may be closed but")
        .contains(
            "Air too fast in the pipe (blasting): In a branch", // the drop of the slipway is a hose
            "More pressure at the supply does not help",
            "Energy isolation");
    assertThat(Files.readString(page)).contains("For repair", "To change", "At the drops");
  }

  @Test
  void a_ring_with_one_leg_closed_serves_every_drop_from_the_other_side() throws Exception {
    NetworkJob job = Disk.network(Path.of("..", "networks", "ferry-lane-ring.csv"));
    NetworkResult.Solved open = steady(job.network());
    for (String leg : new String[] {"west leg", "north leg", "south leg"}) {
      NetworkResult.Solved closed = steady(job.network().without(leg));
      for (int i = 0; i < 6; i++) {
        double wanted = open.tools().get(i).massFlow().kilogramsPerSecond();
        assertThat(closed.tools().get(i).massFlow().kilogramsPerSecond())
            .as(leg + " closed, " + job.drops().get(i).name())
            .isBetween(0.95 * wanted, 1.01 * wanted);
      }
    }
  }

  /**
   * Half the bore in the ring: with the south leg closed all air goes the long way, and the sheet tells who falls
   * short.
   */
  @Test
  void a_ring_too_narrow_for_a_closed_leg_is_told() throws Exception {
    String ring = Files.readString(Path.of("..", "networks", "ferry-lane-ring.csv"));
    Files.writeString(folder.resolve("narrow.csv"), ring.replace("40.9 mm", "15.8 mm"));
    NetworkSheet sheet = NetworkSheet.of(Disk.network(folder.resolve("narrow.csv")));
    assertThat(sheet.closures())
        .filteredOn(closure -> closure.pipe().equals("south leg"))
        .singleElement()
        .satisfies(closure -> {
          assertThat(closure.serves()).isFalse();
          assertThat(closure.answer()).startsWith("too little at");
        });
  }
}
