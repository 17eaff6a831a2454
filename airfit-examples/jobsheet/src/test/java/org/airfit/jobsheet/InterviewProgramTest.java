package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.WrongFileException;
import org.airfit.plug.PlugVerdict;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.select.Environment;
import org.airfit.select.Interview;
import org.airfit.select.Part;
import org.airfit.select.Requirement;
import org.airfit.select.Slot;
import org.airfit.select.Subject;
import org.airfit.select.Topic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The interview at a terminal, from typed lines to the job file and the sheet of that file. */
class InterviewProgramTest {

  private static final Path CATALOGUE = Path.of("..", "jobs", "boatyard", "catalogue.json");

  private static final String SANDER = """
      compressed air
      22 scfm
      90 psig
      1/4 NPT female
      105 psig
      1/2 NPT female
      30 ft
      """;

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private Path job() {
    return folder.resolve("job.json");
  }

  private JobReading at() {
    return fields -> Disk.job(job(), fields, new ArrayList<>());
  }

  private int run(String typed, String... args) {
    return Main.run(
        args,
        new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)),
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  /** Somebody who reads what is asked, and answers a word of the question in these ways, one after the other. */
  private final class Customer extends InputStream {

    private final Map<String, List<String>> knows = new LinkedHashMap<>();
    private byte[] line = new byte[0];
    private int at;

    Customer knows(String wordOfQuestion, String... answers) {
      knows.put(wordOfQuestion, new ArrayList<>(List.of(answers)));
      return this;
    }

    private String answer() {
      String asked = printed().substring(printed().lastIndexOf("\n\n") + 1);
      String last = "";
      for (String word : knows.keySet()) {
        boolean isLater = last.isEmpty() || asked.lastIndexOf(word) > asked.lastIndexOf(last);
        last = asked.contains(word) && isLater ? word : last;
      }
      List<String> answers = knows.getOrDefault(last, List.of());
      return answers.isEmpty() ? "" : answers.remove(0);
    }

    @Override
    public int read() {
      if (at == line.length) {
        line = (answer() + "\n").getBytes(StandardCharsets.UTF_8);
        at = 0;
      }
      return line[at++];
    }

    @Override
    public int read(byte[] into, int from, int most) {
      into[from] = (byte) read();
      return 1;
    }
  }

  private Customer sander() {
    return new Customer()
        .knows("carry", "compressed air")
        .knows("How much air", "22 scfm")
        .knows("pressure must the tool", "90 psig")
        .knows("inlet of the tool", "1/4 NPT female")
        .knows("gauge at the supply", "105 psig")
        .knows("thread does the pipe", "1/2 NPT female")
        .knows("How far", "30 ft");
  }

  private int interview(InputStream customer) {
    return Main.run(
        new String[] {"interview", CATALOGUE.toString(), job().toString()},
        customer,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private int interview(String typed) {
    return run(typed, "interview", CATALOGUE.toString(), job().toString());
  }

  private int interviewFrom(String start, String typed) throws Exception {
    Path begun = folder.resolve("start.json");
    Files.writeString(begun, start);
    return run(typed, "interview", begun.toString(), CATALOGUE.toString(), job().toString());
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String complained() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private Requirement asked() throws Exception {
    return Disk.job(job()).requirement();
  }

  /** The questions that were printed, each once, in their order. */
  private List<String> questions() {
    List<String> questions = new ArrayList<>();
    Matcher question = Pattern.compile("(?m)^[0-9]+\\. ([^?]*\\?)").matcher(printed());
    while (question.find()) {
      String text = question.group(1).replaceAll("\\s+", " ");
      if (!questions.contains(text)) {
        questions.add(text);
      }
    }
    return questions;
  }

  @Test
  void a_talk_to_the_end_writes_a_job_whose_sheet_says_the_same() throws Exception {
    Customer customer = sander()
        .knows("maker of the tool allows", "120 psig")
        .knows("relief valve", "115 psig")
        .knows("What does the tool do", "none of these")
        .knows("lubricator", "1")
        .knows("Where will", "outdoors")
        .knows("fall on concrete", "y")
        .knows("dragged", "yes")
        .knows("Which profile", "G", "Gannet")
        .knows("all together", "only one")
        .knows("let the air out", "n");
    assertThat(interview(customer)).isZero();
    assertThat(complained()).isEmpty();
    assertThat(printed()).contains("All was asked that can change the proposal.");
    assertThat(asked().environment()).contains(Environment.OUTDOORS);
    assertThat(asked().layout().slots().get(0).toString()).contains("of profile gannet");
    String inShort = printed().substring(printed().indexOf("Recommended parts:"));
    out.reset();
    assertThat(run("", job().toString(), folder.resolve("page.html").toString()))
        .isZero();
    String sheet = printed().replaceAll("\\s+", " ");
    Matcher parts =
        Pattern.compile("To buy: ([^.]*\\.[0-9]+ USD)").matcher(inShort.replaceAll("\\s+", " "));
    assertThat(parts.find()).as(inShort).isTrue();
    assertThat(sheet).contains(parts.group(1));
  }

  /** What the US trade says is understood, or answered with one line that says what to type. */
  @Test
  void words_of_the_trade_are_understood_or_answered_with_what_to_type() throws Exception {
    Customer customer = sander()
        .knows("How much air", "about 22 scfm", "22 scfm")
        .knows("inlet of the tool", "1/4 NPT quick connect", "1/4 NPT female")
        .knows("lubricator", "oiled", "lubricatd", "lubricated")
        .knows("Where will", "outside", "outdoors")
        .knows("Which profile", "Gannte", "Gannet interchange");
    assertThat(interview(customer)).isZero();
    assertThat(printed().replaceAll("\\s+", " "))
        .contains("\"about\" is not read, as it does not tell by how much: type \"22 scfm\" alone")
        .contains("'quick' tells the part, not how it ends: type its thread without that word")
        .contains(
            "\"oiled\" is none of the answers; here it is called lubricated; type one of them")
        .contains("\"lubricatd\" is none of the answers; nearest: lubricated; type one of them")
        .contains(
            "\"outside\" is none of the answers; here it is called outdoors; type one of them")
        .contains("Type one of the answers, or an empty line to measure it; nearest: gannet.");
    assertThat(asked().environment()).contains(Environment.OUTDOORS);
    assertThat(asked().layout().slots().get(0).toString()).contains("of profile gannet");
  }

  /** The job file keeps what was said, and its sheet tells every reading. */
  @Test
  void air_that_does_not_tell_where_it_is_counted_is_taken_with_all_its_readings()
      throws Exception {
    Customer customer = sander().knows("How much air", "11 CFM");
    assertThat(interview(customer)).isZero();
    String said = printed().replaceAll("\\s+", " ");
    assertThat(said)
        .contains(
            "That does not tell where the air is counted; it may be standard cubic feet at 60 °F,")
        .contains("\"11 CFM\" in tool.air does not tell where the air is counted");
    Map<String, Object> fields = Disk.fields(job(), new ArrayList<>());
    assertThat(fields).extractingByKey("tool").asString().contains("air=11 CFM");
  }

  @Test
  void an_average_is_said_to_be_one() {
    assertThat(interview(sander().knows("How much air", "avg 2 CFM"))).isZero();
    assertThat(printed().replaceAll("\\s+", " "))
        .contains("That is an average: while it runs the tool takes up to four times as much");
  }

  @Test
  void what_is_printed_on_the_tool_is_not_asked_again() throws Exception {
    String start = """
        {"tool": {"name": "sander", "marking": "90 psi 11 CFM", "inlet": "1/4 NPT female"}}
        """;
    assertThat(interviewFrom(start, "compressed air\n105 psig\n1/2 NPT female\n30 ft\n"))
        .isZero();
    assertThat(printed()).doesNotContain("How much air").doesNotContain("pressure must the tool");
  }

  @Test
  void every_answer_goes_into_its_field() throws Exception {
    String whole = """
        {
          "supply": {"pressure": "7.4 bar(g)"},
          "line": [
            {"kind": "outlet", "end": "1/2 NPT female"},
            {"kind": "coupling"}, {"kind": "hose", "reach": "10 m"}, {"kind": "coupling"}
          ],
          "tool": {"air": "22 scfm", "pressure": "80 psig", "inlet": "1/4 NPT female"}
        }
        """;
    assertThat(interviewFrom(whole, "1\n")).isZero();
    InterviewFile file = InterviewFile.of(
        Disk.fields(job(), new ArrayList<>()), CATALOGUE.toAbsolutePath().toString());
    file = file.with(Subject.ofJob(Topic.HIGHEST), "8 to 8.5 bar(g)")
        .with(Subject.ofJob(Topic.REGULATOR), "yes")
        .with(Subject.ofJob(Topic.REGULATOR_FAILED), "8 bar(g)")
        .with(Subject.ofJob(Topic.TOOL_RATING), "100 to 120 psig")
        .with(Subject.ofJob(Topic.USE), "cleans with air")
        .with(Subject.ofJob(Topic.BLOCKED_NOZZLE), "28 psig")
        .with(Subject.ofJob(Topic.WHIP_HOSE), "yes")
        .with(Subject.ofJob(Topic.PLACE), "wash down")
        .with(Subject.ofJob(Topic.CLEANER), "caustic")
        .with(Subject.ofJob(Topic.AIR), "lubricated")
        .with(Subject.ofJob(Topic.DROPPED), "yes")
        .with(Subject.ofJob(Topic.DRAGGED), "no")
        .with(Subject.ofJob(Topic.VENTED), "yes")
        .with(Subject.ofJob(Topic.PROFILES_IN_USE), "gannet, tern")
        .with(Subject.ofJob(Topic.PROFILE), "gannet")
        .with(Subject.ofJob(Topic.COLDEST), "-10 °C");
    Requirement job = file.job(at()).requirement();
    assertThat(job.pressures().usual().bar()).isEqualTo(7.4);
    assertThat(job.highest()).isEqualTo(GaugePressure.ofBar(8.0));
    assertThat(job.pressures().whileRegulated()).isPresent();
    assertThat(job.toolRating()).contains(GaugePressure.ofPsi(100.0));
    assertThat(job.cleaningDeadEnd()).contains(GaugePressure.ofPsi(28.0));
    assertThat(job.hasWhipHose()).isTrue();
    assertThat(job.environment()).contains(Environment.WASH_DOWN_WITH_CAUSTIC);
    assertThat(job.lubrication().orElseThrow()).hasToString("lubricated");
    assertThat(job.isDropped()).isTrue();
    assertThat(job.isDragged()).isFalse();
    assertThat(job.isVentRequired()).isTrue();
    assertThat(job.profilesInUse()).containsExactlyInAnyOrder("gannet", "tern");
    assertThat(job.layout().toString()).isEqualTo("coupling, hose, coupling 2");
    assertThat(job.layout().slots().get(0).toString()).contains("of profile gannet");
    assertThat(job.coldest()).contains(Temperature.ofCelsius(-10.0));
    assertThat(job.hottest()).contains(Temperature.ofCelsius(40.0));
    assertThat(conditions(file))
        .as("what was told, and nothing else")
        .containsEntry("coldest", "-10 °C")
        .doesNotContainKey("hottest");
    InterviewFile both = file.with(Subject.ofJob(Topic.HOTTEST), "90 to 100 °F");
    assertThat(conditions(both))
        .containsEntry("coldest", "-10 °C")
        .containsEntry("hottest", "100 °F");
    InterviewFile again =
        InterviewFile.of(both.fields(), CATALOGUE.toAbsolutePath().toString());
    InterviewFile colder = again.with(Subject.ofJob(Topic.COLDEST), "-20 °C");
    assertThat(conditions(colder)).as("told in a file before").containsEntry("hottest", "100 °F");
    assertThat(colder.job(at()).requirement().hottest()).contains(Temperature.parse("100 °F"));
    InterviewFile usual = InterviewFile.of(
        file.with(Subject.ofJob(Topic.COLDEST), "10 °C").fields(),
        CATALOGUE.toAbsolutePath().toString());
    assertThat(conditions(usual)).as("not lost").containsEntry("coldest", "10 °C");
    assertThat(usual.job(at()).requirement().coldest()).as("as a shop has").isEmpty();
    Interview talk =
        usual.talk(at(), Interview.begin(usual.job(at()).catalogue().parts()), Set.of());
    assertThat(talk.answers()).as("not asked again").containsEntry(Topic.COLDEST, "10 °C");
    InterviewFile turned = file.with(Subject.ofJob(Topic.HOTTEST), "-20 °C");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> turned.job(at()))
        .withMessageContaining(
            "conditions.hottest: must be at least conditions.coldest, \"-10 °C\", was \"-20 °C\"");
  }

  private static final String RANGES = """
      {
        "supply": {"pressure": "110 to 120 psig"},
        "line": [
          {"kind": "regulator", "set": "90 to 100 psig"},
          {"kind": "pipe", "bore": "0.82 in", "length": "30 ft", "wall": "galvanized"},
          {"kind": "outlet", "end": "1/2 NPT female"},
          {"kind": "coupling", "profile": "gannet"},
          {"kind": "hose", "part": "3/8 in hose, old, 25 ft, 3/8 NPT male"},
          {"kind": "coupling", "profile": "gannet"}
        ],
        "tool": {"name": "ratchet", "marking": "max 95 psi, avg 5 CFM", "inlet": "1/4 NPT female"}
      }
      """;

  /** Each answer stands where a person would type it, and the file says the same as the talk. */
  @Test
  void what_was_told_as_a_range_is_filled_in_where_a_person_would_type_it() throws Exception {
    assertThat(interviewFrom(RANGES, "compressed air\n")).as(complained()).isZero();
    assertThat(printed().replaceAll("\\s+", " "))
        .contains("What is the regulator set to exactly, by its gauge while no air flows?")
        .contains(", by the value, it may settle: Air at the tool");
    InterviewFile file = InterviewFile.of(
            Disk.fields(job(), new ArrayList<>()), CATALOGUE.toAbsolutePath().toString())
        .with(Subject.ofJob(Topic.SETTING), "95 to 97 psig")
        .with(Subject.ofJob(Topic.DUTY), "30 to 50 %")
        .with(Subject.ofJob(Topic.EXACT_PRESSURE), "70 to 80 psig")
        .with(Subject.of(Topic.HOSE_BORE, "hose"), "9.2 to 9.4 mm")
        .with(Subject.of(Topic.HOSE_RATING, "hose"), "200 to 250 psig")
        .with(Subject.ofJob(Topic.DRYER), "no");
    Requirement job = file.job(at()).requirement();
    assertThat(job.pressures().whileRegulated().orElseThrow().psi()).isCloseTo(97.0, within(1e-9));
    assertThat(file.fields()).extractingByKey("line").asString().contains("set=95 to 97 psig");
    assertThat(job.demandRange().least().massFlow().kilogramsPerSecond())
        .as("5 CFM over 30 % of the time, with all readings of a CFM")
        .isCloseTo(5.0 / 0.3 * 0.3048 * 0.3048 * 0.3048 / 60.0 * 1.2, within(0.0006));
    assertThat(job.least()).isEqualTo(GaugePressure.ofPsi(80.0));
    assertThat(job.isDried()).contains(false);
    Part.Hose hose =
        ((Slot.Hose) job.layout().slot("hose").orElseThrow()).hose().orElseThrow();
    assertThat(hose.conduit().bore()).isEqualTo(Length.ofMillimetres(9.2));
    assertThat(hose.widestBore()).isEqualTo(Length.ofMillimetres(9.2));
    assertThat(hose.facts().rating()).contains(GaugePressure.ofPsi(200.0));
    InterviewFile exact = file.with(Subject.ofJob(Topic.EXACT_AIR), "11 to 12 scfm");
    assertThat(exact.fields())
        .extractingByKey("tool")
        .asString()
        .contains("air=12 scfm", "notAbove=95 psig", "pressure=80 psig")
        .doesNotContain("marking", "duty");
    assertThat(exact.job(at()).requirement().demand()).isEqualTo(FreeAirFlow.ofScfm60F(12.0));
  }

  /** What is printed on a part, the length of a hose and what others take stand where a person would type them. */
  @Test
  void answers_about_parts_that_are_there_stand_beside_them() throws Exception {
    String start = """
        {
          "supply": {"pressure": "110 psig"},
          "line": [
            {"kind": "outlet", "end": "1/2 NPT female"},
            {"kind": "filter", "part": {"end": "1/2 NPT male", "otherEnd": "1/2 NPT female",
              "capacity": "C 20 dm3/(s bar), b 0.3"}},
            {"kind": "splitter", "name": "tee", "othersTake": "2 to 9 scfm"},
            {"kind": "coupling", "name": "old one", "socket": "S-10", "plug": "P-11"},
            {"kind": "hose", "reach": "20 ft", "part": "3/8 in hose, old, 18 to 30 ft, 3/8 NPT male"}
          ],
          "tool": {"name": "ratchet", "air": "6 scfm", "pressure": "60 psig", "inlet": "3/8 NPT female"}
        }
        """;
    assertThat(interviewFrom(start, "compressed air\n")).as(complained()).isZero();
    InterviewFile file = InterviewFile.of(
            Disk.fields(job(), new ArrayList<>()), CATALOGUE.toAbsolutePath().toString())
        .with(Subject.of(Topic.PART_RATING, "filter"), "150 to 200 psig")
        .with(Subject.of(Topic.SOCKET_RATING, "old one"), "120 psig")
        .with(Subject.of(Topic.PLUG_RATING, "old one"), "130 psig")
        .with(Subject.of(Topic.HOSE_LENGTH, "hose"), "22 to 23 ft")
        .with(Subject.of(Topic.AIR_OF_OTHERS, "tee"), "3 to 4 scfm");
    Requirement job = file.job(at()).requirement();
    assertThat(((Slot.InLine) job.layout().slot("filter").orElseThrow())
            .device()
            .orElseThrow()
            .facts()
            .rating())
        .contains(GaugePressure.ofPsi(150.0));
    Slot.Coupling coupling = (Slot.Coupling) job.layout().slot("old one").orElseThrow();
    assertThat(coupling.socket().orElseThrow().facts().rating())
        .as("of that and what the catalogue says the lower counts")
        .contains(GaugePressure.ofPsi(120.0));
    assertThat(coupling.plug().orElseThrow().facts().rating()).contains(GaugePressure.ofPsi(130.0));
    Part.Hose hose =
        ((Slot.Hose) job.layout().slot("hose").orElseThrow()).hose().orElseThrow();
    assertThat(hose.shortest()).isEqualTo(Length.parse("22 ft"));
    assertThat(hose.longest()).isEqualTo(Length.parse("23 ft"));
    assertThat(((Slot.Splitter) job.layout().slot("tee").orElseThrow()).others().orElseThrow())
        .isEqualTo(Range.exactly(FreeAirFlow.ofScfm60F(4.0)));
    assertThat(file.fields())
        .extractingByKey("line")
        .asString()
        .contains("rated=150 psig", "socketRated=120 psig", "plugRated=130 psig")
        .contains("measuredLength=22 to 23 ft", "othersTake=4 scfm");
  }

  /** A range that is marked is no limit: told otherwise, the air leaves the range where it was. */
  @Test
  void a_marked_range_stays_a_range_where_the_air_is_told() throws Exception {
    String start = """
        {
          "supply": {"pressure": "110 psig"},
          "line": [
            {"kind": "outlet", "end": "1/2 NPT female"},
            {"kind": "coupling"}, {"kind": "hose", "reach": "20 ft"}, {"kind": "coupling"}
          ],
          "tool": {"name": "ratchet", "marking": "80-100 psi 6 CFM", "inlet": "1/4 NPT female"}
        }
        """;
    assertThat(interviewFrom(start, "compressed air\n")).as(complained()).isZero();
    assertThat(printed().replaceAll("\\s+", " "))
        .contains("What is the highest pressure that the maker of the tool allows?")
        .contains("100 psig or more, less than 110 psig: ");
    InterviewFile file = InterviewFile.of(
            Disk.fields(job(), new ArrayList<>()), CATALOGUE.toAbsolutePath().toString())
        .with(Subject.ofJob(Topic.EXACT_AIR), "5.8 scfm");
    Requirement told = file.job(at()).requirement();
    assertThat(told.toolRating()).isEmpty();
    assertThat(told.markedUpTo().orElseThrow().psi()).isCloseTo(100.0, within(1.0e-9));
    assertThat(told.least().psi()).isCloseTo(80.0, within(1.0e-9));
    assertThat(told.demand()).isEqualTo(FreeAirFlow.ofScfm60F(5.8));
    Requirement limit =
        file.with(Subject.ofJob(Topic.TOOL_RATING), "115 psig").job(at()).requirement();
    assertThat(limit.toolRating().orElseThrow().psi()).isCloseTo(115.0, within(1.0e-9));
  }

  /** The sheet asks for it, so that the interview does; who does not know it finds it listed. */
  @Test
  void the_droop_of_a_regulator_in_the_line_is_asked_for_and_listed() throws Exception {
    String start = """
        {
          "supply": {"pressure": "110 psig"},
          "line": [
            {"kind": "outlet", "end": "1/2 NPT female"},
            {"kind": "regulator", "name": "old reg", "set": "88 psig", "part": {
              "end": "1/2 NPT male", "otherEnd": "1/2 NPT female",
              "capacity": "80 scfm at 100 psig, 10 psi drop"}},
            {"kind": "coupling"}, {"kind": "hose", "reach": "20 ft"}, {"kind": "coupling"}
          ],
          "tool": {"name": "ratchet", "air": "6 scfm", "pressure": "80 psig", "inlet": "1/4 NPT female",
            "notAbove": "150 psig"}
        }
        """;
    assertThat(interviewFrom(start, "compressed air\n" + "\n".repeat(20)))
        .as(complained())
        .isZero();
    assertThat(printed().replaceAll("\\s+", " "))
        .contains("Old reg: By how much does the gauge behind the regulator fall")
        .containsPattern("better asked before anything is connected:.* Old reg: By how much does");
    InterviewFile file = InterviewFile.of(
        Disk.fields(job(), new ArrayList<>()), CATALOGUE.toAbsolutePath().toString());
    file.requireOpen(Subject.of(Topic.REGULATOR_DROOP, "old reg"));
    Requirement told = file.with(Subject.of(Topic.REGULATOR_DROOP, "old reg"), "2 to 4 psi")
        .job(at())
        .requirement();
    assertThat(((Slot.Regulated) told.layout().slot("old reg").orElseThrow())
            .regulator()
            .orElseThrow()
            .droopRange()
            .most()
            .psi())
        .isCloseTo(4.0, within(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> file.requireOpen(Subject.ofJob(Topic.REGULATOR_DROOP)))
        .withMessageContaining("must come behind that on the regulator");
  }

  /** A hose that is told by an object has the answers among its data, a regulator of the line by its name. */
  @Test
  void of_what_has_data_of_its_own_the_answers_stand_among_them() throws Exception {
    String start = """
        {
          "supply": {"pressure": "110 psig"},
          "line": [
            {"kind": "outlet", "end": "1/2 NPT female"},
            {"kind": "regulator", "name": "in the bay", "set": "80 to 90 psig"},
            {"kind": "hose", "name": "old one", "part": {
              "hose": "3/8 in", "length": "25 ft", "wall": "hose, old", "end": "3/8 NPT male"}}
          ],
          "tool": {"name": "ratchet", "air": "11 scfm", "pressure": "60 psig", "inlet": "1/4 NPT female"}
        }
        """;
    assertThat(interviewFrom(start, "compressed air\n")).as(complained()).isZero();
    InterviewFile file = InterviewFile.of(
            Disk.fields(job(), new ArrayList<>()), CATALOGUE.toAbsolutePath().toString())
        .with(Subject.of(Topic.SETTING, "in the bay"), "85 psig")
        .with(Subject.of(Topic.HOSE_BORE, "old one"), "3/8 in")
        .with(Subject.of(Topic.HOSE_RATING, "old one"), "250 psig");
    Requirement job = file.job(at()).requirement();
    Slot.Hose hose = (Slot.Hose) job.layout().slot("old one").orElseThrow();
    assertThat(hose.hose().orElseThrow().conduitRange().least().bore())
        .isEqualTo(Length.parse("3/8 in"));
    assertThat(hose.hose().orElseThrow().facts().rating()).contains(GaugePressure.ofPsi(250.0));
    assertThat(((Slot.Regulated) job.layout().slot("in the bay").orElseThrow()).setRange())
        .isEqualTo(Range.exactly(GaugePressure.ofPsi(85.0)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> file.requireOpen(Subject.ofJob(Topic.HOSE_BORE)))
        .withMessageContaining("name one of: old one");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> file.requireOpen(Subject.of(Topic.SETTING, "old one")))
        .withMessageContaining("name one of: in the bay");
  }

  private static Map<String, Object> conditions(InterviewFile file) {
    return Document.fields(Objects.requireNonNull(file.fields().get("conditions")));
  }

  @Test
  void a_gauge_that_moves_is_the_range_of_the_supply_and_behind_a_regulator_its_set_point()
      throws Exception {
    assertThat(interview(SANDER.replace("105 psig", "100 to 105 psig"))).isZero();
    assertThat(asked().pressures().lowest()).isEqualTo(GaugePressure.ofPsi(100.0));
    InterviewFile file = InterviewFile.of(
            Disk.fields(job(), new ArrayList<>()), CATALOGUE.toAbsolutePath().toString())
        .with(Subject.ofJob(Topic.HIGHEST), "125 psig")
        .with(Subject.ofJob(Topic.REGULATOR), "yes");
    Requirement job = file.job(at()).requirement();
    assertThat(job.pressures().lowest()).isEqualTo(GaugePressure.ofPsi(100.0));
    assertThat(job.pressures().whileRegulated().orElseThrow().psi()).isCloseTo(105.0, within(1e-9));
    assertThat(job.highest()).isEqualTo(GaugePressure.ofPsi(125.0));
  }

  @Test
  void nitrogen_ends_it_and_the_file_is_refused_the_same_way() {
    assertThat(interview("5\n")).isZero();
    assertThat(questions()).containsExactly("What does the line carry?");
    assertThat(printed())
        .contains("airfit advises on compressed air for tools only, not on nitrogen.");
    out.reset();
    assertThat(run("", job().toString(), folder.resolve("page.html").toString()))
        .isZero();
    assertThat(printed()).contains("not on nitrogen");
  }

  @Test
  void the_end_of_the_input_keeps_what_is_known_and_the_talk_goes_on_from_there() throws Exception {
    assertThat(interview("compressed air\n22 scfm\n90 psig\n")).isZero();
    assertThat(printed())
        .contains("Nothing can be chosen before this is known:")
        .contains("What thread does the inlet of the tool have?");
    out.reset();
    assertThat(interviewFrom(Files.readString(job()), "1/4 NPT female\n105 psig\n"))
        .isZero();
    assertThat(questions())
        .startsWith("What thread does the inlet of the tool have?")
        .doesNotContain("What does the line carry?", "How much air does the tool take?");
    out.reset();
    assertThat(interviewFrom(Files.readString(job()), "1/2 NPT female\n30 ft\n"))
        .isZero();
    assertThat(printed())
        .contains("Not all was asked; this is what stands so far.")
        .contains("Recommended parts: At the tool");
  }

  /** A job may ask how long the hose may be: that is no answer to how far it is, and nothing is missing. */
  @Test
  void a_job_that_asks_for_the_longest_hose_is_asked_what_else_it_lacks() throws Exception {
    String job = """
        {
          "supply": {"pressure": "7.4 bar(g)"},
          "line": [
            {"kind": "outlet", "end": "1/2 NPT female"},
            {"kind": "coupling"}, {"kind": "hose", "reach": "longest"}, {"kind": "coupling"}
          ],
          "tool": {"air": "22 scfm", "pressure": "80 psig", "inlet": "1/4 NPT female"}
        }
        """;
    assertThat(interviewFrom(job, "1\n")).as(complained()).isZero();
    assertThat(questions())
        .hasSizeGreaterThan(1)
        .doesNotContain("How far is it from the outlet to the work?");
  }

  @Test
  void a_question_mark_tells_why_and_a_sign_goes_back() {
    assertThat(interview("compressed air\n?\n30 scfm\n<\n22 scfm\n<\n<\n<\n")).isZero();
    assertThat(printed())
        .contains("The hose and the couplings must carry that much [the run from the supply")
        .containsSubsequence(
            "2. How much air does the tool take?",
            "3. What pressure must the tool have while it works?",
            "2. How much air does the tool take?",
            "3. What pressure must the tool have while it works?",
            "2. How much air does the tool take?",
            "1. What does the line carry?",
            "1. What does the line carry?");
  }

  @Test
  void what_cannot_be_read_is_told_and_asked_again() {
    assertThat(interview("air\n1\n22\n22 scfm\n0 psig\n90 psig\n")).isZero();
    assertThat(printed())
        .contains("\"air\" is none of the answers; type one of them, or its number from 1 to 9")
        .contains("\"22\": ")
        .contains("must be above 0");
    assertThat(questions()).endsWith("What thread does the inlet of the tool have?");
  }

  @Test
  void an_answer_at_odds_with_another_is_asked_again() {
    assertThat(interview(sander().knows("relief valve", "50 psig", "125 psig"))).isZero();
    assertThat(printed()).containsPattern("must be at least the supply|below the supply");
  }

  @Test
  void who_knows_nothing_gets_to_the_end() throws Exception {
    assertThat(interview(SANDER + "\n".repeat(40))).isZero();
    assertThat(printed())
        .contains("All was asked that can change the proposal.")
        .contains("Not known, and better asked before anything is connected:")
        .contains("  - Where will it be used?");
    assertThat(asked().environment()).isEmpty();
  }

  /** Readings of a Gannet, as in the job of the boat yard. */
  @Test
  void an_unknown_profile_is_measured_reading_by_reading() throws Exception {
    Customer customer = sander()
        .knows("Which profile", "")
        .knows("Which caliper", "4", "1")
        .knows("Measure the groove width", "5.16", "5.16 mm")
        .knows("Measure the tip length", "16.27 mm")
        .knows("Measure the tip diameter", "11.92 mm");
    assertThat(interview(customer)).isZero();
    String said = printed().replaceAll("\\s+", " ");
    assertThat(said)
        .contains("Then the plug tells it, if you have it and a caliper.")
        .contains("\"4\" is none of these; type its number")
        .contains("Candidate only")
        .contains("All was asked that can change the proposal.");
    Job job = Disk.job(job());
    assertThat(job.plug().orElseThrow().profile().orElseThrow().id()).isEqualTo("gannet");
    assertThat(job.atHand().orElseThrow().where())
        .isEqualTo("the customer's, measured at the counter");
  }

  @Test
  void a_profile_that_the_catalogue_does_not_have_leaves_the_parts_unchosen() throws Exception {
    assertThat(interview(sander().knows("Which profile", "another one"))).isZero();
    assertThat(printed().replaceAll("\\s+", " "))
        .contains("Recommended parts: not chosen before the plug is known");
  }

  /** The talk goes on, and does not say that the proposal stands where there is none. */
  @Test
  void a_plug_that_matches_nothing_does_not_end_the_talk() throws Exception {
    String start = """
        {
          "atHand": {
            "where": "the customer's", "instrument": "digital caliper 0.01 mm",
            "readings": {"tip diameter": "15.00 mm", "tip length": "22.00 mm", "groove width": "9.0 mm"}
          },
          "supply": {"pressure": "105 psig"},
          "line": [
            {"kind": "outlet", "end": "1/2 NPT female"},
            {"kind": "coupling"}, {"kind": "hose", "reach": "30 ft"}, {"kind": "coupling"}
          ],
          "tool": {"air": "22 scfm", "pressure": "90 psig", "inlet": "1/4 NPT female"}
        }
        """;
    assertThat(interviewFrom(start, "compressed air\n" + "\n".repeat(40))).isZero();
    assertThat(questions()).hasSizeGreaterThan(3);
    assertThat(printed().replaceAll("\\s+", " "))
        .contains("Plug: No match")
        .contains("All was asked that is asked here. No parts are chosen before the plug is known:")
        .doesNotContain("All was asked that can change the proposal.");
  }

  @Test
  void the_readings_go_into_the_file_and_the_plug_is_known_by_them() throws Exception {
    assertThat(interview(SANDER)).isZero();
    InterviewFile file = InterviewFile.of(
            Disk.fields(job(), new ArrayList<>()), CATALOGUE.toAbsolutePath().toString())
        .withReading("digital caliper 0.01 mm", "tip diameter", "11.92 mm")
        .withReading("digital caliper 0.01 mm", "tip length", "16.27 mm")
        .withReading("digital caliper 0.01 mm", "groove width", "5.16 mm");
    Job job = file.job(at());
    assertThat(job.plug().orElseThrow().verdict()).isEqualTo(PlugVerdict.CANDIDATE);
    assertThat(file.talk(at(), Interview.begin(job.catalogue().parts()), Set.of())
            .requirement()
            .orElseThrow()
            .profile())
        .contains("gannet");
  }

  @Test
  void wrong_calls_are_told_in_one_line() throws Exception {
    assertThat(run("", "interview", "one")).isEqualTo(2);
    assertThat(complained())
        .startsWith("give a job file that may lack anything")
        .hasLineCount(1);
    err.reset();
    assertThat(run("", "interview", "a", "b", "c", "d")).isEqualTo(2);
    err.reset();
    assertThat(
            run("", "interview", folder.resolve("none.json").toString(), job().toString()))
        .isEqualTo(2);
    assertThat(complained()).contains("there is no such file");
    err.reset();
    Path copy = folder.resolve("catalogue.json");
    Files.copy(CATALOGUE, copy);
    assertThat(run("", "interview", copy.toString(), copy.toString())).isEqualTo(2);
    assertThat(complained()).contains("is not written over");
    err.reset();
    assertThat(interviewFrom("[1]", "")).isEqualTo(2);
    assertThat(complained()).contains("holds no JSON object");
  }
}
