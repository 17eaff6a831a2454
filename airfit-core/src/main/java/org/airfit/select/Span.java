package org.airfit.select;

import java.math.RoundingMode;
import org.airfit.working.UnitSystem;

/**
 * Values of an amount that lie together, in SI; an end that is infinite is none.
 *
 * @param least the lower end
 * @param hasLeast whether the lower end is one of them
 * @param most the upper end
 * @param hasMost whether the upper end is one of them
 * @param inside one of them, to try
 */
record Span(double least, boolean hasLeast, double most, boolean hasMost, double inside) {

  static Span at(double value) {
    return new Span(value, true, value, true, value);
  }

  static Span between(double least, double most) {
    return new Span(least, false, most, false, 0.5 * (least + most));
  }

  static Span above(double least) {
    return new Span(least, false, Double.POSITIVE_INFINITY, false, 1.25 * least + 1.0);
  }

  /** This with those that follow it. */
  Span joined(Span next) {
    return new Span(least, hasLeast, next.most, next.hasMost, inside);
  }

  /**
   * In words, such as "more than 7.4 bar(g), up to 8.5 bar(g)"; a lower end of 0 needs no word. Both ends are rounded
   * into the span, so that who types a bound, or any value of those that the words name, gets what is told of them.
   */
  String inWords(Topic topic, UnitSystem units) {
    if (least == most) {
      return "just "
          + AmountWords.typed(topic, least, units)
              .inWords(TypedNumber.EXACT_DIGITS, RoundingMode.HALF_EVEN);
    }
    boolean startsAnywhere = least == 0.0;
    boolean endsAnywhere = Double.isInfinite(most);
    int digits = startsAnywhere || endsAnywhere ? AmountWords.digits(topic) : digits(topic, units);
    String low = AmountWords.typed(topic, least, units).inWords(digits, RoundingMode.CEILING);
    String from = hasLeast ? low + " or more" : "more than " + low;
    String to = (hasMost ? "up to " : "less than ")
        + (endsAnywhere
            ? ""
            : AmountWords.typed(topic, most, units).inWords(digits, RoundingMode.FLOOR));
    if (startsAnywhere) {
      return endsAnywhere ? "whatever it is" : to;
    }
    return endsAnywhere ? from : from + ", " + to;
  }

  /** As few digits as leave something between its ends. */
  private int digits(Topic topic, UnitSystem units) {
    int digits = AmountWords.digits(topic);
    while (digits < TypedNumber.EXACT_DIGITS
        && AmountWords.typed(topic, least, units)
                .rounded(digits, RoundingMode.CEILING)
                .compareTo(
                    AmountWords.typed(topic, most, units).rounded(digits, RoundingMode.FLOOR))
            >= 0) {
      digits++;
    }
    return digits;
  }
}
