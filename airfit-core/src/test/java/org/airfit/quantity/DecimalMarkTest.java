package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimalMarkTest {

  @Test
  void a_comma_is_read_on_request_whatever_is_read() {
    assertThat(DecimalMark.COMMA.read("6,2 bar(g)", GaugePressure::parse))
        .isEqualTo(GaugePressure.ofBar(6.2));
    assertThat(DecimalMark.COMMA.read("1,5 m³/min ISO 1217", FreeAirFlow::parse))
        .isEqualTo(FreeAirFlow.parse("1.5 m³/min ISO 1217"));
    assertThat(DecimalMark.COMMA.read(",5 in", Length::parse)).isEqualTo(Length.ofInches(0.5));
    assertThat(DecimalMark.COMMA.read("1,813e-5 Pa s", DynamicViscosity::parse))
        .isEqualTo(DynamicViscosity.parse("1.813e-5 Pa s"));
    assertThat(DecimalMark.COMMA.read("0,11 EUR", Money::parse)).isEqualTo(Money.parse("0.11 EUR"));
    assertThat(DecimalMark.COMMA.read("9,5 mm I.D.", HoseBore::parse))
        .isEqualTo(HoseBore.parse("9.5 mm"));
    assertThat(DecimalMark.COMMA.read("shop (15,5 °C, 100,2 kPa(a), dry)", ReferenceState::parse))
        .isEqualTo(ReferenceState.parse("shop (15.5 °C, 100.2 kPa(a), dry)"));
    assertThat(DecimalMark.COMMA.read("3/8 in", Length::parse)).isEqualTo(Length.ofInches(0.375));
    assertThat(DecimalMark.POINT.read("6.2 mm", Length::parse))
        .isEqualTo(Length.ofMillimetres(6.2));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "6.2 mm | 1 | a point in a number whose decimal mark is a comma",
        "1.200,5 mm | 1 | a point in a number whose decimal mark is a comma",
        "1,200,5 mm | 5 | a second comma in a number",
        "5, mm | 1 | a comma means different things",
        "6,2 | 3 | the unit is missing",
        "-6,2 mm | 0 | length must be finite and at least 0 mm, was -6.2 mm"
      })
  void what_cannot_be_read_is_told_of_the_text_that_was_typed(
      String text, int position, String problem) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> DecimalMark.COMMA.read(text, Length::parse))
        .withMessageStartingWith("\"" + text + "\": " + problem)
        .satisfies(wrong -> {
          assertThat(wrong.text()).isEqualTo(text);
          assertThat(wrong.position()).isEqualTo(position);
        });
  }

  @Test
  void a_comma_is_refused_where_nobody_asked_for_it() {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> DecimalMark.POINT.read("6,2 mm", Length::parse))
        .withMessageContaining("a comma means different things in different places");
  }
}
