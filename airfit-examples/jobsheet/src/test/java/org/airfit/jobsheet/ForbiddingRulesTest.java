package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a job file to the headline of its sheet: a rule that forbids is never passed over. */
class ForbiddingRulesTest {

  private static final Path YARD = Path.of("..", "jobs", "boatyard");
  private static final String MEETS_ALL = "ombinations that meet every rule";

  @TempDir
  Path folder;

  /** The sheet of a job of the boat yard with the yard's own rules, changed from one text to another in turn. */
  private String sheet(String file, String rules, String... changes) throws IOException {
    String job = Files.readString(YARD.resolve(file))
        .replace("\"conditions\"", "\"rules\": {\"own\": \"yard.csv\"}, \"conditions\"");
    for (int i = 0; i < changes.length; i += 2) {
      assertThat(job).contains(changes[i]);
      job = job.replace(changes[i], changes[i + 1]);
    }
    Files.writeString(folder.resolve("job.json"), job);
    Files.writeString(
        folder.resolve("yard.csv"),
        "jurisdiction,citation,text,quantity,operator,limit,unit,asks,when,source,basis\n" + rules);
    Files.copy(
        YARD.resolve("catalogue.json"),
        folder.resolve("catalogue.json"),
        StandardCopyOption.REPLACE_EXISTING);
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

  private static final String LINE =
      "Tern Creek yard,rule 9,No more than 7 bar in a line,line pressure,<=,7,bar,,,notice,read\n";

  @Test
  void a_limit_of_the_yard_on_the_line_forbids_what_can_occur() throws IOException {
    assertThat(sheet("weak-sander.json", LINE))
        .contains("Nothing in the catalogue fits")
        .contains("Safety rules allow it: NOT MET.")
        .contains("Tern Creek yard, rule 9", "line pressure 8.5 bar(g) against at most 7 bar(g)")
        .contains("No more than 7 bar in a line. To change: set the relief valve")
        .doesNotContain(MEETS_ALL);
    assertThat(sheet("weak-sander.json", LINE.replace(",7,bar", ",8.5,bar")))
        .contains("Safety rules allow it: met.", "allowed, line pressure 8.5 bar(g)")
        .doesNotContain("Nothing in the catalogue fits");
  }

  @Test
  void paint_on_an_oiled_line_is_forbidden() throws IOException {
    String paints = "\"paints\": true, \"inlet\": \"1/4";
    String practice = LINE.replace(",7,bar", ",9,bar");
    assertThat(sheet(
            "weak-sander.json",
            practice,
            "\"inlet\": \"1/4",
            paints,
            "\"air\": \"dry\"",
            "\"air\": \"lubricated\""))
        .contains("Nothing in the catalogue fits", "Safety rules allow it: NOT MET.")
        .contains("Oiled air to a paint gun", "do without one of: painting, lubricated line")
        .doesNotContain(MEETS_ALL);
    assertThat(sheet(
            "weak-sander.json",
            practice,
            "\"inlet\": \"1/4",
            paints,
            ",\n    \"air\": \"dry\"",
            ""))
        .contains("Safety rules allow it: ask.", "ask whether the line is lubricated")
        .doesNotContain(MEETS_ALL);
  }

  @Test
  void a_rule_without_a_limit_forbids_the_work_it_names() throws IOException {
    assertThat(sheet(
            "blow-gun.json",
            "Tern Creek yard,rule 4,No cleaning with air,,,,,forbids,cleaning,notice,read\n"))
        .contains("Nothing in the catalogue fits", "Safety rules allow it: NOT MET.")
        .contains("Tern Creek yard, rule 4", "air is used for cleaning. No cleaning with air.")
        .doesNotContain(MEETS_ALL);
  }

  @Test
  void a_fact_that_no_job_tells_is_asked_for() throws IOException {
    assertThat(sheet(
            "blow-gun.json", "Tern Creek yard,rule 5,Not in a mine,,,,,forbids,mine,notice,read\n"))
        .contains("Safety rules allow it: ask.", "ask whether the line is in a mine")
        .contains("Still to be asked before it meets every rule: Safety rules allow it.")
        .doesNotContain(MEETS_ALL);
  }

  /** The yard's sheet takes the cheaper hose of 3/8 in; a rule against it leaves that of 1/2 in. */
  @Test
  void what_a_rule_forbids_gives_way_to_what_it_allows() throws IOException {
    String bore =
        "Tern Creek yard,rule 6,No hose under 12 mm,hose bore,>=,12,mm,forbids,,notice,read\n";
    assertThat(sheet("weak-sander.json", LINE.replace(",7,bar", ",9,bar"))).contains("1 × H-38");
    assertThat(sheet("weak-sander.json", bore))
        .contains(
            "1 × H-12", "Safety rules allow it: met.", "hose bore 12.7 mm against at least 12 mm")
        .doesNotContain("1 × H-38");
  }

  @Test
  void several_rules_at_once_are_all_named() throws IOException {
    assertThat(sheet(
            "blow-gun.json",
            LINE
                + "Tern Creek yard,rule 4,No cleaning with air,,,,,forbids,cleaning,notice,read\n"))
        .contains("Tern Creek yard, rule 9", "Tern Creek yard, rule 4");
  }

  /** Also where the plug is not known yet, and no part chosen. */
  @Test
  void a_job_without_a_plug_is_forbidden_too() throws IOException {
    assertThat(sheet(
            "weak-sander.json",
            LINE,
            "\"tip diameter\": \"11.92 mm\",",
            "\"tip diameter\": \"11.92 mm\"",
            "\"tip length\": \"16.27 mm\",",
            "",
            "\"groove width\": \"5.16 mm\"",
            ""))
        .contains("not chosen before the plug is known")
        .contains(
            "The job: Safety rules allow it: NOT MET.", "8.5 bar(g) against at most 7 bar(g)");
  }

  @Test
  void numbers_outside_the_air_model_are_no_more_than_a_first_guess() throws IOException {
    String open = LINE.replace(",7,bar", ",90000000,bar");
    String sheet = sheet(
        "weak-sander.json",
        open,
        "\"7.4 bar(g)\"",
        "\"2900 bar(g)\"",
        "\"8.5 bar(g)\"",
        "\"2900 bar(g)\"");
    assertThat(sheet.substring(0, sheet.indexOf("BEFORE ANYONE CONNECTS THIS")))
        .contains(
            "Outside the range of the air model: take the numbers for no more than a first guess");
    assertThat(sheet("weak-sander.json", open)).doesNotContain("first guess");
  }
}
