package org.airfit.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;
import java.util.Set;

/**
 * An amount of money in the user's own currency, such as "0.11 USD".
 *
 * <p>The currency is a text and nothing else: airfit knows no rates between currencies and refuses to add two of them.
 *
 * <p>Amounts keep their currency and their digits:
 *
 * <pre>{@code
 * import org.airfit.quantity.Money;
 *
 * class PriceOfAKit {
 *   public static void main(String[] args) {
 *     Money kit = Money.parse("18.50 USD").plus(Money.parse("4 USD")).times(2.0);
 *     System.out.println(kit.shown()); // 45.00 USD
 *   }
 * }
 * }</pre>
 *
 * @param amount the amount
 * @param currency how the currency is written, such as "USD"
 */
public record Money(BigDecimal amount, String currency) implements Comparable<Money> {

  /** The most digits behind the point that an amount may have. */
  private static final int MOST_DECIMALS = 30;

  private static final int LONGEST_CURRENCY = 60;

  /** Currencies without a smaller coin, by the letters of ISO 4217; from memory. */
  private static final Set<String> WHOLE = Set.of("CLP", "ISK", "JPY", "KRW", "PYG", "VND");

  private static final BigDecimal TOO_LARGE = new BigDecimal("1e30");

  private static final String ACCEPTED = "an amount and a currency, such as \"0.11 USD\"";

  /**
   * Checks the components.
   *
   * @param amount the amount
   * @param currency how the currency is written, such as "USD"
   * @throws IllegalArgumentException if {@code amount} is 1e30 or more or has more than 30 decimals, or {@code
   * currency} is blank, longer than 60 characters, has a digit or begins with a sign
   */
  public Money {
    Objects.requireNonNull(amount, "amount");
    if (!isCurrency(Objects.requireNonNull(currency, "currency"))) {
      throw new IllegalArgumentException(
          "currency must be a text such as \"USD\" without blanks around it, of at most "
              + LONGEST_CURRENCY + " characters, no digit in it and no sign in front, was \""
              + QuantityFormatException.shown(currency) + "\"");
    }
    if (amount.abs().compareTo(TOO_LARGE) >= 0
        || amount.stripTrailingZeros().scale() > MOST_DECIMALS) {
      throw new IllegalArgumentException("amount must lie below 1e30 with at most " + MOST_DECIMALS
          + " decimals, was " + QuantityFormatException.shown(amount.toString()) + " " + currency);
    }
  }

  private static boolean isCurrency(String text) {
    return !text.isEmpty()
        && text.length() <= LONGEST_CURRENCY
        && "+-−.,".indexOf(text.charAt(0)) < 0
        && firstDigit(text, 0) == text.length()
        && !Lexicon.isSpace(text.charAt(0))
        && !Lexicon.isSpace(text.charAt(text.length() - 1));
  }

  /**
   * Reads an amount and a currency.
   *
   * @param text the amount, a blank and the currency, such as "0.11 USD"
   * @return the money
   * @throws QuantityFormatException if {@code text} is anything else; it tells where and what would be accepted
   */
  public static Money parse(String text) {
    Grammar.requireShort(text, ACCEPTED);
    int start = Lexicon.skipSpaces(text, 0);
    int end = afterAmount(text, start);
    if (end == start) {
      throw wrong(text, start, "the amount is missing");
    }
    int word = Lexicon.skipSpaces(text, end);
    if (word == text.length()) {
      throw wrong(text, word, "the currency is missing");
    }
    if (text.charAt(word) == ',') {
      throw wrong(text, word, Grammar.COMMA);
    }
    if (word == end) {
      throw wrong(text, end, "between amount and currency stands a blank");
    }
    int second = firstDigit(text, word);
    if (second < text.length()) {
      throw wrong(text, second, Grammar.SECOND_NUMBER);
    }
    int last = text.length();
    while (Lexicon.isSpace(text.charAt(last - 1))) {
      last--;
    }
    try {
      String amount = text.charAt(start) == '−'
          ? "-" + text.substring(start + 1, end)
          : text.substring(start, end);
      return new Money(new BigDecimal(amount), text.substring(word, last));
    } catch (IllegalArgumentException refused) {
      QuantityFormatException wrong = wrong(text, start, String.valueOf(refused.getMessage()));
      wrong.initCause(refused);
      throw wrong;
    }
  }

  /** Digits with or without a sign and decimals; where none begin, {@code from}. */
  private static int afterAmount(String text, int from) {
    int sign = from < text.length() && "-−".indexOf(text.charAt(from)) >= 0 ? from + 1 : from;
    int whole = afterDigits(text, sign);
    if (whole == sign) {
      return from;
    }
    boolean hasDecimals = text.startsWith(".", whole) && afterDigits(text, whole + 1) > whole + 1;
    return hasDecimals ? afterDigits(text, whole + 1) : whole;
  }

  /** Where the first digit stands; behind the text if there is none. */
  private static int firstDigit(String text, int from) {
    int at = from;
    while (at < text.length() && afterDigits(text, at) == at) {
      at++;
    }
    return at;
  }

  private static int afterDigits(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    return at;
  }

  private static QuantityFormatException wrong(String text, int position, String problem) {
    return new QuantityFormatException(text, position, problem, ACCEPTED);
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
   * @return this times {@code factor}, to 16 digits and at most 30 decimals
   * @throws IllegalArgumentException if {@code factor} is not finite or the product is too large
   */
  public Money times(double factor) {
    if (!Double.isFinite(factor)) {
      throw new IllegalArgumentException("factor of money must be finite, was " + factor);
    }
    BigDecimal product = amount.multiply(BigDecimal.valueOf(factor), MathContext.DECIMAL64);
    int decimals = Math.min(product.scale(), MOST_DECIMALS);
    return new Money(product.setScale(decimals, RoundingMode.HALF_EVEN), currency);
  }

  private void requireSame(Money other) {
    if (!currency.equals(Objects.requireNonNull(other, "other").currency)) {
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

  /**
   * {@return the amount with all its digits, at least two behind the point, and the currency, such as "0.30 USD" or
   * "0.155 USD"; none are added where the currency has no smaller coin, such as the yen}
   */
  public String shown() {
    int decimals = Math.max(amount.stripTrailingZeros().scale(), WHOLE.contains(currency) ? 0 : 2);
    return amount.setScale(decimals, RoundingMode.UNNECESSARY).toPlainString() + " " + currency;
  }

  /** {@return the amount with all its digits and the currency, such as "0.11 USD"; {@code parse} reads it back} */
  @Override
  public String toString() {
    BigDecimal shortest = amount.signum() == 0 ? BigDecimal.ZERO : amount.stripTrailingZeros();
    return shortest.toPlainString() + " " + currency;
  }
}
