package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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
  @ValueSource(strings = {"", "USD", "12", "1e3 USD", "1,5 USD", "NaN USD", "$12"})
  void anything_else_is_refused_with_what_to_type(String text) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Money.parse(text))
        .withMessage(
            "money must be an amount and a currency such as \"0.11 USD\", was \"" + text + "\"");
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
    assertThatIllegalArgumentException().isThrownBy(() -> new Money(BigDecimal.ONE, ""));
  }
}
