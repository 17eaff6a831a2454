package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The doors of numbers and texts, tried just before, at and just behind each bound. */
class DoorBoundsTest {

  private static UnitScale scale(double multiplier, double divisor, double offset) {
    return new UnitScale("u", multiplier, divisor, offset, "a unit for this test", List.of());
  }

  @ParameterizedTest
  @CsvSource({
    "0.0, 1.0",
    "1.0, 0.0",
    "-1.0, 1.0",
    "1.0, -1.0",
    "Infinity, 1.0",
    "1.0, Infinity",
    "NaN, 1.0",
    "1.0, NaN"
  })
  void a_factor_of_a_unit_must_be_positive_and_finite(double multiplier, double divisor) {
    assertThatThrownBy(() -> scale(multiplier, divisor, 0.0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must be positive and finite");
  }

  @Test
  void the_least_and_the_largest_factor_are_taken() {
    assertThat(scale(Double.MIN_VALUE, Double.MAX_VALUE, 0.0).multiplier())
        .isEqualTo(Double.MIN_VALUE);
    assertThat(scale(Double.MAX_VALUE, Double.MIN_VALUE, 0.0).divisor())
        .isEqualTo(Double.MIN_VALUE);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 273.15, 459.67, -273.15, 0.01})
  void an_offset_of_two_decimals_is_taken(double offset) {
    assertThat(scale(1.0, 1.0, offset).offset()).isEqualTo(offset);
  }

  @ParameterizedTest
  @ValueSource(doubles = {273.155, 0.001, Double.NaN, Double.POSITIVE_INFINITY})
  void an_offset_of_more_decimals_is_refused(double offset) {
    assertThatThrownBy(() -> scale(1.0, 1.0, offset))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("of two decimals at most");
  }

  /** What a product rounds off, against the exact product of the two doubles. */
  @ParameterizedTest
  @CsvSource({
    "0.1, 0.3",
    "1.7e300, 1.3e-40",
    "1.3e-40, 1.7e300",
    "1.1e154, 1.3e154",
    "3.3e299, 0.7",
    "0.7, 3.3e299",
    "-1.7e300, 1.1",
    "1.0000000000000002, 1.0000000000000002"
  })
  void what_a_product_rounds_off_is_found_exactly(double one, double other) {
    double product = one * other;
    BigDecimal lost =
        new BigDecimal(one).multiply(new BigDecimal(other)).subtract(new BigDecimal(product));
    assertThat(UnitScale.lostByProduct(one, other, product)).isEqualTo(lost.doubleValue());
  }

  @Test
  void an_amount_of_money_has_room_for_thirty_places_and_its_decimals() {
    BigDecimal most = new BigDecimal(BigInteger.TEN.pow(30));
    assertThatThrownBy(() -> new Money(most, "USD")).hasMessageContaining("below 1e30");
    assertThatThrownBy(() -> new Money(most.negate(), "USD")).hasMessageContaining("below 1e30");
    BigDecimal large = most.subtract(BigDecimal.ONE);
    assertThat(new Money(large, "USD").amount()).isEqualByComparingTo(large);
    // how many decimals are taken is told by the error; so many are taken and one more is not
    BigDecimal fine = BigDecimal.ONE.movePointLeft(1000);
    String told = refusal(() -> new Money(fine, "USD"));
    int decimals = Integer.parseInt(told.replaceAll(".*at most ([0-9]+) decimals.*", "$1"));
    assertThat(new Money(BigDecimal.ONE.movePointLeft(decimals), "USD").amount().scale())
        .isEqualTo(decimals);
    assertThatThrownBy(() -> new Money(BigDecimal.ONE.movePointLeft(decimals + 1), "USD"))
        .hasMessageContaining("decimals");
  }

  private static String refusal(Runnable door) {
    try {
      door.run();
    } catch (IllegalArgumentException e) {
      return String.valueOf(e.getMessage());
    }
    throw new AssertionError("was taken");
  }

  @Test
  void money_is_printed_with_none_to_fifteen_decimals() {
    Money money = Money.parse("2.5 USD");
    assertThat(money.format(0)).isEqualTo("2 USD");
    assertThat(money.format(15)).isEqualTo("2.500000000000000 USD");
    assertThatThrownBy(() -> money.format(-1)).hasMessageContaining("[0, 15], was -1");
    assertThatThrownBy(() -> money.format(16)).hasMessageContaining("[0, 15], was 16");
  }

  @ParameterizedTest
  @ValueSource(strings = {"USD", "+ USD", "", "−", "- 3 USD", ".5 USD"})
  void money_without_digits_in_front_is_refused(String text) {
    assertThatThrownBy(() -> Money.parse(text)).isInstanceOf(QuantityFormatException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"+USD", "9USD", ".USD", ",USD", "0USD", "−USD", "USD0", "U9D"})
  void a_currency_has_no_digit_and_begins_with_no_sign(String currency) {
    assertThatThrownBy(() -> new Money(BigDecimal.ONE, currency))
        .hasMessageContaining("no digit in it and no sign in front");
  }

  @Test
  void a_point_beside_a_digit_is_refused_where_the_comma_marks_decimals() {
    for (String text : List.of("6.2 bar", "6. bar", ".6 bar", "0.0 bar", "9.9 bar")) {
      assertThatThrownBy(() -> DecimalMark.COMMA.read(text, PressureDrop::parse))
          .as(text)
          .isInstanceOf(QuantityFormatException.class)
          .hasMessageContaining("a point in a number whose decimal mark is a comma");
    }
    assertThatThrownBy(() -> DecimalMark.COMMA.read("6,2,1 bar", PressureDrop::parse))
        .hasMessageContaining("a second comma in a number");
    for (String text : List.of("0,5 bar", "9,5 bar", "6,0 bar", "6,9 bar")) {
      assertThat(DecimalMark.COMMA.read(text, PressureDrop::parse))
          .isEqualTo(PressureDrop.parse(text.replace(',', '.')));
    }
    // a comma with no digit behind it is none of a number's
    assertThatThrownBy(() -> DecimalMark.COMMA.read("6,", PressureDrop::parse))
        .isInstanceOf(QuantityFormatException.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "16 L/s at shop (15 °C, 100 kPa(a))",
        "16 L/s at shop (15 °C, 100 kPa(a), dry, dry)",
        "16 L/s at shop 15 °C, 100 kPa(a), dry)",
        "16 L/s at shop (15 °C, 100 kPa(a), dry",
        "16 L/s at shop (15 °C), 100 kPa(a), dry",
        "16 L/s at ",
        "16 L/s at",
        "at shop (15 °C, 100 kPa(a), dry)",
        " at shop (15 °C, 100 kPa(a), dry)"
      })
  void a_state_that_is_not_whole_is_refused(String text) {
    assertThatThrownBy(() -> FreeAirFlow.parse(text)).isInstanceOf(QuantityFormatException.class);
  }

  @Test
  void a_state_may_have_brackets_in_its_name_and_blanks_behind_it() {
    FreeAirFlow plain = FreeAirFlow.parse("16 L/s at shop (15 °C, 100 kPa(a), dry)");
    assertThat(FreeAirFlow.parse("16 L/s at shop (15 °C, 100 kPa(a), dry)  ")).isEqualTo(plain);
    FreeAirFlow named = FreeAirFlow.parse("16 L/s at shop (new) (15 °C, 100 kPa(a), dry)");
    assertThat(named.reference().name()).isEqualTo("shop (new)");
    assertThat(FreeAirFlow.parse(named.toString())).isEqualTo(named);
  }

  @ParameterizedTest
  @ValueSource(strings = {"6 bar(g", "6 barg)", "6 bar((g)", "6 bar(g))", "6 bar(g]("})
  void a_bracket_without_a_partner_is_refused(String text) {
    assertThatThrownBy(() -> GaugePressure.parse(text)).isInstanceOf(QuantityFormatException.class);
  }

  @ParameterizedTest
  @CsvSource({"6 0 bar(g)", "6 9 bar(g)", "6 5 bar(g)"})
  void a_second_number_is_named(String text) {
    assertThatThrownBy(() -> GaugePressure.parse(text)).hasMessageContaining("number");
  }

  @ParameterizedTest
  @CsvSource({
    "3/8 in (ID), 3/8 in",
    "3/8 in [ID], 3/8 in",
    "3/8 in bore, 3/8 in",
    "3/8 in ID, 3/8 in",
    "10 mm hose, 10 mm"
  })
  void the_kind_of_a_bore_is_taken_from_its_label(String text, String label) {
    assertThat(HoseBore.parse(text)).hasToString(HoseBore.parse(label).toString());
    assertThat(HoseBore.parse(text)).isEqualTo(HoseBore.parse(label));
  }

  @Test
  void a_number_too_small_to_hold_is_refused_and_a_written_zero_is_not() {
    for (String text : List.of("1e-400 m", "0.9e-400 m", "9e-999 m")) {
      assertThatThrownBy(() -> Length.parse(text)).hasMessageContaining("too small to hold");
    }
    assertThat(Length.parse("0.000e-400 m").metres()).isZero();
    assertThat(Length.parse("0/8 in").metres()).isZero();
  }

  @Test
  void a_mixed_number_needs_its_blank_or_hyphen() {
    assertThat(Length.parse("1 1/2 in").inches()).isEqualTo(1.5);
    assertThat(Length.parse("1-1/2 in").inches()).isEqualTo(1.5);
    assertThat(Length.parse("11/2 in").inches()).isEqualTo(5.5);
  }
}
