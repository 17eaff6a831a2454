package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedFlowTest {

  private static final AbsolutePressure SITE = AbsolutePressure.ofKilopascals(84.3);
  private static final Temperature WARM = Temperature.ofCelsius(25.0);

  @Test
  void what_tells_where_it_is_counted_has_one_reading() {
    TypedFlow flow = TypedFlow.parse(" 11 scfm ");
    assertThat(flow.isCounted()).isTrue();
    assertThat(flow.readings()).isEmpty();
    assertThat(flow.openInWords()).isEmpty();
    assertThat(flow.range(SITE, WARM)).isEqualTo(Range.exactly(FreeAirFlow.ofScfm60F(11.0)));
    assertThat(flow).hasToString("11 scfm");
  }

  @Test
  void what_does_not_tell_it_has_every_usual_reading() {
    TypedFlow flow = TypedFlow.parse("11 CFM");
    assertThat(flow.readings())
        .containsExactly(
            "standard cubic feet at 60 °F",
            "standard cubic feet at 68 °F",
            "ISO 8778 (ANR)",
            "free air at the site");
    assertThat(flow.range(SITE, WARM))
        .isEqualTo(UnmarkedFlow.parse("11 CFM").atSite(SITE, WARM).range());
  }

  /** The least reading of the first and the largest of the second. */
  @ParameterizedTest
  @CsvSource({"11 to 14 cfm", "11 cfm to 14 cfm"})
  void a_range_of_it_goes_from_the_least_reading_to_the_most(String text) {
    Range<FreeAirFlow> range = TypedFlow.parse(text).range(SITE, WARM);
    double least =
        UnmarkedFlow.parse("11 cfm").atSite(SITE, WARM).least().massFlow().kilogramsPerSecond();
    assertThat(range.least().massFlow().kilogramsPerSecond()).isCloseTo(least, within(1.0e-15));
    assertThat(range.most().cubicFeetPerMinute()).isCloseTo(14.0, within(1.0e-12));
    assertThat(TypedFlow.parse("11 to 14 cfm")).isEqualTo(TypedFlow.parse("11 cfm to 14 cfm"));
  }

  @Test
  void one_end_may_tell_where_it_is_counted_and_the_other_not() {
    TypedFlow flow = TypedFlow.parse("11 scfm to 400 L/min");
    assertThat(flow.isCounted()).isFalse();
    assertThat(flow.readings()).contains("DIN 1343 (0 °C)");
    assertThat(flow.range(SITE, WARM).least()).isEqualTo(FreeAirFlow.ofScfm60F(11.0));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "11-14 cfm | type \"11 to 14 cfm\"",
        "11 – 14 scfm | type \"11 to 14 scfm\"",
        "11 cfm - 14 cfm | type \"11 cfm to 14 cfm\"",
        "14 to 11 cfm | the smaller flow comes first",
        "11 | the unit is missing",
        "eleven cfm | this is no number",
        "11 psig | is a unit of gauge pressure",
        "11 to 14 | the unit is missing",
        "11,5 cfm | write 6.2 with a point",
      })
  void what_cannot_be_read_is_refused_with_what_to_type(String text, String told) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> TypedFlow.parse(text))
        .withMessageContaining(told)
        .withMessageContaining("such as");
  }

  /** How much "about" leaves open nobody can tell; a range does. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "about 11 cfm | about | 11 cfm",
        "~11 scfm | ~ | 11 scfm",
        "approx. 400 l/min | approx. | 400 l/min",
        "ca 11 scfm | ca | 11 scfm"
      })
  void a_flow_that_is_only_about_is_answered_with_what_to_type(
      String typed, String word, String instead) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> TypedFlow.parse(typed))
        .withMessageContaining(
            "\"" + word + "\" is not read, as it does not tell by how much: type \"" + instead
                + "\" alone, or where a range is possible the least and the most");
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> Length.parse("about long"))
        .withMessageContaining("this is no number");
  }

  @ParameterizedTest
  @CsvSource({"0-5 scfm, 5 scfm", "9-12 scfm, 12 scfm", ".5-2 scfm, 2 scfm", "11-14, 14"})
  void two_numbers_with_a_dash_are_told_the_word_of_a_range(String typed, String second) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> TypedFlow.parse(typed))
        .withMessageContaining("a range has the word to: type \"")
        .withMessageContaining(" to " + second + "\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"half-5 scfm", "11 - scfm", "11 -", "11 -  ", "11 scfm-"})
  void a_dash_without_two_numbers_is_no_range(String typed) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> TypedFlow.parse(typed))
        .satisfies(
            refused -> assertThat(refused.getMessage()).doesNotContain("a range has the word to"));
  }

  @Test
  void what_a_flow_leaves_open_is_told_where_it_does() {
    assertThat(TypedFlow.parse("11 scfm").openInWords()).isEmpty();
    assertThat(TypedFlow.parse("11 CFM").openInWords())
        .startsWith("does not tell where the air is counted; it may be ")
        .contains(", ");
  }
}
