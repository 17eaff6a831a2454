package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.airfit.files.Disk;
import org.airfit.files.Job;
import org.airfit.files.NetworkJob;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Jobs as they come to a counter, each with what a practitioner must find on the sheet. */
class JobsOfManyKindsTest {

  private static final Path YARD = Path.of("..", "jobs", "boatyard");

  @TempDir
  Path folder;

  /** The sheet of the boat yard's job, changed: pairs of what stands there and what shall stand there instead. */
  private String sheet(String... changes) throws IOException {
    return sheetOf("weak-sander.json", changes);
  }

  private String sheetOf(String file, String... changes) throws IOException {
    String job = Files.readString(YARD.resolve(file));
    for (int i = 0; i < changes.length; i += 2) {
      assertThat(job).contains(changes[i]);
      job = job.replace(changes[i], changes[i + 1]);
    }
    Files.writeString(folder.resolve("job.json"), job);
    Files.copy(YARD.resolve("catalogue.json"), folder.resolve("catalogue.json"));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code = Main.run(
        new String[] {
          folder.resolve("job.json").toString(), folder.resolve("sheet.html").toString()
        },
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
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
            "H-12",
            "Whip hose",
            "Retainer on percussion tools");
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
        .contains("regulate the supply down, no part of the catalogue changes that");
  }

  /** Less than 30 psi at a blocked nozzle in general industry, at most 30 psi elsewhere. */
  @Test
  void a_blow_gun_that_lets_the_pressure_off_is_served_with_guards_to_wear() throws IOException {
    assertThat(sheetOf("blow-gun.json"))
        .contains("Cleaning pressure is kept down: met.")
        .contains("28 psig against less than 30 psig")
        .contains("it costs least", "Together", "USD")
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
  void answering_a_job_does_not_change_it() throws Exception {
    Job job = Disk.job(YARD.resolve("weak-sander.json"));
    assertThat(JobSheet.of(job).requirement().profile()).contains("gannet");
    assertThat(job.requirement().profile()).isEmpty();
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

  @Test
  void an_outdoor_kit_that_is_dropped_and_dragged_is_stainless_with_a_guarded_sleeve()
      throws IOException {
    assertThat(sheet()).contains("S-11").doesNotContain("open sleeve that an edge can pull back");
  }

  @Test
  void dry_and_lubricated_lines_do_not_share_a_hose() throws IOException {
    String dry = sheet();
    Files.delete(folder.resolve("catalogue.json"));
    String oiled = sheet("\"air\": \"dry\"", "\"air\": \"lubricated\"");
    assertThat(parts(dry)).contains("H-12").doesNotContain("H-13");
    assertThat(oiled).contains("lubricated");
  }

  private static String parts(String sheet) {
    return sheet.substring(
        sheet.indexOf("RECOMMENDED PARTS"), sheet.indexOf("BEFORE ANYONE CONNECTS THIS"));
  }

  @Test
  void pressure_above_what_the_parts_are_rated_for_is_refused() throws IOException {
    assertThat(sheet("\"8.5 bar(g)\"", "\"17 bar(g)\""))
        .contains("17.00 bar(g) can occur; too weak:")
        .contains("Nothing in the catalogue fits. What would have to change:");
  }

  @Test
  void where_nothing_in_stock_reaches_the_sheet_says_what_would_have_to_change()
      throws IOException {
    assertThat(sheet("\"reach\": \"10 m\"", "\"reach\": \"90 m\""))
        .contains("90 m needed")
        .contains("Nothing in the catalogue fits. What would have to change:");
  }

  @Test
  void breathing_air_is_refused() throws IOException {
    assertThat(sheet("\"dragged\": true", "\"dragged\": true, \"medium\": \"breathing air\""))
        .contains("compressed air for tools only, not on breathing air")
        .contains("Nothing in the catalogue fits. What would have to change:");
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
      String at = Amounts.pressure(solved.tools().get(i).atTool());
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
        .contains("too little at 1 of 6 drops: slipway", "To change: slipway: a bore of")
        .contains(
            "room header: cut off: mast shop, rigging, blasting, hull bay, paint room, slipway")
        .contains("any one main may be closed but room header")
        .contains(
            "Air too fast in the pipe",
            "More pressure at the supply is no cure",
            "Energy isolation");
    assertThat(Files.readString(page)).contains("For repair", "What to change", "At the drops");
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
