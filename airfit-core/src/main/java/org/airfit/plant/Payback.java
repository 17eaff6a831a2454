package org.airfit.plant;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.OptionalDouble;
import org.airfit.internal.Digits;
import org.airfit.quantity.Money;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * After how many years something has saved what it cost, without interest.
 *
 * <pre>
 *   n = K / S
 * </pre>
 *
 * <p>K cost, S saving in a year, of which the least and the most are known. <b>Source:</b> simple payback, common
 * practice.
 *
 * @param what what is paid for
 * @param cost what it costs, at least 0
 * @param leastSaved what it saves in a year at least, at least 0
 * @param mostSaved what it saves in a year at most
 */
public record Payback(String what, Money cost, Money leastSaved, Money mostSaved)
    implements Worked {

  private static final Source SOURCE = Source.commonPractice("simple payback, without interest");

  private static final Symbol COST = Symbol.of("K", ValueKind.MONEY);
  private static final Symbol LEAST = Symbol.of("S1", ValueKind.MONEY);
  private static final Symbol MOST = Symbol.of("S2", ValueKind.MONEY);
  private static final Symbol LONGEST = Symbol.of("n1", ValueKind.NUMBER);
  private static final Symbol SHORTEST = Symbol.of("n2", ValueKind.NUMBER);

  private static final Formula AT_LONGEST =
      Formula.of("Years at most", "⟨n1⟩ = ⟨K⟩ / ⟨S1⟩", SOURCE, LONGEST, COST, LEAST);

  private static final Formula AT_SHORTEST =
      Formula.of("Years at least", "⟨n2⟩ = ⟨K⟩ / ⟨S2⟩", SOURCE, SHORTEST, COST, MOST);

  /**
   * Checks the components.
   *
   * @param what what is paid for
   * @param cost what it costs, at least 0
   * @param leastSaved what it saves in a year at least, at least 0
   * @param mostSaved what it saves in a year at most
   * @throws IllegalArgumentException if an amount is below 0, the currencies differ, or {@code leastSaved} is above {@code
   *     mostSaved}
   */
  public Payback {
    Objects.requireNonNull(what, "what");
    requireNotNegative("cost", Objects.requireNonNull(cost, "cost"));
    requireNotNegative("saving", Objects.requireNonNull(leastSaved, "leastSaved"));
    Objects.requireNonNull(mostSaved, "mostSaved");
    cost.compareTo(leastSaved); // refuses another currency
    if (leastSaved.compareTo(mostSaved) > 0) {
      throw new IllegalArgumentException("least saved in a year must be at most "
          + mostSaved.shown() + ", was " + leastSaved.shown());
    }
  }

  private static void requireNotNegative(String name, Money money) {
    if (money.amount().signum() < 0) {
      throw new IllegalArgumentException(
          name + " of a payback must be at least 0, was " + money.shown());
    }
  }

  /** {@return after how many years it is paid back at the earliest; empty where it may never be} */
  public OptionalDouble shortestYears() {
    return years(mostSaved);
  }

  /** {@return after how many years it is paid back at the latest; empty where it may never be} */
  public OptionalDouble longestYears() {
    return years(leastSaved);
  }

  private OptionalDouble years(Money saved) {
    double years = saved.amount().signum() == 0
        ? Double.POSITIVE_INFINITY
        : cost.amount().doubleValue() / saved.amount().doubleValue();
    return years < 1.0e9 ? OptionalDouble.of(years) : OptionalDouble.empty();
  }

  /** {@return the payback in words, such as "1.5 to 1.8 years" or "4 to 6 weeks"} */
  public String inWords() {
    if (cost.amount().compareTo(BigDecimal.ZERO) == 0) {
      return "at once";
    }
    if (shortestYears().isEmpty()) {
      return "never";
    }
    double least = shortestYears().getAsDouble();
    if (longestYears().isEmpty()) {
      return "at least " + said(least);
    }
    double most = longestYears().getAsDouble();
    String first = said(least);
    String last = said(most);
    if (first.equals(last)) {
      return last;
    }
    boolean isOfOneUnit = isInYears(least) == isInYears(most)
        && first.indexOf(' ') > 0
        && Character.isDigit(first.charAt(0));
    return (isOfOneUnit ? first.substring(0, first.indexOf(' ')) : first) + " to " + last;
  }

  /** Whether a time is told in years, and not in weeks. */
  private static boolean isInYears(double years) {
    return years >= 0.995;
  }

  private static String said(double years) {
    double weeks = years * 365.25 / 7.0;
    if (!isInYears(years) && weeks < 1.0) {
      return "under a week";
    }
    String number = Digits.significant(isInYears(years) ? years : weeks, 2);
    return number + (isInYears(years) ? " year" : " week") + (number.equals("1") ? "" : "s");
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = Working.titled("Payback of " + what, units);
    if (shortestYears().isEmpty()) {
      return working.answer("It saves too little to pay back.").build();
    }
    working
        .given(COST, cost.amount().doubleValue(), 6)
        .given(MOST, mostSaved.amount().doubleValue(), 6)
        .step(AT_SHORTEST, shortestYears().getAsDouble(), 3)
        .answer(SHORTEST);
    if (longestYears().isPresent()) {
      working
          .given(LEAST, leastSaved.amount().doubleValue(), 6)
          .step(AT_LONGEST, longestYears().getAsDouble(), 3)
          .answer(LONGEST);
    }
    return working.note("Money is in " + cost.currency() + ".").build();
  }
}
