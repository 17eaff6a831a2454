package org.airfit.files.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.files.Job;
import org.airfit.files.MeasuredSet;
import org.airfit.files.Shop;
import org.airfit.files.ShopCatalogue;
import org.junit.jupiter.api.Test;

/** The schema that is shipped says what the module writes, and a validator of another hand holds real answers to it. */
class SchemaTest {

  private static final String PLACE = "/META-INF/airfit/values-1.schema.json";
  private static final Path MADE = Path.of("target", "values-1.schema.json");
  private static final JsonMapper PLAIN = JsonMapper.builder()
      .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
      .build();

  private final Map<String, JsonSchema> schemas = new HashMap<>();

  private static String shipped() throws IOException {
    try (InputStream in = AirfitModule.class.getResourceAsStream(PLACE)) {
      return new String(Objects.requireNonNull(in, PLACE).readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static String made() throws IOException {
    List<Class<?>> roots = new ArrayList<>();
    for (Class<?> type : CoreTypes.all()) {
      boolean isEmpty = !Words.isWord(type)
          && !Kinds.isOneOfSeveral(type)
          && !type.equals(org.airfit.joint.End.class)
          && (Fields.of(type).isEmpty() || Throwable.class.isAssignableFrom(type));
      if (!isEmpty) {
        roots.add(type);
      }
    }
    roots.addAll(List.of(ShopCatalogue.class, MeasuredSet.class, Shop.class));
    return PLAIN.writerWithDefaultPrettyPrinter().writeValueAsString(Schema.of(roots)) + "\n";
  }

  @Test
  void the_shipped_schema_is_that_of_the_types() throws IOException {
    String made = made();
    Files.createDirectories(MADE.getParent());
    Files.writeString(MADE, made);
    assertThat(shipped())
        .as("copy %s to src/main/resources%s, and tell users what changed", MADE, PLACE)
        .isEqualTo(made);
  }

  @Test
  void the_schema_is_one_of_draft_2020_12_itself() throws IOException {
    JsonSchema meta = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
        .getSchema("{\"$ref\": \"https://json-schema.org/draft/2020-12/schema\"}");
    assertThat(meta.validate(shipped(), InputFormat.JSON)).isEmpty();
  }

  private JsonSchema schema(String type) throws IOException {
    JsonSchema known = schemas.get(type);
    if (known == null) {
      String text = shipped().replaceFirst("\\{", "{\"\\$ref\": \"#/\\$defs/" + type + "\",");
      known = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(text);
      schemas.put(type, known);
    }
    return known;
  }

  /** A build holds some answers of each type to the schema, a night (-Dairfit.tries=25) all. */
  @Test
  void every_value_of_the_answers_to_the_examples_is_one_by_the_schema() throws Exception {
    long most =
        Double.parseDouble(System.getProperty("airfit.tries", "1")) > 1.0 ? Long.MAX_VALUE : 4;
    Map<Class<?>, Long> seen = new HashMap<>();
    Set<String> tried = new TreeSet<>();
    JsonMapper mapper = AirfitModule.strictMapper();
    for (Map.Entry<Path, Map<String, Object>> answers : Answers.toAll().entrySet()) {
      for (Object answer : answers.getValue().values()) {
        Class<?> type = answer.getClass();
        if (seen.merge(type, 1L, Long::sum) > most) {
          continue;
        }
        assertThat(schema(Fields.simple(type))
                .validate(mapper.writeValueAsString(answer), InputFormat.JSON))
            .as(answers.getKey() + ", " + type.getName())
            .isEmpty();
        tried.add(Fields.simple(type));
      }
    }
    assertThat(tried)
        .contains(
            "Identification",
            "Selection.Proposals",
            "Selection.NothingFits",
            "RunResult.Delivered",
            "BillOfMaterials",
            "NetworkResult.Solved",
            "Job",
            "NetworkJob");
  }

  /** Some values of each type with their workings, which are longer than all answers together. */
  @Test
  void workings_are_ones_by_the_schema() throws Exception {
    JsonMapper mapper =
        JsonMapper.builder().addModule(new AirfitModule().withWorkings()).build();
    int workings = 0;
    for (Object answer : Answers.toAll().values().iterator().next().values()) {
      if (answer instanceof Job) {
        continue;
      }
      String json = mapper.writeValueAsString(answer);
      workings += json.split("\"working\":", -1).length - 1;
      assertThat(schema(Fields.simple(answer.getClass())).validate(json, InputFormat.JSON))
          .isEmpty();
    }
    assertThat(workings).isGreaterThan(10);
  }

  @Test
  void an_answer_with_a_field_more_or_less_or_of_another_kind_is_refused() throws Exception {
    String json =
        "{\"kind\":\"plug\",\"id\":\"a\",\"name\":\"b\",\"profile\":\"c\",\"end\":\"1/4 NPT male\"}";
    assertThat(schema("Part").validate(json, InputFormat.JSON)).isEmpty();
    for (String wrong : List.of(
        json.replace("plug", "plugg"),
        json.replace("\"id\":\"a\",", ""),
        json.replace("\"a\"", "1"),
        json.replace("\"name\"", "\"nam\""))) {
      assertThat(schema("Part").validate(wrong, InputFormat.JSON)).as(wrong).isNotEmpty();
    }
  }
}
