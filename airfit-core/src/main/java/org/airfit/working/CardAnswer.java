package org.airfit.working;

import java.util.Objects;
import java.util.OptionalDouble;
import org.airfit.internal.Digits;

/**
 * What a pencil card comes to, beside the answer computed without rounding, and how far apart the two can be.
 *
 * <p>The distance is that of pencil and computer. How well the numbers are known with which both begin is no part of
 * it.
 *
 * <p>Only a {@link PencilCard.Builder} makes one. This class is immutable, thread-safe and value-based.
 */
public final class CardAnswer {

  private static final int EXACT_DIGITS = 5;

  /** What the exact answer itself may be off, as a part of it: no search leaves more open. */
  private static final double EXACT_TO = 1.0e-9;

  private final Term onCard;
  private final double exact;
  private final Interval possible;

  CardAnswer(Term onCard, double exact, Interval possible) {
    this.onCard = onCard;
    this.exact = exact;
    this.possible = possible;
  }

  /** {@return the symbol with the number that stands on the card} */
  public Term onCard() {
    return onCard;
  }

  /** {@return the answer computed without rounding from the same numbers, in the unit printed} */
  public double exact() {
    return exact;
  }

  /**
   * {@return the least that a reader of the card can come to, in the unit printed; empty where the card proves nothing}
   */
  public OptionalDouble least() {
    return possible.isThere() ? OptionalDouble.of(possible.lo()) : OptionalDouble.empty();
  }

  /**
   * {@return the most that a reader of the card can come to, in the unit printed; empty where the card proves nothing}
   */
  public OptionalDouble most() {
    return possible.isThere() ? OptionalDouble.of(possible.hi()) : OptionalDouble.empty();
  }

  /**
   * {@return how far a reader of the card can be from the exact answer, in the unit printed: proved, see {@link
   * PencilCard}; empty where the card proves nothing}
   */
  public OptionalDouble apart() {
    if (!possible.isThere()) {
      return OptionalDouble.empty();
    }
    double off = Math.max(possible.hi() - exact, exact - possible.lo());
    return OptionalDouble.of(Math.max(0.0, off) + EXACT_TO * Math.abs(exact));
  }

  /**
   * {@return the answer in a sentence, such as "pt = 5.81 bar on this card, 5.8034 bar without rounding: at most …"}
   */
  public String inWords() {
    String unit = onCard.unit().isEmpty() ? "" : " " + onCard.unit();
    String both = onCard + " on this card, " + Digits.read(Digits.significant(exact, EXACT_DIGITS))
        + unit + " without rounding";
    if (apart().isEmpty()) {
      return both + ". So near to a limit no distance between the two can be proved.";
    }
    double apart = apart().getAsDouble();
    if (apart >= Math.abs(exact)) {
      return both + ". That is too small for a pencil: the two can be "
          + Digits.read(Digits.significant(roundedUp(apart), 2)) + unit
          + " apart, as much as the number itself or more.";
    }
    String share = " ("
        + Digits.read(Digits.significant(roundedUp(100.0 * apart / Math.abs(exact)), 2)) + " %)";
    return both + ": at most " + Digits.read(Digits.significant(roundedUp(apart), 2)) + unit + share
        + " apart.";
  }

  /** To two digits, upward. */
  private static double roundedUp(double value) {
    if (value == 0.0) {
      return 0.0;
    }
    double unit = Math.pow(10.0, Math.floor(Math.log10(value)) - 1.0);
    return unit * Math.ceil(value / unit);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof CardAnswer that
        && onCard.equals(that.onCard)
        && exact == that.exact
        && possible.equals(that.possible);
  }

  @Override
  public int hashCode() {
    return Objects.hash(onCard, exact, possible);
  }

  /** {@return the answer in a sentence} */
  @Override
  public String toString() {
    return inWords();
  }
}
