package org.airfit.air;

import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.internal.Saturation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;

/**
 * A place that compressed air passes on its way: a cooler, a receiver, a filter, a dryer, a length of pipe.
 *
 * @param name what it is, such as "aftercooler"
 * @param air the temperature of the air that leaves it, in [-100, 300] °C; of a pipe outdoors from the coldest to the
 *     warmest
 * @param pressure the pressure there, above a vacuum
 * @param dewPoint of a dryer its pressure dew point, in [-100, 100] °C; empty for everything else
 * @param isDrained whether the water that falls out leaves there, by a drain that works; a dryer drains itself
 */
public record WaterPlace(
    String name,
    Range<Temperature> air,
    Range<AbsolutePressure> pressure,
    Optional<Temperature> dewPoint,
    boolean isDrained) {

  private static final double COLDEST = 173.15;
  private static final double BOILING = 373.15;
  private static final double HOTTEST = 573.15;

  /** Mass of a mole of water over that of a mole of dry air [-], as {@link DewPoint} has it. */
  private static final double MASSES = 0.621945;

  /**
   * Checks the components.
   *
   * @param name what it is, such as "aftercooler"
   * @param air the temperature of the air that leaves it, in [-100, 300] °C
   * @param pressure the pressure there, above a vacuum
   * @param dewPoint of a dryer its pressure dew point, in [-100, 100] °C
   * @param isDrained whether the water that falls out leaves there
   * @throws IllegalArgumentException if a component is out of range
   */
  public WaterPlace {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(air, "air");
    Objects.requireNonNull(pressure, "pressure");
    Objects.requireNonNull(dewPoint, "dewPoint");
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a place must say something, was blank");
    }
    if (!(air.least().kelvins() >= COLDEST && air.most().kelvins() <= HOTTEST)) {
      throw new IllegalArgumentException("air at " + name + " must be in [-100, 300] °C, was "
          + air.least().shown() + " to " + air.most().shown());
    }
    if (!(pressure.least().pascals() > 0.0)) {
      throw new IllegalArgumentException("pressure at " + name + " must be above 0 Pa(a), was "
          + Digits.told(pressure.least().pascals()) + " Pa(a)");
    }
    if (dewPoint.isPresent()
        && !(dewPoint.get().kelvins() >= COLDEST && dewPoint.get().kelvins() <= BOILING)) {
      throw new IllegalArgumentException("pressure dew point behind " + name
          + " must be in [-100, 100] °C, was " + dewPoint.get().shown());
    }
  }

  /** {@return whether water that falls out leaves here: by a drain, or because it is a dryer} */
  public boolean drains() {
    return isDrained || dewPoint.isPresent();
  }

  /** This place as if its dryer stood still. */
  WaterPlace withoutDryer() {
    return new WaterPlace(name, air, pressure, Optional.empty(), isDrained);
  }

  /** This place with no pressure but its highest. */
  WaterPlace atHighestPressure() {
    return new WaterPlace(name, air, Range.exactly(pressure.most()), dewPoint, isDrained);
  }

  /**
   * The most vapour that air can hold here [kg/kg dry air]; infinite above 100 °C, where nothing is taken to condense,
   * and where the vapour alone would reach the pressure.
   */
  double saturated(double kelvins, double pascals) {
    double t = saturatedKelvins(kelvins);
    if (t > BOILING) {
      return Double.POSITIVE_INFINITY;
    }
    double vapour = Saturation.overIceOrWater(t);
    return vapour >= pascals ? Double.POSITIVE_INFINITY : MASSES * vapour / (pascals - vapour);
  }

  /** The temperature at which air is saturated that leaves this place saturated [K]. */
  double saturatedKelvins(double kelvins) {
    return dewPoint.isPresent() ? Math.min(dewPoint.get().kelvins(), kelvins) : kelvins;
  }

  /** The dew point of air with so much vapour; empty outside of [-100, 100] °C. */
  static Optional<DewPoint> dewPoint(double humidityRatio, AbsolutePressure pressure) {
    double vapour = humidityRatio * pressure.pascals() / (MASSES + humidityRatio);
    if (!(vapour >= Saturation.overIce(COLDEST) && vapour <= Saturation.pressure(BOILING))) {
      return Optional.empty();
    }
    double t = Saturation.temperature(vapour);
    return t >= COLDEST && t <= BOILING && Saturation.overIceOrWater(t) < pressure.pascals()
        ? Optional.of(new DewPoint(Temperature.ofKelvins(t), pressure))
        : Optional.empty();
  }

  /** {@return the place in one line, such as "dryer, 20 °C to 30 °C at 8 bar(a), dew point 3 °C"} */
  @Override
  public String toString() {
    return name + ", " + air.least().shown() + " to " + air.most().shown() + " at "
        + pressure.least().shown() + " to " + pressure.most().shown()
        + dewPoint.map(point -> ", dew point " + point.shown()).orElse("")
        + (drains() ? ", drained" : ", not drained");
  }
}
