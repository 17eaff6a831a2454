package org.airfit.select;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.working.UnitSystem;

/** An amount that the interview asks for, in words, in digits that a customer can type. */
final class AmountWords {

  /** The digits of a share that is told: a customer tells no more. */
  private static final int DIGITS = 3;

  /** The digits to which a value comes back from SI as it was typed. */
  private static final int EXACT_DIGITS = 9;

  private AmountWords() {}

  /** A value in SI, in words. */
  static String of(Topic topic, double si, UnitSystem units) {
    return switch (topic) {
      case DUTY -> percent(si);
      case EXACT_AIR, AIR_OF_OTHERS -> inWords(flow(si), units);
      case HOSE_BORE ->
        Length.ofMetres(si).format(units.either(LengthUnit.MILLIMETRE, LengthUnit.INCH));
      case REACH, HOSE_LENGTH ->
        Length.ofMetres(si).format(units.either(LengthUnit.METRE, LengthUnit.FOOT));
      case REGULATOR_DROOP -> {
        PressureDrop droop = PressureDrop.ofPascals(si);
        yield atMost(droop.in(units.pressureUnit()), droop.format(units.pressureUnit()));
      }
      case EXACT_PRESSURE -> {
        GaugePressure needed = GaugePressure.ofPascals(si);
        yield atMost(needed.in(units.pressureUnit()), needed.format(units.pressureUnit()));
      }
      case COLDEST, HOTTEST ->
        Temperature.ofKelvins(si)
            .format(units.either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT));
      default -> GaugePressure.ofPascals(si).format(units.pressureUnit());
    };
  }

  /** The flow of a value in SI. */
  static FreeAirFlow flow(double si) {
    return FreeAirFlow.of(si, VolumeFlowUnit.CUBIC_METRE_PER_SECOND, ReferenceState.ANR);
  }

  /**
   * A flow with two digits more than sheets tell, so that neighbours of where it turns differ. Counted is its mass: with
   * what is typed so the run is reckoned again, and moist air is lighter than dry air at one pressure and temperature.
   */
  static String inWords(FreeAirFlow flow, UnitSystem units) {
    FreeAirFlow counted = FreeAirFlow.from(flow.massFlow(), units.counted(flow).reference());
    double number = units.either(counted.litresPerSecond(), counted.cubicFeetPerMinute());
    return atMost(number, DIGITS + 2) + " " + unit(units.say(flow));
  }

  /** A droop or a pressure needed that is enough, no higher than it is: typed so it is enough too. */
  static String atMost(double number, String said) {
    return atMost(number, DIGITS + 1) + " " + unit(said);
  }

  /** Rounded down; what is off by the rounding of a double alone is told as it was typed. */
  private static String atMost(double number, int digits) {
    BigDecimal rounded = new BigDecimal(number)
        .round(new MathContext(EXACT_DIGITS))
        .round(new MathContext(digits, RoundingMode.FLOOR));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private static String unit(String said) {
    return said.substring(said.indexOf(' ') + 1);
  }

  /** A share of the time, such as "37.5 %". */
  static String percent(double share) {
    return new BigDecimal(100.0 * share)
            .round(new MathContext(DIGITS))
            .stripTrailingZeros()
            .toPlainString()
        + " %";
  }
}
