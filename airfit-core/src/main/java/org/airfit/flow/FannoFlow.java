package org.airfit.flow;

import org.airfit.internal.Digits;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Air in a straight bore with friction and without heat, at one Mach number.
 *
 * <pre>
 *   λ L* /D = (1 − M²)/(γM²) + (γ+1)/(2γ) ln( (γ+1)M² / (2 + (γ−1)M²) )
 *   T/T* = (γ+1) / (2 + (γ−1)M²)   p/p* = √(T/T*) / M   p0/p0* = (T/T*)^(−(γ+1)/(2(γ−1))) / M
 * </pre>
 *
 * <p>L* is the length that is left to Mach 1, λ the friction factor after Darcy; * marks air at Mach 1. Books that
 * print 4 f L* /D with Fanning's f print the same number. Valid for an ideal gas with γ = 1.4; M in (0, 100].
 * <b>Source:</b> A. H. Shapiro, <cite>The Dynamics and Thermodynamics of Compressible Fluid Flow</cite> (1953),
 * chapter 6.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class FannoFlow implements Worked {

  private static final Source SOURCE =
      Source.handbook("Shapiro, Compressible Fluid Flow (1953), chapter 6");

  private static final Symbol GAMMA = Symbol.of("γ", ValueKind.NUMBER);
  private static final Symbol MACH = Symbol.of("M", ValueKind.NUMBER);
  private static final Symbol FRICTION = Symbol.of("λL*/D", "\\lambda L^*/D", ValueKind.NUMBER);
  private static final Symbol TEMPERATURES = Symbol.of("T/T*", "T/T^*", ValueKind.NUMBER);
  private static final Symbol PRESSURES = Symbol.of("p/p*", "p/p^*", ValueKind.NUMBER);
  private static final Symbol STAGNATION = Symbol.of("p0/p0*", "p_0/p_0^*", ValueKind.NUMBER);

  private static final Formula FRICTION_LEFT = Formula.of(
      "Friction left to Mach 1",
      "⟨λL*/D⟩ = (1 − ⟨M⟩²) / (⟨γ⟩ × ⟨M⟩²) + (⟨γ⟩ + 1) / (2 × ⟨γ⟩)"
          + " × ln((⟨γ⟩ + 1) × ⟨M⟩² / (2 + (⟨γ⟩ − 1) × ⟨M⟩²))",
      SOURCE,
      FRICTION,
      MACH,
      GAMMA);

  private static final Formula TEMPERATURE = Formula.of(
      "Temperature over that at Mach 1",
      "⟨T/T*⟩ = (⟨γ⟩ + 1) / (2 + (⟨γ⟩ − 1) × ⟨M⟩²)",
      SOURCE,
      TEMPERATURES,
      GAMMA,
      MACH);

  private static final Formula PRESSURE = Formula.of(
      "Pressure over that at Mach 1",
      "⟨p/p*⟩ = √⟨T/T*⟩ / ⟨M⟩",
      SOURCE,
      PRESSURES,
      TEMPERATURES,
      MACH);

  private static final Formula STAGNATION_PRESSURE = Formula.of(
      "Pressure of the air if it were stopped, over that at Mach 1",
      "⟨p0/p0*⟩ = ⟨T/T*⟩^(−(⟨γ⟩ + 1) / (2 × (⟨γ⟩ − 1))) / ⟨M⟩",
      SOURCE,
      STAGNATION,
      TEMPERATURES,
      GAMMA,
      MACH);

  private final double mach;

  private FannoFlow(double mach) {
    this.mach = mach;
  }

  /**
   * Obtains the flow at a Mach number.
   *
   * @param mach M [-], in [10⁻⁶, 100]
   * @return the flow
   * @throws IllegalArgumentException if {@code mach} is out of range
   */
  public static FannoFlow atMach(double mach) {
    if (!(mach >= 1.0e-6 && mach <= 100.0)) {
      throw new IllegalArgumentException(
          "Mach number must be in [1e-6, 100], was " + Digits.told(mach));
    }
    return new FannoFlow(mach);
  }

  /**
   * Obtains the subsonic flow that has some friction left before it reaches Mach 1.
   *
   * @param resistance λ L* /D [-], in [0, 7.2·10¹¹]
   * @return the flow, at Mach 1 or less
   * @throws IllegalArgumentException if {@code resistance} is out of range
   */
  public static FannoFlow subsonicAtResistance(double resistance) {
    if (!(resistance >= 0.0 && resistance <= 7.2e11)) {
      throw new IllegalArgumentException(
          "λL*/D must be in [0, 7.2e11], was " + Digits.told(resistance));
    }
    double y = GasKernels.inverseExcess(resistance * 2.0 * GasKernels.G / (GasKernels.G + 1.0));
    return new FannoFlow(1.0 / Math.sqrt(1.0 + 0.5 * (GasKernels.G + 1.0) * y));
  }

  /** {@return M [-]} */
  public double mach() {
    return mach;
  }

  /** {@return λ L* /D [-], the friction left to Mach 1} */
  public double resistanceLeft() {
    double y = 2.0 / (GasKernels.G + 1.0) * ((1.0 - mach) * (1.0 + mach) / (mach * mach));
    return 0.5 * (GasKernels.G + 1.0) / GasKernels.G * GasKernels.excess(y);
  }

  /** {@return T/T* [-]} */
  public double temperatureRatio() {
    return (GasKernels.G + 1.0) / (2.0 + (GasKernels.G - 1.0) * mach * mach);
  }

  /** {@return p/p* [-]} */
  public double pressureRatio() {
    return Math.sqrt(temperatureRatio()) / mach;
  }

  /** {@return ρ/ρ* [-]} */
  public double densityRatio() {
    return 1.0 / velocityRatio();
  }

  /** {@return w/w* [-]} */
  public double velocityRatio() {
    return mach * Math.sqrt(temperatureRatio());
  }

  /** {@return p0/p0* [-], of the pressures the air would have if it were stopped} */
  public double stagnationPressureRatio() {
    return Math.pow(temperatureRatio(), -0.5 * (GasKernels.G + 1.0) / (GasKernels.G - 1.0)) / mach;
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Adiabatic flow of air with friction at Mach " + Digits.told(mach), units)
        .given(GAMMA, GasKernels.G, 3)
        .given(MACH, mach, 8)
        .step(FRICTION_LEFT, resistanceLeft(), 5)
        .step(TEMPERATURE, temperatureRatio(), 6)
        .step(PRESSURE, pressureRatio(), 6)
        .step(STAGNATION_PRESSURE, stagnationPressureRatio(), 6)
        .answer(FRICTION, TEMPERATURES, PRESSURES, STAGNATION)
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FannoFlow that && mach == that.mach;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(mach);
  }

  /** {@return the flow, such as "adiabatic flow with friction at Mach 0.5"} */
  @Override
  public String toString() {
    return "adiabatic flow with friction at Mach " + Digits.told(mach);
  }
}
