package org.airfit.counter;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.airfit.air.AirState;
import org.airfit.calls.Calls;
import org.airfit.files.CatalogueFile;
import org.airfit.files.Csv;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.Json;
import org.airfit.files.NetworkFile;
import org.airfit.files.ReferenceSetFile;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.InterviewSoFar;
import org.airfit.jobsheet.NetworkSheet;
import org.airfit.jobsheet.NetworkText;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Conduit;
import org.airfit.measure.Instrument;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.safety.SafetyRules;
import org.airfit.select.PossibleAnswer;
import org.airfit.select.Question;
import org.airfit.select.Selection;

/**
 * Questions with their answers, made before anybody else asks: by the calls in one thread, each held against what the
 * library itself computes. Those whose answer tells a title have a mark in it, by which a mixed-up answer is found.
 */
final class LoadCases {

  /** Stands for the mark of a question, which is as long. */
  static final String MARK = "mark-0000000";

  static final String STOCK = "stock.json";
  static final ObjectMapper MAPPER = new ObjectMapper();

  /** Each takes a second to make. */
  private static final int MOST_NETWORKS = 12;

  private static final Path JOBS = Path.of("..", "jobs");
  private static final Path NETWORKS = Path.of("..", "networks");

  private static final List<String> ENDS = List.of(
      "1/4 NPT male",
      "1/4 NPT female",
      "3/8 NPT male",
      "3/8 NPT female",
      "1/2 NPT female",
      "G 1/4 male",
      "G 1/4 female",
      "G 3/8 male",
      "R 1/4 male",
      "Rc 1/4 female",
      "R 3/8 male",
      "3/8 in barb",
      "8 mm push-in",
      "37° flare 9/16-18 male",
      "3/4 GHT male");

  private final List<Case> all = new ArrayList<>();
  private final Map<String, Object> file;
  private final String text;
  private final ShopCatalogue catalogue;
  private final Random random;

  /** A question, what must be answered, and the very bytes of an answer that was found right. */
  record Case(String path, String body, JsonNode answer, AtomicReference<String> right) {

    /** Whether an answer is the right one for a question with a mark. */
    boolean isAnswered(String mark, String told) throws IOException {
      String unmarked = told.replace(mark, MARK);
      if (unmarked.equals(right.get())) {
        return true;
      }
      JsonNode given = MAPPER.readTree(unmarked);
      if (given instanceof ObjectNode fields) {
        fields.remove("leftOut"); // the load itself reserves all of an article that no job chooses
      }
      boolean isRight = given.equals(answer);
      if (isRight) {
        right.set(unmarked);
      }
      return isRight;
    }

    boolean isPost() {
      return !body.isEmpty();
    }

    String kind() {
      return path.substring(1).replaceAll("/.*", "");
    }
  }

  private LoadCases(Path catalogueFile, long seed) throws Exception {
    this.file = fields(catalogueFile);
    this.text = Files.readString(catalogueFile);
    this.catalogue = CatalogueFile.read(Document.of(STOCK, file));
    this.random = new Random(seed);
  }

  /** Makes so many of each kind; of jobs and networks at most as many as there are examples. */
  static List<Case> of(Path catalogueFile, long seed, int each) throws Exception {
    LoadCases cases = new LoadCases(catalogueFile, seed);
    for (int i = 0; i < each; i++) {
      cases.mating();
      cases.identify();
      cases.run();
      cases.stock(i);
    }
    cases.jobs(each);
    cases.networks(Math.min(each, MOST_NETWORKS));
    return cases.all;
  }

  private static Map<String, Object> fields(Path path) throws Exception {
    return Disk.fields(path, new ArrayList<>());
  }

  private void add(String path, Map<String, Object> question, Map<String, ?> answer) {
    JsonNode expected = MAPPER.valueToTree(answer);
    String body = Json.write(question);
    all.add(new Case(path, body, expected, new AtomicReference<>("")));
  }

  private static void require(boolean isSame, String what, Object... told) {
    if (!isSame) {
      throw new IllegalStateException("the call tells another " + what + " than the library: "
          + String.join(
              " | ",
              Stream.of(told)
                  .map(String::valueOf)
                  .map(each -> each.substring(0, Math.min(300, each.length())))
                  .toList()));
    }
  }

  private void mating() throws Exception {
    String one = ENDS.get(random.nextInt(ENDS.size()));
    String other = ENDS.get(random.nextInt(ENDS.size()));
    Map<String, Object> asked = Map.of("one", one, "other", other);
    Map<String, Object> answer = Calls.answer("willItGo", asked);
    Mating mating = Mating.of(End.parse(one), End.parse(other));
    require(mating.inWords().equals(answer.get("sentence")), "mating", mating.inWords(), answer);
    add("/mating", asked, answer);
  }

  private void identify() throws Exception {
    List<PlugProfile> profiles = catalogue.profiles().profiles();
    PlugProfile profile = profiles.get(random.nextInt(profiles.size()));
    Map<String, Object> readings = new LinkedHashMap<>();
    List<PlugReading> typed = new ArrayList<>();
    for (Dimension dimension :
        List.of(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH, Dimension.GROOVE_WIDTH)) {
      double nominal = profile.spread(dimension).orElseThrow().nominal().metres() * 1e3;
      String read = String.format(Locale.ROOT, "%.2f mm", nominal + random.nextGaussian() * 0.05);
      readings.put(dimension.label(), read);
      typed.add(PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, Length.parse(read)));
    }
    Map<String, Object> asked = new LinkedHashMap<>();
    asked.put("readings", readings);
    asked.put("caliper", Instrument.DIGITAL_CALIPER.label());
    Map<String, Object> given = new LinkedHashMap<>(asked);
    given.put("set", ReferenceSetFile.toObject(catalogue.profiles()));
    Map<String, Object> answer = Calls.answer("identify", given);
    Identification plug = Identifier.of(catalogue.profiles())
        .withWearAllowance(Identifier.usualWear())
        .withInstrument(Instrument.DIGITAL_CALIPER)
        .identify(typed);
    require(
        plug.verdict().name().replace("_", "").equalsIgnoreCase(String.valueOf(answer.get("kind")))
            && MAPPER.valueToTree(answer).path("candidates").findValuesAsText("profile").stream()
                .limit(3)
                .toList()
                .equals(plug.candidates().stream()
                    .limit(3)
                    .map(candidate -> candidate.profile().id())
                    .toList()),
        "plug",
        plug.verdict(),
        answer);
    add("/identify", asked, Plainly.forTill(answer));
  }

  private void run() throws Exception {
    String bore = List.of("1/4 in", "3/8 in", "1/2 in").get(random.nextInt(3));
    String length = 10 + random.nextInt(90) + " ft";
    String flow = 5 + random.nextInt(40) + " scfm (68 °F)";
    int supply = 80 + random.nextInt(40);
    Map<String, Object> asked = Map.of(
        "supply",
        Map.of(
            "pressure", supply + " psig", "atmosphere", "1.01325 bar(a)", "temperature", "20 °C"),
        "flow",
        flow,
        "elements",
        List.of(Map.of("name", "hose", "bore", bore, "length", length, "roughness", "0.01 mm")));
    Map<String, Object> answer = Calls.answer("run", asked);
    AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
    RunResult result = Run.from(
            AirState.of(
                GaugePressure.ofPsi(supply).absolute(atmosphere), Temperature.ofCelsius(20)),
            atmosphere)
        .through(
            "hose",
            Conduit.of(Length.parse(bore), Length.parse(length), Length.ofMillimetres(0.01)))
        .at(FreeAirFlow.parse(flow));
    double bar =
        result.<Double>fold(delivered -> delivered.atToolGauge().bar(), starved -> Double.NaN);
    JsonNode told = MAPPER.valueToTree(answer);
    require(
        told.path("kind").asText().equals(Double.isNaN(bar) ? "starved" : "delivered")
            && (Double.isNaN(bar)
                || Math.abs(told.path("atTool").path("bar").asDouble() - bar) < 1e-9),
        "pressure",
        bar,
        told);
    add("/run", asked, Plainly.forTill(answer));
  }

  private void stock(int i) {
    List<?> parts = (List<?>) Objects.requireNonNull(file.get("parts"), "parts");
    Object id = ((Map<?, ?>) parts.get(i % parts.size())).get("id");
    JsonNode answer = MAPPER.valueToTree(
        Map.of("number", String.valueOf(id), "quantity", 9, "reserved", 0, "available", 9));
    all.add(new Case("/stock/" + id, "", answer, new AtomicReference<>("")));
  }

  private void jobs(int most) throws Exception {
    List<Path> paths;
    try (Stream<Path> walked = Files.walk(JOBS)) {
      paths = walked.filter(path -> path.toString().endsWith(".json")).sorted().toList();
    }
    int made = 0;
    for (Path path : paths) {
      Map<String, Object> job = fields(path);
      if (made < most
          && String.valueOf(job.get("catalogue")).endsWith("quay-street/catalogue.json")) {
        job.put("job", MARK);
        job.put("catalogue", STOCK);
        select(job);
        interview(job);
        made++;
      }
    }
  }

  private void select(Map<String, Object> job) throws Exception {
    Map<String, Object> answer =
        Calls.answer("select", Map.of("job", job, "files", Map.of(STOCK, text)));
    Job read = read(job);
    if (read.atHand().isEmpty()
        && read.question().isEmpty()
        && !"refused".equals(answer.get("kind"))) {
      Selection selection = Selection.of(read.requirement(), catalogue.parts());
      String headline = selection.fold(
          fitting -> fitting.whyBest(read.units().system()),
          nothing -> "Nothing in the catalogue fits.");
      String told = String.valueOf(answer.get("headline"));
      require(headline.equals(told), "choice", headline, told);
    }
    add("/select", Map.of("job", without(job, "catalogue")), Plainly.forTill(answer));
  }

  private Job read(Map<String, Object> job) throws WrongFileException {
    return JobFile.read(
        new Document("job.json", JobFile.toObject(job), path -> Document.of(STOCK, file)));
  }

  private static Map<String, Object> without(Map<String, Object> fields, String field) {
    Map<String, Object> others = new LinkedHashMap<>(fields);
    others.remove(field);
    return others;
  }

  /** The questions of a job that is whole, where it is for one tool: of several they take long. */
  private void interview(Map<String, Object> job) throws Exception {
    Job read = read(job);
    if (read.requirement().medium().refusal().isPresent()
        || read.atHand().isPresent()
        || read.requirement().isOfSeveralTools()) {
      return;
    }
    Map<String, Object> start = without(job, "catalogue");
    InterviewSoFar talk = InterviewSoFar.begin(start, STOCK, catalogue, this::read);
    List<Question> open = talk.talk().questions(read.units().system());
    if (open.isEmpty()) {
      return;
    }
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("kind", "question");
    answer.put("headline", open.get(0).inWords());
    answer.put("questions", open.stream().map(LoadCases::plainly).toList());
    answer.put("toAsk", List.of());
    answer.put("job", JobFile.toObject(talk.fields()));
    answer.put("cautions", Plainly.cautions(List.of(SafetyRules.usFederal().deference())));
    add("/interview", Map.of("job", start), answer);
  }

  private static Map<String, Object> plainly(Question question) {
    List<String> texts = question.answers().stream().map(PossibleAnswer::text).toList();
    return Map.of(
        "topic", question.topic().toString(),
        "question", question.inWords(),
        "why", question.why(),
        "accepted",
            question.topic().isAmount() || texts.isEmpty()
                ? "such as " + question.topic().example()
                : String.join(", ", texts),
        "answers",
            question.answers().stream()
                .map(each -> Map.of(
                    "answer", each.text(), "words", each.inWords(), "changes", each.changes()))
                .toList());
  }

  private void networks(int most) throws Exception {
    List<Path> paths;
    try (Stream<Path> listed = Files.list(NETWORKS)) {
      paths = listed.filter(path -> path.toString().endsWith(".csv")).sorted().toList();
    }
    for (int i = 0; i < most; i++) {
      String network = Files.readString(paths.get(i % paths.size()))
          .replaceFirst("(?m)^network,[^,]*,", "network," + MARK + ",")
          .replaceFirst(
              "(?m)^(drop,.*?),(\\d+) scfm,", "$1," + (10 + random.nextInt(20)) + " scfm,");
      NetworkSheet sheet =
          NetworkSheet.of(NetworkFile.read(Document.of("n", Csv.read("n", network))));
      Map<String, Object> answer = new LinkedHashMap<>();
      answer.put("kind", sheet.all().<String>fold(solved -> "solved", none -> "noSolution"));
      answer.put("headline", NetworkText.headline(sheet));
      answer.put("title", MARK);
      answer.put("customer", sheet.job().customer());
      answer.put("text", NetworkText.of(sheet));
      answer.put("cautions", Plainly.cautions(sheet.cautions()));
      add("/network", Map.of("network", network), answer);
    }
  }
}
