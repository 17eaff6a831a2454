package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The schema that is shipped says the same as the reader, and a validator of another hand reads it. */
class JobSchemaTest {

  private static final String PLACE = "/META-INF/airfit/job-file-2.schema.json";
  private static final Path JOBS = Path.of("..", "jobs");

  private static String text() throws IOException {
    try (InputStream in = JobFile.class.getResourceAsStream(PLACE)) {
      return new String(Objects.requireNonNull(in, PLACE).readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static JsonSchema schema() throws IOException {
    return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(text());
  }

  private static Set<ValidationMessage> faults(String job) throws IOException {
    return schema().validate(job, InputFormat.JSON);
  }

  static Stream<Path> jobs() throws IOException {
    try (Stream<Path> files = Files.walk(JOBS)) {
      return files
          .filter(file -> file.toString().endsWith(".json"))
          .filter(file -> !file.toString().contains("catalogue"))
          .filter(file -> !file.endsWith("letterhead.json"))
          .sorted()
          .toList()
          .stream();
    }
  }

  @Test
  void the_schema_is_one_of_draft_2020_12_itself() throws IOException {
    JsonSchema meta = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
        .getSchema("{\"$ref\": \"https://json-schema.org/draft/2020-12/schema\"}");
    assertThat(meta.validate(text(), InputFormat.JSON)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void every_job_of_the_examples_is_one_by_the_schema(Path job) throws IOException {
    assertThat(faults(Files.readString(job))).isEmpty();
  }

  @Test
  void the_job_of_the_documentation_is_one_by_the_schema() throws IOException {
    String docs = Files.readString(Path.of("..", "..", "docs", "job-file.md"));
    Matcher job = Pattern.compile("(?s)```json\n(\\{.*?\n\\})\n```").matcher(docs);
    assertThat(job.find()).isTrue();
    assertThat(faults(job.group(1))).isEmpty();
    assertThat(faults(job.group(1).replace("\"40 ft\"", "40"))).isNotEmpty();
  }

  /** A whole job that has every object, and in every object a place for a field that nobody knows. */
  private static final String WHOLE = """
      {"airfitJob": 2, "job": "a", "customer": "b", "catalogue": "catalogue.json", "root": 0,
       "atHand": {"where": "c", "atHand": 0, "thread": {"firstCrest": "13.1 mm", "thread": 0}},
       "supply": {"pressure": "90 to 110 psig", "supply": 0},
       "receiver": {"volume": "80 US gal", "draws": "40 s", "every": "10 min", "receiver": 0},
       "line": [
         {"kind": "regulator", "set": "85 psig", "first": 0},
         {"kind": "pipe", "bore": "20.9 mm", "length": "38 m", "roughness": "0.045 mm", "pipe": 0},
         {"kind": "outlet", "end": "1/2 NPT female", "outlet": 0},
         {"kind": "coupling", "coupling": 0,
          "socket": {"takes": ["tern"], "end": "1/2 NPT male", "socketData": 0,
            "capacity": {"conductance": "8 dm3/(s bar)", "criticalPressureRatio": 0.3}},
          "plug": {"profile": "tern", "end": "1/4 NPT male", "plugData": 0}},
         {"kind": "hose", "reach": "10 m", "hose": 0,
          "part": {"hose": "3/8 in", "bore": "9.5 mm", "length": "10 m", "roughness": "0.01 mm",
            "end": "3/8 NPT male", "hoseData": 0}},
         {"kind": "regulator", "set": "80 psig", "regulator": 0,
          "part": {"end": "1/4 NPT female", "regulatorData": 0,
            "capacity": {"conductance": "8 dm3/(s bar)", "criticalPressureRatio": 0.3}}},
         {"kind": "filter", "device": 0,
          "part": {"end": "1/4 NPT female", "deviceData": 0,
            "capacity": {"conductance": "8 dm3/(s bar)", "criticalPressureRatio": 0.3}}},
         {"kind": "pipe", "name": "e", "bore": "20.9 mm", "length": "3 m", "roughness": "0.045 mm",
          "end": "1/4 NPT male", "behind": 0},
         {"kind": "splitter", "othersTake": "10 scfm", "splitter": 0,
          "part": {"end": "1/4 NPT female", "outlets": ["1/4 NPT female", "1/4 NPT male"], "splitterData": 0,
            "capacity": {"conductance": "8 dm3/(s bar)", "criticalPressureRatio": 0.3}}}
       ],
       "tool": {"name": "d", "air": "22 scfm", "pressure": "70 psig", "inlet": "1/4 NPT female", "tool": 0},
       "conditions": {"conditions": 0}, "rules": {"rules": 0},
       "extras": ["hook"],
       "year": {"hours": 2000, "electricity": "0.2 USD", "flow": "5 scfm", "year": 0}}
      """;

  /** The whole job with one field that nobody knows, or none. */
  private static String whole(String left) {
    String job = WHOLE;
    for (String mark : new String[] {
      "root",
      "atHand",
      "thread",
      "supply",
      "receiver",
      "first",
      "pipe",
      "outlet",
      "coupling",
      "socketData",
      "plugData",
      "hose",
      "hoseData",
      "regulator",
      "regulatorData",
      "device",
      "deviceData",
      "behind",
      "splitter",
      "splitterData",
      "tool",
      "conditions",
      "rules",
      "year"
    }) {
      job = mark.equals(left)
          ? job.replace("\"" + mark + "\": 0", "\"zzz\": 0")
          : job.replaceAll(", \"" + mark + "\": 0|\"" + mark + "\": 0,? ?", "");
    }
    return job;
  }

  private static Job read(String job) throws WrongFileException, IOException {
    String catalogue = Files.readString(JOBS.resolve("boatyard").resolve("catalogue.json"));
    return JobFile.read(new Document(
        "job.json",
        Json.read("job.json", job),
        name -> Document.of(name, Json.read(name, catalogue))));
  }

  @Test
  void the_whole_job_is_one_by_reader_and_schema() throws Exception {
    assertThat(faults(whole(""))).isEmpty();
    assertThat(read(whole("")).requirement().layout().slots()).hasSize(6);
  }

  /** What the reader accepts in an object, by its own complaint, is what the schema has there. */
  @ParameterizedTest
  @CsvSource({
    "root, ''",
    "atHand, properties/atHand",
    "thread, $defs/thread",
    "supply, properties/supply",
    "receiver, properties/receiver",
    "outlet, $defs/outlet",
    "coupling, $defs/coupling",
    "socketData, $defs/socketData",
    "plugData, $defs/plugData",
    "hose, $defs/hose",
    "hoseData, $defs/hoseData",
    "regulatorData, $defs/regulatorData",
    "device, $defs/device",
    "deviceData, $defs/deviceData",
    "splitter, $defs/splitter",
    "splitterData, $defs/splitterData",
    "tool, properties/tool",
    "conditions, properties/conditions",
    "rules, properties/rules",
    "year, properties/year"
  })
  void reader_and_schema_know_the_same_fields(String mark, String place) throws Exception {
    assertThat(faults(whole(mark))).as("the schema refuses it too").isNotEmpty();
    Set<String> known = accepted(mark);
    JsonNode at = JsonMapper.builder().build().readTree(text());
    for (String step : place.isEmpty() ? new String[0] : place.split("/")) {
      at = at.get(step);
    }
    Set<String> properties = new TreeSet<>();
    at.get("properties").fieldNames().forEachRemaining(properties::add);
    if (mark.equals("device")) {
      properties.remove("reach"); // of a reel that is told by its hose
    }
    assertThat(known).isEqualTo(properties);
  }

  @Test
  void a_tool_has_its_air_and_pressure_or_its_marking() throws Exception {
    String told = "\"air\": \"22 scfm\", \"pressure\": \"70 psig\"";
    assertThat(WHOLE).contains(told);
    String marked = whole("").replace(told, "\"marking\": \"4,8 bar / 600 l/min\"");
    assertThat(faults(marked)).isEmpty();
    assertThat(read(marked).requirement().least().bar()).isEqualTo(4.8);
    assertThat(faults(whole("").replace(told, "\"air\": \"22 scfm\""))).isNotEmpty();
  }

  @Test
  void a_hose_may_be_asked_about_by_reader_and_schema() throws Exception {
    String slot = "\"reach\": \"10 m\"";
    String whole =
        whole("").replaceFirst("(?s),\\s*\"part\": \\{\"hose\": \"3/8 in\".*?\\}\\}", "}");
    assertThat(whole).contains(slot + "}");
    String longest = whole.replace(slot, "\"reach\": \"longest\"");
    assertThat(faults(longest)).isEmpty();
    assertThat(read(longest).question().orElseThrow().asked())
        .isEqualTo(HoseQuestion.Asked.LONGEST);
    String least = whole.replace(slot, slot + ", \"bore\": \"least\"");
    assertThat(faults(least)).isEmpty();
    assertThat(read(least).question().orElseThrow().asked())
        .isEqualTo(HoseQuestion.Asked.LEAST_BORE);
    assertThat(faults(whole.replace(slot, slot + ", \"bore\": \"most\""))).isNotEmpty();
  }

  /** The reader asks a regulator that stands first for other things than one behind the outlet. */
  @Test
  void the_schema_has_both_forms_of_a_regulator_in_one() throws Exception {
    requireBoth("first", "regulator", "regulator");
  }

  /** Behind the outlet a pipe has ends too. */
  @Test
  void the_schema_has_both_forms_of_a_pipe_in_one() throws Exception {
    requireBoth("pipe", "behind", "pipe");
  }

  private static void requireBoth(String one, String other, String kind) throws Exception {
    Set<String> both = accepted(one);
    both.addAll(accepted(other));
    Set<String> properties = new TreeSet<>();
    JsonMapper.builder()
        .build()
        .readTree(text())
        .get("$defs")
        .get(kind)
        .get("properties")
        .fieldNames()
        .forEachRemaining(properties::add);
    assertThat(both).isEqualTo(properties);
  }

  private static Set<String> accepted(String mark) {
    WrongFileException refused =
        catchThrowableOfType(WrongFileException.class, () -> read(whole(mark)));
    assertThat(refused).as(mark).hasMessageContaining("zzz: is no field here; accepted: ");
    return new TreeSet<>(Arrays.asList(
        String.valueOf(refused.getMessage()).replaceFirst(".*accepted: ", "").split(", ")));
  }
}
