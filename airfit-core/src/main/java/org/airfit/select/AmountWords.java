package org.airfit.select;

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

  private AmountWords() {}

  /** The fewest digits that a bound of this topic is told with. */
  static int digits(Topic topic) {
    return switch (topic) {
      case DUTY -> DIGITS;
      case EXACT_AIR, AIR_OF_OTHERS -> DIGITS + 2; // two more than sheets tell, see typed()
      default -> DIGITS + 1;
    };
  }

  /** A value in SI as a customer types it. */
  static TypedNumber typed(Topic topic, double si, UnitSystem units) {
    return switch (topic) {
      case DUTY -> new TypedNumber(100.0 * si, "%");
      case EXACT_AIR, AIR_OF_OTHERS -> typed(flow(si), units);
      case HOSE_BORE ->
        TypedNumber.of(Length.ofMetres(si), units.either(LengthUnit.MILLIMETRE, LengthUnit.INCH));
      case REACH, HOSE_LENGTH ->
        TypedNumber.of(Length.ofMetres(si), units.either(LengthUnit.METRE, LengthUnit.FOOT));
      case REGULATOR_DROOP -> TypedNumber.of(PressureDrop.ofPascals(si), units.pressureUnit());
      case COLDEST, HOTTEST -> {
        TemperatureUnit unit = units.either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT);
        yield TypedNumber.of(Temperature.ofKelvins(si), unit);
      }
      default -> TypedNumber.of(GaugePressure.ofPascals(si), units.pressureUnit());
    };
  }

  /**
   * A flow so that neighbours of where it turns differ. Counted is its mass: with what is typed so the run is reckoned
   * again, and moist air is lighter than dry air at one pressure and temperature.
   */
  private static TypedNumber typed(FreeAirFlow flow, UnitSystem units) {
    FreeAirFlow counted = FreeAirFlow.from(flow.massFlow(), units.counted(flow).reference());
    return new TypedNumber(
        units.either(counted.litresPerSecond(), counted.cubicFeetPerMinute()),
        TypedNumber.unitOf(units.say(flow)));
  }

  /** The flow of a value in SI. */
  static FreeAirFlow flow(double si) {
    return FreeAirFlow.of(si, VolumeFlowUnit.CUBIC_METRE_PER_SECOND, ReferenceState.ANR);
  }
}
