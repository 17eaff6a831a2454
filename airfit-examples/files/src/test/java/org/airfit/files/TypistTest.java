package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.NearWord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What somebody who types a job gets wrong: one line, with the path of the field and what to type. */
class TypistTest {

  private static final Path YARD = Path.of("..", "jobs", "boatyard");

  @TempDir
  Path folder;

  private WrongFileException refused(String job) throws IOException {
    Files.writeString(folder.resolve("job.json"), job);
    Files.copy(YARD.resolve("catalogue.json"), folder.resolve("catalogue.json"));
    WrongFileException wrong =
        catchThrowableOfType(WrongFileException.class, () -> Disk.job(folder.resolve("job.json")));
    assertThat(wrong).as("refused").isNotNull();
    assertThat(wrong.getMessage()).doesNotContain("\n").startsWith("job.json: ");
    return wrong;
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        // a comma for a point, in a text and in a number
        Arguments.of("\"22 scfm\"", "\"22,5 scfm\"", "tool.air: ", "with a point"),
        Arguments.of("\"fittings\": 6.0", "\"fittings\": 6,5", "line[2].fittings: ", "type 6.5"),
        // a missing unit, with and without quotation marks
        Arguments.of("\"90 psig\"", "\"90\"", "tool.pressure: ", "the unit is missing"),
        Arguments.of("\"90 psig\"", "90", "tool.pressure: was 90", "with its unit"),
        Arguments.of("\"22 scfm\"", "22 scfm", "tool.air: ", "in quotation marks: \"22 scfm\""),
        // a pressure that does not say from where it counts
        Arguments.of("\"90 psig\"", "\"90 psi\"", "tool.pressure: ", "say psig"),
        Arguments.of("\"8.5 bar(g)\"", "\"8.5 bar\"", "supply.pressure: ", "say bar(g)"),
        // a unit that is none
        Arguments.of("\"22 scfm\"", "\"22 scmf\"", "tool.air: ", "scfm (60 °F)"),
        // a comma too many behind the last of a list, and a field typed twice
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"reach\": [\"10 m\",]",
            "line[5].reach",
            "in front of ] is one too many"),
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"reach\": \"10 m\", \"reach\": \"12 m\"",
            "line[5].reach: ",
            "the field \"reach\" stands twice in one object; leave one out"),
        // a range by a dash, without its unit
        Arguments.of(
            "\"8.5 bar(g)\"",
            "\"8-9\"",
            "supply.pressure: was \"8-9\"",
            "has the word to and a unit: \"8 to 9 …\""),
        // a catalogue that is not there
        Arguments.of(
            "\"catalogue.json\"",
            "\"catalog.json\"",
            "catalogue: was \"catalog.json\"",
            "there is no such file"),
        // what stands behind a failed regulator is below what it holds
        Arguments.of(
            "{\"kind\": \"regulator\", ",
            "{\"kind\": \"regulator\", \"ifFails\": \"2 psig\", ",
            "line[1].ifFails: was 2 psig, below the",
            "leave it out"),
        // a misspelt field, that may be missing or must be there
        Arguments.of("\"dropped\"", "\"droped\"", "conditions.droped: ", "nearest: dropped"),
        Arguments.of(
            "\"reach\"", "\"raech\"", "line[5].reach: is missing", "\"raech\" stands there"),
        Arguments.of("\"tool\": {", "\"toool\": {", "tool: is missing", "\"toool\" stands there"),
        // a misspelt word
        Arguments.of(
            "\"kind\": \"hose\"", "\"kind\": \"hoze\"", "line[5].kind: ", "nearest: hose;"),
        Arguments.of("\"outdoors\"", "\"outdoor\"", "conditions.place: ", "nearest: outdoors"),
        Arguments.of("1/2 NPT female", "1/2 NTP female", "line[3].end: ", "NPT"),
        // a wrong type
        Arguments.of(
            "\"dropped\": true", "\"dropped\": \"yes\"", "conditions.dropped: ", "true or"),
        Arguments.of("\"dropped\": true", "\"dropped\": yes", "conditions.dropped: ", "type true"),
        Arguments.of("\"reach\": \"10 m\"", "\"reach\": [10]", "line[5].reach: was a list", "text"),
        // a list for an object, an object for a list
        Arguments.of(
            "\"conditions\": {",
            "\"conditions\": [\"outdoors\"], \"//\": {",
            "conditions: was a list",
            "an object in braces"),
        Arguments.of(
            "\"line\": [",
            "\"line\": {\"kind\": \"hose\"}, \"//\": [",
            "line: was an object",
            "a list in square brackets"),
        // a misspelt dimension, and words of the trade that are others here
        Arguments.of(
            "\"tip length\"", "\"tip lenght\"", "atHand.readings: ", "nearest: tip length;"),
        Arguments.of(
            "\"outdoors\"", "\"outside\"", "conditions.place: ", "here it is called outdoors;"),
        Arguments.of(
            "\"air\": \"dry\"",
            "\"air\": \"oiled\"",
            "conditions.air: ",
            "here it is called lubricated;"),
        Arguments.of(
            "\"kind\": \"hose\"",
            "\"kind\": \"oiler\"",
            "line[5].kind: ",
            "here it is called lubricator;"),
        // two things that cannot both be so
        Arguments.of(
            "{\"kind\": \"hose\", \"reach\": \"10 m\"},",
            "{\"kind\": \"lubricator\"}, {\"kind\": \"hose\", \"reach\": \"10 m\"},",
            "conditions.air: was dry, but a lubricator stands in the line",
            "type lubricated"),
        Arguments.of(
            "\"7.4 bar(g)\"",
            "\"74 bar(g)\"",
            "line[1].set: was 74 bar(g), above the supply of 8.5 bar(g)",
            "in front of the regulator"),
        Arguments.of(
            "\"criticalPressureRatio\": 0.25}},\n    {\"name\": \"old",
            "\"criticalPressureRatio\": 2.5}},\n    {\"name\": \"old",
            "now[1].capacity.criticalPressureRatio: ",
            "must be in [0, 1), was 2.5"),
        // an unknown id
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"part\": \"H-83\"",
            "line[5].part: \"H-83\" is no hose of the catalogue",
            "nearest: H-38"),
        Arguments.of(
            "\"name\": \"coupling at the outlet\"}",
            "\"profile\": \"ganet\"}",
            "line[4].profile: \"ganet\"",
            "nearest: gannet"),
        Arguments.of(
            "\"name\": \"coupling at the tool\"}",
            "\"sameAs\": \"coupling at the outet\"}",
            "line[6].sameAs: ",
            "nearest: coupling at the outlet"),
        // a word that may mean two things, and a part of a kind that the catalogue has none of
        Arguments.of(
            "\"air\": \"dry\"",
            "\"air\": \"wet\"",
            "conditions.air: was \"wet\"; that may mean oil or water",
            "accepted: "),
        Arguments.of(
            "{\"kind\": \"outlet\", \"end\": \"1/2 NPT female\"},",
            "{\"kind\": \"outlet\", \"end\": \"1/2 NPT female\"}, {\"kind\": \"reel\", \"part\": \"R-1\"},",
            "is no reel of the catalogue",
            "none of its "),
        // one name twice
        Arguments.of(
            "\"coupling at the tool\"}",
            "\"coupling at the outlet\"}",
            "line[6].name: ",
            "is the name of line[4] already"),
        // a missing field
        Arguments.of("\"air\": \"22 scfm\",", "", "tool.air: is missing", "\"34 scfm\""),
        Arguments.of(
            "{\"kind\": \"outlet\", \"end\": \"1/2 NPT female\"},",
            "",
            "line[3]: is a coupling in front of the outlet",
            "put {\"kind\": \"outlet\""),
        // a range the wrong way round, and one with a dash
        Arguments.of(
            "\"pressure\": \"8.5 bar(g)\"",
            "\"pressure\": \"140 to 120 psig\"",
            "supply.pressure: ",
            "the smaller value comes first"),
        Arguments.of(
            "\"pressure\": \"8.5 bar(g)\"",
            "\"pressure\": \"8-9 bar(g)\"",
            "supply.pressure: ",
            "\"8 to 9 bar(g)\""),
        // a range where one value is wanted
        Arguments.of(
            "\"temperature\": \"15 °C\"",
            "\"temperature\": \"5 to 35 °C\"",
            "supply.temperature: was \"5 to 35 °C\"; one value is wanted here, no range",
            "give the highest, at which most pressure is lost"),
        Arguments.of(
            "\"atmosphere\": \"1.013 bar(a)\"",
            "\"atmosphere\": \"0.95 to 1.01 bar(a)\"",
            "supply.atmosphere: was \"0.95 to 1.01 bar(a)\"; one value is wanted here, no range",
            "give the worst that it can be, which is the least, \"0.95 bar(a)\""),
        Arguments.of(
            "\"place\": \"outdoors\"",
            "\"place\": \"outdoors\", \"coldest\": \"-20 to -5 °C\", \"hottest\": \"30 °C\"",
            "conditions.coldest: was \"-20 to -5 °C\"",
            "which is the least, \"-20 °C\""),
        Arguments.of(
            "\"bore\": \"20.9 mm\"",
            "\"bore\": \"20 to 22 mm\"",
            "line[2].bore: was \"20 to 22 mm\"",
            "which is the least, \"20 mm\""),
        Arguments.of(
            "\"set\": \"7.4 bar(g)\", \"droop\": \"0 bar\"",
            "\"set\": \"7.4 bar(g)\", \"droop\": \"0.3 to 0.5 bar\", \"atFlow\": \"20 scfm\"",
            "line[1].droop: was \"0.3 to 0.5 bar\"",
            "which is the most, \"0.5 bar\""),
        // no pressure of the supply
        Arguments.of(
            "\"pressure\": \"8.5 bar(g)\"",
            "\"//\": \"\"",
            "supply.pressure: is missing; accepted: ",
            "\"90 to 110 psig\""),
        // a marking that cannot be read, tells too little, or stands beside what it tells
        Arguments.of(
            "\"air\": \"22 scfm\",\n    \"pressure\": \"90 psig\"",
            "\"marking\": \"6.3 bat 22 cfm\"",
            "tool.marking: \"6.3 bat 22 cfm\": \"bat\" behind 6.3 is no unit",
            "\"6.3 bar 400 l/min\""),
        Arguments.of(
            "\"air\": \"22 scfm\",\n    \"pressure\": \"90 psig\"",
            "\"marking\": \"avg 4 CFM\"",
            "tool.pressure: is missing",
            "the marking \"avg 4 CFM\" tells none"),
        Arguments.of(
            "\"air\": \"22 scfm\",\n    \"pressure\": \"90 psig\"",
            "\"marking\": \"90 psi\"",
            "tool.air: is missing",
            "the marking \"90 psi\" tells none"),
        Arguments.of(
            "\"air\": \"22 scfm\"",
            "\"marking\": \"6.3 bar 22 cfm\", \"air\": \"22 scfm\"",
            "tool.air: ",
            "keep one of the two"),
        // a receiver that is none
        Arguments.of(
            "\"line\": [",
            "\"receiver\": {\"volume\": \"80 gal\", \"draws\": \"40 s\", \"every\": \"5 min\"}, \"line\": [",
            "receiver.volume: ",
            "say US gal"),
        Arguments.of(
            "\"line\": [",
            "\"receiver\": {\"volume\": \"80 US gal\", \"draws\": \"40\", \"every\": \"5 min\"}, \"line\": [",
            "receiver.draws: \"40\" is no time",
            "\"40 s\""),
        Arguments.of(
            "\"line\": [",
            "\"receiver\": {\"volume\": \"80 US gal\", \"draws\": \"5 min\", \"every\": \"5 min\"}, \"line\": [",
            "receiver: draws 5 min at a time, every 5 min",
            "longer than a draw"),
        Arguments.of(
            "\"line\": [",
            "\"receiver\": {\"volume\": \"300 L\", \"from\": \"9 bar(g)\", \"draws\": \"1 min 30 s\","
                + " \"every\": \"1 h\"}, \"line\": [",
            "receiver.from: was 9 bar(g)",
            "above supply.pressure"),
        Arguments.of(
            "\"line\": [",
            "\"receiver\": {\"volume\": \"300 L\", \"to\": \"8.5 bar(g)\", \"draws\": \"90 s\", \"every\": \"1 h\"},"
                + " \"line\": [",
            "receiver.to: was 8.5 bar(g)",
            "not below the pressure when a draw begins"),
        // questions that cannot be asked
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"reach\": \"longest\", \"bore\": \"least\"",
            "line[5].bore: asks for the least bore beside the longest hose",
            "leave out bore"),
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"reach\": \"10 m\", \"bore\": \"lest\"",
            "line[5].bore: \"lest\" is no bore",
            "accepted: the bore that it is named by, such as \"3/8 in\"; \"least\" asks"),
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"reach\": \"10 m\", \"bore\": \"9.5 mm\", \"part\": \"H-38\"",
            "line[5].bore: is asked of a hose that is there and stays",
            "its bore stands in the data of its part"),
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"reach\": \"longest\", \"part\": \"H-38\"",
            "line[5].reach: asks of a hose that is there",
            "leave out its part"),
        // "longest", misspelt
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"reach\": \"longst\"",
            "line[5].reach: \"longst\" is no length; accepted: ",
            "\"longest\" asks how long it may be"),
        // a profile that nobody knows, in place of a judgement that no socket takes it
        Arguments.of(
            "\"dropped\": true",
            "\"dropped\": true, \"profilesInUse\": [\"gannet\", \"ganet\"]",
            "conditions.profilesInUse[2]: \"ganet\" is no profile of this catalogue",
            "nearest: gannet"),
        // a hose in words, misspelt, and one without its length
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"part\": \"1/4 in hos, old, 25 ft\"",
            "line[5].part: \"1/4 in hos, old, 25 ft\" is no hose of the catalogue",
            ", or words such as \"1/4 in hose, old, 25 ft\""),
        Arguments.of(
            "\"reach\": \"10 m\"",
            "\"part\": \"1/4 in hose, old\"",
            "line[5].part: \"1/4 in hose, old\" tells no length",
            "\"1/4 in hose, old, 25 ft\""),
        // curly quotation marks
        Arguments.of("\"job\": \"The", "\"job\": \u201cThe", "at job: ", "type the straight one"),
        Arguments.of("runs weak\"", "runs weak\u201d", "at job: ", "type the straight one"),
        // commas between fields, quotation marks that are not closed, remarks of other languages
        Arguments.of("\"22 scfm\",", "\"22 scfm\"", "at tool.air: ", "in front of \"pressure\""),
        Arguments.of(
            "1/4 NPT female\"\n", "1/4 NPT female\",\n", "at tool.inlet: ", "one too many"),
        Arguments.of("\"22 scfm\"", "\"22 scfm", "at tool.air: ", "close its quotation mark"),
        Arguments.of("\"dropped\"", "'dropped'", "at conditions.place: ", "type the double one"),
        Arguments.of("\"22 scfm\"", "'22 scfm'", "at tool.air: ", "type the double one"),
        Arguments.of(
            "\"22 scfm\",", "\"22 scfm\", // asked", "at tool.air: ", "a remark is a field"),
        Arguments.of("\"tool\": {", "\"tool\": [{", "at tool[", "a ] is missing in front of \""),
        Arguments.of("\"line\": [", "\"line\": {", "at line: ", "is a list, and begins with ["));
  }

  @Test
  void a_regulator_where_the_outlet_was_left_out_is_told_where_the_outlet_goes()
      throws IOException {
    assertThat(refused("""
        {"airfitJob": 2, "job": "x", "customer": "y", "catalogue": "catalogue.json",
         "supply": {"pressure": "100 psig"},
         "line": [
           {"kind": "pipe", "bore": "20 mm", "length": "9 m", "wall": "galvanized"},
           {"kind": "regulator", "set": "90 psig"}, {"kind": "hose", "reach": "9 m"}],
         "tool": {"name": "z", "air": "5 scfm", "pressure": "80 psig", "inlet": "1/4 NPT female"}}
        """))
        .hasMessageContaining(
            "line[2]: is a regulator behind a pipe and in front of the outlet; it may"
                + " stand first of all, or behind {\"kind\": \"outlet\", \"end\": …}");
  }

  @Test
  void what_is_assumed_is_told_in_the_units_of_the_job_first() throws Exception {
    String[] nothing = {
      "\"temperature\"",
      "\"//t\"",
      "\"atmosphere\"",
      "\"//a\"",
      "\"airfitJob\": 2",
      "\"airfitJob\": 2, \"units\": \"US\""
    };
    assertThat(remarks(nothing))
        .contains(
            "Sea level is assumed (14.7 psia, 1.013 bar(a)), as supply.altitude is not told.",
            "Air of 68 °F (20 °C) is assumed, as supply.temperature is not told.");
    nothing[5] = nothing[5].replace("US", "SI");
    assertThat(remarks(nothing))
        .contains(
            "Sea level is assumed (1.013 bar(a), 14.7 psia), as supply.altitude is not told.",
            "Air of 20 °C (68 °F) is assumed, as supply.temperature is not told.");
  }

  @ParameterizedTest
  @MethodSource("slips")
  void a_slip_is_one_line_with_the_path_of_the_field(
      String typed, String wrong, String place, String cure) throws IOException {
    String job = Files.readString(YARD.resolve("weak-sander.json"));
    assertThat(job).contains(typed);
    assertThat(refused(job.replace(typed, wrong))).hasMessageContainingAll(place, cure);
  }

  private List<String> remarks(String... changes) throws Exception {
    String job = Files.readString(YARD.resolve("weak-sander.json"));
    for (int i = 0; i < changes.length; i += 2) {
      assertThat(job).contains(changes[i]);
      job = job.replace(changes[i], changes[i + 1]);
    }
    String catalogue = Files.readString(YARD.resolve("catalogue.json"));
    return JobFile.read(new Document(
            "job.json",
            Json.read("job.json", job),
            name -> Document.of(name, Json.read(name, catalogue))))
        .remarks();
  }

  /** 0.82 ft is 250 mm: 0.82 in was meant. It is read as typed, and told. */
  @Test
  void a_bore_in_a_unit_that_is_a_slip_gets_a_word() throws Exception {
    assertThat(remarks()).noneMatch(remark -> remark.contains("bore"));
    assertThat(remarks("\"bore\": \"20.9 mm\"", "\"bore\": \"0.82 ft\""))
        .anyMatch(remark -> remark.startsWith("\"0.82 ft\" in line[")
            && remark.contains(
                "is a bore of 9.84 in (249.9 mm), wider than a run to one tool ever is"));
  }

  /** The second never sees more than the first leaves. */
  @Test
  void a_regulator_set_above_one_in_front_of_it_gets_a_word() throws Exception {
    String coupling = "{\"kind\": \"coupling\", \"name\": \"coupling at the outlet\"}";
    for (String set : new String[] {"7.9 bar(g)", "6.9 bar(g)"}) {
      boolean isAbove = set.startsWith("7.9");
      assertThat(remarks(
                  coupling,
                  "{\"kind\": \"regulator\", \"name\": \"in the bay\", \"set\": \"" + set + "\"}, "
                      + coupling)
              .stream()
              .anyMatch(remark -> remark.contains("\"in the bay\" in line[")
                  && remark.contains("is set higher than")
                  && remark.contains("never has so much to hold")))
          .isEqualTo(isAbove);
    }
  }

  @Test
  void the_sign_that_some_editors_put_in_front_is_read_over() throws Exception {
    String job = Files.readString(YARD.resolve("weak-sander.json"));
    Files.copy(YARD.resolve("catalogue.json"), folder.resolve("catalogue.json"));
    Files.writeString(folder.resolve("job.json"), "\ufeff" + job);
    assertThat(Disk.job(folder.resolve("job.json")).requirement())
        .isEqualTo(Disk.job(YARD.resolve("weak-sander.json")).requirement());
  }

  @Test
  void a_file_saved_in_two_bytes_a_sign_is_told_to_be_saved_as_utf8() throws IOException {
    String job = Files.readString(YARD.resolve("weak-sander.json"));
    Files.write(folder.resolve("job.json"), ("\ufeff" + job).getBytes(StandardCharsets.UTF_16LE));
    WrongFileException wrong =
        catchThrowableOfType(WrongFileException.class, () -> Disk.job(folder.resolve("job.json")));
    assertThat(wrong).hasMessage("job.json: is not text in UTF-8; save it as UTF-8");
  }

  private static final String FIRST_FORM = """
      {"job": "a", "customer": "b", "catalogue": "catalogue.json", "atHand": {"where": "c"},
       "supply": {"pressure": "7.4 bar(g)", "temperature": "15 °C", "atmosphere": "1 bar(a)", MORE},
       "pipes": [], "outlet": "1/2 NPT female", "reach": "10 m",
       "stays": {"outletSocket": "S-10", "hose": "H-38", "toolPlug": "P-10"},
       "tool": {"name": "d", "air": "22 scfm", "pressure": "90 psig", "inlet": "1/4 NPT female"}}
      """;

  /** What the line tells, typed as it says, is read: nothing of the old file is lost. */
  @Test
  void a_file_of_the_first_form_is_told_what_to_change() throws Exception {
    String message = String.valueOf(
        refused(FIRST_FORM.replace("MORE", "\"highest\": \"8.5 bar(g)\", \"regulated\": true"))
            .getMessage());
    assertThat(message)
        .startsWith("job.json: is no job file of form 2: put \"airfitJob\": 2 in front; put pipes,"
            + " outlet, reach, stays into one list")
        .contains("let supply.pressure be what stands in front of that regulator, \"8.5 bar(g)\"")
        .doesNotContain("lowest");
    String line = message
        .substring(message.indexOf("\"line\": ["), message.indexOf("]; ") + 1)
        .replace("each pipe with \"kind\": \"pipe\", ", "");
    String catalogue = Files.readString(YARD.resolve("catalogue.json"));
    Job read = JobFile.read(new Document(
        "job.json",
        Json.read("job.json", """
            {"airfitJob": 2, "job": "a", "customer": "b", "catalogue": "catalogue.json",
             "supply": {"pressure": "8.5 bar(g)"}, LINE,
             "tool": {"name": "d", "air": "22 scfm", "pressure": "90 psig", "inlet": "1/4 NPT female"}}
            """.replace("LINE", line)),
        name -> Document.of(name, Json.read(name, catalogue))));
    assertThat(read.requirement().pressures().highest()).isEqualTo(GaugePressure.ofBar(8.5));
    assertThat(read.requirement().layout().slots()).hasSize(3);
    assertThat(read.requirement().layout().firstSocket()).isPresent();
  }

  @Test
  void cut_in_of_the_first_form_becomes_a_range() throws IOException {
    assertThat(refused(FIRST_FORM.replace("MORE", "\"lowest\": \"6 bar(g)\"")))
        .hasMessageContaining(
            "let supply.pressure be cut-in to cut-out, such as \"90 to 110 psig\"");
  }

  @Test
  void the_nearest_word_is_that_of_the_fewest_slips() {
    List<String> known = List.of("reach", "part", "H-38", "H-12", "coupling at the outlet");
    assertThat(NearWord.to("raech", known)).contains("reach");
    assertThat(NearWord.to("h38", known)).contains("H-38");
    assertThat(NearWord.to("H-83", known)).as("two signs swapped are one slip").contains("H-38");
    assertThat(NearWord.to("Coupling_at_the_outlets", known)).contains("coupling at the outlet");
    assertThat(NearWord.to("prat", known)).contains("part");
    assertThat(NearWord.to("length", known)).isEqualTo(Optional.empty());
    assertThat(NearWord.to("H-99", known))
        .as("two other figures are another part")
        .isEmpty();
  }

  static Stream<Arguments> slips_in_a_catalogue() {
    return Stream.of(
        Arguments.of(
            "\"id\": \"S-11\"",
            "\"id\": \"S-10\"",
            "].id: \"S-10\" is the id of parts[",
            "give another"),
        Arguments.of(
            "\"price\": \"38.90\"",
            "\"price\": \"$38.90\"",
            "].price: was \"$38.90\"; type the amount without a sign, such as \"38.90\"",
            "(id \"S-12\")"),
        Arguments.of(
            "\"price\": \"38.90\"",
            "\"price\": 38.90",
            "].price: was 38.9; a value goes in quotation marks",
            "such as \"12.50\" (id \"S-12\")"),
        Arguments.of(
            "\"letters\": [\"T\"]",
            "\"letters\": \"T\"",
            "].letters: was the text \"T\"",
            "[\"T\", \"TT\"]"),
        Arguments.of(
            "\"parts\": [",
            "\"parts\": [{\"kind\": \"reel\", \"id\": \"L\", \"name\": \"Reel\", \"hose\": \"3/8 in\"},",
            "parts[1].hose: is told of a reel in the line of a job",
            "give capacity"));
  }

  @ParameterizedTest
  @MethodSource
  void slips_in_a_catalogue(String from, String to, String where, String what) throws IOException {
    String catalogue = Files.readString(YARD.resolve("catalogue.json"));
    assertThat(catalogue).contains(from);
    Files.writeString(folder.resolve("catalogue.json"), catalogue.replace(from, to));
    WrongFileException wrong = catchThrowableOfType(
        WrongFileException.class, () -> Disk.catalogue(folder.resolve("catalogue.json")));
    assertThat(wrong).as("refused").isNotNull();
    assertThat(wrong.getMessage())
        .doesNotContain("\n")
        .startsWith("catalogue.json: ")
        .contains(where, what);
  }
}
