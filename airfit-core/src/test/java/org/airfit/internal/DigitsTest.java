package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DigitsTest {

  @ParameterizedTest
  @CsvSource({"0.05, 0.05", "1.813e-5, 1.813 × 10⁻⁵", "-3e12, -3 × 10¹²", "1e-307, 1 × 10⁻³⁰⁷"})
  void an_exponent_is_read_as_a_power_of_ten(String printed, String read) {
    assertThat(Digits.read(printed)).isEqualTo(read);
  }

  @ParameterizedTest
  @CsvSource({
    "45.9957, 4, 46.00",
    "-45.9957, 4, -46.00",
    "9999.6, 4, 1.000e4",
    "0.0500001, 3, 0.0500",
    "1234.4, 4, 1234",
    "99.96, 3, 100",
    "1e-5, 2, 1.0e-5",
    "0, 4, 0"
  })
  void the_zeros_of_a_number_that_was_computed_are_kept(double value, int digits, String text) {
    assertThat(Digits.padded(value, digits)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({
    "117560.4, 4, 1.176e5",
    "99999.6, 5, 1e5",
    "9999.4, 4, 9999",
    "1234, 4, 1234",
    "1234, 3, 1.23e3",
    "0.0253564, 4, 0.02536",
    "0, 3, 0"
  })
  void whole_digits_are_rounded_as_with_a_pencil(double value, int digits, String text) {
    assertThat(Digits.rounded(value, digits)).isEqualTo(text);
  }

  @ParameterizedTest(name = "{0} with {1} digits is {2}")
  @CsvSource({
    "0,4,0",
    "-0.0,4,0",
    "1,4,1",
    "6.2,4,6.2",
    "6.20001,4,6.2",
    "0.012345,3,0.0123",
    "-0.012345,3,-0.0123",
    "1.125,3,1.12",
    "1.375,3,1.38",
    "1.185,3,1.19", // the double lies above the tie
    "2.5,1,2",
    "3.5,1,4",
    "9.9996,4,10",
    "12345,4,12345",
    "12345.6,4,12346",
    "999999999.4,4,999999999",
    "999999999.9,4,1000000000",
    "1e9,4,1e9",
    "1234567890,4,1.235e9",
    "0.0001,4,0.0001",
    "0.00012345,4,0.0001234", // the double lies below the tie
    "0.00009999,4,9.999e-5",
    "0.000099999,4,1e-4",
    "1.8134e-5,4,1.813e-5",
    "-1.8134e-5,4,-1.813e-5",
    "1.7976931348623157e308,17,1.7976931348623157e308",
    "4.9e-324,1,5e-324",
    "0.1,17,0.10000000000000001",
    "0.5,17,0.5",
    "0.3,17,0.29999999999999999"
  })
  void significant_digits_are_rounded_half_even_and_trimmed(
      double value, int digits, String printed) {
    assertThat(Digits.significant(value, digits)).isEqualTo(printed);
  }

  @ParameterizedTest(name = "{0} with {1} decimals is {2}")
  @CsvSource({
    "0,2,0.00",
    "-0.001,2,0.00",
    "-0.0,0,0",
    "2.5,0,2",
    "3.5,0,4",
    "-2.5,0,-2",
    "0.125,2,0.12",
    "0.375,2,0.38",
    "12345.678,1,12345.7",
    "1e15,0,1000000000000000",
    "1.6e-15,15,0.000000000000002",
    "0.999,2,1.00"
  })
  void fixed_decimals_are_all_printed(double value, int decimals, String printed) {
    assertThat(Digits.fixed(value, decimals)).isEqualTo(printed);
  }

  @ParameterizedTest
  @CsvSource({
    "101299.99999999999, 101300.0",
    "0.30000000000000004, 0.3",
    "-4.7000000000000006e-4, -4.7E-4",
    "0.001, 0.001",
    "9999999.0, 9999999.0",
    "1e7, 1.0E7",
    "-7.39405514586e18, -7.39405514586E18",
    "123456.789012345, 123456.789012",
    "-0.0, 0.0",
    "NaN, NaN",
    "-Infinity, -Infinity"
  })
  void a_sentence_is_told_twelve_digits_as_java_writes_them(double value, String printed) {
    assertThat(Digits.told(value)).isEqualTo(printed);
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({
    "0,0",
    "-0.0,0",
    "100,100",
    "0.05,0.05",
    "-0.05,-0.05",
    "620000,620000",
    "0.1,0.1",
    "0.30000000000000004,0.30000000000000004",
    "0.0001,0.0001",
    "0.00009,9e-5",
    "999999999,999999999",
    "1e9,1e9",
    "1.25e22,1.25e22", // Double.toString of Java 17 writes 1.2499999999999999E22, as would no newer
    // Java
    "2e23,2e23",
    "4.9e-324,5e-324",
    "1.7976931348623157e308,1.7976931348623157e308"
  })
  void plain_numbers_have_no_more_digits_than_they_need(double value, String printed) {
    assertThat(Digits.plain(value)).isEqualTo(printed);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void what_is_no_number_is_never_printed(double value) {
    String message = "a number to print must be finite, was " + value;
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Digits.significant(value, 4))
        .withMessage(message);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Digits.fixed(value, 4))
        .withMessage(message);
    assertThatIllegalArgumentException().isThrownBy(() -> Digits.plain(value)).withMessage(message);
  }

  @Test
  void significant_digits_end_at_what_a_double_holds() {
    assertThat(Digits.significant(Math.PI, 1)).isEqualTo("3");
    assertThat(Digits.significant(Math.PI, 17)).isEqualTo("3.1415926535897931");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Digits.significant(1.0, 0))
        .withMessage("digits must be in [1, 17], was 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Digits.significant(1.0, 18))
        .withMessage("digits must be in [1, 17], was 18");
  }

  @Test
  void decimals_have_bounds() {
    assertThat(Digits.fixed(0.5, 15)).isEqualTo("0.500000000000000");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Digits.fixed(1.0, -1))
        .withMessage("decimals must be in [0, 15], was -1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Digits.fixed(1.0, 16))
        .withMessage("decimals must be in [0, 15], was 16");
  }

  @Test
  void the_country_makes_no_difference() {
    Locale before = Locale.getDefault();
    try {
      for (String tag : List.of("tr-TR", "ar-EG", "de-DE", "hi-IN-u-nu-deva")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertThat(Digits.significant(-1234.5, 6)).as(tag).isEqualTo("-1234.5");
        assertThat(Digits.fixed(1234567.5, 2)).as(tag).isEqualTo("1234567.50");
        assertThat(Digits.plain(1.25e-5)).as(tag).isEqualTo("1.25e-5");
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  /** As few digits as tell a value from others; what a conversion of units rounds is not told. */
  @Test
  void in_full_tells_a_value_from_a_limit_but_not_what_a_conversion_rounds() {
    assertThat(Digits.inFull(0.50001)).isEqualTo("0.50001");
    assertThat(Digits.inFull(0.5)).isEqualTo("0.5");
    assertThat(Digits.inFull(0.0)).isEqualTo("0");
    assertThat(Digits.inFull(-12345.678)).isEqualTo("-12345.678");
    assertThat(Digits.inFull(0.1 + 0.2)).isEqualTo("0.3");
    assertThat(Digits.inFull(0.500000000001)).isEqualTo("0.500000000001");
    assertThat(Digits.inFull(0.5000000000001)).as("at most twelve digits").isEqualTo("0.5");
    assertThat(Digits.inFull(1.0 / 3.0)).isEqualTo("0.333333333333");
    assertThat(Digits.inFull(1.25e15)).isEqualTo("1.25e15");
    assertThatIllegalArgumentException().isThrownBy(() -> Digits.inFull(Double.NaN));
  }

  /** Next to the ends the rounded figure would be 0 or 100 %: from there on it is told as less or more than that. */
  @Test
  void a_chance_is_never_nothing_and_never_certain() {
    assertThat(Digits.percent(0.0)).isEqualTo("< 0.1 %");
    assertThat(Digits.percent(Math.nextDown(0.0005))).isEqualTo("< 0.1 %");
    assertThat(Digits.percent(0.0005001)).isEqualTo("0.1 %");
    assertThat(Digits.percent(0.9341)).isEqualTo("93.4 %");
    assertThat(Digits.percent(Math.nextDown(0.9995))).isEqualTo("99.9 %");
    assertThat(Digits.percent(0.9995)).isEqualTo("> 99.9 %");
    assertThat(Digits.percent(1.0)).isEqualTo("> 99.9 %");
    assertThat(Digits.percent(0.0005)).as("no 0 %").isNotEqualTo("0.0 %").isNotEqualTo("< 0.1 %");
  }
}
