package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TypedUnitsTest {

  private static TypedUnits of(Object content) {
    return TypedUnits.of(Document.of("job.json", content));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "30 ft",
        "30ft",
        "50'",
        "3/8 in",
        "1 1/2\"",
        "0.4695 in",
        "90 psig",
        "90 psi",
        "104.7 psia",
        "5 psi",
        "90 psi (g)",
        "22 scfm",
        "22 SCFM",
        "avg 4 CFM",
        "4 cu ft/min",
        "75 °F",
        "75 F",
        "80 gal us",
        "5 hp",
        "100 to 120 psig",
      })
  void a_value_of_the_us_counts_as_one(String typed) {
    assertThat(of(Map.of("value", typed))).isEqualTo(new TypedUnits(Optional.empty(), 1, 0));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "10 m",
        "12.7 mm",
        "6,9 bar(g)",
        "6.9 barg",
        "1.013 bar(a)",
        "690 kPa(g)",
        "16 L/s ANR",
        "400 l/min",
        "58 Nm³/h",
        "20 °C",
        "20 C",
        "293 K",
        "4 kW",
      })
  void an_si_value_counts_as_one(String typed) {
    assertThat(of(Map.of("value", typed))).isEqualTo(new TypedUnits(Optional.empty(), 0, 1));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1/2 NPT female",
        "G 1/4 A male",
        "R 1/4 male",
        "M5 female",
        "1/4-18 NPT",
        "4 elbows",
        "2 sockets",
        "1 atm",
        "tip diameter",
        "H-12 in stock",
        "12",
      })
  void a_thread_a_count_and_a_name_have_no_unit(String typed) {
    assertThat(of(Map.of("value", typed))).isEqualTo(new TypedUnits(Optional.empty(), 0, 0));
  }

  @Test
  void two_values_in_one_text_are_two() {
    assertThat(of(Map.of("tool", Map.of("plate", "6.3 bar(g) 400 l/min"))))
        .isEqualTo(new TypedUnits(Optional.empty(), 0, 2));
    assertThat(of(List.of("34 scfm at 100 psig", "drop 0.3 bar")))
        .isEqualTo(new TypedUnits(Optional.empty(), 2, 1));
  }

  @Test
  void names_and_remarks_are_words_and_not_values() {
    assertThat(of(Map.of(
            "job",
            "A 50 ft hose",
            "customer",
            "12 in Pipe Works",
            "//",
            "was 10 m",
            "tool",
            Map.of("name", "1/2 in impact wrench", "air", "5 L/s ANR"))))
        .isEqualTo(new TypedUnits(Optional.empty(), 0, 1));
  }

  @Test
  void most_values_decide_and_a_tie_is_si() {
    assertThat(new TypedUnits(Optional.empty(), 5, 4).system()).isEqualTo(UnitSystem.US);
    assertThat(new TypedUnits(Optional.empty(), 4, 4).system()).isEqualTo(UnitSystem.SI);
    assertThat(new TypedUnits(Optional.empty(), 3, 4).system()).isEqualTo(UnitSystem.SI);
    assertThat(new TypedUnits(Optional.of(UnitSystem.SI), 5, 4).system()).isEqualTo(UnitSystem.SI);
    assertThat(new TypedUnits(Optional.of(UnitSystem.US), 0, 4).system()).isEqualTo(UnitSystem.US);
  }

  @Test
  void the_units_are_told_with_the_reason_and_how_to_change_them() {
    assertThat(new TypedUnits(Optional.empty(), 9, 3).inWords())
        .isEqualTo(
            "US units, in which 9 of 12 values of the file are typed. To have SI units, add \"units\":"
                + " \"SI\" to the file.");
    assertThat(new TypedUnits(Optional.empty(), 4, 4).inWords())
        .isEqualTo(
            "SI units, as half of the 8 values of the file are typed in either. To have US units, add"
                + " \"units\": \"US\" to the file.");
    assertThat(new TypedUnits(Optional.empty(), 0, 1).inWords())
        .isEqualTo("SI units, in which the one value of the file is typed. To have US units, add"
            + " \"units\": \"US\" to the file.");
    assertThat(new TypedUnits(Optional.empty(), 0, 0).inWords())
        .startsWith("SI units, as no value of the file has a unit. To have US units");
    assertThat(new TypedUnits(Optional.of(UnitSystem.US), 0, 4).inWords())
        .isEqualTo("US units, as the file says.");
  }

  @Test
  void the_field_units_is_read_in_any_case_and_refused_with_what_is_accepted() throws Exception {
    Document us = Document.of("job.json", Map.of("units", "us", "reach", "10 m"));
    assertThat(TypedUnits.in(Field.of(us), us))
        .isEqualTo(new TypedUnits(Optional.of(UnitSystem.US), 0, 1));
    Document wrong = Document.of("job.json", Map.of("units", "metric"));
    assertThat(catchThrowable(() -> TypedUnits.in(Field.of(wrong), wrong)))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining("units")
        .hasMessageContaining("was \"metric\"; accepted: SI, US");
  }

  @Test
  void a_count_is_not_negative() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TypedUnits(Optional.empty(), -1, 0))
        .withMessageContaining("were -1 and 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TypedUnits(Optional.empty(), 0, -1))
        .withMessageContaining("were 0 and -1");
  }

  @Test
  void what_is_printed_on_a_tool_counts_and_the_marking_of_a_shop_does_not() {
    assertThat(of(Map.of("tool", Map.of("marking", "6.3 bar 400 l/min"))))
        .isEqualTo(new TypedUnits(Optional.empty(), 0, 2));
    assertThat(of(Map.of("tool", Map.of("marking", "90 psi avg 4 CFM"))))
        .isEqualTo(new TypedUnits(Optional.empty(), 2, 0));
    assertThat(of(Map.of(
            "line",
            List.of(Map.of(
                "lines", List.of(Map.of("tool", Map.of("marking", "max 6,3 bar / 400 Nl/min"))))))))
        .isEqualTo(new TypedUnits(Optional.empty(), 0, 2));
    assertThat(of(Map.of("conditions", Map.of("marking", "blue band, 2 in wide"))))
        .isEqualTo(new TypedUnits(Optional.empty(), 0, 0));
  }
}
