package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.files.Csv;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.Json;
import org.airfit.files.MeasuredSet;
import org.airfit.files.ReferenceSetFile;
import org.airfit.files.Shop;
import org.airfit.files.WrongFileException;
import org.airfit.flow.Rating;
import org.airfit.joint.End;
import org.airfit.line.ConduitName;
import org.airfit.line.FittingList;
import org.airfit.measure.Instrument;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plug.KnownPlugs;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.UnmarkedFlow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every example of the documents works: command lines, files, blocks, and the values in the text. */
class DocumentExamplesTest {

  private static final Path ROOT = Path.of("..", "..");
  private static final Path EXAMPLES = ROOT.resolve("airfit-examples");

  /** What the documents write for a file of the reader's own, and a file that stands for it here. */
  private static final Map<String, String> STANDS_FOR = Map.ofEntries(
      Map.entry("JOB.json", "jobs/boatyard/weak-sander.json"),
      Map.entry("START.json", "jobs/boatyard/weak-sander.json"),
      Map.entry("CATALOGUE.json", "jobs/boatyard/catalogue.json"),
      Map.entry("SET.csv", "sets/workshop.csv"),
      Map.entry("NETWORK.csv", "networks/ferry-lane-ring.csv"),
      Map.entry("LEDGER.csv", "jobs/joinery/leaks.csv"),
      Map.entry("DIAGNOSIS.json", "diagnoses/saddler-lane/slow-grinder.json"),
      Map.entry("INVENTORY.json", "shops/weir-street/inventory.json"),
      Map.entry("CHECK.json", "shops/canal-row/check.json"),
      Map.entry("WATER.json", "treatments/kiln-row/paint-shop.json"),
      Map.entry("DAY.json", "days/lock-street/smithy.json"));

  /** The catalogue with which the jobs of the documents are answered. */
  private static final String COUNTER = "jobs/quay-street/catalogue.json";

  private static final Pattern COMMAND =
      Pattern.compile("java -jar \\S*airfit-jobsheet\\.jar (\\S.*)");
  private static final Pattern OR = Pattern.compile("\\\\?\\|");

  private static final Pattern VALUE =
      Pattern.compile("`\"?([0-9][^`\"]*|G [0-9][^`\"]*|R [0-9][^`\"]*)\"?`");

  private static final List<Function<String, ?>> PARSERS = List.of(
      GaugePressure::parse,
      text -> Range.parse(text, GaugePressure::parse),
      AbsolutePressure::parse,
      ConduitName::parse,
      FittingList::parse,
      Rating::parse,
      RegulatorCurve::parse,
      UnmarkedFlow::parse,
      text -> Range.parse(text, Length::parse),
      text -> Range.parse(text, Power::parse),
      DocumentExamplesTest::price,
      FreeAirFlow::parse,
      Temperature::parse,
      End::parse,
      SonicConductance::parse);

  /** Money in a currency of the documents, as any word behind a number may be one. */
  private static Money price(String text) {
    if (!text.endsWith(" EUR") && !text.endsWith(" USD")) {
      throw new IllegalArgumentException("no price in the documents: " + text);
    }
    return Money.parse(text);
  }

  /** A day, a price, the size of a washer's thread, and an end that the text says is refused. */
  private static final Set<String> PLAIN =
      Set.of("2026-11-28", "12.50", "1/4", "3/8 flare", "G 1/4");

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(List<String> args) {
    return Main.run(
        args.toArray(new String[0]),
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  static Stream<Path> documents() throws IOException {
    List<Path> documents = new ArrayList<>();
    documents.add(ROOT.resolve("README.md"));
    documents.add(ROOT.resolve("DEVELOPERS.md"));
    try (Stream<Path> files = Files.list(ROOT.resolve("docs"))) {
      files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(documents::add);
    }
    return documents.stream();
  }

  static Stream<String> command_lines() throws IOException {
    List<String> commands = new ArrayList<>();
    for (Path document : documents().toList()) {
      Matcher command = COMMAND.matcher(Files.readString(document));
      while (command.find()) {
        commands.add(command.group(1).replaceAll("  +.*", "").strip());
      }
    }
    assertThat(commands).hasSizeGreaterThanOrEqualTo(6);
    return commands.stream();
  }

  @ParameterizedTest
  @MethodSource("command_lines")
  void every_command_line_runs(String command) throws IOException {
    boolean mayBeLeftOut = command.contains("[");
    List<String> args = new ArrayList<>();
    Matcher words =
        Pattern.compile("\"([^\"]*)\"|\\S+").matcher(command.replaceAll("[\\[\\]]", ""));
    while (words.find()) {
      String quoted = words.group(1);
      String word = quoted == null ? words.group() : quoted;
      if (word.startsWith("airfit-examples")) {
        args.add(ROOT.resolve(word).toString());
      } else if (STANDS_FOR.containsKey(word)) {
        args.add(EXAMPLES.resolve(STANDS_FOR.get(word)).toString());
      } else if (word.contains(".")) {
        args.add(folder.resolve(word).toString());
      } else {
        args.add(word);
      }
    }
    boolean writes = args.get(args.size() - 1).startsWith(folder.toString());
    if (!writes && !List.of("set", "joint").contains(args.get(0))) {
      args.add(folder.resolve("page.html").toString()); // not into the folder of the tests
      writes = true;
    }
    assertThat(run(args)).as(command + err).isZero();
    assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
    assertThat(out.toString(StandardCharsets.UTF_8)).isNotBlank();
    if (writes) {
      assertThat(Path.of(args.get(args.size() - 1))).isNotEmptyFile();
    }
    assertThat(mayBeLeftOut && !writes).isFalse();
  }

  /** Blocks of data, fenced or indented, with the document they stand in. */
  private static List<String> blocks(String fence, Pattern indented) throws IOException {
    List<String> blocks = new ArrayList<>();
    for (Path document : documents().toList()) {
      String text = Files.readString(document);
      Matcher fenced = Pattern.compile("(?ms)^```" + fence + "\\n(.*?)^```$").matcher(text);
      while (fenced.find()) {
        blocks.add(fenced.group(1));
      }
      Matcher plain = indented.matcher(text.replaceAll("(?ms)^```.*?^```$", ""));
      while (plain.find()) {
        blocks.add(plain.group());
      }
    }
    return blocks;
  }

  private static final Pattern NEVER = Pattern.compile("(?!)");
  private static final Pattern INDENTED_JSON = Pattern.compile("(?m)^ {4}\\{.*(\\n {4}.*)*");

  private static boolean isJob(String json) {
    return json.contains("\"airfitJob\"");
  }

  private static boolean isLine(String json) {
    return json.startsWith("[");
  }

  private static boolean isCatalogue(String json) {
    return json.contains("\"parts\": [");
  }

  /**
   * The whole job of the documents is answered with the whole catalogue of the documents. By hand, two sockets, two plugs,
   * a hose and tape: 22.30 + 19.90 + 5.10 + 4.20 + 52.00 + 1.60 = 105.10.
   */
  @Test
  void the_catalogue_of_the_documents_answers_the_whole_job() throws Exception {
    List<String> catalogues =
        blocks("json", NEVER).stream().filter(DocumentExamplesTest::isCatalogue).toList();
    assertThat(catalogues).hasSize(1);
    Path job = folder.resolve("job.json");
    Files.writeString(job, jobs().findFirst().orElseThrow());
    Files.writeString(folder.resolve("catalogue.json"), catalogues.get(0));
    assertThat(run(List.of(job.toString(), folder.resolve("page.html").toString())))
        .as(err.toString(StandardCharsets.UTF_8))
        .isZero();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .contains("RECOMMENDED PARTS", "enough", "Together 105.10 USD.")
        .doesNotContain("Nothing in the catalogue fits");
  }

  /** A part alone, as {@code docs/embedding.md} shows it; its own test reads it. */
  private static boolean isPart(String json) {
    return json.strip().startsWith("{\"kind\": \"plug\"") || isPrinted(json);
  }

  private static boolean isLetterhead(String json) {
    return json.contains("\"validDays\"");
  }

  private static boolean isDay(String json) {
    return json.contains("\"airfitDay\"");
  }

  /** The day of the documents is the example that its command line goes through. */
  @Test
  void the_day_of_the_documents_is_an_example() throws Exception {
    List<String> days =
        blocks("json", NEVER).stream().filter(DocumentExamplesTest::isDay).toList();
    assertThat(days)
        .containsExactly(Files.readString(EXAMPLES.resolve("days/lock-street/smithy.json")));
  }

  /** The letterhead of the documents is read as a file of a shop would be. */
  @Test
  void the_letterhead_of_the_documents_reads() throws Exception {
    List<String> letterheads = blocks("json", NEVER).stream()
        .filter(DocumentExamplesTest::isLetterhead)
        .toList();
    assertThat(letterheads).hasSize(1);
    Shop shop = Shop.read(Document.of("block", Json.read("block", letterheads.get(0))));
    assertThat(shop)
        .isEqualTo(
            Disk.shop(new ArrayList<>(List.of(EXAMPLES.resolve("jobs/boatyard/blow-gun.json"))))
                .orElseThrow());
  }

  /** What a till sends to the counter service, whose tests ask it. */
  private static boolean isInterview(String json) {
    return json.contains("\"answers\"");
  }

  private static List<Document> sets() throws IOException, WrongFileException {
    List<Document> sets = new ArrayList<>();
    for (String json : blocks("json", INDENTED_JSON)) {
      if (!isJob(json)
          && !isLine(json)
          && !isLetterhead(json)
          && !isPart(json)
          && !isDay(json)
          && !isCatalogue(json)
          && !isDiagnosis(json)
          && !isInventory(json)
          && !isPriceList(json)
          && !isWater(json)
          && !isInterview(json)) {
        sets.add(Document.of("block", Json.read("block", json)));
      }
    }
    for (String csv : blocks("csv", NEVER)) {
      sets.add(Document.of("block", Csv.read("block", csv)));
    }
    return sets;
  }

  private static boolean isDiagnosis(String json) {
    return json.contains("\"airfitDiagnosis\"");
  }

  @Test
  void every_diagnosis_of_the_documents_is_answered() throws Exception {
    List<String> files = blocks("json", INDENTED_JSON).stream()
        .filter(DocumentExamplesTest::isDiagnosis)
        .toList();
    assertThat(files).isNotEmpty();
    for (String json : files) {
      Path file = folder.resolve("diagnosis.json");
      Files.writeString(file, json);
      assertThat(run(
              List.of("diagnosis", file.toString(), folder.resolve("page.html").toString())))
          .as(err.toString(StandardCharsets.UTF_8))
          .isZero();
      assertThat(out.toString(StandardCharsets.UTF_8)).contains("IN SHORT", "bore of hose");
    }
  }

  private static boolean isInventory(String json) {
    return json.contains("\"airfitInventory\"");
  }

  @Test
  void every_inventory_of_the_documents_is_answered() throws Exception {
    List<String> files = blocks("json", INDENTED_JSON).stream()
        .filter(DocumentExamplesTest::isInventory)
        .toList();
    assertThat(files).isNotEmpty();
    Path place = Files.createDirectories(folder.resolve("shops/here"));
    Path sets = Files.createDirectories(folder.resolve("sets"));
    Files.copy(EXAMPLES.resolve("sets/workshop.csv"), sets.resolve("workshop.csv"));
    Files.copy(
        EXAMPLES.resolve("shops/weir-street/catalogue.json"), place.resolve("catalogue.json"));
    for (String json : files) {
      Path file = place.resolve("inventory.json");
      Files.writeString(file, json);
      assertThat(run(
              List.of("inventory", file.toString(), folder.resolve("page.html").toString())))
          .as(err.toString(StandardCharsets.UTF_8))
          .isZero();
      assertThat(out.toString(StandardCharsets.UTF_8)).contains("IN SHORT", "Keep tern");
    }
  }

  /** A part of a price list, with what is printed beside it. */
  private static boolean isPrinted(String json) {
    return json.contains("\"printed\"");
  }

  private static boolean isPriceList(String json) {
    return json.contains("\"airfitPriceList\"");
  }

  @Test
  void every_check_of_a_price_list_of_the_documents_is_answered() throws Exception {
    List<String> files = blocks("json", INDENTED_JSON).stream()
        .filter(DocumentExamplesTest::isPriceList)
        .toList();
    assertThat(files).isNotEmpty();
    for (String name : List.of("price-list.json", "profiles.csv")) {
      Files.copy(EXAMPLES.resolve("shops/canal-row").resolve(name), folder.resolve(name));
    }
    String parts = "\"parts\": [";
    Path list = folder.resolve("price-list.json");
    for (String part : blocks("json", NEVER)) {
      if (isPrinted(part)) {
        Files.writeString(list, Files.readString(list).replace(parts, parts + part + ","));
      }
    }
    for (String json : files) {
      Path file = folder.resolve("check.json");
      Files.writeString(file, json);
      assertThat(run(
              List.of("pricelist", file.toString(), folder.resolve("page.html").toString())))
          .as(err.toString(StandardCharsets.UTF_8))
          .isZero();
      assertThat(out.toString(StandardCharsets.UTF_8))
          .contains(
              "4 articles could not be read",
              "26 articles",
              "What would solve most jobs more: Hose");
    }
  }

  private static boolean isWater(String json) {
    return json.contains("\"airfitWater\"");
  }

  @Test
  void every_file_of_water_of_the_documents_is_answered() throws Exception {
    List<String> files = blocks("json", INDENTED_JSON).stream()
        .filter(DocumentExamplesTest::isWater)
        .toList();
    assertThat(files).isNotEmpty();
    for (String json : files) {
      Path file = folder.resolve("water.json");
      Files.writeString(file, json);
      assertThat(
              run(List.of("water", file.toString(), folder.resolve("page.html").toString())))
          .as(err.toString(StandardCharsets.UTF_8))
          .isZero();
      assertThat(out.toString(StandardCharsets.UTF_8))
          .contains(
              "IN SHORT", "As planned: ISO 8573-1:2010 [2:4:2] is reached; particles are judged");
    }
  }

  /** The same job without its one tool: its lines tell their own. */
  private static String withoutTool(String job) {
    int from = job.lastIndexOf("\"tool\"");
    return job.substring(0, from) + "\"//\"" + job.substring(from + "\"tool\"".length());
  }

  /** Whole jobs, and lines put into one of them. */
  static Stream<String> jobs() throws IOException {
    List<String> jobs = new ArrayList<>();
    List<String> lines = new ArrayList<>();
    for (String json : blocks("json", NEVER)) {
      if (isJob(json)) {
        jobs.add(json);
      } else if (isLine(json)) {
        lines.add(json);
      }
    }
    assertThat(jobs).isNotEmpty();
    assertThat(lines).hasSizeGreaterThanOrEqualTo(4);
    String first = jobs.get(0);
    int from = first.indexOf('[', first.indexOf("\"line\""));
    int to = first.indexOf("\n  ]", from) + "\n  ]".length();
    for (String line : lines) {
      String job = first.substring(0, from) + line + first.substring(to);
      jobs.add(line.contains("\"tool\"") ? withoutTool(job) : job);
    }
    return jobs.stream();
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void every_job_of_the_documents_is_answered_with_parts(String json) throws Exception {
    Path job = folder.resolve("job.json");
    Files.writeString(job, json);
    Files.copy(EXAMPLES.resolve(COUNTER), folder.resolve("catalogue.json"));
    assertThat(run(List.of(job.toString(), folder.resolve("page.html").toString())))
        .as(err.toString(StandardCharsets.UTF_8))
        .isZero();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .contains("RECOMMENDED PARTS", "enough")
        .doesNotContain("Nothing in the catalogue fits");
  }

  /** The other blocks of data in the documents are reference sets. */
  @Test
  void every_block_of_data_reads_and_its_readings_are_kept() throws Exception {
    List<Document> sets = sets();
    assertThat(sets).hasSize(3);
    for (Document document : sets) {
      MeasuredSet measured = ReferenceSetFile.readMeasured(document);
      assertThat(measured.set().profiles()).isNotEmpty();
      assertThat(measured.records()).hasSize(1);
      KnownPlugs record = measured.records().get(0);
      assertThat(record.profileId()).isEqualTo("tern");
      assertThat(record.instrument()).isEqualTo(Instrument.DIGITAL_CALIPER);
      assertThat(record.pieces()).hasSizeGreaterThanOrEqualTo(5);
      assertThat(ReferenceSetFile.read(document)).isEqualTo(measured.set());
    }
  }

  @Test
  void the_blocks_run_through_the_program() throws Exception {
    int number = 0;
    for (Document document : sets()) {
      Path file = folder.resolve("set" + number++ + ".json");
      Disk.write(file, ReferenceSetFile.read(document));
      assertThat(run(List.of("set", file.toString()))).isZero();
    }
    List<String> csv = blocks("csv", NEVER);
    Path table = folder.resolve("set.csv");
    Files.writeString(table, csv.get(0));
    assertThat(run(List.of("set", table.toString()))).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .contains(
            "No piece stands out.", "One more would be noticed if it were off by: tip diameter");
  }

  static Stream<Path> example_files() throws IOException {
    try (Stream<Path> files = Files.walk(EXAMPLES, 4)) {
      List<Path> found = files
          .filter(file -> file.toString()
              .matches(".*(jobs|sets|networks|diagnoses|shops|treatments)/.*\\.(json|csv)"))
          .filter(file -> !file.toString().contains("target"))
          .sorted()
          .toList();
      assertThat(found).hasSizeGreaterThanOrEqualTo(5);
      return found.stream();
    }
  }

  @ParameterizedTest
  @MethodSource("example_files")
  void every_example_file_reads(Path file) throws WrongFileException {
    String path = file.toString().replace('\\', '/');
    if (path.contains("/sets/")) {
      assertThat(Disk.referenceSet(file).profiles()).isNotEmpty();
    } else if (path.contains("/networks/")) {
      assertThat(Disk.network(file).drops()).isNotEmpty();
    } else if (path.endsWith("leaks.csv")) {
      assertThat(Disk.leaks(file, new ArrayList<>()).ledger().leaks()).isNotEmpty();
    } else if (path.contains("/diagnoses/")) {
      assertThat(Disk.diagnosis(file, new ArrayList<>()).readings()).isNotEmpty();
    } else if (path.contains("/treatments/")) {
      assertThat(Disk.water(file, new ArrayList<>()).trains()).isNotEmpty();
    } else if (path.endsWith("inventory.json")) {
      assertThat(Disk.inventory(file, new ArrayList<>()).inventory().bays()).isNotEmpty();
    } else if (path.endsWith("check.json")) {
      assertThat(Disk.priceList(file, new ArrayList<>()).list().articles()).isNotEmpty();
    } else if (path.endsWith("price-list.json")) {
      assertThat(Disk.priceList(file.resolveSibling("check.json"), new ArrayList<>())
              .unread())
          .isNotEmpty();
    } else if (path.contains("/shops/") && path.endsWith(".csv")) {
      assertThat(Disk.referenceSet(file).profiles()).isNotEmpty();
    } else if (path.endsWith(Shop.FILE)) {
      assertThat(Disk.shop(new ArrayList<>(List.of(file)))).isPresent();
    } else if (path.endsWith("catalogue.json")) {
      assertThat(Disk.catalogue(file).name()).isNotBlank();
    } else {
      assertThat(Disk.job(file).title()).isNotBlank();
    }
  }

  private static boolean isRead(String value) {
    for (Function<String, ?> parser : PARSERS) {
      try {
        return parser.apply(value) != null;
      } catch (IllegalArgumentException e) {
        // another one may read it
      }
    }
    return false;
  }

  @Test
  void every_value_in_the_text_is_one_that_a_file_may_hold() throws IOException {
    List<String> unread = new ArrayList<>();
    int values = 0;
    for (String name : List.of(
        "job-file.md",
        "network-file.md",
        "day-file.md",
        "reference-set-file.md",
        "diagnosis-file.md")) {
      Matcher value = VALUE.matcher(Files.readString(ROOT.resolve("docs").resolve(name)));
      while (value.find()) {
        for (String one : OR.split(value.group(1), -1)) {
          values++;
          if (!PLAIN.contains(one.strip()) && !isRead(one.strip()) && !isOfTheJob(one.strip())) {
            unread.add(name + ": " + one);
          }
        }
      }
    }
    assertThat(unread).isEmpty();
    assertThat(values).isGreaterThan(20);
  }

  /** A marking, a hose in words without its id, a time, or a duty. */
  private static boolean isOfTheJob(String value) {
    if (value.matches("[0-9].* hose, old.*|([0-9.]+ (s|min|h) ?)+|[0-9]+( to [0-9]+)? %")) {
      return true;
    }
    try {
      return !org.airfit.run.ToolMarking.parse(value).toString().isEmpty();
    } catch (IllegalArgumentException e) {
      return false;
    }
  }
}
