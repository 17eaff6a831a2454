package org.airfit.files.kept;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.working.UnitSystem;

/** The words that sentences of differences are made of. */
final class DifferenceWords {

  /** The most digits of a number that is told as it stands. */
  private static final int TYPED_DIGITS = 6;

  /** The digits of a number that was computed. */
  private static final int SHOWN_DIGITS = 5;

  private DifferenceWords() {}

  static String told(String text) {
    return text.isBlank() ? "not told" : text;
  }

  /** By how much two pressures differ, as far as it can be seen in the digits of the units. */
  static String by(GaugePressure then, GaugePressure now, UnitSystem units) {
    PressureDrop difference = PressureDrop.ofPascals(Math.abs(now.pascals() - then.pascals()));
    return units.say(difference);
  }

  static String price(String before, String after, Optional<Money> then, Optional<Money> now) {
    boolean isSame = before.equals(after);
    if (then.isPresent()
        && now.isPresent()
        && then.get().currency().equals(now.get().currency())) {
      boolean isMore = now.get().compareTo(then.get()) > 0;
      Money difference = new Money(
          now.get().amount().subtract(then.get().amount()).abs(), now.get().currency());
      return after + " costs " + difference.shown() + (isMore ? " more" : " less") + " than "
          + (isSame ? "" : inside(before) + " ") + "then: " + then.get().shown() + " then, "
          + now.get().shown() + " now.";
    }
    return before + " cost " + price(then) + " then, " + (isSame ? "" : inside(after) + " ")
        + "costs " + price(now) + " now.";
  }

  static String price(Optional<Money> price) {
    return price.map(Money::shown).orElse("an amount that is not known");
  }

  private static String inside(String subject) {
    return subject.substring(0, 1).toLowerCase(Locale.ROOT) + subject.substring(1);
  }

  static String wasIs(String then, String now, UnitSystem units) {
    String before = then;
    String after = now;
    if (isLong(then) || isLong(now)) {
      before = rounded(then, units);
      after = rounded(now, units);
      if (before.equals(after)) {
        before = then;
        after = now;
      }
    }
    return " was " + quoted(before) + ", is " + quoted(after) + " now.";
  }

  /** Words stand in quotation marks, so that they read as what a field says; numbers do not. */
  private static String quoted(String text) {
    return text.isBlank() || text.equals("true") || text.equals("false") || isNumber(text)
        ? told(text)
        : "\"" + text + "\"";
  }

  private static boolean isNumber(String text) {
    char first = text.charAt(0);
    return first == '-' || (first >= '0' && first <= '9');
  }

  /** The number in front of a unit; empty where there is none. */
  private static Optional<BigDecimal> number(String text) {
    int end = text.indexOf(' ');
    try {
      return Optional.of(new BigDecimal(end < 0 ? text : text.substring(0, end)));
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  /** Whether a number has more digits than anybody types: then it was computed. */
  private static boolean isLong(String text) {
    return number(text).filter(number -> number.precision() > TYPED_DIGITS).isPresent();
  }

  private static String rounded(String text, UnitSystem units) {
    Optional<BigDecimal> number = number(text);
    if (number.isEmpty()) {
      return text;
    }
    try {
      Length length = Length.parse(text);
      LengthUnit unit = length.metres() < 1.0
          ? units == UnitSystem.SI ? LengthUnit.MILLIMETRE : LengthUnit.INCH
          : units == UnitSystem.SI ? LengthUnit.METRE : LengthUnit.FOOT;
      return digits(BigDecimal.valueOf(length.in(unit))) + " " + unit.symbol();
    } catch (QuantityFormatException e) {
      int end = text.indexOf(' ');
      return digits(number.get()) + (end < 0 ? "" : text.substring(end));
    }
  }

  private static String digits(BigDecimal number) {
    return number.round(new MathContext(SHOWN_DIGITS)).stripTrailingZeros().toPlainString();
  }
}
