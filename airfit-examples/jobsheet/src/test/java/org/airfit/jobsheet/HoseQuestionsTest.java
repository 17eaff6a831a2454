package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.Json;
import org.airfit.files.WrongFileException;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.run.LongestHose;
import org.airfit.run.WiderHose;
import org.airfit.select.Part;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Rule;
import org.airfit.select.RuleOutcome;
import org.airfit.select.Selection;
import org.airfit.select.Slot;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/**
 * What is asked of a hose beside lines to other tools. The judge is every hose of the catalogue, one after another as
 * one that is there, with all lines drawing.
 */
class HoseQuestionsTest {

  private static final Path JOBS = Path.of("..", "jobs");
  private static final String RATCHET = "\"name\": \"hose to the ratchet\", \"reach\": \"25 ft\"";
  private static final String SANDER = "\"name\": \"hose to a sander\", \"reach\": \"25 ft\"";
  private static final String MANIFOLD = "\"kind\": \"splitter\", \"name\": \"manifold\",";

  /** A drop on which little pressure is left over, so that a hose decides. */
  private static Job job(String... changes) throws Exception {
    String job = Files.readString(JOBS.resolve("body-shop/three-on-one-drop.json"))
        .replace(
            "{\"kind\": \"filter regulator\", \"name\": \"filter-regulator of the drop\",",
            "{\"kind\": \"filter\"}, {\"kind\": \"regulator\",")
        .replace("\"120 to 145 psig\"", "\"105 to 145 psig\"")
        .replace("\"6 scfm\"", "\"16 scfm\"");
    for (int i = 0; i < changes.length; i += 2) {
      assertThat(job).contains(changes[i]);
      job = job.replace(changes[i], changes[i + 1]);
    }
    Object catalogue = ofOneProfile(
        Json.read("catalogue.json", Files.readString(JOBS.resolve("quay-street/catalogue.json"))));
    String text = job;
    return JobFile.read(new Document(
        "job.json", Json.read("job.json", text), name -> Document.of(name, catalogue)));
  }

  /** With the couplings of one profile, no stainless steel and no claws, so that many hoses can be tried in a moment. */
  private static Object ofOneProfile(Object catalogue) {
    Map<String, Object> some = new LinkedHashMap<>();
    ((Map<?, ?>) catalogue).forEach((name, value) -> some.put(String.valueOf(name), value));
    some.put(
        "parts",
        ((List<?>) Objects.requireNonNull(some.get("parts")))
            .stream()
                .map(part -> (Map<?, ?>) part)
                .filter(HoseQuestionsTest::mayBe)
                .toList());
    return some;
  }

  private static boolean mayBe(Map<?, ?> part) {
    if ("stainless steel".equals(part.get("material")) || "two-lug claw".equals(part.get("end"))) {
      return false;
    }
    return switch (String.valueOf(part.get("kind"))) {
      case "plug" -> "curlew".equals(part.get("profile"));
      case "socket" -> List.of("curlew").equals(part.get("takes"));
      default -> true;
    };
  }

  private static Optional<Proposal> best(Selection selection) {
    return selection.fold(fitting -> Optional.of(fitting.best()), nothing -> Optional.empty());
  }

  /** Whether every tool surely has its pressure with a hose in a slot. */
  private static boolean does(Job job, String slot, Part.Hose hose) {
    Slot.Hose there =
        new Slot.Hose(slot, Length.of(1.0, LengthUnit.FOOT), false, Optional.of(hose));
    Requirement with = job.requirement().toBuilder()
        .layout(job.requirement().layout().replacing(slot, there))
        .build();
    return best(Selection.of(with, job.catalogue().parts()))
        .filter(proposal -> proposal.findings().stream()
            .anyMatch(finding ->
                finding.rule() == Rule.AIR_AT_TOOL && finding.outcome() == RuleOutcome.MET))
        .isPresent();
  }

  private static List<Part.Hose> doing(Job job, String slot) {
    return job.catalogue().parts().parts().stream()
        .filter(Part.Hose.class::isInstance)
        .map(Part.Hose.class::cast)
        .filter(hose -> does(job, slot, hose))
        .toList();
  }

  private static JobSheet answered(Job job) {
    return JobSheet.of(job);
  }

  private static Proposal best(JobSheet sheet) {
    return best(sheet.selection().orElseThrow()).orElseThrow();
  }

  private static void assertLongest(Job job, String slot) {
    List<Part.Hose> doing = doing(job, slot);
    Length longest =
        doing.stream().map(Part.Hose::shortest).max(Comparator.naturalOrder()).orElseThrow();
    Proposal best = best(answered(job));
    assertThat(best.hose(slot).shortest()).isEqualTo(longest);
    assertThat(doing).contains(best.hose(slot));
    assertThat(doing.size()).as("some hoses of the catalogue do not").isLessThan((int)
        job.catalogue().parts().parts().stream()
            .filter(Part.Hose.class::isInstance)
            .count());
  }

  @Test
  void the_longest_hose_of_a_line_leaves_every_tool_its_pressure() throws Exception {
    assertLongest(job(RATCHET, RATCHET.replace("25 ft", "longest")), "hose to the ratchet");
  }

  @Test
  void the_longest_hose_of_lines_alike_is_that_of_each_of_them() throws Exception {
    Job job = job(SANDER, SANDER.replace("25 ft", "longest"), "\"12 scfm\"", "\"18 scfm\"");
    assertLongest(job, "hose to a sander");
    assertThat(TextSheet.of(answered(job)).replaceAll("\\s+", " "))
        .contains("Longest hose (hose to a sander): The longest hose of the catalogue that leaves"
            + " every tool its pressure while all work is ")
        .contains(", one in each of the 2 lines to sander.");
  }

  @Test
  void the_longest_hose_in_front_of_the_splitter_carries_the_air_of_all() throws Exception {
    Job job = job(
        MANIFOLD,
        "\"kind\": \"other\", \"name\": \"nothing\", \"part\": {\"capacity\": \"Cv 50\", \"end\":"
            + " \"1/2 NPT female\", \"otherEnd\": \"3/8 NPT female\", \"rated\": \"300 psig\"}},"
            + " {\"kind\": \"hose\", \"name\": \"shared hose\", \"reach\": \"longest\"}, {"
            + MANIFOLD);
    assertLongest(job, "shared hose");
    JobSheet sheet = answered(job);
    Proposal best = best(sheet);
    String text = TextSheet.of(sheet).replaceAll("\\s+", " ");
    assertThat(text).contains(", for every tool behind it: ");
    // of every size the least of what the ways allow, each way solved by itself
    List<LongestHose> sander = longest(best.toEachTool().get(0));
    List<LongestHose> ratchet = longest(best.toEachTool().get(1));
    for (int i = 0; i < sander.size(); i++) {
      Optional<Length> least =
          sander.get(i).length().isEmpty() || ratchet.get(i).length().isEmpty()
              ? Optional.empty()
              : Optional.of(
                  sander.get(i).length().get().compareTo(ratchet.get(i).length().get()) < 0
                      ? sander.get(i).length().get()
                      : ratchet.get(i).length().get());
      assertThat(LongestHose.forAll(List.of(sander, ratchet)).get(i).length()).isEqualTo(least);
      assertThat(text)
          .contains(sander.get(i).size()
              + least
                  .map(length ->
                      (length.compareTo(Length.of(1000.0, LengthUnit.FOOT)) < 0 ? ": up to " : ": ")
                          + UnitSystem.US.say(length))
                  .orElse(": too narrow at any length"));
    }
  }

  private static List<LongestHose> longest(Proposal way) {
    return LongestHose.ofEverySize(
        way.run(),
        way.element("shared hose").orElseThrow(),
        way.requirement().demand().massFlow(),
        way.requirement().least(),
        UnitSystem.US);
  }

  @Test
  void the_least_bore_of_a_line_binds_no_hose_of_another() throws Exception {
    Job job = job(
        RATCHET,
        RATCHET + ", \"bore\": \"least\"",
        "\"12 scfm\"",
        "\"18 scfm\"",
        "\"16 scfm\"",
        "\"4 scfm\"");
    Length least = doing(job, "hose to the ratchet").stream()
        .filter(hose -> hose.shortest().compareTo(Length.of(25.0, LengthUnit.FOOT)) >= 0)
        .map(hose -> hose.bore().nominal())
        .min(Comparator.naturalOrder())
        .orElseThrow();
    JobSheet sheet = answered(job);
    Proposal best = best(sheet);
    assertThat(best.hose("hose to the ratchet").bore().nominal()).isEqualTo(least);
    assertThat(best.hose("hose to a sander").bore().nominal())
        .as("its own bore")
        .isGreaterThan(least);
    assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
        .contains("Least bore (hose to the ratchet): The narrowest hose of the catalogue that"
            + " leaves every tool its pressure while all work is "
            + best.hose("hose to the ratchet").name() + ".");
  }

  /** In front of the splitter the sizes are told for the tool for which the first that does is widest. */
  @Test
  void the_sizes_in_front_of_the_splitter_are_those_of_the_tool_that_needs_the_widest()
      throws Exception {
    Job job = job(
        MANIFOLD,
        "\"kind\": \"other\", \"name\": \"nothing\", \"part\": {\"capacity\": \"Cv 50\", \"end\":"
            + " \"1/2 NPT female\", \"otherEnd\": \"3/8 NPT female\", \"rated\": \"300 psig\"}},"
            + " {\"kind\": \"hose\", \"name\": \"shared hose\", \"reach\": \"75 ft\", \"bore\":"
            + " \"least\"}, {"
            + MANIFOLD,
        "\"air ratchet\", \"air\": \"16 scfm\", \"pressure\": \"85 psig\"",
        "\"air ratchet\", \"air\": \"4 scfm\", \"pressure\": \"10 psig\"");
    JobSheet sheet = answered(job);
    List<Proposal> ways = best(sheet).toEachTool();
    List<Integer> tried = ways.stream().map(way -> tried(way).size()).toList();
    assertThat(tried.get(0)).as("sizes tried for each tool").isNotEqualTo(tried.get(1));
    Proposal widest = ways.get(tried.get(0) > tried.get(1) ? 0 : 1);
    assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
        .contains("for the tool that needs the widest ("
            + widest.requirement().way().orElseThrow() + "): "
            + lowered(WiderHose.inWords(tried(widest), UnitSystem.US)));
  }

  /** As it stands behind a colon. */
  private static String lowered(String sentence) {
    return sentence.substring(0, 1).toLowerCase(Locale.ROOT) + sentence.substring(1);
  }

  private static List<WiderHose> tried(Proposal way) {
    return WiderHose.triedFromNarrowest(
        way.run(),
        way.element("shared hose").orElseThrow(),
        way.requirement().demand().massFlow(),
        way.requirement().least(),
        UnitSystem.US);
  }

  /** Of the hoses named 1/4 in the longest, and of no other, though wider ones are longer. */
  @Test
  void a_bore_that_is_told_binds_the_choice_and_the_longest_hose() throws Exception {
    Job job = job(
        RATCHET,
        RATCHET.replace("25 ft", "longest") + ", \"bore\": \"1/4 in\"",
        "\"16 scfm\"",
        "\"8 scfm\"");
    Part.Hose longest = doing(job, "hose to the ratchet").stream()
        .filter(hose -> hose.bore().label().equals("1/4 in"))
        .max(Comparator.comparing(Part.Hose::shortest))
        .orElseThrow();
    assertThat(best(answered(job)).hose("hose to the ratchet").shortest())
        .isEqualTo(longest.shortest());
    assertThat(best(answered(job)).hose("hose to the ratchet").bore().label()).isEqualTo("1/4 in");
    Job of38 = job(RATCHET, RATCHET + ", \"bore\": \"3/8 in\"", "\"16 scfm\"", "\"4 scfm\"");
    assertThat(best(answered(of38)).hose("hose to the ratchet").bore().label()).isEqualTo("3/8 in");
  }

  /** Nobody needs the longest hose: the sheet does not say that so much is needed, and an end that is told holds. */
  @Test
  void a_longest_hose_is_not_told_as_needed_and_is_no_longer_than_told() throws Exception {
    JobSheet sheet = JobSheet.of(Disk.job(JOBS.resolve("body-shop/longest-beside-sanders.json")));
    assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
        .contains("line 3, air ratchet: 100 ft of hose, the length looked for.")
        .doesNotContain("100 ft needed");
    Job job = job(RATCHET, RATCHET.replace("25 ft", "longest") + ", \"atMost\": \"60 ft\"");
    assertThat(best(answered(job)).hose("hose to the ratchet").shortest())
        .isEqualTo(Length.parse("50 ft"));
  }

  @Test
  void one_question_is_answered_at_a_time_in_all_lines_together() {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> job(
            SANDER, SANDER + ", \"bore\": \"least\"", RATCHET, RATCHET.replace("25 ft", "longest")))
        .withMessageContaining("line[5].lines[2].line[2].reach: is a second question; \"hose to a"
            + " sander\" has one already");
  }

  @Test
  void the_example_tells_how_long_the_hose_of_one_line_may_be() throws Exception {
    JobSheet sheet = JobSheet.of(Disk.job(JOBS.resolve("body-shop/longest-beside-sanders.json")));
    assertThat(best(sheet).hose("hose to the ratchet").id()).isEqualTo("H38-100");
  }

  /** The hose of the farm stays: with one of 3/8 in, and all else as proposed, the same job fits. */
  @Test
  void a_customers_own_hose_that_starves_the_tool_is_told_with_the_size_that_would_do()
      throws Exception {
    Path file = JOBS.resolve("counter/own-hose-too-narrow.json");
    JobSheet sheet = JobSheet.of(Disk.job(file));
    assertThat(best(sheet.selection().orElseThrow())).isEmpty();
    assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
        .containsPattern("What starves it is hose of the farm, which is there and stays\\. With a"
            + " 3/8 in hose of the same length the tool has [0-9.]+ psig: enough\\.");
    String wider = Files.readString(file)
        .replace("\"1/4 in\", \"bore\": \"6.3 mm\"", "\"3/8 in\", \"bore\": \"9.525 mm\"");
    String catalogue = Files.readString(JOBS.resolve("quay-street/catalogue.json"));
    Job with = JobFile.read(new Document(
        "job.json",
        Json.read("job.json", wider),
        name -> Document.of(name, Json.read(name, catalogue))));
    assertThat(best(JobSheet.of(with).selection().orElseThrow())).isPresent();
  }

  /** Of 20 to 25 ft: the hose of 25 ft reaches whatever it is. */
  @Test
  void a_reach_that_is_a_range_is_met_by_the_hose_for_the_longest_of_it() throws Exception {
    Proposal best = best(answered(job(SANDER, SANDER.replace("25 ft", "20 to 25 ft"))));
    assertThat(best.hose("hose to a sander").shortest()).isEqualTo(Length.parse("25 ft"));
    assertThat(best.open()).noneMatch(finding -> finding.rule() == Rule.HOSE_REACHES);
  }

  /** The longest hose of the catalogue is 100 ft: of 90 to 120 ft it depends. */
  @Test
  void a_reach_that_may_be_longer_than_any_hose_is_asked_for_with_the_length_at_which_it_turns()
      throws Exception {
    Job job = job(RATCHET, RATCHET.replace("25 ft", "90 to 120 ft"), "\"16 scfm\"", "\"6 scfm\"");
    JobSheet sheet = answered(job);
    assertThat(best(sheet).hose("hose to the ratchet").shortest())
        .isEqualTo(Length.parse("100 ft"));
    assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
        .contains("100 ft of hose, 90 ft to 120 ft needed. It turns at 100 ft (hose to the"
            + " ratchet): up to there it reaches. Measure how far it is.");
  }

  /** By hand: at worst, of 400 ft of pipe, it carries less than at best, of 20 ft. */
  @Test
  void what_a_run_carries_is_told_at_its_worst_where_something_of_it_is_a_range() throws Exception {
    String exact = carried("400 ft");
    String ranged = carried("20 to 400 ft");
    assertThat(exact).contains("this run carries up to ").doesNotContain("carries at least");
    assertThat(ranged)
        .contains(exact.replace("carries up to", "carries at least").replaceFirst("\\.$", ""))
        .contains(", with all that is not known exactly at its worst: at its best it is more.")
        .doesNotContain("carries up to");
  }

  private static String carried(String length) throws Exception {
    String job = "{\"airfitJob\": 2, \"job\": \"x\", \"customer\": \"c\", \"catalogue\": \"c\","
        + " \"supply\": {\"pressure\": \"110 to 125 psig\", \"temperature\": \"68 °F\","
        + " \"altitude\": \"0 ft\", \"dryer\": true}, \"line\": [{\"kind\": \"pipe\","
        + " \"bore\": \"0.4 in\", \"length\": \"" + length + "\", \"wall\": \"galvanized\"},"
        + " {\"kind\": \"outlet\", \"end\": \"1/2 NPT female\"}, {\"kind\": \"coupling\"},"
        + " {\"kind\": \"hose\", \"reach\": \"40 ft\"}, {\"kind\": \"coupling\", \"name\": \"k2\"}],"
        + " \"tool\": {\"name\": \"Grinder\", \"air\": \"8 scfm\", \"pressure\": \"80 psig\","
        + " \"inlet\": \"1/4 NPT female\", \"notAbove\": \"150 psig\"}, \"conditions\": {\"place\":"
        + " \"indoors\", \"dropped\": false, \"dragged\": false, \"air\": \"dry\"}}";
    String catalogue = Files.readString(JOBS.resolve("quay-street/catalogue.json"));
    Job read = JobFile.read(new Document(
        "job.json",
        Json.read("job.json", job),
        name -> Document.of(name, Json.read(name, catalogue))));
    JobSheet sheet = JobSheet.of(read);
    return InWords.carries(sheet, best(sheet.selection().orElseThrow()).orElseThrow());
  }
}
