package org.airfit.files.kept;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.airfit.files.Disk;
import org.airfit.files.Job;
import org.airfit.files.WrongFileException;
import org.airfit.plug.Identification;
import org.airfit.plug.SocketAnswer;
import org.airfit.safety.Caution;
import org.airfit.safety.Medium;
import org.airfit.safety.SafetyRules;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Selection;
import org.junit.jupiter.api.Test;

class KeptAnswerTest {

  private static final Path JOBS = Path.of("..", "jobs");

  /** Sorts by itself, not by the class that is tested; the texts hashed here hold no numbers. */
  private static final ObjectMapper OTHER_PROGRAM =
      new ObjectMapper().enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

  private static List<Job> jobs() throws Exception {
    List<Path> paths;
    try (Stream<Path> files = Files.walk(JOBS)) {
      paths = files
          .filter(file -> file.toString().endsWith(".json"))
          .filter(file -> !file.endsWith("catalogue.json") && !file.endsWith("letterhead.json"))
          .sorted()
          .toList();
    }
    List<Job> jobs = new ArrayList<>();
    for (Path path : paths) {
      if (Disk.refusal(path).isEmpty()) {
        jobs.add(Disk.job(path));
      }
    }
    return jobs;
  }

  @Test
  void every_example_is_kept_read_and_computed_again_as_the_same() throws Exception {
    int kept = 0;
    for (Job job : jobs()) {
      if (job.question().isPresent()) {
        continue;
      }
      KeptAnswer then = KeptAnswer.of(job, Claims.THEN, Claims.FIRST);
      KeptAnswer read = KeptAnswer.read("kept.json", then.toText());
      assertThat(read).as(job.title()).isEqualTo(then).hasSameHashCodeAs(then);
      assertThat(read.answered()).as(job.title()).isEqualTo(then.answered());
      AnswerComparison compared = AnswerComparison.of(read, read.again(Claims.NOW, Claims.FIRST));
      assertThat(compared.isSame()).as(job.title() + "\n" + compared).isTrue();
      assertThat(compared.differences()).isEmpty();
      assertThat(compared.inWords()).contains("the same question", "The answer is the same.");
      kept++;
    }
    assertThat(kept).isGreaterThan(20);
  }

  @Test
  void what_is_kept_is_what_the_library_answers() throws Exception {
    Job job = Claims.asFiled().job();
    Identification plug = job.plug().orElseThrow();
    Requirement asked =
        job.requirement().toBuilder().profile(plug.profile().orElseThrow().id()).build();
    Selection.Proposals selection =
        (Selection.Proposals) Selection.of(asked, job.catalogue().parts());
    Proposal best = selection.best();

    KeptAnswer kept = Claims.asFiled().kept();

    Answered answered = kept.answered();
    assertThat(kept.headline()).isEqualTo(selection.whyBest(job.units().system()));
    assertThat(answered.plug().orElseThrow().verdict()).isEqualTo(plug.verdict().label());
    assertThat(answered.proposals()).hasSameSizeAs(selection.proposals());
    Answered.PartsTold first = answered.proposals().get(0);
    assertThat(first.ids())
        .isEqualTo(best.parts().stream().map(part -> part.facts().id()).toList());
    assertThat(first.price()).isEqualTo(best.price());
    Answered.AirTold air = first.air().get(0);
    String expected = best.result()
        .fold(
            delivered -> delivered.atToolGauge() + " " + delivered.bottleneck().name(),
            starved -> "starved");
    assertThat(air.arrives().orElseThrow() + " " + air.restriction()).isEqualTo(expected);
    assertThat(answered.rules())
        .extracting(Answered.RuleTold::outcome)
        .isEqualTo(best.findings().stream()
            .map(finding -> finding.outcome().toString())
            .toList());
    List<String> titles =
        answered.cautions().stream().map(Answered.CautionTold::title).toList();
    assertThat(titles).doesNotHaveDuplicates().endsWith("Before anyone connects this");
    best.cautions().forEach(caution -> assertThat(titles).contains(caution.title()));
    plug.cautions().forEach(caution -> assertThat(titles).contains(caution.title()));
    List<Caution> before = job.now().orElseThrow().run().at(asked.demand()).cautions();
    assertThat(before)
        .extracting(Caution::title)
        .anyMatch(title ->
            best.cautions().stream().noneMatch(caution -> caution.title().equals(title)));
    before.forEach(caution -> assertThat(titles).contains(caution.title()));
    assertThat(kept.cautions()).hasSameSizeAs(titles);
  }

  @Test
  void a_socket_alone_is_kept_with_its_cautions() throws Exception {
    Job job = Disk.job(JOBS.resolve("counter").resolve("socket-alone.json"));
    SocketAnswer socket = job.atHand().orElseThrow().socket().orElseThrow();
    KeptAnswer kept = KeptAnswer.of(job, Claims.THEN, Claims.FIRST);
    assertThat(kept.headline()).contains("the profile must be known first", socket.reason());
    assertThat(kept.answered().kind()).isEqualTo(Answered.Kind.PROFILE_NOT_KNOWN);
    assertThat(socket.cautions()).isNotEmpty();
    socket
        .cautions()
        .forEach(caution ->
            assertThat(kept.cautions()).contains(caution.title() + ": " + caution.text()));
  }

  @Test
  void another_program_computes_the_same_hashes() throws Exception {
    KeptAnswer kept = Claims.asFiled().kept();
    ObjectNode root = (ObjectNode) OTHER_PROGRAM.readTree(kept.toText());
    assertThat(sha256(kept.question())).isEqualTo(root.at("/hashes/question").asText());
    assertThat(sha256(kept.set())).isEqualTo(root.at("/hashes/set").asText());
    assertThat(sha256(kept.catalogue())).isEqualTo(root.at("/hashes/catalogue").asText());
    assertThat(sha256(kept.answer())).isEqualTo(root.at("/hashes/answer").asText());
    for (String field : List.of("set", "catalogue", "answer", "question")) {
      assertThat(OTHER_PROGRAM.readTree(read(kept, field))).isEqualTo(root.get(field));
    }
    Map<String, Object> head = new TreeMap<>();
    for (String field : List.of("airfitKept", "library", "day", "hashes")) {
      head.put(field, OTHER_PROGRAM.treeToValue(root.get(field), Object.class));
    }
    assertThat(sha256(OTHER_PROGRAM.writeValueAsString(head)))
        .isEqualTo(root.get("sha256").asText())
        .isEqualTo(kept.hash());
  }

  private static String read(KeptAnswer kept, String field) {
    return switch (field) {
      case "set" -> kept.set();
      case "catalogue" -> kept.catalogue();
      case "answer" -> kept.answer();
      default -> kept.question();
    };
  }

  private static String sha256(String text) throws Exception {
    return HexFormat.of()
        .formatHex(
            MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void spaces_and_the_order_of_fields_do_not_matter() throws Exception {
    KeptAnswer kept = Claims.asFiled().kept();
    String other =
        OTHER_PROGRAM.writeValueAsString(OTHER_PROGRAM.readValue(kept.toText(), Object.class));
    assertThat(other).isNotEqualTo(kept.toText());
    assertThat(KeptAnswer.read("kept.json", other)).isEqualTo(kept);
  }

  @Test
  void a_file_that_was_changed_is_refused_and_the_field_told() throws Exception {
    String text = Claims.asFiled().kept().toText();
    Map<String, String[]> slips = new TreeMap<>();
    slips.put("question", new String[] {"\"8.5 bar(g)\"", "\"8.6 bar(g)\""});
    slips.put("set", new String[] {"\"11.94 mm\"", "\"11.95 mm\""});
    slips.put("catalogue", new String[] {"\"11.41 USD\"", "\"11.40 USD\""});
    slips.put("answer", new String[] {"\"136.8 USD\"", "\"126.8 USD\""});
    slips.put("sha256", new String[] {"\"2026-11-29\"", "\"2026-11-28\""});
    for (Map.Entry<String, String[]> slip : slips.entrySet()) {
      String changed =
          text.replaceFirst(java.util.regex.Pattern.quote(slip.getValue()[0]), slip.getValue()[1]);
      assertThat(changed).as(slip.getKey()).isNotEqualTo(text);
      assertThatThrownBy(() -> KeptAnswer.read("claim.json", changed))
          .isInstanceOf(WrongFileException.class)
          .hasMessageStartingWith("claim.json: " + slip.getKey() + ": ")
          .hasMessageContaining("changed after the answer was kept")
          .message()
          .hasLineCount(1);
    }
  }

  /** Whoever writes the hash of a text anew is told by the hash of the hashes, until that is written anew too. */
  @Test
  void a_hash_that_was_written_anew_is_told_by_the_hash_of_all() throws Exception {
    KeptAnswer kept = Claims.asFiled().kept();
    KeptAnswer other =
        Claims.asFiled().part("H-38", part -> part.put("price", "35.00")).kept();
    ObjectNode root = (ObjectNode) OTHER_PROGRAM.readTree(kept.toText());
    ObjectNode forged = (ObjectNode) OTHER_PROGRAM.readTree(other.toText());
    root.set("catalogue", forged.get("catalogue"));
    ((ObjectNode) root.get("hashes")).put("catalogue", other.catalogueHash());
    assertThatThrownBy(() -> KeptAnswer.read("claim.json", root.toString()))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining("claim.json: sha256: ");
  }

  @Test
  void what_is_no_kept_answer_is_refused_in_one_line() throws Exception {
    String text = Claims.asFiled().kept().toText();
    Map<String, String> wrong = new TreeMap<>();
    wrong.put("[]", "no JSON object");
    wrong.put("{}", "airfitKept: must be 1");
    wrong.put(text.replace("\"airfitKept\" : 1", "\"airfitKept\" : 2"), "was 2");
    wrong.put(
        text.replace("\"airfitKept\" : 1", "\"airfitKept\" : \"1\""),
        "must be 1, a number without quotation marks");
    wrong.put(text.replace("\"library\" :", "\"by\" : 1, \"library\" :"), "by: is no field");
    wrong.put(text.replaceFirst("\"library\" : \"[^\"]*\",", ""), "library: is missing");
    wrong.put(text.replace("\"set\" : {", "\"set\" : 1e999, \"//\" : {"), "is no field");
    wrong.put(text.replace("\"2026-11-29\"", "\"29.11.2026\""), "accepted: a day such as");
    wrong.forEach((each, complaint) -> assertThatThrownBy(() -> KeptAnswer.read("k.json", each))
        .as(complaint)
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining(complaint)
        .message()
        .hasLineCount(1));
  }

  @Test
  void the_version_is_that_of_the_build() throws IOException {
    String pom = Files.readString(Path.of("..", "..", "airfit-core", "pom.xml"));
    String parent = pom.substring(pom.indexOf("<parent>"), pom.indexOf("</parent>"));
    String version =
        parent.substring(parent.indexOf("<version>") + 9, parent.indexOf("</version>"));
    assertThat(LibraryVersion.ofCore()).isEqualTo(version);
  }

  @Test
  void a_job_that_asks_for_a_hose_is_refused_with_what_to_do() throws Exception {
    Job job = Disk.job(JOBS.resolve("counter").resolve("longest-hose.json"));
    assertThatThrownBy(() -> KeptAnswer.of(job, Claims.THEN, Claims.FIRST))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("keep the job with the hose that was chosen");
  }

  @Test
  void a_job_that_no_file_told_is_refused() throws Exception {
    Job job = Claims.asFiled().job();
    Job other = job.withRequirement(job.requirement().toBuilder().ventRequired().build());
    assertThat(other.asFiled()).isEmpty();
    assertThatThrownBy(() -> KeptAnswer.of(other, Claims.THEN, Claims.FIRST))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("read from the fields of a job file");
  }

  @Test
  void another_medium_is_kept_as_refused() throws Exception {
    Job job = Claims.asFiled()
        .asked("\"place\": \"outdoors\"", "\"place\": \"outdoors\", \"medium\": \"nitrogen\"")
        .job();
    KeptAnswer kept = KeptAnswer.of(job, Claims.THEN, Claims.FIRST);
    assertThat(kept.headline()).contains("nitrogen");
    assertThat(kept.answered().proposals()).isEmpty();
    assertThat(kept.cautions())
        .containsExactly(
            inWords(Medium.NITROGEN.refusal().orElseThrow()),
            inWords(SafetyRules.usFederal().deference()));
    assertThat(KeptAnswer.read("k", kept.toText())).isEqualTo(kept);
  }

  private static String inWords(Caution caution) {
    return caution.title() + ": " + caution.text();
  }
}
