package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MoneyTest {

  @Test
  void it_reads_what_people_type_and_prints_it_again() {
    Money rate = Money.parse(" 0.110 USD ");
    assertThat(rate).isEqualTo(new Money(new BigDecimal("0.11"), "USD"));
    assertThat(rate).hasSameHashCodeAs(new Money(new BigDecimal("0.11"), "USD"));
    assertThat(rate).hasToString("0.11 USD");
    assertThat(Money.parse("-3 crowns a piece").currency()).isEqualTo("crowns a piece");
    assertThat(rate).isNotEqualTo(Money.parse("0.11 EUR")).isNotEqualTo("0.11 USD");
    assertThat(rate).isNotEqualTo(Money.parse("0.12 USD"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`` | 0 | the amount is missing",
        "USD | 0 | the amount is missing",
        "$12 | 0 | the amount is missing",
        "NaN USD | 0 | the amount is missing",
        "- USD | 0 | the amount is missing",
        "12 | 2 | the currency is missing",
        "12USD | 2 | between amount and currency stands a blank",
        "1e3 USD | 1 | between amount and currency stands a blank",
        "1. USD | 1 | between amount and currency stands a blank",
        "1,5 USD | 1 | a comma means different things in different places",
        "1 200 USD | 2 | a second number: write 1200 without a gap",
        "0.10 to 0.15 USD | 8 | a second number",
        "5 USD2 | 5 | a second number",
        "5 -USD | 0 | currency must be a text such as",
        "1000000000000000000000000000000 USD | 0 | amount must lie below 1e30",
        "0.0000000000000000000000000000001 USD | 0 | amount must lie below 1e30 with at most 30 decimals"
      })
  void anything_else_is_refused_with_what_to_type(String text, int position, String problem) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> Money.parse(text))
        .withMessageStartingWith("\"" + text + "\": " + problem)
        .withMessageEndingWith("accepted: an amount and a currency, such as \"0.11 USD\"")
        .satisfies(wrong -> assertThat(wrong.position()).isEqualTo(position));
  }

  /** A cent must not be lost in what is printed, however much money it is. */
  @Test
  void it_prints_every_digit_and_reads_it_back() {
    assertThat(Money.parse("123456789.01 USD")).hasToString("123456789.01 USD");
    assertThat(Money.parse("12345678901.23 EUR")).hasToString("12345678901.23 EUR");
    assertThat(Money.parse("−3.50 USD")).isEqualTo(Money.parse("-3.5 USD")).hasToString("-3.5 USD");
    assertThat(Money.parse("999999999999999999999999999999.5 USD").currency()).isEqualTo("USD");
    assertThat(Money.parse("1 USD").times(1e-40)).isEqualTo(Money.parse("0 USD"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Money.parse("1 USD").times(1e30))
        .withMessageStartingWith("amount must lie below 1e30");
  }

  @Test
  void it_adds_multiplies_and_compares_in_one_currency() {
    Money price = Money.parse("12.50 USD");
    assertThat(price.plus(Money.parse("0.25 USD"))).isEqualTo(Money.parse("12.75 USD"));
    assertThat(price.times(0.5)).isEqualTo(Money.parse("6.25 USD"));
    assertThat(price).isGreaterThan(Money.parse("12.49 USD"));
    assertThat(Money.parse("2.345 USD").format(2)).isEqualTo("2.34 USD");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> price.plus(Money.parse("1 EUR")))
        .withMessage("currency must be USD as in the other amount, was EUR");
    assertThatIllegalArgumentException().isThrownBy(() -> price.compareTo(Money.parse("1 EUR")));
  }

  @Test
  void what_is_no_money_is_refused() {
    Money price = Money.parse("12.50 USD");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> price.times(Double.NaN))
        .withMessage("factor of money must be finite, was NaN");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> price.format(16))
        .withMessage("decimals must be in [0, 15], was 16");
    assertThatIllegalArgumentException().isThrownBy(() -> price.format(-1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Money(BigDecimal.ONE, " USD"))
        .withMessageStartingWith("currency must be a text");
    for (String currency :
        List.of("", "USD ", "\u00a0USD", "2USD", "USD2", "to 12 EUR", "-USD", "x".repeat(61))) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new Money(BigDecimal.ONE, currency))
          .withMessageStartingWith("currency must be a text");
    }
    assertThat(new Money(BigDecimal.ONE, "x".repeat(60)).currency()).hasSize(60);
  }

  @ParameterizedTest
  @CsvSource({"0.3 USD, 0.30 USD", "0.155 USD, 0.155 USD", "12 JPY, 12 JPY", "5 EUR, 5.00 EUR"})
  void money_is_shown_with_two_decimals_where_the_currency_has_them(String typed, String shown) {
    assertThat(Money.parse(typed).shown()).isEqualTo(shown);
  }
}
