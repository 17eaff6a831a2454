package org.airfit.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.airfit.internal.Digits;

/**
 * An amount of money in the user's own currency, such as "0.11 USD".
 *
 * <p>The currency is a text and nothing else: airfit knows no rates between currencies and refuses to add two of them.
 *
 * @param amount the amount
 * @param currency how the currency is written, such as "USD"
 */
public record Money(BigDecimal amount, String currency) implements Comparable<Money> {

  /**
   * Checks the components.
   *
   * @param amount the amount
   * @param currency how the currency is written, such as "USD"
   */
  public Money {
    amount.signum(); // null fails here
    if (currency.isBlank() || !currency.equals(currency.strip())) {
      throw new IllegalArgumentException(
          "currency must be a text such as \"USD\" without blanks around it, was \"" + currency
              + "\"");
    }
  }

  /**
   * Reads an amount and a currency.
   *
   * @param text the amount, a blank and the currency, such as "0.11 USD"
   * @return the money
   * @throws IllegalArgumentException if {@code text} is anything else
   */
  public static Money parse(String text) {
    String[] words = text.strip().split("\\s+", 2);
    if (words.length == 2 && words[0].matches("-?\\d{1,15}(\\.\\d{1,15})?")) {
      return new Money(new BigDecimal(words[0]), words[1]);
    }
    throw new IllegalArgumentException(
        "money must be an amount and a currency such as \"0.11 USD\", was \"" + text + "\"");
  }

  /**
   * Adds money of the same currency.
   *
   * @param other what to add
   * @return the sum
   * @throws IllegalArgumentException if the currencies differ
   */
  public Money plus(Money other) {
    requireSame(other);
    return new Money(amount.add(other.amount), currency);
  }

  /**
   * Multiplies this.
   *
   * @param factor a finite factor
   * @return this times {@code factor}, to 16 digits
   * @throws IllegalArgumentException if {@code factor} is not finite
   */
  public Money times(double factor) {
    if (!Double.isFinite(factor)) {
      throw new IllegalArgumentException("factor of money must be finite, was " + factor);
    }
    return new Money(amount.multiply(BigDecimal.valueOf(factor), MathContext.DECIMAL64), currency);
  }

  private void requireSame(Money other) {
    if (!currency.equals(other.currency)) {
      throw new IllegalArgumentException(
          "currency must be " + currency + " as in the other amount, was " + other.currency);
    }
  }

  /**
   * Compares amounts of one currency.
   *
   * @param other the other
   * @return negative, 0 or positive
   * @throws IllegalArgumentException if the currencies differ
   */
  @Override
  public int compareTo(Money other) {
    requireSame(other);
    return amount.compareTo(other.amount);
  }

  /** Equal amounts are equal however many zeros are written behind the point. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Money that
        && currency.equals(that.currency)
        && amount.compareTo(that.amount) == 0;
  }

  @Override
  public int hashCode() {
    return 31 * amount.stripTrailingZeros().hashCode() + currency.hashCode();
  }

  /**
   * Prints this, rounded half-even.
   *
   * @param decimals the number of digits after the point, from 0 to 15
   * @return the amount and the currency, such as "912.45 USD"
   * @throws IllegalArgumentException if {@code decimals} is out of range
   */
  public String format(int decimals) {
    if (decimals < 0 || decimals > 15) {
      throw new IllegalArgumentException("decimals must be in [0, 15], was " + decimals);
    }
    return amount.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString() + " " + currency;
  }

  /** {@return the amount to at most 10 digits and the currency, such as "0.11 USD"} */
  @Override
  public String toString() {
    return Digits.significant(amount.doubleValue(), 10) + " " + currency;
  }
}
