package org.airfit.safety;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Unit;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/**
 * The limit of a rule as it is printed: a number and a unit, and the same in another unit where both are printed, such
 * as 232 psi (16 bar).
 *
 * @param own how to print it
 * @param beside what is printed in brackets behind it; empty for nothing
 * @param value the number in SI; of a share, in percent
 * @param other the number printed in the other unit, in SI; the same as {@code value} where there is none
 * @param unit the unit, in which what is compared with it is told; of a share, what it is a share of
 * @param besideUnit the unit of what is printed in brackets; null for nothing
 * @param isShare whether the number is a percentage, whatever the unit
 */
record RuleLimit(
    String own,
    String beside,
    double value,
    double other,
    Unit unit,
    @Nullable Unit besideUnit,
    boolean isShare) {

  /** Digits of a limit that its law does not print in these units. */
  private static final int CONVERTED = 4;

  /**
   * The same limit in a system of units, the wording of its law in brackets. What is told in that system already stays
   * as it is, and so does a share; of a limit that is printed in two units, that of the system stands first.
   */
  RuleLimit toldIn(UnitSystem units) {
    if (UnitSystem.of(unit).filter(units::equals).isPresent()) {
      return this;
    }
    if (isShare) {
      return new RuleLimit(own, beside, value, other, units.pressureUnit(), besideUnit, true);
    }
    if (besideUnit != null && UnitSystem.of(besideUnit).filter(units::equals).isPresent()) {
      return new RuleLimit(beside, own, other, value, besideUnit, unit, false);
    }
    Unit here = unit instanceof LengthUnit ? units.smallLengthUnit() : units.pressureUnit();
    String converted = Digits.significant(here.fromSi(value), CONVERTED) + " " + symbol(here);
    return new RuleLimit(converted, own, value, other, here, unit, false);
  }

  /** How it is printed. */
  String printed() {
    return beside.isEmpty() ? own : own + " (" + beside + ")";
  }

  /** How it is printed beside a value in SI: what was converted has as many digits as tell it from the value. */
  String printed(double si) {
    if (!isRounded()) {
      return printed();
    }
    String told = telling(unit.fromSi(value), unit.fromSi(si)) + " " + symbol(unit);
    return beside.isEmpty() ? told : told + " (" + beside + ")";
  }

  /** Whether its own number is printed with fewer digits than it has; what a law prints is exact. */
  private boolean isRounded() {
    return !isShare
        && inInches(value, unit).isEmpty()
        && !RuleOperator.isSame(
            unit.toSi(Double.parseDouble(own.substring(0, own.indexOf(' ')))), value);
  }

  /**
   * A value as it is told against it. Between the two numbers of a limit that is printed in two units it is told in
   * both, as one of them alone would say the opposite of the judgement.
   */
  String against(double si) {
    String told = words(si, value);
    boolean isBetween = besideUnit != null
        && !RuleOperator.isSame(si, value)
        && si >= Math.min(value, other) * (1.0 - 1.0e-13)
        && si <= Math.max(value, other) * (1.0 + 1.0e-13)
        && !RuleOperator.isSame(value, other);
    if (!isBetween) {
      return told;
    }
    double shown = RuleOperator.isSame(si, other) ? other : si;
    return told + " (" + telling(besideUnit.fromSi(shown), besideUnit.fromSi(other)) + " "
        + symbol(besideUnit) + ")";
  }

  /** The limit that decides for an operator. */
  double deciding(RuleOperator operator) {
    return operator.deciding(value, other);
  }

  /** Reads the number of a limit; the message of a refusal says what is accepted. */
  static BigDecimal number(String text) {
    String bare = text.strip();
    boolean plain = !bare.isEmpty() && bare.length() <= 20 && !bare.equals(".");
    for (int i = 0; plain && i < bare.length(); i++) {
      plain = isDigit(bare.charAt(i)) || (bare.charAt(i) == '.' && bare.indexOf('.') == i);
    }
    if (!plain) {
      throw new IllegalArgumentException(
          "was \"" + text + "\"; accepted: a number such as 30 or 0.5");
    }
    return new BigDecimal(bare);
  }

  /** Reads the unit of a limit, and what is printed beside it; the message of a refusal says what is accepted. */
  static RuleLimit of(RuleQuantity.Kind kind, BigDecimal number, String unit) {
    if (kind == RuleQuantity.Kind.SHARE) {
      if (!unit.strip().toLowerCase(Locale.ROOT).startsWith("percent")) {
        throw new IllegalArgumentException("was \"" + unit + "\"; accepted: percent of the rating");
      }
      return new RuleLimit(
          Digits.plain(number.doubleValue()) + " %",
          "",
          number.doubleValue(),
          number.doubleValue(),
          PressureUnit.PSI,
          null,
          true);
    }
    // "bar(g)" is one unit, "psi (16 bar)" a unit and what is printed beside it
    int gauge = unit.indexOf("(g)");
    int bracket = unit.indexOf('(');
    bracket = bracket == gauge ? unit.indexOf('(', bracket + 1) : bracket;
    boolean beside = bracket > 0;
    Unit own = unit(kind, (beside ? unit.substring(0, bracket) : unit).strip());
    double value = own.toSi(number.doubleValue());
    String said = asPrinted(number, own);
    String second = beside ? unit.substring(bracket + 1, closing(unit)).strip() : "";
    if (second.isEmpty() || !isDigit(second.charAt(0))) {
      return new RuleLimit(said, "", value, value, own, null, false); // nothing, or a remark
    }
    int end = 0;
    while (end < second.length() && (isDigit(second.charAt(end)) || second.charAt(end) == '.')) {
      end++;
    }
    BigDecimal otherNumber = number(second.substring(0, end));
    Unit otherUnit = unit(kind, second.substring(end).strip());
    double other = otherUnit.toSi(otherNumber.doubleValue());
    String otherSaid = asPrinted(otherNumber, otherUnit);
    if (!agrees(value, otherNumber, otherUnit) && !agrees(other, number, own)) {
      throw new IllegalArgumentException("was \"" + unit + "\", but " + otherSaid + " is not "
          + said + ", even when rounded; accepted: the two as they are printed");
    }
    return new RuleLimit(said, otherSaid, value, other, own, otherUnit, false);
  }

  private static int closing(String unit) {
    return unit.endsWith(")") ? unit.length() - 1 : unit.length();
  }

  /** Whether a value in SI, rounded to the digits a number is printed with, is that number. */
  private static boolean agrees(double si, BigDecimal printed, Unit unit) {
    double half = 0.5 * Math.pow(10.0, -printed.scale());
    return Math.abs(unit.fromSi(si) - printed.doubleValue()) <= half * (1.0 + 1.0e-9);
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static Unit unit(RuleQuantity.Kind kind, String text) {
    Unit[] units = kind == RuleQuantity.Kind.PRESSURE ? PressureUnit.values() : LengthUnit.values();
    // a limit on pressure is one of gauge pressure
    String bare = text.endsWith("(g)") ? text.substring(0, text.length() - 3).strip() : text;
    bare = bare.equals("psig") ? "psi" : bare;
    for (Unit unit : units) {
      if (unit.symbol().equals(bare) || unit.scale().spellings().contains(bare)) {
        return unit;
      }
    }
    throw new IllegalArgumentException("was \"" + text + "\"; accepted: "
        + Arrays.stream(units).map(Unit::symbol).collect(Collectors.joining(", ")));
  }

  /** A value of its kind in its unit, with four digits or as many as tell it from another. */
  String words(double si, double beside) {
    double shown = RuleOperator.isSame(si, beside) ? beside : si;
    return inInches(shown, unit)
        .orElseGet(() -> telling(unit.fromSi(shown), unit.fromSi(beside)) + " " + symbol(unit));
  }

  /** A number as a law prints it: "30 psig"; a half of an inch is "1/2 in". */
  private static String asPrinted(BigDecimal number, Unit unit) {
    return inInches(unit.toSi(number.doubleValue()), unit)
        .orElseGet(() -> Digits.plain(number.doubleValue()) + " " + symbol(unit));
  }

  /** A bore in inches by its size, where that is what it measures to the last digit. */
  private static Optional<String> inInches(double metres, Unit unit) {
    if (unit != LengthUnit.INCH) {
      return Optional.empty();
    }
    String size = UnitSystem.US.sayBore(Length.ofMetres(metres));
    return RuleOperator.isSame(Length.parse(size).metres(), metres)
        ? Optional.of(size)
        : Optional.empty();
  }

  /** Pressures of a situation are gauge pressures. */
  private static String symbol(Unit unit) {
    if (unit instanceof LengthUnit) {
      return unit.symbol();
    }
    return unit == PressureUnit.PSI ? "psig" : unit.symbol() + "(g)";
  }

  /**
   * Four digits, or as many as tell the value from what it is compared with: "30 against less than 30" would be no
   * reason. Two numbers told beside each other have as many each, so that they are in the right order.
   */
  private static String telling(double value, double other) {
    for (int digits = 4; digits < 17; digits++) {
      String text = Digits.significant(value, digits);
      if (value == other || !text.equals(Digits.significant(other, digits))) {
        return text;
      }
    }
    return Digits.plain(value);
  }
}
