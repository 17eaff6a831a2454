package org.airfit.select;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Quantity;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.Unit;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.working.UnitSystem;

/** An amount that the interview asks for, in words, in digits that a customer can type. */
final class AmountWords {

  /** The digits of a share that is told: a customer tells no more. */
  private static final int DIGITS = 3;

  /** The digits to which a value comes back from SI as it was typed. */
  static final int EXACT_DIGITS = 9;

  private AmountWords() {}

  /** A number in the unit that a customer types. */
  private record Typed(double number, String unit) {

    /** With so many digits, but no digit before the point rounded away, as sheets print them. */
    BigDecimal rounded(int digits, RoundingMode rounding) {
      BigDecimal exact = new BigDecimal(number)
          .round(new MathContext(EXACT_DIGITS))
          .setScale(EXACT_DIGITS, RoundingMode.HALF_EVEN);
      int whole = exact.precision() - exact.scale();
      return exact.setScale(Math.max(0, digits - whole), rounding);
    }
  }

  /** The fewest digits that a bound of this topic is told with. */
  static int digits(Topic topic) {
    return switch (topic) {
      case DUTY -> DIGITS;
      case EXACT_AIR, AIR_OF_OTHERS -> DIGITS + 2; // two more than sheets tell, see typed()
      default -> DIGITS + 1;
    };
  }

  /**
   * A bound in SI as a number that a customer types, rounded to one side; what is off by the rounding of a double alone
   * is told as it was typed.
   */
  static BigDecimal rounded(
      Topic topic, double si, UnitSystem units, int digits, RoundingMode rounding) {
    return typed(topic, si, units).rounded(digits, rounding);
  }

  /** The same in words, with its unit. */
  static String of(Topic topic, double si, UnitSystem units, int digits, RoundingMode rounding) {
    Typed typed = typed(topic, si, units);
    BigDecimal rounded = typed.rounded(digits, rounding);
    return (rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString()) + " "
        + typed.unit();
  }

  private static Typed typed(Topic topic, double si, UnitSystem units) {
    return switch (topic) {
      case DUTY -> new Typed(100.0 * si, "%");
      case EXACT_AIR, AIR_OF_OTHERS -> typed(flow(si), units);
      case HOSE_BORE ->
        typed(Length.ofMetres(si), units.either(LengthUnit.MILLIMETRE, LengthUnit.INCH));
      case REACH, HOSE_LENGTH ->
        typed(Length.ofMetres(si), units.either(LengthUnit.METRE, LengthUnit.FOOT));
      case REGULATOR_DROOP -> typed(PressureDrop.ofPascals(si), units.pressureUnit());
      case COLDEST, HOTTEST -> {
        TemperatureUnit unit = units.either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT);
        Temperature temperature = Temperature.ofKelvins(si);
        yield new Typed(temperature.in(unit), unit(temperature.format(unit)));
      }
      default -> typed(GaugePressure.ofPascals(si), units.pressureUnit());
    };
  }

  private static <Q extends Quantity<Q, U>, U extends Unit> Typed typed(Q quantity, U unit) {
    return new Typed(quantity.in(unit), unit(quantity.format(unit)));
  }

  /**
   * A flow so that neighbours of where it turns differ. Counted is its mass: with what is typed so the run is reckoned
   * again, and moist air is lighter than dry air at one pressure and temperature.
   */
  private static Typed typed(FreeAirFlow flow, UnitSystem units) {
    FreeAirFlow counted = FreeAirFlow.from(flow.massFlow(), units.counted(flow).reference());
    return new Typed(
        units.either(counted.litresPerSecond(), counted.cubicFeetPerMinute()),
        unit(units.say(flow)));
  }

  /** The flow of a value in SI. */
  static FreeAirFlow flow(double si) {
    return FreeAirFlow.of(si, VolumeFlowUnit.CUBIC_METRE_PER_SECOND, ReferenceState.ANR);
  }

  private static String unit(String said) {
    return said.substring(said.indexOf(' ') + 1);
  }
}
