package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.quantity.UnmarkedFlow;
import org.airfit.select.Catalogue;
import org.airfit.select.Part;
import org.airfit.select.Requirement;
import org.airfit.select.Slot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a clerk does not know exactly is typed as a range where that can be judged, and else it is said what to type.
 */
class RangesInFilesTest {

  private static final Path YARD = Path.of("..", "jobs", "boatyard");

  private static final String JOB = """
      {
        "airfitJob": 2,
        "job": "ranges",
        "customer": "invented",
        "catalogue": "catalogue.json",
        "supply": {"pressure": "100 to 125 psig", "temperature": "20 °C", "altitude": "100 ft", "highest": "130 psig"},
        "line": [
          {"kind": "pipe", "bore": "0.82 in", "length": "30 ft", "wall": "galvanized"},
          {"kind": "outlet", "end": "1/2 NPT female"},
          {"kind": "regulator", "set": "90 psig", "ifFails": "120 psig"},
          {"kind": "coupling"},
          {"kind": "hose", "reach": "40 ft"},
          {"kind": "coupling"}
        ],
        "tool": {
          "name": "grinder", "air": "11 scfm", "pressure": "80 psig", "inlet": "1/4 NPT female",
          "notAbove": "110 psig", "cleans": true, "atBlockedNozzle": "28 psig"
        }
      }
      """;

  @TempDir
  Path folder;

  private Path job(String typed, String instead) throws IOException {
    assertThat(JOB).contains(typed);
    Files.writeString(folder.resolve("job.json"), JOB.replace(typed, instead));
    Files.copy(
        YARD.resolve("catalogue.json"),
        folder.resolve("catalogue.json"),
        StandardCopyOption.REPLACE_EXISTING);
    return folder.resolve("job.json");
  }

  private Requirement read(String typed, String instead) throws Exception {
    return Disk.job(job(typed, instead)).requirement();
  }

  @Test
  void a_pipe_may_be_so_long_or_so_long() throws Exception {
    Requirement job = read("\"length\": \"30 ft\"", "\"length\": \"20 to 30 ft\"");
    ConduitRange pipe = FlowFields.conduitRange(Field.of(Document.of(
        "job.json", Map.of("bore", "0.82 in", "length", "20 to 30 ft", "wall", "galvanized"))));
    assertThat(pipe.least().length()).isEqualTo(Length.parse("30 ft"));
    assertThat(pipe.most().length()).isEqualTo(Length.parse("20 ft"));
    assertThat(job).isNotEqualTo(read("\"length\": \"30 ft\"", "\"length\": \"30 ft\""));
  }

  /** So may a hose that is told in words: at worst it is the longest, at best the shortest. */
  @ParameterizedTest
  @CsvSource({"25 to 35 ft", "25 ft to 35 ft", "25 to 35 ft long"})
  void a_hose_in_words_may_be_so_long_or_so_long(String length) throws Exception {
    Slot.Hose hose = (Slot.Hose)
        read("\"reach\": \"40 ft\"", "\"part\": \"1/4 in hose, old, " + length + ", 1/4 NPT male\"")
            .layout()
            .slots()
            .get(2);
    ConduitRange told = hose.hose().orElseThrow().conduitRange();
    assertThat(told.least().length()).isEqualTo(Length.parse("35 ft"));
    assertThat(told.most().length()).isEqualTo(Length.parse("25 ft"));
    assertThat(told.least().bore()).isLessThan(told.most().bore());
    assertThat(hose.hose().orElseThrow().upstream()).hasToString("1/4 NPT male");
  }

  @Test
  void a_regulator_may_be_set_to_so_much_or_so_much() throws Exception {
    Slot.Regulated regulator =
        (Slot.Regulated) read("\"set\": \"90 psig\"", "\"set\": \"80 to 90 psig\"")
            .layout()
            .slots()
            .get(0);
    assertThat(regulator.setRange()).isEqualTo(Range.parse("80 to 90 psig", GaugePressure::parse));
    assertThat(regulator.set()).isEqualTo(GaugePressure.ofPsi(90.0));
  }

  /** The flow is judged at the lowest and at the highest, the parts at what stands in front. */
  @Test
  void so_may_one_that_stands_first_of_all() throws Exception {
    String first =
        "\"line\": [{\"kind\": \"regulator\", \"name\": \"first\", \"set\": \"95 to 105 psig\","
            + " \"droop\": \"0 psi\"},";
    Requirement job = read("\"line\": [", first);
    assertThat(job.pressures().lowest()).isEqualTo(GaugePressure.ofPsi(95.0));
    assertThat(job.pressures().usual().psi()).isCloseTo(105.0, within(1.0e-9));
    assertThat(job.highest()).isEqualTo(GaugePressure.ofPsi(130.0));
    assertThat(job.toOutlet().stillAir().pressure())
        .isEqualTo(GaugePressure.ofPsi(95.0).absolute(job.toOutlet().atmosphere()));
    assertThat(job.isExact()).as("a setting is no swing of the supply").isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "0.5, 8, 8",
    "'\"50 %\"', 8, 8",
    "'\"25 to 50 %\"', 8, 16",
    "'\"25 % to 50 %\"', 8, 16",
    "'\"0.25 to 0.5\"', 8, 16",
  })
  void the_duty_may_be_a_share_or_per_cent_or_between_two(String duty, double least, double most)
      throws Exception {
    Requirement job = read("\"air\": \"11 scfm\"", "\"air\": \"avg 4 scfm\", \"duty\": " + duty);
    assertThat(job.demandRange())
        .isEqualTo(new Range<>(FreeAirFlow.ofScfm60F(least), FreeAirFlow.ofScfm60F(most)));
  }

  @ParameterizedTest
  @CsvSource({
    "11 CFM, 11 cfm",
    "11 to 14 cfm, 14 cfm",
    "400 l/min, 400 l/min",
  })
  void air_that_does_not_tell_where_it_is_counted_has_all_readings(String air, String most)
      throws Exception {
    Requirement job = read("\"air\": \"11 scfm\"", "\"air\": \"" + air + "\"");
    assertThat(job.demand().massFlow())
        .isEqualTo(UnmarkedFlow.parse(most)
            .atSite(job.toOutlet().atmosphere(), job.toOutlet().stillAir().temperature())
            .most()
            .massFlow());
    assertThat(Disk.job(folder.resolve("job.json")).remarks().toString())
        .contains("\"" + air + "\" in tool.air does not tell where the air is counted");
  }

  @Test
  void so_has_the_air_that_others_take() throws Exception {
    Requirement job = read(
        "{\"kind\": \"coupling\"},",
        "{\"kind\": \"splitter\", \"othersTake\": \"10 to 20 CFM\"}, {\"kind\": \"coupling\"},");
    assertThat(job.airOfOthers().orElseThrow().most()).isEqualTo(FreeAirFlow.ofScfm60F(20.0));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"highest\": \"130 psig\" | \"highest\": \"125 to 130 psig\" | supply.highest |"
            + " which is the most, \"130 psig\"",
        "\"altitude\": \"100 ft\" | \"altitude\": \"0 to 100 ft\" | supply.altitude | give the greatest height",
        "\"20 °C\" | \"-10 to 30 °C\" | supply.temperature | conditions.coldest",
        "\"notAbove\": \"110 psig\" | \"notAbove\": \"100 to 110 psig\" | tool.notAbove | give the lowest",
        "\"notAbove\": \"110 psig\" | \"notAbove\": \"100-110 psig\" | tool.notAbove | give the lowest",
        "\"28 psig\" | \"20 to 28 psig\" | tool.atBlockedNozzle | which is the most, \"28 psig\"",
        "\"120 psig\" | \"110 to 120 psig\" | line[3].ifFails | which is the most, \"120 psig\"",
        "\"90 psig\" | \"80-90 psig\" | line[3].set | has the word to: \"80 to 90 psig\"",
        "\"90 psig\" | \"90 to 80 psig\" | line[3].set | the smaller value comes first",
        "\"30 ft\" | \"30 to 20 ft\" | line[1].length | the smaller value comes first",
        "\"11 scfm\" | \"avg 4 scfm\", \"duty\": \"half\" | tool.duty | such as 0.25",
        "\"11 scfm\" | \"avg 4 scfm\", \"duty\": 30 | tool.duty | \"30 %\"",
        "\"11 scfm\" | \"avg 4 scfm\", \"duty\": \"50 to 30 %\" | tool.duty | the smaller value comes first",
        "\"11 scfm\" | \"11 scfm\", \"duty\": \"30 %\" | tool.duty | goes with an average",
        "\"11 scfm\" | \"11-14 cfm\" | tool.air | type \"11 to 14 cfm\"",
      })
  void what_takes_no_range_says_what_to_give_instead(
      String typed, String instead, String place, String told) throws Exception {
    Path job = job(typed, instead);
    WrongFileException wrong = catchThrowableOfType(WrongFileException.class, () -> Disk.job(job));
    assertThat(wrong.getMessage()).startsWith("job.json: " + place + ": ").contains(told);
  }

  /** Of per cent typed as such, above 100: no advice to type a share of it in per cent. */
  @Test
  void more_than_all_of_the_time_is_no_duty() throws Exception {
    Path job = job("\"11 scfm\"", "\"avg 4 scfm\", \"duty\": \"150 %\"");
    WrongFileException wrong = catchThrowableOfType(WrongFileException.class, () -> Disk.job(job));
    assertThat(wrong.getMessage())
        .isEqualTo("job.json: tool.duty: must be above 0 and at most 1, was 1.5");
  }

  /** 6 psi at 80 scfm is lost at whatever setting; the air of the job takes 11 scfm of it. */
  @Test
  void a_droop_is_lost_at_whatever_setting() throws Exception {
    Requirement job = read(
        "\"line\": [",
        "\"line\": [{\"kind\": \"regulator\", \"name\": \"first\", \"set\": \"95 to 105 psig\","
            + " \"droop\": \"6 psi\", \"atFlow\": \"80 scfm\"},");
    assertThat(psiBehindTheRegulator(job)).isCloseTo(95.0 - 6.0 * 11.0 / 80.0, within(1.0e-6));
    assertThat(job.isExact()).isFalse();
  }

  private static double psiBehindTheRegulator(Requirement job) {
    return GaugePressure.of(
            job.toOutlet().supply().at(job.demand().massFlow()).orElseThrow().pressure(),
            job.toOutlet().atmosphere())
        .psi();
  }

  /** At worst 1 bar less, which is 14.5038 psi, where nobody told it; 8 psi at 88 scfm are 1 psi at 11 scfm. */
  @ParameterizedTest
  @CsvSource({
    "'', 80.4962, false",
    "', \"droop\": \"0 psi\"', 95, true",
    "', \"droop\": \"2 to 4 psi\"', 91, false",
    "', \"droop\": \"8 psi\", \"atFlow\": \"88 scfm\"', 94, true",
  })
  void the_droop_of_a_regulator_that_stands_first_is_a_range_unless_told(
      String droop, double worst, boolean isKnown) throws Exception {
    Requirement job = read(
        "\"line\": [",
        "\"line\": [{\"kind\": \"regulator\", \"name\": \"first\", \"set\": \"95 psig\"" + droop
            + "},");
    assertThat(psiBehindTheRegulator(job)).isCloseTo(worst, within(1.0e-3));
    assertThat(job.toBuilder().build().isExact()).isEqualTo(isKnown);
  }

  /** Nobody said that 100 psi is a limit: the tool works up to it, and what it stands is a question until it is told. */
  @ParameterizedTest
  @CsvSource({
    "90-100 psi 4 CFM, '', true",
    "'90-100 psi 4 CFM', '\"notAbove\": \"120 psig\", ', false",
    "'90 psi, max 100 psi, 4 CFM', '', false",
  })
  void the_higher_pressure_of_a_marked_range_is_asked_about(
      String marking, String limit, boolean isAsked) throws Exception {
    String told =
        "\"air\": \"11 scfm\", \"pressure\": \"80 psig\", \"inlet\": \"1/4 NPT female\",\n"
            + "    \"notAbove\": \"110 psig\", ";
    Job job = Disk.job(
        job(told, "\"marking\": \"" + marking + "\", \"inlet\": \"1/4 NPT female\", " + limit));
    Requirement asked = job.requirement();
    assertThat((isAsked ? asked.markedUpTo() : asked.toolRating()).orElseThrow().psi())
        .isCloseTo(limit.isEmpty() ? 100.0 : 120.0, within(1.0e-9));
    assertThat(asked.toolRating().isEmpty()).isEqualTo(isAsked);
    assertThat(asked.markedUpTo().isPresent()).isEqualTo(isAsked);
    String question =
        "Whether that is a limit is not told: tell in tool.notAbove what the maker allows.";
    assertThat(job.remarks().stream()
            .anyMatch(remark -> remark.endsWith(question)
                && remark.startsWith(
                    "\"" + marking + "\" in tool.marking tells a range of pressure")))
        .isEqualTo(isAsked);
  }

  /** A limit below what a tool is marked with is a slip of one of the two; one above the range of its work is none. */
  @ParameterizedTest
  @CsvSource({
    "90-100 psi 4 CFM, 95 psig, 95, true",
    "90-100 psi 4 CFM, 100 psig, 100, false",
    "90-100 psi 4 CFM, 120 psig, 120, false",
    "'90 psi, max 100 psi, 4 CFM', 95 psig, 95, true",
    "'90 psi, max 100 psi, 4 CFM', 100 psig, 100, false",
    "'90 psi, max 100 psi, 4 CFM', 120 psig, 100, true",
  })
  void a_limit_that_contradicts_the_marking_is_remarked_and_the_lower_counts(
      String marking, String limit, double counts, boolean isRemarked) throws Exception {
    Job job = Disk.job(job(
        "\"air\": \"11 scfm\", \"pressure\": \"80 psig\", \"inlet\": \"1/4 NPT female\",\n"
            + "    \"notAbove\": \"110 psig\", ",
        "\"marking\": \"" + marking + "\", \"inlet\": \"1/4 NPT female\", \"notAbove\": \"" + limit
            + "\", "));
    assertThat(job.requirement().toolRating().orElseThrow().psi())
        .isCloseTo(counts, within(1.0e-9));
    assertThat(job.remarks()
            .contains(
                "\"" + marking + "\" in tool.marking and \"" + limit + "\" in tool.notAbove do not"
                    + " agree on the highest pressure of the tool: the lower is taken as its limit. Look which of the"
                    + " two its maker tells."))
        .isEqualTo(isRemarked);
  }

  /** What a gauge shows behind a regulator that is there counts where its part tells no droop. */
  @Test
  void the_droop_of_a_regulator_that_is_there_may_be_read_off_its_gauge() throws Exception {
    String regulator = "\"set\": \"90 psig\", \"ifFails\": \"120 psig\"";
    String there =
        ", \"part\": {\"end\": \"1/2 NPT female\", \"capacity\": \"80 scfm at 100 psig, 10 psi"
            + " drop\"%s}, \"measuredDroop\": \"%s\"";
    Requirement job =
        Disk.job(job(regulator, regulator + there.formatted("", "4 psi"))).requirement();
    Part.Regulator read = job.layout().allSlots().stream()
        .filter(Slot.Regulated.class::isInstance)
        .flatMap(slot -> ((Slot.Regulated) slot).regulator().stream())
        .findFirst()
        .orElseThrow();
    assertThat(read.droopRange().isExact()).isTrue();
    assertThat(read.droopRange().most().psi()).isCloseTo(4.0, within(1.0e-9));
    Path known = job(
        regulator,
        regulator + there.formatted(", \"droop\": \"3 psi\", \"atFlow\": \"20 scfm\"", "2 psi"));
    assertThat(catchThrowableOfType(WrongFileException.class, () -> Disk.job(known)))
        .hasMessageContaining("line[3].measuredDroop: stands beside the droop or the curve");
    Path all = job(regulator, regulator + there.formatted("", "90 psi"));
    assertThat(catchThrowableOfType(WrongFileException.class, () -> Disk.job(all)))
        .hasMessageContaining("was 90 psi, not below the 90 psig that it is set to");
    Path chosen = job(regulator, regulator + ", \"measuredDroop\": \"2 psi\"");
    assertThat(catchThrowableOfType(WrongFileException.class, () -> Disk.job(chosen)))
        .hasMessageContaining("tell its part, or leave it out");
  }

  @Test
  void lengths_of_a_hose_that_contradict_each_other_are_told_as_typed() throws Exception {
    Path job = job("\"reach\": \"40 ft\"", "\"reach\": \"30 to 40 ft\", \"atMost\": \"35 ft\"");
    assertThat(catchThrowableOfType(WrongFileException.class, () -> Disk.job(job)))
        .hasMessage("job.json: line[5].atMost: was 35 ft, below the reach of 30 to 40 ft; give the"
            + " longest that will do, or leave it out");
    Path other = job("\"reach\": \"40 ft\"", "\"reach\": \"40 to 30 ft\"");
    assertThat(catchThrowableOfType(WrongFileException.class, () -> Disk.job(other)))
        .hasMessageEndingWith(": was \"40 to 30 ft\"; the smaller value comes first");
  }

  @ParameterizedTest
  @CsvSource({"125 psig, false", "130 to 140 psig, true"})
  void a_regulator_set_above_its_supply_does_nothing(String set, boolean isRemarked)
      throws Exception {
    Job job = Disk.job(
        job("\"set\": \"90 psig\", \"ifFails\": \"120 psig\"", "\"set\": \"" + set + "\""));
    assertThat(job.remarks()
            .contains("\"regulator\" in line[3] is set higher than the supply of 100 to 125 psig in"
                + " front of it: it never has so much to hold, and does nothing. Look whether it is"
                + " wanted, and what it is set to."))
        .isEqualTo(isRemarked);
  }

  /** In the line and at the supply alike, what stands behind a failed regulator is at least what it is set to. */
  @Test
  void a_failed_regulator_holds_back_no_more_than_one_that_holds() throws Exception {
    assertThat(Disk.job(job("\"ifFails\": \"120 psig\"", "\"ifFails\": \"90 psig\"")))
        .isNotNull();
    Path below = job("\"ifFails\": \"120 psig\"", "\"ifFails\": \"89.9 psig\"");
    assertThat(catchThrowableOfType(WrongFileException.class, () -> Disk.job(below)))
        .hasMessageContaining(
            "line[3].ifFails: was 89.9 psig, below the 90 psig that it is set to");
  }

  /** What repeats the currency of the catalogue is that price, not "38.00 EUR EUR". */
  @Test
  void a_price_may_repeat_the_currency_of_its_catalogue() throws Exception {
    String plain = Files.readString(YARD.resolve("catalogue.json"));
    String price = plain.replaceFirst("(?s).*?\"price\": \"([0-9.]+)\".*", "$1");
    String currency = plain.replaceFirst("(?s).*?\"currency\": \"([^\"]+)\".*", "$1");
    String quoted = "\"price\": \"" + price + "\"";
    Path job = job("40 ft", "40 ft");
    Path file = folder.resolve("catalogue.json");
    Catalogue before = Disk.job(job).catalogue().parts();
    Files.writeString(file, plain.replace(quoted, "\"price\": \"" + price + " " + currency + "\""));
    assertThat(Disk.job(job).catalogue().parts()).isEqualTo(before);
    Files.writeString(file, plain.replace(quoted, "\"price\": \"" + price + " XTS\""));
    assertThat(catchThrowableOfType(WrongFileException.class, () -> Disk.job(job)))
        .hasMessageContaining(".price: is in XTS, the catalogue in " + currency
            + "; airfit knows no rates, turn it into " + currency);
  }

  /** What is connected now is judged at both ends of what it may be, which is said where these differ. */
  @ParameterizedTest
  @CsvSource({"'smooth rubber hose', false", "'rubber hose', true"})
  void of_what_is_connected_now_it_is_said_where_it_is_not_known(String wall, boolean isSaid)
      throws Exception {
    Job job = Disk.job(job(
        "\"tool\": {",
        "\"now\": [{\"name\": \"old hose\", \"bore\": \"8 mm\", \"length\": \"20 ft\", \"wall\": \""
            + wall + "\"}],\n  \"tool\": {"));
    assertThat(job.remarks().stream()
            .anyMatch(remark -> remark.startsWith(
                "now: not known exactly, and judged at both ends of what it may be: old hose (")))
        .isEqualTo(isSaid);
  }
}
