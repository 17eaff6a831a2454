package org.airfit.files.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.List;
import java.util.Map;
import org.airfit.flow.FlowCapacity;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.select.Catalogue;
import org.airfit.select.Material;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is wrong is refused with its field, the value and what is accepted. */
class HostileJsonTest {

  private static final JsonMapper MAPPER = AirfitModule.strictMapper();

  /** A mapper of an embedder, who set nothing. */
  private static final JsonMapper LAX =
      JsonMapper.builder().addModule(new AirfitModule()).build();

  private static final String PART =
      "{\"kind\":\"plug\",\"id\":\"a\",\"name\":\"b\",\"price\":\"12.50 USD\",\"rated\":\"10 bar(g)\","
          + "\"profile\":\"c\",\"end\":\"1/4 NPT male\"}";

  private static final String CAPACITY =
      "{\"conductance\":\"8 dm³/(s·bar)\",\"criticalPressureRatio\":0.3,\"subsonicIndex\":0.5,"
          + "\"crackingPressure\":\"0 bar\"}";

  private static final String CATALOGUE = "{\"parts\":[" + PART + "],\"accessories\":[]}";

  private static WrongJsonException refused(JsonMapper mapper, String json, Class<?> type) {
    WrongJsonException refused =
        catchThrowableOfType(WrongJsonException.class, () -> mapper.readValue(json, type));
    assertThat(refused).as(json).isNotNull();
    return refused;
  }

  @Test
  void what_is_right_is_read() throws Exception {
    assertThat(MAPPER.readValue(CATALOGUE, Catalogue.class).parts()).hasSize(1);
    assertThat(MAPPER.readValue(CAPACITY, FlowCapacity.class).criticalPressureRatio())
        .isEqualTo(0.3);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"12.50 USD\"     | \"12,50,1 USD\" | parts[1].price   | 12,50,1 USD",
        "\"10 bar(g)\"     | \"10 mm\"     | parts[1].rated   | 10 mm",
        "\"10 bar(g)\"     | 10            | parts[1].rated   | without a unit",
        "\"10 bar(g)\"     | \"1e999 bar(g)\" | parts[1].rated | 1e999",
        "\"10 bar(g)\"     | \"NaN bar(g)\"   | parts[1].rated | NaN",
        "\"kind\":\"plug\" | \"kind\":\"plough\" | parts[1].kind | plough",
        "\"kind\":\"plug\",|               | parts[1].kind    | is missing",
        "\"id\":\"a\",     |               | parts[1].id      | is missing",
        "\"id\"            | \"identity\"  | parts[1].id | is missing",
        "\"price\"         | \"prize\"     | parts[1].prize   | is no field here",
        "\"name\":\"b\"    | \"id\":\"b\"  | parts[1].id      | stands twice",
        "\"1/4 NPT male\"  | \"1/4 NPT\"   | parts[1].end     | 1/4 NPT",
        "\"1/4 NPT male\"  | null          | parts[1].end     | is missing",
        "\"1/4 NPT male\"  | {}            | parts[1].end     | an object",
        "\"1/4 NPT male\"  | [\"a\"]       | parts[1].end     | a list",
        "\"accessories\":[] | \"accessories\":{} | accessories | an object",
        ",\"accessories\":[] |             | accessories      | is missing"
      })
  void a_wrong_field_is_told_with_its_path_its_value_and_what_is_accepted(
      String right, String wrong, String field, String told) {
    assertThat(CATALOGUE).contains(right);
    String json = CATALOGUE.replace(right, wrong == null ? "" : wrong);
    WrongJsonException refused = refused(LAX, json, Catalogue.class);
    assertThat(refused.field()).isEqualTo(field);
    assertThat(refused.complaint()).contains(told);
    assertThat(refused).hasMessage(field + ": " + refused.complaint());
    if (!told.contains("twice")) {
      assertThat(refused.accepted()).as(refused.getMessage()).isNotBlank();
      assertThatThrownBy(() -> MAPPER.readValue(json, Catalogue.class))
          .hasMessage(refused.getMessage());
    } else {
      assertThatThrownBy(() -> MAPPER.readValue(json, Catalogue.class))
          .isInstanceOf(JsonProcessingException.class);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "1e999, which is too large",
    "-1e999, which is too large",
    "1e999999999, which is too large",
    "\"NaN\", a number",
    "\"0.3\", a number",
    "true, a number",
    "null, is missing",
    "1.5, 1.5"
  })
  void a_number_that_is_none_is_refused(String number, String told) {
    String json = CAPACITY.replace("0.3", number);
    assertThat(refused(LAX, json, FlowCapacity.class)).hasMessageContaining(told);
    assertThat(refused(MAPPER, json, FlowCapacity.class)).hasMessageContaining(told);
  }

  @Test
  void what_the_library_refuses_is_told_with_its_field() {
    for (String[] each : new String[][] {
      {"{\"id\": \"x\", \"name\": \" \"}", "name", "must not be blank"},
      {"{\"id\": \" \", \"name\": \"a\"}", "id", "must not be blank"},
      {"{\"id\": \"x\", \"name\": \"a\", \"price\": \"-4 USD\"}", "price", "in [0, 10^8)"},
      {
        "{\"id\": \"x\", \"name\": \"a\", \"outsideDiameter\": \"0 mm\"}",
        "outsideDiameter",
        "above 0 mm"
      }
    }) {
      WrongJsonException wrong = catchThrowableOfType(
          WrongJsonException.class, () -> MAPPER.readValue(each[0], PartFacts.class));
      assertThat(wrong.field()).as(each[0]).isEqualTo(each[1]);
      assertThat(wrong).hasMessageStartingWith(each[1] + ": ").hasMessageContaining(each[2]);
    }
  }

  @Test
  void a_number_without_end_is_refused() {
    for (String number : List.of("NaN", "Infinity", "0.3".repeat(200), "9".repeat(500_000))) {
      assertThatThrownBy(
              () -> MAPPER.readValue(CAPACITY.replace("0.3", number), FlowCapacity.class))
          .isInstanceOf(JsonProcessingException.class);
    }
  }

  @Test
  void an_unknown_word_is_told_with_all_that_are_known() {
    assertThat(refused(MAPPER, "\"wood\"", Material.class).accepted()).contains("brass", "steel");
    assertThat(refused(MAPPER, "\"BRASS\"", Material.class).accepted()).contains("brass");
    assertThat(refused(MAPPER, "3", Material.class).accepted()).contains("brass");
  }

  @Test
  void objects_and_lists_more_than_32_deep_are_refused_by_every_mapper() {
    String deep = "[".repeat(40) + "]".repeat(40);
    String json = CATALOGUE.replace("\"accessories\":[]", "\"accessories\":" + deep);
    assertThatThrownBy(() -> MAPPER.readValue(json, Catalogue.class)).hasMessageContaining("32");
    assertThat(refused(LAX, json, Catalogue.class)).hasMessageContaining("is too deep");
    String deeper = "[".repeat(900) + "]".repeat(900);
    assertThat(refused(LAX, deeper, Catalogue.class)).hasMessageContaining("is too deep");
  }

  @Test
  void more_than_10_MB_are_refused_by_every_mapper() {
    String part = "," + PART;
    String json = CATALOGUE.replace(
        "],\"accessories\"", part.repeat((11 << 20) / part.length()) + "],\"accessories\"");
    assertThat(refused(LAX, json, Catalogue.class)).hasMessageContaining("is too long; accepted");
    assertThatThrownBy(() -> MAPPER.readValue(json, Catalogue.class))
        .isInstanceOf(JsonProcessingException.class);
    byte[] bytes = json.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    assertThatThrownBy(() -> LAX.readValue(bytes, Catalogue.class))
        .isInstanceOf(WrongJsonException.class);
  }

  @Test
  void what_stands_behind_the_value_is_refused_by_the_strict_mapper() {
    assertThatThrownBy(() -> MAPPER.readValue(CATALOGUE + "{}", Catalogue.class))
        .isInstanceOf(JsonProcessingException.class);
  }

  @Test
  void an_answer_cannot_be_handed_in() {
    assertThat(refused(MAPPER, "{}", Identification.class))
        .hasMessageContaining("an answer of airfit");
    assertThat(refused(MAPPER, "{}", org.airfit.safety.Caution.class))
        .hasMessageContaining("an answer of airfit");
  }

  @Test
  void a_text_of_the_document_is_shown_short_and_without_signs_that_steer_a_terminal() {
    String json = CATALOGUE.replace("\"10 bar(g)\"", "\"\\u001b[31m" + "x".repeat(5000) + "\"");
    String message = String.valueOf(refused(MAPPER, json, Catalogue.class).getMessage());
    assertThat(message).doesNotContain("\u001b").contains("\\u001B");
    assertThat(message.length()).isLessThan(1000);
  }

  /** A record of an embedder. */
  public record Order(String number, List<Part> parts, Map<Dimension, Length> sizes) {}

  @Test
  void values_stand_in_records_of_ones_own_and_complaints_tell_the_whole_path() throws Exception {
    String json =
        "{\"number\":\"7\",\"parts\":[" + PART + "],\"sizes\":{\"tip diameter\":\"11.93 mm\"}}";
    Order order = MAPPER.readValue(json, Order.class);
    assertThat(MAPPER.readValue(MAPPER.writeValueAsString(order), Order.class)).isEqualTo(order);
    assertThat(MAPPER.writeValueAsString(order))
        .contains(
            "\"price\":\"12.50 USD\"", "\"rated\":\"10 bar(g)\"", "\"tip diameter\":\"11.93 mm\"");
    assertThat(refused(MAPPER, json.replace("10 bar(g)", "10 mm"), Order.class).field())
        .isEqualTo("parts[1].rated");
    assertThatThrownBy(() -> MAPPER.readValue(json.replace("tip diameter", "tip"), Order.class))
        .isInstanceOf(JsonMappingException.class);
  }

  @Test
  void a_mapper_finds_the_module_by_itself() throws Exception {
    assertThat(ObjectMapper.findModules())
        .anyMatch(
            module -> module instanceof AirfitModule && module.getModuleName().equals("airfit"));
    JsonMapper found = JsonMapper.builder().findAndAddModules().build();
    assertThat(found.writeValueAsString(GaugePressure.parse("90 psig"))).isEqualTo("\"90 psig\"");
  }
}
