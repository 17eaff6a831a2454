package org.airfit.air;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Density;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;

/**
 * The air that a compressor takes in and gives to a train of coolers, filters and dryers, from the best to the worst
 * that it can be.
 *
 * @param atmosphere the pressure around
 * @param driest the dew point of the driest air taken in
 * @param dampest the dew point of the dampest air taken in
 * @param room the temperature of the room in which the train stands
 * @param pressure the pressure behind the compressor
 * @param discharge the temperature of the air behind the compressor, in [-100, 300] °C; empty where nobody told, so
 *     that nothing is told of a filter or dryer that comes first
 * @param flow the flow through the train, above 0; a day's water is reckoned with the most
 * @param mist the oil mist and liquid oil behind the compressor at most, in a volume at 20 °C and 1 bar(a); empty where
 *     nobody told
 * @param vapour the oil vapour there at most; empty where nobody told
 */
public record TreatmentSupply(
    AbsolutePressure atmosphere,
    DewPoint driest,
    DewPoint dampest,
    Range<Temperature> room,
    Range<GaugePressure> pressure,
    Optional<Range<Temperature>> discharge,
    Range<FreeAirFlow> flow,
    Optional<Density> mist,
    Optional<Density> vapour) {

  /**
   * Checks the components.
   *
   * @param atmosphere the pressure around
   * @param driest the dew point of the driest air taken in
   * @param dampest the dew point of the dampest air taken in
   * @param room the temperature of the room in which the train stands
   * @param pressure the pressure behind the compressor, above the atmosphere
   * @param discharge the temperature of the air behind the compressor, in [-100, 300] °C
   * @param flow the flow through the train, above 0
   * @param mist the oil mist and liquid oil behind the compressor at most
   * @param vapour the oil vapour there at most
   * @throws IllegalArgumentException if a component is out of range, or the driest air is damper than the dampest
   */
  public TreatmentSupply {
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(driest, "driest");
    Objects.requireNonNull(dampest, "dampest");
    Objects.requireNonNull(room, "room");
    Objects.requireNonNull(pressure, "pressure");
    Objects.requireNonNull(discharge, "discharge");
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(mist, "mist");
    Objects.requireNonNull(vapour, "vapour");
    if (driest.humidityRatio() > dampest.humidityRatio()) {
      throw new IllegalArgumentException(
          "driest air taken in must be at most as damp as " + dampest + ", was " + driest);
    }
    if (!(pressure.least().pascals() > 0.0)) {
      throw new IllegalArgumentException(
          "pressure behind the compressor must be above the atmosphere, was "
              + pressure.least().shown());
    }
    if (discharge
        .filter(air -> !(air.least().celsius() >= -100.0 && air.most().celsius() <= 300.0))
        .isPresent()) {
      throw new IllegalArgumentException("air behind the compressor must be in [-100, 300] °C, was "
          + discharge.get().least().shown() + " to " + discharge.get().most().shown());
    }
    if (!(flow.least().massFlow().kilogramsPerSecond() > 0.0)) {
      throw new IllegalArgumentException(
          "flow through the train must be above 0, was " + flow.least().shown());
    }
  }

  /**
   * {@return the supply in one line, such as "60 to 100 L/s ANR at 7 to 8 bar(g), at most 24 °C dew point at 1 bar(a)"}
   */
  @Override
  public String toString() {
    return flow.least().shown() + " to " + flow.most().shown() + " at "
        + pressure.least().shown() + " to " + pressure.most().shown()
        + discharge.map(air -> ", up to " + air.most().shown()).orElse("") + ", at most " + dampest
        + mist.map(most -> ", oil mist " + most.shown()).orElse("")
        + vapour.map(most -> ", oil vapour " + most.shown()).orElse("");
  }
}
