package org.airfit.air;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.internal.Saturation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Density;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The temperature at which the vapour in air begins to condense, at the pressure at which that is so: how wet air is.
 * A dew point told without its pressure says nothing.
 *
 * <pre>
 *   e = ps(td)                 x = e / p kept: ps(td2) = ps(td) p2 / p
 *   W = 0.621945 e / (p − e)   φ = e / ps(t)
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>td</td><td>dew point; below 0.01 °C the frost point, over ice</td><td>K</td></tr>
 * <tr><td>p</td><td>pressure of the air</td><td>Pa</td></tr>
 * <tr><td>ps</td><td>saturation pressure, over water from 0.01 °C on, over ice below</td><td>Pa</td></tr>
 * <tr><td>e</td><td>pressure of the vapour</td><td>Pa</td></tr>
 * <tr><td>W</td><td>humidity ratio: water per dry air</td><td>kg/kg</td></tr>
 * <tr><td>φ</td><td>relative humidity at a temperature t, over water even where that would freeze</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Instruments and tables print a dew point below 0 °C as a frost point, over ice; over water that has not frozen it
 * would lie 1 to 4 K lower. Air and vapour are taken as ideal gases that do not know of each other. Really air holds a
 * little more water: 0.4 to 0.7 % more at atmospheric pressure, 2 to 5 % at 8 bar, 4 to 8 % at 14 bar; a dew point that
 * is reckoned from one pressure to another is off by up to 0.6 K for it (virial equations of IAPWS for humid air).
 * <b>Source:</b> saturation over water W. Wagner and A. Pruss (1993), over ice IAPWS R14-08, W as in the ASHRAE Handbook
 * of Fundamentals (2017), chapter 1.
 *
 * <p>A dew point in the line, and that of the same air let out:
 *
 * <pre>{@code
 * import org.airfit.air.DewPoint;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.working.UnitSystem;
 *
 * class LetOut {
 *   public static void main(String[] args) {
 *     DewPoint inLine = new DewPoint(Temperature.parse("3 °C"), AbsolutePressure.parse("8 bar(a)"));
 *     System.out.println(inLine.at(AbsolutePressure.parse("1 bar(a)")).in(UnitSystem.SI));
 *     // -20.89 °C (frost point) at 1 bar(a)
 *   }
 * }
 * }</pre>
 *
 * @param temperature the dew point, in [-100, 100] °C
 * @param pressure the pressure of the air, above that of its vapour
 */
public record DewPoint(Temperature temperature, AbsolutePressure pressure) implements Worked {

  /** Mass of a mole of water over that of a mole of dry air [-]. */
  private static final double MASSES = 0.621945;

  private static final double COLDEST = 173.15;
  private static final double WARMEST = 373.15;
  private static final double COLDEST_HUMID = 233.15;

  private static final Source WATER = Source.handbook(
      "W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783, the auxiliary equation");

  private static final Source ICE = Source.standard("IAPWS R14-08(2011), the sublimation curve");

  private static final Source RATIO =
      Source.handbook("ASHRAE Handbook of Fundamentals (2017), chapter 1");

  private static final Symbol KELVINS = Symbol.of("td", ValueKind.TEMPERATURE);
  private static final Symbol PRESSURE = Symbol.of("p", ValueKind.PRESSURE);
  private static final Symbol VAPOUR = Symbol.of("e", ValueKind.PRESSURE);
  private static final Symbol TAU = Symbol.of("τ", ValueKind.NUMBER);
  private static final Symbol THETA = Symbol.of("θ", ValueKind.NUMBER);
  private static final Symbol HUMIDITY_RATIO = Symbol.of("W", ValueKind.NUMBER);

  private static final Formula REDUCED = Formula.of(
      "From the critical point", "⟨τ⟩ = 1 − ⟨td⟩ / [647.096|1164.7728]", WATER, TAU, KELVINS);

  private static final Formula OVER_WATER = Formula.of(
      "Pressure of the vapour, over water",
      "⟨e⟩ = [22064000|3200.112645] × exp((−7.85951783 × ⟨τ⟩ + 1.84408259 × ⟨τ⟩^1.5 − 11.7866497 × ⟨τ⟩^3"
          + " + 22.6807411 × ⟨τ⟩^3.5 − 15.9618719 × ⟨τ⟩^4 + 1.80122502 × ⟨τ⟩^7.5) / (1 − ⟨τ⟩))",
      WATER,
      VAPOUR,
      TAU);

  private static final Formula FROM_TRIPLE =
      Formula.of("Over the triple point", "⟨θ⟩ = ⟨td⟩ / [273.16|491.688]", ICE, THETA, KELVINS);

  private static final Formula OVER_ICE = Formula.of(
      "Pressure of the vapour, over ice",
      "⟨e⟩ = [611.657|0.0887133475] × exp((−21.2144006 × ⟨θ⟩^0.00333333333 + 27.3203819 × ⟨θ⟩^1.20666667"
          + " − 6.1059813 × ⟨θ⟩^1.70333333) / ⟨θ⟩)",
      ICE,
      VAPOUR,
      THETA);

  private static final Formula WATER_PER_AIR = Formula.of(
      "Water per dry air",
      "⟨W⟩ = 0.621945 × ⟨e⟩ / (⟨p⟩ − ⟨e⟩)",
      RATIO,
      HUMIDITY_RATIO,
      VAPOUR,
      PRESSURE);

  /**
   * Checks the components.
   *
   * @param temperature the dew point, in [-100, 100] °C
   * @param pressure the pressure of the air, above that of its vapour
   * @throws IllegalArgumentException if an argument is out of range
   */
  public DewPoint {
    Objects.requireNonNull(temperature, "temperature");
    Objects.requireNonNull(pressure, "pressure");
    double t = temperature.kelvins();
    if (!(t >= COLDEST && t <= WARMEST)) {
      throw new IllegalArgumentException("dew point must be in [-100, 100] °C, was "
          + temperature.inFull(TemperatureUnit.CELSIUS));
    }
    if (!(pressure.pascals() > Saturation.overIceOrWater(t))) {
      throw new IllegalArgumentException(
          "pressure of air with a dew point of " + temperature.shown()
              + " must be above that of its vapour, "
              + AbsolutePressure.ofPascals(Saturation.overIceOrWater(t)).shown() + ", was "
              + pressure.shown() + "; dew points go with absolute pressures");
    }
  }

  /**
   * Finds the dew point of air of a relative humidity, as a weather station or a hygrometer in the room tells it.
   *
   * @param air the air
   * @param relativeHumidity the relative humidity φ [-], in (0, 1]; below 0 °C too that over water, as weather services
   *     count it
   * @return its dew point
   * @throws IllegalArgumentException if the humidity is out of range, the air is outside of [-40, 100] °C, its dew point
   *     lies below -100 °C, or the pressure is below that of the vapour
   */
  public static DewPoint of(AirState air, double relativeHumidity) {
    Objects.requireNonNull(air, "air");
    double t = air.temperature().kelvins();
    if (!(relativeHumidity > 0.0 && relativeHumidity <= 1.0)) {
      throw new IllegalArgumentException(
          "relative humidity must be in (0, 1], was " + Digits.told(relativeHumidity));
    }
    requireHumid(air.temperature());
    return new DewPoint(
        Temperature.ofKelvins(Saturation.temperature(relativeHumidity * Saturation.pressure(t))),
        air.pressure());
  }

  private static void requireHumid(Temperature air) {
    if (!(air.kelvins() >= COLDEST_HUMID && air.kelvins() <= WARMEST)) {
      throw new IllegalArgumentException(
          "temperature of air of a relative humidity must be in [-40, 100] °C, was "
              + air.inFull(TemperatureUnit.CELSIUS) + "; of colder air the dew point is told");
    }
  }

  /**
   * Finds the dew point of the same air at another pressure: the water in it stays.
   *
   * @param other the other pressure
   * @return the dew point there; above that temperature nothing condenses
   * @throws IllegalArgumentException if it lies outside of [-100, 100] °C
   */
  public DewPoint at(AbsolutePressure other) {
    Objects.requireNonNull(other, "other");
    double vapour = vapourPressure().pascals() * (other.pascals() / pressure.pascals());
    double least = Saturation.overIce(COLDEST);
    double most = Saturation.pressure(WARMEST);
    if (!(vapour >= least && vapour <= most)) {
      throw new IllegalArgumentException("pressure must be one at which the dew point, "
          + temperature.shown() + " at " + pressure.shown() + ", lies in [-100, 100] °C, was "
          + other.shown());
    }
    return new DewPoint(Temperature.ofKelvins(Saturation.temperature(vapour)), other);
  }

  /** {@return whether it is a frost point: ice forms, not dew} */
  public boolean isFrostPoint() {
    return temperature.kelvins() < Saturation.TRIPLE_KELVINS;
  }

  /** {@return the pressure of the vapour e} */
  public AbsolutePressure vapourPressure() {
    return AbsolutePressure.ofPascals(Saturation.overIceOrWater(temperature.kelvins()));
  }

  /** {@return the humidity ratio W: water per dry air [kg/kg]} */
  public double humidityRatio() {
    double vapour = vapourPressure().pascals();
    return MASSES * vapour / (pressure.pascals() - vapour);
  }

  /**
   * Finds the relative humidity of this air at a temperature, over water.
   *
   * @param temperatureOfAir its temperature, in [-40, 100] °C
   * @return the relative humidity φ [-]; above 1 where water condenses
   * @throws IllegalArgumentException if an argument is out of range
   */
  public double relativeHumidity(Temperature temperatureOfAir) {
    double t = Objects.requireNonNull(temperatureOfAir, "temperatureOfAir").kelvins();
    requireHumid(temperatureOfAir);
    return vapourPressure().pascals() / Saturation.pressure(t);
  }

  /**
   * Finds the mass of water in a volume of this air.
   *
   * @param temperatureOfAir the temperature of the air, at which the volume is counted, at least the dew point
   * @return the density of the vapour
   * @throws IllegalArgumentException if the air is colder than its dew point
   */
  public Density vapourDensity(Temperature temperatureOfAir) {
    if (Objects.requireNonNull(temperatureOfAir, "temperatureOfAir").compareTo(temperature) < 0) {
      throw new IllegalArgumentException("temperature of the air must be at least its dew point, "
          + temperature.shown() + ", was " + temperatureOfAir.shown());
    }
    return Density.ofKilogramsPerCubicMetre(vapourPressure().pascals()
        / (Saturation.GAS_CONSTANT_OF_VAPOUR * temperatureOfAir.kelvins()));
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = Working.titled("Water in air with a dew point of " + in(units), units)
        .given(KELVINS, temperature.kelvins(), 7)
        .given(PRESSURE, pressure.pascals(), 7);
    return (isFrostPoint() ? working.step(FROM_TRIPLE, 9) : working.step(REDUCED, 9))
        .step(isFrostPoint() ? OVER_ICE : OVER_WATER, vapourPressure().pascals(), 5)
        .step(WATER_PER_AIR, humidityRatio(), 4)
        .answer(HUMIDITY_RATIO)
        .build();
  }

  /**
   * Writes it out.
   *
   * @param units the units to write it in
   * @return the dew point, such as "3 °C at 8.013 bar(a)" or "-20.77 °C (frost point) at 1.013 bar(a)"
   */
  public String in(UnitSystem units) {
    return temperature.format(units.either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT))
        + (isFrostPoint() ? " (frost point)" : "") + " at "
        + pressure.format(units.pressureUnit());
  }

  /** {@return the dew point, such as "3 °C at 8.013 bar(a)" or "-20.77 °C (frost point) at 1.013 bar(a)"} */
  @Override
  public String toString() {
    return in(UnitSystem.SI);
  }
}
