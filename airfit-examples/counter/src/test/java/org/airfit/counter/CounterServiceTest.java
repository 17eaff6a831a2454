package org.airfit.counter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.StringReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.airfit.calls.Calls;
import org.airfit.counter.stock.Database;
import org.airfit.counter.stock.Shelf;
import org.airfit.counter.stock.Shops;
import org.airfit.counter.stock.Stock;
import org.airfit.files.Disk;
import org.airfit.files.Json;
import org.airfit.files.ReferenceSetFile;
import org.airfit.files.ShopCatalogue;
import org.airfit.select.Part;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the service answers, over the stock of an example. */
class CounterServiceTest {

  private static final Path EXAMPLES = Path.of("..", "jobs", "boatyard");
  private static final ObjectMapper MAPPER = new ObjectMapper();

  @TempDir
  static Path folder;

  private static Database database;
  private static CounterService service;
  private static Till till;
  private static ShopCatalogue catalogue;

  @BeforeAll
  static void start() throws Exception {
    Path file = EXAMPLES.resolve("catalogue.json");
    catalogue = Disk.catalogue(file);
    database = Database.open(Database.embedded(folder.resolve("stock")));
    Stock stock = Shops.stocked(database, file);
    stock.load("some.csv", new StringReader("""
            kind,id,name,price,quantity
            drain,DR-7,Drain,4.00,7
            drain,A/10,Drain,4.00,3
            drain,50% off,Drain,4.00,4
            """));
    Path page = folder.resolve("page.html");
    Files.writeString(page, "<!doctype html><title>counter</title>");
    // The first answers of a JVM are slow, and what is held here is what they are.
    service = CounterService.start(
        Settings.usual()
            .withPage(page)
            .limitedTo(8, Duration.ofSeconds(30), Duration.ofSeconds(30)),
        stock,
        Shelf.of(database, Clock.systemUTC()));
    till = new Till(service.port());
  }

  @AfterAll
  static void stop() throws Exception {
    service.close();
    database.close();
  }

  private static Map<String, Object> fields(Path file) throws Exception {
    return Disk.fields(file, new ArrayList<>());
  }

  private static Map<String, Object> job() throws Exception {
    Map<String, Object> job = fields(EXAMPLES.resolve("weak-sander.json"));
    job.remove("catalogue");
    return job;
  }

  private static final Map<String, Object> HAND =
      Map.of("readings", Map.of("tip diameter", "11.93 mm", "tip to collar", "9.83 mm"));

  private static final Map<String, Object> ENDS =
      Map.of("one", "1/4 NPT male", "other", "G 1/4 female");

  private static final Map<String, Object> RUN = Map.of(
      "supply", "90 psig",
      "flow", "20 scfm",
      "needed", "70 psig",
      "elements",
          List.of(
              Map.of("part", "S-10"),
              Map.of("name", "hose", "bore", "3/8 in", "length", "50 ft", "wall", "rubber hose")));

  private static final Map<String, Object> WATER = Map.of(
      "temperature", "28 °C",
      "humidity", 0.65,
      "pressure", "7.5 bar(g)",
      "air", "60 L/s ANR",
      "cooled", "30 °C",
      "time", "8 h");

  private static final Map<String, Object> LEAK = Map.of(
      "hole", "2 mm",
      "pressure", "6.8 bar(g)",
      "loadedPower", "22 kW",
      "unloadedPower", "6 to 7 kW",
      "delivery", "55 L/s ANR",
      "hours", 3800,
      "electricity", "0.21 EUR",
      "repairCost", "35 EUR");

  private static String network() throws Exception {
    return Files.readString(Path.of("..", "networks", "header-leak.csv"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"application/json;charset=UTF-8", "application/json; charset=\"utf-8\""})
  void the_letters_of_the_body_may_be_told(String type) throws Exception {
    HttpResponse<String> answer = till.send(till.to("/mating")
        .header("Content-Type", type)
        .POST(HttpRequest.BodyPublishers.ofString(Json.write(ENDS))));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
  }

  /** It may mean another medium, and no question of that is answered as one of compressed air. */
  @ParameterizedTest
  @ValueSource(
      strings = {"{\"x\":\"oxygen\"}", "5", "true", "\"\"", "\"  \"", "[]", "[[\"oxygen\"]]"})
  void a_medium_that_is_no_word_is_refused(String json) throws Exception {
    Object medium = MAPPER.readValue(json, Object.class);
    for (Map.Entry<String, Map<String, Object>> each :
        Map.of("/mating", ENDS, "/run", RUN, "/identify", HAND).entrySet()) {
      Map<String, Object> question = new LinkedHashMap<>(each.getValue());
      question.put("medium", medium);
      assertRefused(each.getKey(), question, "medium");
    }
    Map<String, Object> job = job();
    job.put("conditions", Map.of("medium", medium));
    assertRefused("/select", Map.of("job", job), "conditions.medium");
    assertRefused(
        "/interview", Map.of("job", Map.of("conditions", Map.of("medium", medium))), "job");
  }

  private static void assertRefused(String path, Map<String, Object> question, String field)
      throws Exception {
    HttpResponse<String> answer = till.post(path, question);
    assertThat(answer.statusCode()).as(path + answer.body()).isEqualTo(422);
    JsonNode told = MAPPER.readTree(answer.body());
    assertThat(told.path("field").asText()).as(path + answer.body()).isEqualTo(field);
    assertThat(told.path("detail").asText()).as(path).startsWith(field + ": ").contains("medium");
  }

  @Test
  void a_part_that_the_stock_does_not_have_is_told_with_its_place() throws Exception {
    HttpResponse<String> answer = till.post(
        "/run",
        Map.of(
            "supply", "90 psig",
            "flow", "20 scfm",
            "elements", List.of(Map.of("part", "S-10"), Map.of("part", "NOPE"))));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(MAPPER.readTree(answer.body()).path("detail").asText())
        .startsWith("elements[2].part: \"NOPE\" is no part of the stock that air goes through;")
        .doesNotContain("it has no parts");
  }

  @Test
  void a_field_that_stands_twice_is_told() throws Exception {
    assertThat(till.post("/mating", "{\"one\": \"a\", \"one\": \"b\"}").body())
        .contains("is no JSON, or has a field twice, at line 1, column 19");
  }

  /** It was a fault of the program, 500, and ended a service at its start. */
  @Test
  void a_stock_that_does_not_answer_is_told_as_such() throws Exception {
    Database away = Database.open(Database.embedded(folder.resolve("away")));
    try (CounterService other = CounterService.start(
        Settings.usual(),
        Stock.of(away, Clock.systemUTC()),
        Shelf.of(away, Clock.systemUTC()))) { // no shop yet
      Till asks = new Till(other.port());
      for (HttpResponse<String> answer :
          List.of(asks.get("/stock/catalogue.json"), asks.post("/identify", HAND))) {
        assertThat(answer.statusCode()).isEqualTo(503);
        assertThat(answer.headers().firstValue("Retry-After")).isPresent();
        assertThat(answer.body()).contains("urn:airfit:stock", "holds no shop yet");
      }
      assertThat(asks.get("/health").statusCode()).isEqualTo(200);
      assertThat(asks.post("/mating", ENDS).statusCode()).isEqualTo(200);
    } finally {
      away.close();
    }
  }

  /** A tool of fixed flow at the slipway gets its air there, but at less than it needs. */
  @Test
  void air_at_too_little_pressure_is_not_called_enough() throws Exception {
    String ring = Files.readString(Path.of("..", "networks", "ferry-lane-ring.csv"))
        .replace("impact wrench,25 scfm,90 psig,yes", "impact wrench,25 scfm,90 psig,no");
    JsonNode answer =
        MAPPER.readTree(till.post("/network", Map.of("network", ring)).body());
    assertThat(answer.path("kind").asText()).isEqualTo("solved");
    assertThat(answer.path("headline").asText())
        .startsWith("All at once: too little at 1 of 6 drops: slipway.")
        .contains("Weakest is slipway with ");
    assertThat(answer.path("text").asText()).contains("too little at 1 of 6 drops: slipway.");
    List<String> titles = answer.path("cautions").findValuesAsText("title");
    assertThat(titles)
        .contains("Energy isolation")
        .anyMatch(title -> title.contains("Air too fast"));
    assertThat(titles.get(titles.size() - 1)).isEqualTo("Before anyone connects this");
  }

  @Test
  void the_answers_are_those_of_the_page() throws Exception {
    Map<String, Object> hand = new LinkedHashMap<>(HAND);
    hand.put("set", ReferenceSetFile.toObject(catalogue.profiles()));
    assertSame(till.post("/identify", whole(HAND)), Calls.answer("identify", hand));
    assertSame(till.post("/mating", whole(ENDS)), Calls.answer("willItGo", ENDS));
    Map<String, Object> run = new LinkedHashMap<>(RUN);
    run.put("catalogue", fields(EXAMPLES.resolve("catalogue.json")));
    assertSame(till.post("/run", whole(RUN)), Calls.answer("run", run));
    Map<String, Object> select = new LinkedHashMap<>();
    select.put("job", fields(EXAMPLES.resolve("weak-sander.json")));
    select.put(
        "files", Map.of("catalogue.json", Files.readString(EXAMPLES.resolve("catalogue.json"))));
    HttpResponse<String> chosen = till.post("/select", whole(Map.of("job", job())));
    assertSame(chosen, Calls.answer("select", select));
    assertThat(Till.object(chosen)).containsEntry("kind", "fits");
    assertThat(till.post("/select", whole(select)).body()).isEqualTo(chosen.body());
  }

  private static Map<String, Object> whole(Map<String, Object> question) {
    Map<String, Object> whole = new LinkedHashMap<>(question);
    whole.put("whole", true);
    return whole;
  }

  /** What is left out are drawings, and rules that nobody needs to act on; no caution, no part, no price. */
  @Test
  void a_till_gets_what_it_needs() throws Exception {
    String whole = till.post("/select", whole(Map.of("job", job()))).body();
    String needed = till.post("/select", Map.of("job", job())).body();
    assertThat(needed.length()).isLessThan(whole.length() / 2);
    JsonNode all = MAPPER.readTree(whole);
    JsonNode some = MAPPER.readTree(needed);
    assertThat(all.findValues("picture")).isNotEmpty();
    assertThat(some.findValues("picture")).isEmpty();
    assertThat(all.findValuesAsText("outcome")).contains("met", "doesNotApply");
    assertThat(some.findValuesAsText("outcome"))
        .isNotEmpty()
        .containsExactlyElementsOf(all.findValuesAsText("outcome").stream()
            .filter(outcome -> !outcome.equals("met") && !outcome.equals("doesNotApply"))
            .toList());
    for (String kept : List.of("cautions", "parts", "price", "open", "losses", "headline")) {
      assertThat(some.findValues(kept)).as(kept).isEqualTo(all.findValues(kept));
    }
    assertThat(till.post("/run", "{\"whole\": \"yes\"}").body())
        .contains("\"field\":\"whole\"", "true, false");
  }

  /** Whoever asks for anything but compressed air, wherever, is told why not, what it does, and whom to ask. */
  @ParameterizedTest
  @ValueSource(strings = {"breathing air", "oxygen", "N2", "water", "welding gas", "argon"})
  void a_refusal_is_an_answer_with_its_cautions(String medium) throws Exception {
    Map<String, Map<String, Object>> questions = new LinkedHashMap<>();
    for (Map.Entry<String, Map<String, Object>> each :
        Map.of("/identify", HAND, "/mating", ENDS, "/run", RUN).entrySet()) {
      Map<String, Object> question = new LinkedHashMap<>(each.getValue());
      question.put("medium", medium);
      questions.put(each.getKey(), question);
    }
    Map<String, Object> run = new LinkedHashMap<>(RUN);
    run.put("supply", Map.of("pressure", "90 psig", "medium", medium));
    questions.put("/run of a supply", run);
    Map<String, Object> hand = new LinkedHashMap<>(HAND);
    hand.put("set", "record,medium\nset," + medium + "\n");
    questions.put("/identify with a set", hand);
    hand = new LinkedHashMap<>(HAND);
    hand.put("set", Map.of("set", "x", "profiles", List.of(Map.of("medium", medium))));
    questions.put("/identify with a set as an object", hand);
    Map<String, Object> job = job();
    job.put("conditions", Map.of("medium", medium));
    questions.put("/select", Map.of("job", job));
    questions.put("/interview", Map.of("job", job));
    questions.put("/network", Map.of("network", "record,name,medium\nnetwork,n," + medium + "\n"));
    for (String path :
        List.of("/day", "/diagnosis", "/water", "/inventory", "/pricelist", "/card")) {
      questions.put(path, Map.of("file", Map.of("medium", medium)));
    }
    questions.put("/leaks", Map.of("file", "record,medium\nplant," + medium + "\n"));
    questions.put("/condensate", Map.of("medium", medium));
    questions.put("/leak", Map.of("medium", medium));
    if (!medium.equals("argon") && !medium.equals("N2")) {
      questions.put(
          "/interview with an answer",
          Map.of("answers", List.of(Map.of("topic", "medium", "answer", medium))));
    }
    for (Map.Entry<String, Map<String, Object>> each : questions.entrySet()) {
      HttpResponse<String> answer = till.post(each.getKey().replaceAll(" .*", ""), each.getValue());
      assertThat(answer.statusCode()).as(each.getKey() + answer.body()).isEqualTo(200);
      JsonNode told = MAPPER.readTree(answer.body());
      assertThat(told.path("kind").asText()).as(each.getKey()).isEqualTo("refused");
      assertThat(told.path("headline").asText())
          .startsWith("airfit advises on compressed air for tools only, not on ");
      List<String> titles = told.path("cautions").findValuesAsText("title");
      assertThat(titles).as(each.getKey()).hasSize(2);
      assertThat(titles.get(0)).startsWith("Not for ");
      assertThat(titles.get(1)).isEqualTo("Before anyone connects this");
    }
    Map<String, Object> air = new LinkedHashMap<>(RUN);
    air.put("medium", "compressed air");
    assertThat(till.post("/run", air).body()).isEqualTo(till.post("/run", RUN).body());
  }

  private static void assertSame(HttpResponse<String> answer, Map<String, Object> wanted)
      throws Exception {
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    assertThat(MAPPER.readTree(answer.body())).isEqualTo(MAPPER.readTree(Json.write(wanted)));
  }

  private static Map<String, Object> with(
      Map<String, Object> question, String field, Object value) {
    Map<String, Object> changed = new LinkedHashMap<>(question);
    changed.put(field, value);
    return changed;
  }

  /** A file of the examples, and those that it names. */
  private static Map<String, Object> file(String path, String... named) throws Exception {
    Path examples = Path.of("..");
    Map<String, Object> files = new LinkedHashMap<>();
    for (String each : named) {
      Path beside = examples.resolve(each);
      files.put(String.valueOf(beside.getFileName()), Files.readString(beside));
    }
    Map<String, Object> question = new LinkedHashMap<>();
    question.put("file", Files.readString(examples.resolve(path)));
    question.put("files", files);
    return question;
  }

  /** A check of a price list that draws one job: it is answered in the time that a service has. */
  private static Map<String, Object> withOneJob(Map<String, Object> check) {
    String text = String.valueOf(check.get("file"));
    assertThat(text).contains("\"jobs\": 60");
    return with(check, "file", text.replace("\"jobs\": 60", "\"jobs\": 1"));
  }

  /**
   * What is asked at a desk is what the calls answer; text and page come where they are asked for.
   */
  @Test
  void files_are_answered_as_by_the_calls() throws Exception {
    Map<String, String> calls = new LinkedHashMap<>();
    calls.put("/diagnosis", "diagnosis");
    calls.put("/water", "water");
    calls.put("/leaks", "leaks");
    calls.put("/inventory", "inventory");
    calls.put("/pricelist", "priceList");
    calls.put("/condensate", "condensate");
    calls.put("/leak", "leak");
    for (Map.Entry<String, String> each : calls.entrySet()) {
      Map<String, Object> question =
          Objects.requireNonNull(questions().get("POST " + each.getKey())).get(0);
      assertSame(
          till.post(each.getKey(), with(question, "only", List.of("text", "page"))),
          Calls.answer(each.getValue(), question));
      assertSame(
          till.post(each.getKey(), question),
          Calls.answer(each.getValue(), with(question, "only", List.of())));
    }
  }

  /** The stock of the house is the catalogue of a file that names it, and of a job that names none. */
  @Test
  void a_file_may_name_the_stock_of_the_shop() throws Exception {
    Map<String, Object> cards = Till.object(till.post("/card", Map.of("file", job())));
    assertThat(cards).containsEntry("kind", "answered");
    assertThat(String.valueOf(cards.get("inShort"))).contains("What arrives at the tool");
    Map<String, Object> inventory = fields(Path.of("..", "shops", "weir-street", "inventory.json"));
    inventory.put("catalogue", "stock.json");
    HttpResponse<String> answer = till.post("/inventory", Map.of("file", inventory));
    assertThat(answer.body()).doesNotContain("is not here");
  }

  /** Questions to every path, by method and path. */
  private static Map<String, List<Map<String, Object>>> questions() throws Exception {
    Map<String, List<Map<String, Object>>> questions = new LinkedHashMap<>();
    for (String path : List.of(
        "/health",
        "/openapi.json",
        "/stock/catalogue.json",
        "/stock/DR-7",
        "/stock/none",
        "/reservations/r-1",
        "/reservations/none",
        "/",
        "/metrics")) {
      questions.put("GET " + path, List.of(Map.of()));
    }
    questions.put(
        "POST /identify",
        List.of(
            HAND,
            Map.of("socketOnly", true),
            Map.of(),
            Map.of("working", true, "readings", Map.of("bore", "7.7 mm")),
            Map.of("caliper", "x")));
    questions.put(
        "POST /mating",
        List.of(
            ENDS,
            Map.of("one", "3/8 NPT male"),
            Map.of("one", "1/4 NPT male", "other", "1/2 NPT female"),
            Map.of("one", "1/4 NPT male", "other", "1/2 NPT female", "medium", "oxygen")));
    questions.put("POST /run", List.of(RUN, whole(RUN), Map.of("supply", "90")));
    questions.put(
        "POST /select",
        List.of(
            Map.of("job", job(), "working", true),
            whole(Map.of("job", job())),
            Map.of("job", Map.of()),
            Map.of("job", fields(Path.of("..", "jobs", "counter", "nitrogen.json")))));
    questions.put(
        "POST /interview",
        List.of(
            Map.of(),
            Map.of("job", job()),
            Map.of("job", job(), "answers", List.of(Map.of("topic", "place", "notKnown", true))),
            Map.of("answers", List.of(Map.of("topic", "medium", "answer", "oxygen"))),
            Map.of("answers", List.of(Map.of("topic", "place", "answer", "somewhere")))));
    questions.put("POST /network", List.of(Map.of("network", network()), Map.of("network", "x")));
    questions.put("POST /day", List.of(file("days/lock-street/smithy.json"), Map.of("file", 1)));
    questions.put("POST /diagnosis", List.of(file("diagnoses/saddler-lane/slow-grinder.json")));
    questions.put("POST /water", List.of(file("treatments/kiln-row/paint-shop.json")));
    questions.put(
        "POST /leaks",
        List.of(
            file("jobs/joinery/leaks.csv"),
            with(file("jobs/joinery/leaks.csv"), "only", List.of("page"))));
    questions.put(
        "POST /inventory",
        List.of(file(
            "shops/weir-street/inventory.json",
            "shops/weir-street/catalogue.json",
            "sets/workshop.csv")));
    questions.put(
        "POST /pricelist",
        List.of(withOneJob(file(
            "shops/canal-row/check.json",
            "shops/canal-row/price-list.json",
            "shops/canal-row/profiles.csv"))));
    questions.put(
        "POST /card",
        List.of(
            Map.of("file", job()), Map.of("file", Map.of()), Map.of("file", "{\"airfitJob\": 2}")));
    questions.put("POST /condensate", List.of(WATER, with(WATER, "medium", "oxygen"), Map.of()));
    questions.put("POST /leak", List.of(LEAK, with(LEAK, "hole", "wide")));
    questions.put(
        "POST /reservations",
        List.of(
            Map.of("reference", "r-1", "pieces", Map.of("DR-7", 1)),
            Map.of("reference", "r-1", "pieces", Map.of("DR-7", 1)),
            Map.of("reference", "r-2", "pieces", Map.of("DR-7", 100))));
    questions.put("POST /reservations/r-1/sell", List.of(Map.of()));
    questions.put("POST /reservations/r-1/release", List.of(Map.of()));
    return questions;
  }

  @Test
  void the_number_of_an_article_may_hold_a_slash_or_per_cent() throws Exception {
    HttpResponse<String> slash = till.get("/stock/A%2F10");
    assertThat(slash.body()).contains("\"number\":\"A/10\"", "\"available\":3");
    assertThat(till.get("/stock/A%2f10").body()).isEqualTo(slash.body());
    assertThat(till.get("/stock/50%25%20off").body()).contains("\"number\":\"50% off\"");
    assertThat(till.get("/stock/A/10").statusCode()).isEqualTo(404);
    assertThat(till.get("/stock/A%252F10").statusCode()).as("decoded once").isEqualTo(404);
  }

  @Test
  void an_unknown_field_is_told_with_all_that_are_known() throws Exception {
    for (String path : List.of("/identify", "/mating", "/run", "/select")) {
      HttpResponse<String> answer = till.post(
          path,
          path.equals("/mating")
              ? "{\"one\": \"1/4 NPT male\", \"other\": \"G 1/4 female\", \"colour\": 1}"
              : path.equals("/run")
                  ? "{\"supply\": \"90 psig\", \"flow\": \"20 scfm\", \"elements\": [{}], \"colour\": 1}"
                  : "{\"job\": {}, \"colour\": 1}"
                      .replace(path.equals("/identify") ? "\"job\": {}, " : "#", ""));
      JsonNode problem = MAPPER.readTree(answer.body());
      assertThat(problem.path("field").asText()).as(path).isEqualTo("colour");
      assertThat(problem.path("accepted").asText())
          .as(path)
          .endsWith(path.equals("/select") ? ", whole" : ", medium, whole");
      assertThat(problem.path("detail").asText())
          .endsWith(problem.path("accepted").asText());
    }
  }

  @Test
  void what_no_plant_has_and_a_caliper_that_is_none_are_refused_with_their_field()
      throws Exception {
    Map<String, Object> run = new LinkedHashMap<>(RUN);
    run.put("flow", "1e200 scfm");
    HttpResponse<String> answer = till.post("/run", run);
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("\"field\":\"flow\"", "free-air flow must be 0 or in [1e-9, 1e6] L/s ANR");
    HttpResponse<String> caliper = till.post("/identify", Map.of("caliper", "digital calliper"));
    assertThat(caliper.statusCode()).as(caliper.body()).isEqualTo(422);
    assertThat(caliper.body())
        .contains("\"field\":\"caliper\"", "accepted: ", "digital caliper 0.01 mm");
  }

  @Test
  void what_the_openapi_document_tells_is_what_is_served() throws Exception {
    JsonNode document = MAPPER.readTree(till.get("/openapi.json").body());
    TreeSet<String> documented = new TreeSet<>();
    for (Map.Entry<String, JsonNode> path : document.path("paths").properties()) {
      path.getValue()
          .fieldNames()
          .forEachRemaining(
              method -> documented.add(method.toUpperCase(Locale.ROOT) + " " + path.getKey()));
    }
    TreeSet<String> served = new TreeSet<>();
    for (Endpoint endpoint : Endpoint.values()) {
      served.add(endpoint.method() + " " + endpoint.path());
    }
    assertThat(documented).isEqualTo(served);

    TreeSet<String> asked = new TreeSet<>();
    for (Map.Entry<String, List<Map<String, Object>>> each : questions().entrySet()) {
      List<String> words = List.of(each.getKey().split(" ", 2));
      Endpoint endpoint = Endpoint.find(words.get(0), words.get(1)).endpoint();
      asked.add(endpoint.method() + " " + endpoint.path());
      JsonNode told =
          document.path("paths").path(endpoint.path()).path(words.get(0).toLowerCase(Locale.ROOT));
      for (Map<String, Object> question : each.getValue()) {
        HttpResponse<String> answer =
            words.get(0).equals("GET") ? till.get(words.get(1)) : till.post(words.get(1), question);
        String where = each.getKey() + " " + question + " → " + answer.statusCode();
        JsonNode response = told.path("responses").path(String.valueOf(answer.statusCode()));
        assertThat(response.isObject()).as(where).isTrue();
        String type =
            answer.headers().firstValue("Content-Type").orElseThrow().replaceAll(";.*", "");
        JsonNode media = response.path("content").path(type);
        assertThat(media.isObject()).as(where + " " + type).isTrue();
        if (type.endsWith("json")) {
          assertValid(document, media.path("schema"), answer.body(), where);
        }
        if (answer.statusCode() < 300 && words.get(0).equals("POST")) {
          JsonNode schema =
              told.path("requestBody").path("content").path("application/json").path("schema");
          assertValid(document, schema, Json.write(question), where + ", the question");
        }
      }
    }
    assertThat(asked).as("every path was asked").isEqualTo(served);
  }

  @Test
  void what_is_refused_of_any_question_is_documented_too() throws Exception {
    JsonNode document = MAPPER.readTree(till.get("/openapi.json").body());
    assertThat(document.at("/paths/~1/get/responses/404").isObject())
        .as("no page is served")
        .isTrue();
    for (JsonNode path : document.path("paths")) {
      for (JsonNode operation : path) {
        JsonNode refused = operation.path("responses").path("default").path("content");
        assertThat(refused.has("application/problem+json")).isTrue();
        assertThat(till.get("/reservations").statusCode()).isEqualTo(405);
        assertValid(
            document,
            refused.path("application/problem+json").path("schema"),
            till.get("/reservations").body(),
            "405");
      }
    }
  }

  private static void assertValid(JsonNode document, JsonNode schema, String json, String where)
      throws Exception {
    ObjectNode root = MAPPER.createObjectNode();
    root.set("components", document.path("components"));
    root.set("$ref", schema.path("$ref"));
    assertThat(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(root)
            .validate(MAPPER.readTree(json)))
        .as(where)
        .isEmpty();
  }

  @Test
  void a_problem_names_field_and_accepted_values() throws Exception {
    HttpResponse<String> answer = till.post(
        "/run",
        Map.of("supply", "90", "flow", "20 scfm", "elements", List.of(Map.of("part", "S-10"))));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
    assertThat(Till.object(answer)).contains(entry("field", "supply"), entry("status", 422));
    assertThat(String.valueOf(Till.object(answer).get("accepted"))).contains("psig");
    answer = till.post("/select", "{\"job\": {\"airfitJob\": 2}, \"mots\": 1}");
    assertThat(Till.object(answer))
        .containsEntry("field", "mots")
        .containsEntry("accepted", "job, files, most, working, whole");
    Map<String, Object> job = job();
    job.remove("airfitJob");
    assertThat(Till.object(till.post("/select", Map.of("job", job))))
        .containsEntry("status", 422)
        .containsEntry("field", "job");
    for (String path : List.of("/stock/%2e", "/reservations/%2e")) {
      assertThat(till.get(path).statusCode()).as(path).isEqualTo(400);
      JsonNode responses = MAPPER.readTree(till.get("/openapi.json").body()).path("paths");
      assertThat(responses
              .path(path.startsWith("/stock") ? "/stock/{number}" : "/reservations/{reference}")
              .path("get")
              .path("responses")
              .has("400"))
          .isTrue();
    }
    job = job();
    job.put("catalogue", "../../etc/passwd");
    answer = till.post("/select", Map.of("job", job));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("passwd: is not here; give it among the files, or name stock.json");
    answer = till.post("/reservations", "{\"reference\": \"x\", \"pieces\": {\"DR-7\": 0}}");
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("pieces of DR-7 must be in [1, 1000000], were 0");
  }

  /** What is not on the shelf, or is held, is proposed to nobody; what the job names the customer has. */
  @Test
  void parts_that_are_not_there_are_not_proposed(@TempDir Path own) throws Exception {
    Path file = EXAMPLES.resolve("catalogue.json");
    try (Database few = Database.open(Database.embedded(own))) {
      Stock stock = Shops.stocked(few, file);
      Shelf shelf = Shelf.of(few, Clock.systemUTC());
      Answers answers = new Answers(stock, shelf);
      Map<String, Object> question = Map.of("job", job());
      Map<String, Object> before = answers.answer(Endpoint.SELECT, "", question).object();
      assertThat(before).containsEntry("kind", "fits").doesNotContainKey("leftOut");
      String best = best(before);
      String id = catalogue.parts().parts().stream()
          .map(Part::id)
          .filter(each -> best.contains("\"" + each + "\"") && !isNamed(each))
          .findFirst()
          .orElseThrow();

      shelf.reserve("all of it", Map.of(id, 9));
      Map<String, Object> held = answers.answer(Endpoint.SELECT, "", question).object();
      assertThat(Json.write(held)).doesNotContain("\"" + id + "\"");
      assertThat(held.get("leftOut"))
          .isEqualTo(Map.of(
              "number",
              1,
              "sentence",
              "1 article of the catalogue was left out: no piece is on the shelf that is not held for"
                  + " somebody."));
      assertThat(answers.answer(Endpoint.INTERVIEW, "", question).object())
          .containsEntry("leftOut", held.get("leftOut"));
      assertThat(Json.write(answers.answer(Endpoint.CATALOGUE, "", Map.of()).object()))
          .contains("\"" + id + "\"");

      shelf.release("all of it");
      assertThat(answers.answer(Endpoint.SELECT, "", question).object()).isEqualTo(before);
      shelf.reserve("sold", Map.of(id, 9));
      shelf.sell("sold");
      assertThat(answers.answer(Endpoint.SELECT, "", question).object()).isEqualTo(held);
    }
  }

  /** All of a socket is held, and the job names it: the customer has it. */
  @Test
  void a_job_is_answered_the_same_as_object_as_text_and_as_file(@TempDir Path own)
      throws Exception {
    try (Database few = Database.open(Database.embedded(own))) {
      Stock stock = Shops.stocked(few, EXAMPLES.resolve("catalogue.json"));
      Shelf shelf = Shelf.of(few, Clock.systemUTC());
      Answers answers = new Answers(stock, shelf);
      shelf.reserve("all of it", Map.of("S-10", 9));
      String coupling = "\"name\": \"coupling at the outlet\"}";
      String text = Files.readString(EXAMPLES.resolve("weak-sander.json"))
          .replace("\"catalogue\": \"catalogue.json\",", "");
      String named = text.replace(coupling, coupling.replace("}", ", \"socket\": \"S-10\"}"));
      assertThat(named).hasSizeGreaterThan(text.length());
      Map<String, Object> expected = answers
          .answer(Endpoint.SELECT, "", Map.of("job", MAPPER.readValue(named, Map.class)))
          .object();
      assertThat(expected).containsEntry("kind", "fits").doesNotContainKey("leftOut");
      Map<String, String> files = Map.of("mine.json", named);
      for (Map<String, Object> question : List.of(
          Map.<String, Object>of("job", named),
          Map.<String, Object>of("job", "mine.json", "files", files),
          Map.<String, Object>of("job", "folder/mine.json", "files", files))) {
        assertThat(answers.answer(Endpoint.SELECT, "", question).object()).isEqualTo(expected);
      }
      assertThat(answers.answer(Endpoint.SELECT, "", Map.of("job", text)).object())
          .containsKey("leftOut");
      for (String wrong : List.of("{}", "{", "none.json", "[1]", named.replace("}", ""))) {
        assertThatThrownBy(() -> answers.answer(Endpoint.SELECT, "", Map.of("job", wrong)))
            .as(wrong)
            .isInstanceOf(Problem.class)
            .hasMessageNotContaining("stock.json");
      }
    }
  }

  /** Only the fields part, socket and plug name an article; a kind or a number that looks like one does not. */
  @Test
  void an_article_whose_id_is_any_other_word_of_the_job_is_left_out(@TempDir Path own)
      throws Exception {
    try (Database few = Database.open(Database.embedded(own))) {
      Stock stock = Shops.stocked(few, EXAMPLES.resolve("catalogue.json"));
      Answers answers = new Answers(stock, Shelf.of(few, Clock.systemUTC()));
      stock.load("none.csv", new StringReader("""
              kind,id,name,price,quantity
              drain,hose,Drain,4.00,0
              drain,1042,Drain,4.00,0
              drain,dry,Drain,4.00,0
              """));
      for (Endpoint endpoint : List.of(Endpoint.SELECT, Endpoint.INTERVIEW)) {
        assertThat(MAPPER
                .valueToTree(answers.answer(endpoint, "", Map.of("job", job())).object())
                .path("leftOut")
                .path("number")
                .asInt())
            .isEqualTo(3);
      }
    }
  }

  private static String best(Map<String, Object> answer) throws Exception {
    return MAPPER.readTree(Json.write(answer)).path("proposals").path(0).toString();
  }

  private static boolean isNamed(String id) {
    try {
      return Json.write(job()).contains("\"" + id + "\"");
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** By its reference a reservation is read, sold and released: it must be fit for a path. */
  @ParameterizedTest
  @ValueSource(strings = {"a/b", "a\\b", "50%", "a\u0007", ".", ".."})
  void a_reference_that_no_path_can_hold_is_refused(String reference) throws Exception {
    HttpResponse<String> answer =
        till.post("/reservations", Map.of("reference", reference, "pieces", Map.of("DR-7", 1)));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(Till.object(answer)).containsEntry("field", "reference").containsKey("accepted");
  }

  @Test
  void two_tills_never_get_the_last_piece() throws Exception {
    Stock stock = Stock.of(database, Clock.systemUTC());
    stock.load("some.csv", new StringReader("kind,id,name,quantity\ndrain,DR-3,Drain,3\n"));
    ExecutorService threads = Executors.newFixedThreadPool(40);
    List<Callable<Integer>> tills = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      Map<String, Object> wanted = Map.of("reference", "till " + i, "pieces", Map.of("DR-3", 1));
      tills.add(() -> {
        int status = till.post("/reservations", wanted).statusCode();
        for (int again = 0; status == 503 && again < 50; again++) {
          Thread.sleep(20);
          status = till.post("/reservations", wanted).statusCode();
        }
        return status;
      });
    }
    List<Integer> statuses = new ArrayList<>();
    for (Future<Integer> status : threads.invokeAll(tills)) {
      statuses.add(status.get());
    }
    threads.shutdown();
    assertThat(statuses).filteredOn(status -> status == 201).hasSize(3);
    assertThat(statuses).filteredOn(status -> status == 409).hasSize(37);
    assertThat(Till.object(till.get("/stock/DR-3")))
        .containsEntry("quantity", 3)
        .containsEntry("reserved", 3)
        .containsEntry("available", 0);
  }

  @Test
  void hostile_questions_are_refused_cheaply_and_tell_nothing() throws Exception {
    String deep = "{\"job\": " + "[".repeat(33) + "]".repeat(33) + "}";
    Map<String, HttpResponse<String>> answers = new LinkedHashMap<>();
    answers.put("400 deep", till.post("/select", deep));
    answers.put("400 twice", till.post("/mating", "{\"one\": \"a\", \"one\": \"b\"}"));
    answers.put("400 list", till.post("/mating", "[]"));
    answers.put("400 half", till.post("/mating", "{\"one\": "));
    answers.put("400 more", till.post("/mating", "{} {}"));
    answers.put("400 empty", till.post("/mating", ""));
    answers.put("400 long number", till.post("/select", "{\"most\": 1" + "0".repeat(2000) + "}"));
    answers.put("422 infinite", till.post("/select", "{\"job\": {\"a\": [1, 1e999]}}"));
    answers.put(
        "422 script",
        till.post("/mating", "{\"one\": \"<script>alert(1)</script>\", \"other\": \"x\"}"));
    answers.put(
        "422 sql",
        till.post("/mating", "{\"one\": \"'; DROP TABLE article; --\", \"other\": \"x\"}"));
    answers.put("404 sql", till.get("/stock/%27;%20DROP%20TABLE%20article;--"));
    answers.put(
        "415 form",
        till.send(till.to("/mating")
            .header("Content-Type", "text/plain")
            .POST(HttpRequest.BodyPublishers.ofString("{}"))));
    answers.put(
        "415 none", till.send(till.to("/mating").POST(HttpRequest.BodyPublishers.ofString("{}"))));
    answers.put(
        "415 zipped",
        till.send(till.to("/mating")
            .header("Content-Type", "application/json")
            .header("Content-Encoding", "gzip")
            .POST(HttpRequest.BodyPublishers.ofString("{}"))));
    answers.put("400 path", till.get("/../../etc/passwd"));
    answers.put("404 other", till.get("/admin"));
    answers.put("400 coded path", till.get("/%2e%2e/%2e%2e/etc/passwd"));
    answers.put("404 slash", till.get("/stock/a%2Fb"));
    answers.put("404 path in a number", till.get("/stock/..%2F..%2Fetc%2Fpasswd"));
    answers.put("404 coded slash of the path", till.get("/stock%2FDR-7"));
    answers.put("405 get", till.get("/mating"));
    answers.put(
        "405 options",
        till.send(till.to("/mating")
            .header("Origin", "http://other.example")
            .header("Access-Control-Request-Method", "POST")
            .method("OPTIONS", HttpRequest.BodyPublishers.noBody())));
    answers.put("405 delete", till.send(till.to("/stock/DR-7").DELETE()));
    for (Map.Entry<String, HttpResponse<String>> each : answers.entrySet()) {
      HttpResponse<String> answer = each.getValue();
      assertThat(answer.statusCode() + " " + each.getKey().substring(4))
          .as(answer.body())
          .isEqualTo(each.getKey());
      assertThat(answer.headers().firstValue("Content-Type"))
          .as(each.getKey())
          .contains("application/problem+json");
      assertThat(answer.body())
          .as(each.getKey())
          .doesNotContain(
              "Exception", "org.", "java", "jetty", "jackson", "Stream", "/work", "\tat ");
      assertThat(answer.headers().map().keySet())
          .as(each.getKey())
          .noneMatch(name -> name.startsWith("access-control") || name.equals("server"));
    }
    assertThat(answers.get("405 get").headers().firstValue("Allow")).contains("POST");
    assertThat(Objects.requireNonNull(answers.get("422 infinite")).body())
        .contains("\"field\":\"job.a[2]\"");
    assertThat(till.get("/stock/DR-7").statusCode()).isEqualTo(200);
  }

  @Test
  void head_says_what_get_would_without_its_body() throws Exception {
    for (String path :
        List.of("/health", "/metrics", "/openapi.json", "/stock/DR-7", "/stock/none", "/admin")) {
      HttpResponse<String> whole = till.get(path);
      HttpResponse<String> head =
          till.send(till.to(path).method("HEAD", HttpRequest.BodyPublishers.noBody()));
      assertThat(head.statusCode()).as(path).isEqualTo(whole.statusCode());
      assertThat(head.headers().firstValue("Content-Type"))
          .as(path)
          .isEqualTo(whole.headers().firstValue("Content-Type"));
      assertThat(head.headers().firstValueAsLong("Content-Length").orElse(0L))
          .as(path)
          .isPositive();
      assertThat(head.body()).as(path).isEmpty();
    }
    assertThat(till.send(till.to("/mating").method("HEAD", HttpRequest.BodyPublishers.noBody()))
            .headers()
            .firstValue("Allow"))
        .contains("POST");
    assertThat(till.send(till.to("/stock/DR-7").DELETE()).headers().firstValue("Allow"))
        .contains("GET, HEAD");
  }

  @Test
  void a_question_that_is_too_long_is_refused_without_reading_on() throws Exception {
    String told = tooLong("Content-Length: 10485760", new byte[0]);
    assertThat(told)
        .startsWith("HTTP/1.1 413")
        .contains("at most 1048576 bytes", "Connection: close");
    byte[] chunk = new byte[(1 << 20) + 1];
    String size = Integer.toHexString(chunk.length) + "\r\n";
    byte[] body =
        Arrays.copyOf(size.getBytes(StandardCharsets.US_ASCII), size.length() + chunk.length);
    assertThat(tooLong("Transfer-Encoding: chunked", body)).startsWith("HTTP/1.1 413");
  }

  /** Sends no more than is told, as a client that is answered amid its sending may never read the answer. */
  private static String tooLong(String length, byte[] body) throws Exception {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), service.port())) {
      socket.setSoTimeout((int) Till.HANGS.toMillis());
      String head =
          "POST /mating HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n";
      socket
          .getOutputStream()
          .write((head + length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
      socket.getOutputStream().write(body);
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void every_answer_has_the_headers_that_keep_others_out() throws Exception {
    for (String path : List.of("/health", "/", "/metrics", "/none")) {
      HttpResponse<String> answer = till.get(path);
      assertThat(answer.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
      assertThat(answer.headers().firstValue("Referrer-Policy")).contains("no-referrer");
      assertThat(answer.headers().firstValue("Cache-Control")).contains("no-store");
      assertThat(answer.headers().firstValue("X-Frame-Options")).contains("DENY");
      assertThat(answer.headers().firstValue("Content-Security-Policy").orElse(""))
          .contains("frame-ancestors 'none'");
    }
    assertThat(till.get("/").body()).contains("<title>counter");
  }

  @Test
  void the_log_and_the_metrics_hold_no_word_of_the_callers() throws Exception {
    List<String> lines = new CopyOnWriteArrayList<>();
    Handler notes = new Handler() {
      @Override
      public void publish(LogRecord entry) {
        // The line of an answer to the test before may be late.
        if (!entry.getMessage().startsWith("page ") && !entry.getMessage().startsWith("none ")) {
          lines.add(entry.getMessage());
        }
      }

      @Override
      public void flush() {}

      @Override
      public void close() {}
    };
    Logger logger = Logger.getLogger("org.airfit.counter");
    logger.addHandler(notes);
    logger.setUseParentHandlers(false);
    logger.setLevel(Level.ALL);
    try {
      Map<String, Object> job = job();
      job.put("customer", "Mrs Secret");
      till.post("/select?secret=1", Map.of("job", job));
      till.get("/stock/secret");
      till.get("/reservations/secret");
      till.post("/reservations/secret/sell", "{}");
      for (int wait = 0; lines.size() < 4 && wait < 500; wait++) {
        Thread.sleep(
            10); // a line is written when the answer is sent, which the caller may have before
      }
    } finally {
      logger.removeHandler(notes);
    }
    assertThat(lines).hasSize(4);
    assertThat(lines).noneMatch(line -> line.toLowerCase(Locale.ROOT).contains("secret"));
    assertThat(lines.get(0)).matches("select 200 [0-9]+ ms [0-9]+ in [0-9]+ out");
    assertThat(lines.get(1)).startsWith("stock 404 ");
    String metrics = till.get("/metrics").body();
    assertThat(metrics)
        .contains("airfit_questions_total{endpoint=\"select\",status=\"200\"}")
        .contains("airfit_answer_seconds_count{endpoint=\"stock\"}")
        .doesNotContain("secret", "Secret");
  }
}
