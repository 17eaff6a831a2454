package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JsonTest {

  @Test
  void each_kind_of_value_is_read() throws WrongFileException {
    assertThat(Json.read(
            "a.json", "{\"list\": [1, 2.5, true, false, null, \"x\", {}], \"a\": {\"b\": []}}"))
        .isEqualTo(Map.of(
            "list",
            Arrays.asList(1, 2.5, true, false, null, "x", Map.of()),
            "a",
            Map.of("b", List.of())));
    assertThat(Json.read("a.json", "9999999999")).isEqualTo(9_999_999_999L);
    assertThat(Json.read("a.json", "12345678901234567890123"))
        .isEqualTo(new BigInteger("12345678901234567890123"));
    assertThat(Json.read("a.json", "\ufeff{}")).as("a mark that editors put").isEqualTo(Map.of());
  }

  @Test
  void fields_stay_in_their_order() throws WrongFileException {
    assertThat(((Map<?, ?>) Json.read("a.json", "{\"z\": 1, \"a\": 2, \"m\": 3}"))
            .keySet()
            .toString())
        .isEqualTo("[z, a, m]");
  }

  @ParameterizedTest
  @ValueSource(strings = {"{\"a\":1} {", "{\"a\":1} 2", "{\"a\":1} null", "[] []"})
  void what_stands_behind_the_end_is_refused(String text) {
    assertThatThrownBy(() -> Json.read("a.json", text))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining("more stands behind its end; a file holds one object")
        .hasMessageContaining("line 1, column ");
  }
}
