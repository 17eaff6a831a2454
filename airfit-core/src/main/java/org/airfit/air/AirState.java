package org.airfit.air;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.internal.Saturation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Density;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.Velocity;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Dry air at an absolute pressure and a temperature, as an ideal gas.
 *
 * <pre>
 *   ρ = p / (R T)     c = √(γ R T)     μ = β T^1.5 / (T + S)
 * </pre>
 *
 * <p>R = 287.05287 J/(kg K) (ISO 2533), γ = 1.4, β = 1.458·10⁻⁶ kg/(m s √K) and S = 110.4 K (US Standard Atmosphere
 * 1976). The package page states the error against real air.
 *
 * <p>Density and speed of sound of a state:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.Temperature;
 *
 * class StateOfAir {
 *   public static void main(String[] args) {
 *     AirState intake = AirState.of(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.parse("15 °C"));
 *     System.out.println(intake.density().kilogramsPerCubicMetre()); // 1.225000018124288
 *     System.out.println(intake.speedOfSound().metresPerSecond()); // 340.293988026089
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class AirState implements Worked {

  /** Specific gas constant of dry air [J/(kg K)], ISO 2533. */
  public static final double GAS_CONSTANT = 287.05287;

  /** Ratio of the heat capacities of air [-]. */
  public static final double HEAT_CAPACITY_RATIO = 1.4;

  private static final Symbol PRESSURE = Symbol.of("p", ValueKind.PRESSURE);
  private static final Symbol CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol RATIO = Symbol.of("γ", ValueKind.NUMBER);

  private static final Source IDEAL_GAS = Source.standard("ideal gas, R of ISO 2533");

  private static final Formula DENSITY = Formula.of(
      "Density",
      "⟨ρ⟩ = [144] × ⟨p⟩ / (⟨R⟩ × ⟨T⟩)",
      IDEAL_GAS,
      Symbol.of("ρ", ValueKind.DENSITY),
      PRESSURE,
      CONSTANT,
      KELVINS);

  private static final Formula SPEED_OF_SOUND = Formula.of(
      "Speed of sound",
      "⟨c⟩ = √(⟨γ⟩ × ⟨R⟩ × ⟨T⟩ × [g_c])",
      IDEAL_GAS,
      Symbol.of("c", ValueKind.VELOCITY),
      RATIO,
      CONSTANT,
      KELVINS);

  private static final double SUTHERLAND_BETA = 1.458e-6;
  private static final double SUTHERLAND_KELVINS = 110.4;

  /** Where the arithmetic ends; what the gas does ends long before, see {@link #warnings}. */
  private static final double LEAST_PASCALS = 1.0e-30;

  private static final double MOST_PASCALS = 1.0e30;
  /** 100 bar(g) at the standard atmosphere. */
  private static final double HIGHEST_HELD_PASCALS = 1.0e7 + 101_325.0;

  private static final double REAL_AIR_PASCALS = 1.0e7;
  private static final double THINNEST_PASCALS = 100.0;
  private static final double SHARE_HELD = 0.01;

  private static final Source RANGE = Source.derived(
      "ideal gas held against the equation of state of Lemmon and others (2000); the share of 1 % is our choice");

  private static final double COLDEST = Temperature.ofCelsius(-100.0).kelvins();
  private static final double HOTTEST = Temperature.ofCelsius(300.0).kelvins();
  private static final double LEAST_VISCOSITY = 1.0e-12;
  private static final double MOST_VISCOSITY = 1.0;

  private final AbsolutePressure pressure;
  private final Temperature temperature;
  private final DynamicViscosity viscosity;

  private AirState(AbsolutePressure pressure, Temperature temperature, DynamicViscosity viscosity) {
    if (!(pressure.pascals() > 0.0)) {
      throw new IllegalArgumentException("pressure of air must be above 0 Pa(a), was "
          + Digits.significant(pressure.pascals(), 12) + " Pa(a)");
    }
    if (!(pressure.pascals() >= LEAST_PASCALS && pressure.pascals() <= MOST_PASCALS)) {
      throw new IllegalArgumentException("pressure of air must be in [1e-30, 1e30] Pa(a), was "
          + Digits.inFull(pressure.pascals()) + " Pa(a); there is no such air");
    }
    if (!(temperature.kelvins() >= COLDEST && temperature.kelvins() <= HOTTEST)) {
      throw new IllegalArgumentException("temperature of air must be in [-100, 300] °C, was "
          + Digits.inFull(temperature.celsius()) + " °C");
    }
    if (!(viscosity.pascalSeconds() > 0.0)) {
      throw new IllegalArgumentException("viscosity of air must be above 0 Pa·s, was "
          + Digits.told(viscosity.pascalSeconds()) + " Pa·s");
    }
    if (!(viscosity.pascalSeconds() >= LEAST_VISCOSITY
        && viscosity.pascalSeconds() <= MOST_VISCOSITY)) {
      throw new IllegalArgumentException("viscosity of air must be in [1e-12, 1] Pa·s, was "
          + Digits.told(viscosity.pascalSeconds()) + " Pa·s; there is no such air");
    }
    this.pressure = pressure;
    this.temperature = temperature;
    this.viscosity = viscosity;
  }

  /**
   * Obtains dry air at a state.
   *
   * @param pressure the absolute pressure, above a vacuum, in [10⁻³⁰, 10³⁰] Pa
   * @param temperature the temperature, in [-100, 300] °C
   * @return the air
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static AirState of(AbsolutePressure pressure, Temperature temperature) {
    double t = temperature.kelvins();
    return new AirState(
        pressure,
        temperature,
        DynamicViscosity.ofPascalSeconds(
            SUTHERLAND_BETA * t * Math.sqrt(t) / (t + SUTHERLAND_KELVINS)));
  }

  /**
   * Obtains this air with a viscosity from elsewhere, such as a handbook's.
   *
   * @param known the viscosity to use, in [10⁻¹², 1] Pa·s
   * @return this with {@code known}
   * @throws IllegalArgumentException if {@code known} is out of range
   */
  public AirState withViscosity(DynamicViscosity known) {
    return new AirState(pressure, temperature, known);
  }

  /**
   * Obtains this air at another pressure, at the same temperature and viscosity.
   *
   * @param other the absolute pressure, above a vacuum, in [10⁻³⁰, 10³⁰] Pa
   * @return this at {@code other}
   * @throws IllegalArgumentException if {@code other} is out of range
   */
  public AirState at(AbsolutePressure other) {
    return new AirState(other, temperature, viscosity);
  }

  /** {@return the absolute pressure} */
  public AbsolutePressure pressure() {
    return pressure;
  }

  /** {@return the temperature} */
  public Temperature temperature() {
    return temperature;
  }

  /** {@return the dynamic viscosity} */
  public DynamicViscosity viscosity() {
    return viscosity;
  }

  /** {@return the density, p / (R T)} */
  public Density density() {
    return Density.ofKilogramsPerCubicMetre(
        pressure.pascals() / (GAS_CONSTANT * temperature.kelvins()));
  }

  /**
   * Finds the density of air that also holds water vapour, at this pressure and temperature.
   *
   * <pre>
   *   ρ = (p − φ ps(T)) / (R T) + φ ps(T) / (Rw T),  Rw = 461.523 J/(kg K)
   * </pre>
   *
   * <p>Vapour is lighter than air: at 20 °C and 1 bar, 65 % humidity takes 0.6 % off the density; at 8 bar less than
   * 0.1 %. ps is the saturation pressure of water after Wagner and Pruss (1993).
   *
   * @param relativeHumidity the relative humidity φ at this pressure [-], in [0, 1]; above 0 only in [0, 100] °C
   * @return the density of the humid air
   * @throws IllegalArgumentException if {@code relativeHumidity} is out of range, or air cannot hold that much vapour
   *     at this pressure
   */
  public Density humidDensity(double relativeHumidity) {
    if (!(relativeHumidity >= 0.0 && relativeHumidity <= 1.0)) {
      throw new IllegalArgumentException(
          "relative humidity must be in [0, 1], was " + Digits.told(relativeHumidity));
    }
    if (relativeHumidity == 0.0) {
      return density();
    }
    double t = temperature.kelvins();
    if (!(temperature.celsius() >= 0.0 && temperature.celsius() <= 100.0)) {
      throw new IllegalArgumentException("temperature of humid air must be in [0, 100] °C, was "
          + Digits.inFull(temperature.celsius()) + " °C");
    }
    double vapour = relativeHumidity * Saturation.pressure(t);
    if (!(vapour < pressure.pascals())) {
      throw new IllegalArgumentException("vapour pressure must lie below the pressure of "
          + Digits.inFull(pressure.pascals()) + " Pa(a), was " + Digits.inFull(vapour)
          + " Pa(a)");
    }
    return Density.ofKilogramsPerCubicMetre((pressure.pascals() - vapour) / (GAS_CONSTANT * t)
        + vapour / (Saturation.GAS_CONSTANT_OF_VAPOUR * t));
  }

  /**
   * Obtains the real gas at this pressure and temperature.
   *
   * @return the real air
   * @throws IllegalArgumentException if the pressure is above 100 bar
   */
  public RealAir real() {
    return RealAir.of(pressure, temperature);
  }

  /**
   * Tells where this air lies outside what its model was held against.
   *
   * <p>The flow formulas take air as an ideal gas. They are said to hold where its density is within 1 % of that of
   * {@link RealAir}, which reaches to 100 bar; that share is our choice. Below 1 mbar the air is too thin to be a
   * stream in small bores (from memory; the bound is our choice).
   *
   * @return one sentence for each, empty where the model holds
   */
  public List<String> warnings() {
    return warnings(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return one sentence for each, empty where the model holds
   */
  public List<String> warnings(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    double p = pressure.pascals();
    if (p > HIGHEST_HELD_PASCALS) {
      return List.of(units.either("Above 100 bar(g), at ", "Above 1450 psig, at ") + in(units)
          + ", nothing was held against the ideal gas that the formulas take: real air there is another gas, and"
          + " the answer may be far off.");
    }
    if (p < THINNEST_PASCALS) {
      return List.of(
          units.either(
                  "Below 1 mbar(a), at " + Digits.significant(p, 3) + " Pa(a)",
                  "Below 0.0145 psia, at " + units.say(pressure))
              + ", air is too thin for the formulas of a stream: the answer is of no use in small bores.");
    }
    double z = RealAir.of(AbsolutePressure.ofPascals(Math.min(p, REAL_AIR_PASCALS)), temperature)
        .compressibilityFactor();
    double off = Math.abs(1.0 / z - 1.0);
    return off > SHARE_HELD
        ? List.of("At " + in(units) + " the density of real air is "
            + Digits.significant(100.0 * off, 2)
            + " % " + (z < 1.0 ? "above" : "below")
            + " that of the ideal gas that the formulas take: outside the range of the air model, which holds to "
            + "1 %.")
        : List.of();
  }

  /** {@return the same as a caution that goes with an answer; empty where the model holds} */
  public Optional<Caution> caution() {
    return caution(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return the caution; empty where the model holds
   */
  public Optional<Caution> caution(UnitSystem units) {
    List<String> warnings = warnings(units);
    return warnings.isEmpty()
        ? Optional.empty()
        : Optional.of(new Caution(
            "Outside the range of the air model",
            String.join(" ", warnings)
                + " Ask the maker of the plant, and take this answer for no more than a first guess.",
            RANGE));
  }

  /** {@return the speed of sound, √(γ R T)} */
  public Velocity speedOfSound() {
    return Velocity.ofMetresPerSecond(
        Math.sqrt(HEAT_CAPACITY_RATIO * GAS_CONSTANT * temperature.kelvins()));
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Air at " + in(units), units)
        .given(PRESSURE, pressure.pascals(), 7)
        .given(CONSTANT, GAS_CONSTANT, 8)
        .given(KELVINS, temperature.kelvins(), 7)
        .given(RATIO, HEAT_CAPACITY_RATIO, 2)
        .step(DENSITY, density().kilogramsPerCubicMetre(), 4)
        .step(SPEED_OF_SOUND, speedOfSound().metresPerSecond(), 4)
        .answer(DENSITY.result(), SPEED_OF_SOUND.result())
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof AirState that
        && pressure.equals(that.pressure)
        && temperature.equals(that.temperature)
        && viscosity.equals(that.viscosity);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * pressure.hashCode() + temperature.hashCode()) + viscosity.hashCode();
  }

  /**
   * Writes it out.
   *
   * @param units the units to write it in
   * @return the state, such as "114.7 psi(a), 60 °F"
   */
  public String in(UnitSystem units) {
    return pressure.format(units.pressureUnit()) + ", "
        + temperature.format(units.either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT));
  }

  /** {@return the state, such as "7.2 bar(a), 20 °C"} */
  @Override
  public String toString() {
    return in(UnitSystem.SI);
  }
}
