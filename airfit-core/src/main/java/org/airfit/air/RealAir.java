package org.airfit.air;

import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Density;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.Velocity;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Dry air at an absolute pressure and a temperature, as the real gas it is.
 *
 * <pre>
 *   ρ = p / (Z R T),  Z = 1 + δ ∂αr/∂δ
 * </pre>
 *
 * <p>αr is the residual Helmholtz energy of Lemmon, Jacobsen, Penoncello and Friend (2000), a sum of 19 terms in δ =
 * ρ/ρj and τ = Tj/T. R = 8.31451/0.02896546 = 287.0491 J/(kg K) is that paper's. The viscosity is that of Lemmon and
 * Jacobsen (2004). The papers claim 0.1 % on density and 1 % on viscosity here.
 *
 * <p>Flow formulas are made for the ideal gas of {@link AirState}; this type tells what that costs, and gives the
 * properties where they are wanted for themselves.
 *
 * <p>How much less room air takes than an ideal gas:
 *
 * <pre>{@code
 * import java.util.Locale;
 * import org.airfit.air.RealAir;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.Temperature;
 *
 * class Compressibility {
 *   public static void main(String[] args) {
 *     RealAir air = RealAir.of(AbsolutePressure.parse("16 bar(a)"), Temperature.parse("20 °C"));
 *     System.out.printf(Locale.ROOT, "%.4f%n", air.compressibilityFactor()); // 0.9947
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class RealAir implements Worked {

  private static final Source STATE = Source.handbook(
      "Lemmon, Jacobsen, Penoncello, Friend, J. Phys. Chem. Ref. Data 29 (2000) 331");
  private static final Source TRANSPORT =
      Source.handbook("Lemmon, Jacobsen, Int. J. Thermophys. 25 (2004) 21");

  private static final Symbol PRESSURE = Symbol.of("p", ValueKind.PRESSURE);
  private static final Symbol COMPRESSIBILITY = Symbol.of("Z", ValueKind.NUMBER);
  private static final Symbol CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol ISOCHORIC = Symbol.of("cv", ValueKind.HEAT_CAPACITY);
  private static final Symbol ISOBARIC = Symbol.of("cp", ValueKind.HEAT_CAPACITY);
  private static final Symbol EXPANSION = Symbol.of("e", ValueKind.NUMBER);
  private static final Symbol STIFFNESS = Symbol.of("s", ValueKind.NUMBER);
  private static final Symbol DILUTE = Symbol.of("μ0", ValueKind.VISCOSITY);
  private static final Symbol RESIDUAL = Symbol.of("μr", ValueKind.VISCOSITY);

  private static final Formula DENSITY = Formula.of(
      "Density",
      "⟨ρ⟩ = [144] × ⟨p⟩ / (⟨Z⟩ × ⟨R⟩ × ⟨T⟩)",
      STATE,
      Symbol.of("ρ", ValueKind.DENSITY),
      PRESSURE,
      COMPRESSIBILITY,
      CONSTANT,
      KELVINS);

  private static final Formula HEAT_CAPACITY = Formula.of(
      "Heat capacity at constant pressure",
      "⟨cp⟩ = ⟨cv⟩ + ⟨R⟩ × ⟨e⟩² / ⟨s⟩",
      STATE,
      ISOBARIC,
      ISOCHORIC,
      CONSTANT,
      EXPANSION,
      STIFFNESS);

  private static final Formula SPEED_OF_SOUND = Formula.of(
      "Speed of sound",
      "⟨c⟩ = √(⟨cp⟩ / ⟨cv⟩ × ⟨R⟩ × ⟨T⟩ × ⟨s⟩ × [g_c])",
      STATE,
      Symbol.of("c", ValueKind.VELOCITY),
      ISOBARIC,
      ISOCHORIC,
      CONSTANT,
      KELVINS,
      STIFFNESS);

  private static final Formula VISCOSITY = Formula.of(
      "Viscosity",
      "⟨μ⟩ = ⟨μ0⟩ + ⟨μr⟩",
      TRANSPORT,
      Symbol.of("μ", ValueKind.VISCOSITY),
      DILUTE,
      RESIDUAL);

  private final AbsolutePressure pressure;
  private final Temperature temperature;
  private final double rho;

  private RealAir(AbsolutePressure pressure, Temperature temperature) {
    if (!(pressure.pascals() > 0.0 && pressure.pascals() <= 1.0e7)) {
      throw new IllegalArgumentException("pressure of real air must be in (0, 100] bar(a), was "
          + Digits.significant(pressure.bar(), 12) + " bar(a)");
    }
    if (!(temperature.celsius() >= -100.0 && temperature.celsius() <= 300.0)) {
      throw new IllegalArgumentException("temperature of air must be in [-100, 300] °C, was "
          + Digits.inFull(temperature.celsius()) + " °C");
    }
    this.pressure = pressure;
    this.temperature = temperature;
    this.rho = RealAirKernels.density(pressure.pascals(), temperature.kelvins());
  }

  /**
   * Obtains dry air at a state.
   *
   * @param pressure the absolute pressure, above a vacuum and at most 100 bar
   * @param temperature the temperature, in [-100, 300] °C
   * @return the air
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static RealAir of(AbsolutePressure pressure, Temperature temperature) {
    return new RealAir(pressure, temperature);
  }

  private double tau() {
    return RealAirKernels.tau(temperature.kelvins());
  }

  private double delta() {
    return RealAirKernels.delta(rho);
  }

  /** {@return the absolute pressure} */
  public AbsolutePressure pressure() {
    return pressure;
  }

  /** {@return the temperature} */
  public Temperature temperature() {
    return temperature;
  }

  /** {@return the density} */
  public Density density() {
    return Density.ofKilogramsPerCubicMetre(rho);
  }

  /** {@return Z = p / (ρ R T) [-]: below 1 where air is denser than an ideal gas} */
  public double compressibilityFactor() {
    return 1.0 + RealAirKernels.firstByDensity(tau(), delta());
  }

  /** {@return the dynamic viscosity} */
  public DynamicViscosity viscosity() {
    return DynamicViscosity.ofPascalSeconds(RealAirKernels.diluteViscosity(temperature.kelvins())
        + RealAirKernels.residualViscosity(tau(), delta()));
  }

  /** {@return the heat capacity at constant volume cv [J/(kg K)]} */
  public double isochoricHeatCapacityJoulesPerKilogramKelvin() {
    return RealAirKernels.isochoricHeatCapacity(tau(), delta());
  }

  /** {@return the heat capacity at constant pressure cp [J/(kg K)]} */
  public double isobaricHeatCapacityJoulesPerKilogramKelvin() {
    double expansion = expansion();
    return isochoricHeatCapacityJoulesPerKilogramKelvin()
        + RealAirKernels.GAS_CONSTANT * expansion * expansion / stiffness();
  }

  /** {@return the ratio of the heat capacities cp/cv [-]} */
  public double heatCapacityRatio() {
    return isobaricHeatCapacityJoulesPerKilogramKelvin()
        / isochoricHeatCapacityJoulesPerKilogramKelvin();
  }

  /** {@return the speed of sound} */
  public Velocity speedOfSound() {
    return Velocity.ofMetresPerSecond(Math.sqrt(
        heatCapacityRatio() * RealAirKernels.GAS_CONSTANT * temperature.kelvins() * stiffness()));
  }

  /** (∂p/∂ρ at constant T) / (R T): 1 + 2 δ αδ + δ² αδδ. */
  private double stiffness() {
    return 1.0
        + 2.0 * RealAirKernels.firstByDensity(tau(), delta())
        + RealAirKernels.secondByDensity(tau(), delta());
  }

  /** (∂p/∂T at constant ρ) / (ρ R): 1 + δ αδ − δ τ αδτ. */
  private double expansion() {
    return compressibilityFactor() - RealAirKernels.mixed(tau(), delta());
  }

  /**
   * Tells how the properties follow from one another; the sums of the papers' terms are told as numbers.
   *
   * @param units the units to show numbers in
   * @return the working
   */
  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Real air at " + in(units), units)
        .note(
            "Z, cv, s = (∂p/∂ρ)/(R T) and e = (∂p/∂T)/(ρ R) are sums of the terms of the equation of state.")
        .given(PRESSURE, pressure.pascals(), 9)
        .given(COMPRESSIBILITY, compressibilityFactor(), 8)
        .given(CONSTANT, RealAirKernels.GAS_CONSTANT, 9)
        .given(KELVINS, temperature.kelvins(), 9)
        .step(DENSITY, rho, 6)
        .given(ISOCHORIC, isochoricHeatCapacityJoulesPerKilogramKelvin(), 8)
        .given(EXPANSION, expansion(), 8)
        .given(STIFFNESS, stiffness(), 8)
        .step(HEAT_CAPACITY, isobaricHeatCapacityJoulesPerKilogramKelvin(), 6)
        .step(SPEED_OF_SOUND, speedOfSound().metresPerSecond(), 6)
        .given(DILUTE, RealAirKernels.diluteViscosity(temperature.kelvins()), 8)
        .given(RESIDUAL, RealAirKernels.residualViscosity(tau(), delta()), 8)
        .step(VISCOSITY, viscosity().pascalSeconds(), 6)
        .answer(DENSITY.result(), ISOBARIC, SPEED_OF_SOUND.result(), VISCOSITY.result())
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RealAir that
        && pressure.equals(that.pressure)
        && temperature.equals(that.temperature);
  }

  @Override
  public int hashCode() {
    return 31 * pressure.hashCode() + temperature.hashCode();
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
