package org.airfit.counter;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.counter.stock.Database;
import org.airfit.counter.stock.Shelf;
import org.airfit.counter.stock.Shops;
import org.airfit.counter.stock.Stock;
import org.airfit.files.Disk;
import org.airfit.files.ShopCatalogue;
import org.airfit.select.Interview;
import org.airfit.select.Question;
import org.airfit.select.Topic;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The interview over HTTP, held against the library's own. */
class InterviewTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  @TempDir
  static Path folder;

  private static Database database;
  private static CounterService service;
  private static Till till;
  private static ShopCatalogue catalogue;

  @BeforeAll
  static void start() throws Exception {
    Path file = Path.of("..", "jobs", "boatyard", "catalogue.json");
    catalogue = Disk.catalogue(file);
    database = Database.open(Database.embedded(folder.resolve("stock")));
    Stock stock = Shops.stocked(database, file);
    service = CounterService.start(
        Settings.usual().limitedTo(8, Duration.ofSeconds(30), Duration.ofSeconds(30)),
        stock,
        Shelf.of(database, Clock.systemUTC()));
    till = new Till(service.port());
  }

  @AfterAll
  static void stop() throws Exception {
    service.close();
    database.close();
  }

  /** What a customer says. */
  private static final Map<Topic, String> SAID = new LinkedHashMap<>(Map.of(
      Topic.MEDIUM, "compressed air",
      Topic.AIR_NEEDED, "22 scfm",
      Topic.PRESSURE_NEEDED, "90 psig",
      Topic.TOOL_INLET, "1/4 NPT female",
      Topic.SUPPLY, "105 psig",
      Topic.OUTLET, "1/2 NPT female",
      Topic.REACH, "30 ft",
      Topic.PLACE, "outdoors",
      Topic.VENTED, "no"));

  private static final Map<String, Object> JOB = Map.of("job", "a sander", "customer", "Mrs Ault");

  private static Map<String, Object> told(Topic topic) {
    return SAID.containsKey(topic)
        ? Map.of("topic", topic.toString(), "answer", SAID.get(topic))
        : Map.of("topic", topic.toString(), "notKnown", true);
  }

  private static JsonNode ask(Object job, List<Map<String, Object>> answers) throws Exception {
    HttpResponse<String> answer = till.post("/interview", Map.of("job", job, "answers", answers));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    return MAPPER.readTree(answer.body());
  }

  /** As it stands in the document. */
  @Test
  void the_question_of_the_document_is_asked_on() throws Exception {
    String document = Files.readString(Path.of("..", "..", "docs", "counter-service.md"));
    int from = document.indexOf("```json\n", document.indexOf("`POST /interview` asks"));
    String question =
        document.substring(from + "```json\n".length(), document.indexOf("```", from + 1));
    HttpResponse<String> answer = till.post(
        "/interview", MAPPER.readValue(question, new TypeReference<Map<String, Object>>() {}));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    assertThat(MAPPER.readTree(answer.body()).path("kind").asText()).isEqualTo("question");
  }

  /** From the first question to the end, each as the library asks it; the service keeps nothing between them. */
  @Test
  void each_question_is_the_librarys_until_the_end() throws Exception {
    Interview talk = Interview.begin(catalogue.parts());
    List<Map<String, Object>> answers = new ArrayList<>();
    Set<Topic> asked = new LinkedHashSet<>();
    JsonNode answer = ask(JOB, answers);
    while (answer.path("kind").asText().equals("question")) {
      List<Question> open = talk.questions(asked.size() < 2 ? UnitSystem.SI : UnitSystem.US);
      assertSame(answer.path("questions"), open);
      assertThat(answer.path("headline").asText()).isEqualTo(open.get(0).inWords());
      assertThat(answer.path("cautions").findValuesAsText("title"))
          .containsExactly("Before anyone connects this");
      Topic topic = open.get(0).topic();
      assertThat(asked.add(topic)).as(topic + " is asked once").isTrue();
      talk = SAID.containsKey(topic) ? talk.with(topic, SAID.get(topic)) : talk.withUnknown(topic);
      answers.add(told(topic));
      answer = ask(JOB, answers);
    }
    assertThat(talk.questions(UnitSystem.US)).isEmpty();
    assertThat(asked).containsAll(SAID.keySet()).hasSizeGreaterThan(SAID.size() + 2);
    assertThat(answer.path("kind").asText()).isEqualTo("done");
    assertThat(answer.path("toAsk").size()).isEqualTo(asked.size() - SAID.size());
    assertThat(answer.path("cautions").size()).isGreaterThan(2);

    // The job is a job file: its own answer over /select is the one of the end.
    JsonNode selected = MAPPER.readTree(till.post(
            "/select", Map.of("job", MAPPER.convertValue(answer.path("job"), Map.class)))
        .body());
    assertThat(selected).isEqualTo(answer.path("selected"));
    assertThat(answer.path("headline").asText())
        .isEqualTo(selected.path("headline").asText())
        .isEqualTo(talk.selection()
            .orElseThrow()
            .<String>fold(
                fitting -> fitting.whyBest(UnitSystem.US),
                nothing -> "Nothing in the catalogue fits."));
    assertThat(selected.path("title").asText()).isEqualTo("a sander");
    // A job that is told whole from the start is asked only what it does not tell.
    JsonNode again = ask(MAPPER.convertValue(answer.path("job"), Map.class), List.of());
    assertThat(again.path("questions").findValuesAsText("topic"))
        .doesNotContain("air needed", "supply", "reach", "place")
        .contains("tool rating");
  }

  private static void assertSame(JsonNode questions, List<Question> wanted) throws Exception {
    List<Object> expected = new ArrayList<>();
    for (Question question : wanted) {
      Map<String, Object> one = new LinkedHashMap<>();
      one.put("topic", question.topic().toString());
      one.put("question", question.inWords());
      one.put("why", question.why());
      List<Object> answers = new ArrayList<>();
      question
          .answers()
          .forEach(each -> answers.add(
              Map.of("answer", each.text(), "words", each.inWords(), "changes", each.changes())));
      one.put("answers", answers);
      expected.add(one);
    }
    List<Object> got = new ArrayList<>();
    for (JsonNode each : questions) {
      Map<?, ?> one = MAPPER.convertValue(each, Map.class);
      assertThat(String.valueOf(one.remove("accepted"))).isNotBlank();
      got.add(one);
    }
    assertThat(MAPPER.<JsonNode>valueToTree(got)).isEqualTo(MAPPER.<JsonNode>valueToTree(expected));
  }

  @Test
  void what_nothing_can_be_chosen_without_and_is_not_known_ends_it() throws Exception {
    JsonNode answer = ask(
        JOB,
        List.of(
            Map.of("topic", "medium", "answer", "compressed air"),
            Map.of("topic", "air needed", "notKnown", true),
            told(Topic.PRESSURE_NEEDED),
            told(Topic.TOOL_INLET),
            told(Topic.SUPPLY),
            told(Topic.OUTLET),
            told(Topic.REACH)));
    assertThat(answer.path("kind").asText()).isEqualTo("notEnough");
    assertThat(answer.path("toAsk").get(0).asText()).isEqualTo(Topic.AIR_NEEDED.question());
    assertThat(answer.path("cautions").size()).isEqualTo(1);
  }

  private static final String WHOLE = """
      {"job": "x", "supply": {"pressure": "7.4 bar(g)"},
       "line": [{"kind": "outlet", "end": "1/2 NPT female"},
                {"kind": "coupling"}, {"kind": "hose", "reach": "10 m"}, {"kind": "coupling"}],
       "tool": {"air": "22 scfm", "pressure": "80 psig", "inlet": "1/4 NPT female"}}
      """;

  /** Each complaint names the field; no answer is lost and none counts twice. */
  @Test
  void what_cannot_be_used_is_told_by_its_field() throws Exception {
    Map<String, String> wrong = new LinkedHashMap<>();
    wrong.put("{\"mots\": 1}", "mots | is no field here");
    wrong.put("{\"job\": []}", "job | is no object");
    wrong.put("{\"job\": {\"tool\": \"sander\"}}", "job.tool | is no object");
    wrong.put("{\"job\": {\"line\": {}}}", "job.line | is no list");
    wrong.put("{\"job\": {\"catalogue\": \"../x.json\"}}", " | is not here");
    wrong.put("{\"job\": {\"supply\": {\"pressure\": \"90\"}}}", "job | the unit is missing");
    wrong.put("{\"files\": {\"a\": 1}}", "files.a | is no text");
    wrong.put("{\"answers\": {}}", "answers | are no list");
    wrong.put("{\"answers\": [1]}", "answers[1] | is no answer");
    wrong.put("{\"answers\": [{\"topic\": \"place\"}]}", "answers[1] | tells no text");
    wrong.put(
        "{\"answers\": [{\"topic\": \"place\", \"answer\": \"outdoors\", \"notKnown\": true}]}",
        "answers[1] | tells no text");
    wrong.put(
        "{\"answers\": [{\"topic\": \"place\", \"anser\": \"outdoors\"}]}",
        "answers[1] | is no answer");
    wrong.put(
        "{\"answers\": [{\"topic\": \"pace\", \"answer\": \"x\"}]}",
        "answers[1].topic | topic must be");
    wrong.put(
        "{\"answers\": [{\"topic\": \"place\", \"answer\": \"x\"}]}",
        "answers[1].answer | indoors");
    wrong.put(
        "{\"answers\": [{\"topic\": \"supply\", \"answer\": \"90\"}]}",
        "answers[1].answer | the unit is missing");
    wrong.put(
        "{\"answers\": [{\"topic\": \"reach\", \"answer\": \"30 ft\"}]}",
        "answers[1].answer | must come behind that on the outlet");
    wrong.put(
        "{\"answers\": [{\"topic\": \"regulator\", \"answer\": \"yes\"}]}",
        "answers[1].answer | must come behind that on the supply");
    wrong.put(
        "{\"answers\": [{\"topic\": \"regulator failed\", \"answer\": \"8 bar(g)\"}]}",
        "answers[1].answer | must come behind that on the regulator");
    wrong.put(
        "{\"answers\": [{\"topic\": \"use\", \"of\": \"line 9\", \"answer\": \"hammers\"}]}",
        "answers[1].answer | must be one of the job, was \\\"line 9\\\"");
    String job = "{\"job\": " + WHOLE + ", \"answers\": [%s]}";
    wrong.put(
        job.formatted("{\"topic\": \"reach\", \"answer\": \"30 ft\"}"),
        "answers[1].answer | must be told once");
    wrong.put(
        job.formatted("{\"topic\": \"place\", \"answer\": \"outdoors\"},"
            + " {\"topic\": \"place\", \"answer\": \"indoors\"}"),
        "answers[2] | was answered before");
    wrong.put(
        job.formatted("{\"topic\": \"profile\", \"answer\": \"ganet\"}"),
        "answers[1].answer | gannet");
    for (Map.Entry<String, String> each : wrong.entrySet()) {
      HttpResponse<String> answer = till.post("/interview", each.getKey());
      List<String> wanted = List.of(each.getValue().split(" \\| ", 2));
      assertThat(answer.statusCode()).as(each.getKey() + answer.body()).isEqualTo(422);
      assertThat(answer.body())
          .as(each.getKey())
          .contains(wanted.get(1).isEmpty() ? "" : wanted.get(1))
          .contains(wanted.get(0).isEmpty() ? "file" : "\"field\":\"" + wanted.get(0) + "\"");
    }
    String many = "{\"topic\": \"place\", \"notKnown\": true},".repeat(101);
    assertThat(till.post(
                "/interview", "{\"answers\": [" + many.substring(0, many.length() - 1) + "]}")
            .body())
        .contains("are 101");
  }

  /** A file that the caller sends is chosen from in place of the stock. */
  @Test
  void a_catalogue_that_is_given_is_chosen_from() throws Exception {
    Map<?, ?> job = MAPPER.readValue(WHOLE, Map.class);
    Map<String, Object> fields = new LinkedHashMap<>();
    job.forEach((name, value) -> fields.put(String.valueOf(name), value));
    fields.put("catalogue", "mine.json");
    HttpResponse<String> answer = till.post(
        "/interview",
        Map.of(
            "job",
            fields,
            "files",
            Map.of("mine.json", "{\"catalogue\": \"mine\", \"profiles\": [], \"parts\": []}")));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("\"file\":\"mine.json\"");
  }
}
