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
 * Air that speeds up or slows down without friction or heat, at one Mach number.
 *
 * <pre>
 *   T/T0 = 1 / (1 + (γ−1)/2 M²)   p/p0 = (T/T0)^(γ/(γ−1))   ρ/ρ0 = (T/T0)^(1/(γ−1))
 *   ψ = ṁ √(R T0) / (A p0) = √γ M (T/T0)^((γ+1)/(2(γ−1)))   A/A* = ψ(1)/ψ(M)
 * </pre>
 *
 * <p>Index 0 is air at rest, * air at Mach 1. Valid for an ideal gas with γ = 1.4; M in [0, 100]. <b>Source:</b> Ames
 * Research Staff, NACA Report 1135 (1953).
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class IsentropicFlow implements Worked {

  private static final Source SOURCE = Source.handbook("NACA Report 1135 (1953)");

  private static final Symbol GAMMA = Symbol.of("γ", ValueKind.NUMBER);
  private static final Symbol MACH = Symbol.of("M", ValueKind.NUMBER);
  private static final Symbol TEMPERATURES = Symbol.of("T/T0", "T/T_0", ValueKind.NUMBER);
  private static final Symbol PRESSURES = Symbol.of("p/p0", "p/p_0", ValueKind.NUMBER);
  private static final Symbol DENSITIES = Symbol.of("ρ/ρ0", "\\rho/\\rho_0", ValueKind.NUMBER);
  private static final Symbol PSI = Symbol.of("ψ", ValueKind.NUMBER);

  private static final Formula TEMPERATURE = Formula.of(
      "Temperature over that at rest",
      "⟨T/T0⟩ = 1 / (1 + (⟨γ⟩ − 1) / 2 × ⟨M⟩²)",
      SOURCE,
      TEMPERATURES,
      GAMMA,
      MACH);

  private static final Formula PRESSURE = Formula.of(
      "Pressure over that at rest",
      "⟨p/p0⟩ = ⟨T/T0⟩^(⟨γ⟩ / (⟨γ⟩ − 1))",
      SOURCE,
      PRESSURES,
      TEMPERATURES,
      GAMMA);

  private static final Formula DENSITY = Formula.of(
      "Density over that at rest",
      "⟨ρ/ρ0⟩ = ⟨T/T0⟩^(1 / (⟨γ⟩ − 1))",
      SOURCE,
      DENSITIES,
      TEMPERATURES,
      GAMMA);

  private static final Formula MASS_FLOW_FUNCTION = Formula.of(
      "Mass flow function",
      "⟨ψ⟩ = √⟨γ⟩ × ⟨M⟩ × ⟨T/T0⟩^((⟨γ⟩ + 1) / (2 × (⟨γ⟩ − 1)))",
      SOURCE,
      PSI,
      GAMMA,
      MACH,
      TEMPERATURES);

  private final double mach;

  private IsentropicFlow(double mach) {
    this.mach = mach;
  }

  /**
   * Obtains the flow at a Mach number.
   *
   * @param mach M [-], in [0, 100]
   * @return the flow
   * @throws IllegalArgumentException if {@code mach} is out of range
   */
  public static IsentropicFlow atMach(double mach) {
    if (!(mach >= 0.0 && mach <= 100.0)) {
      throw new IllegalArgumentException(
          "Mach number must be in [0, 100], was " + Digits.told(mach));
    }
    return new IsentropicFlow(mach + 0.0);
  }

  /**
   * Obtains the flow in which the pressure has fallen to a share of that at rest.
   *
   * @param ratio p/p0 [-], in [10⁻⁹, 1]
   * @return the flow
   * @throws IllegalArgumentException if {@code ratio} is out of range
   */
  public static IsentropicFlow atPressureRatio(double ratio) {
    if (!(ratio >= 1.0e-9 && ratio <= 1.0)) {
      throw new IllegalArgumentException("p/p0 must be in [1e-9, 1], was " + Digits.told(ratio));
    }
    return new IsentropicFlow(GasKernels.machAtPressureRatio(ratio) + 0.0);
  }

  /**
   * Obtains the subsonic flow where the section is wider than the throat by a ratio.
   *
   * @param ratio A/A* [-], in [1, 10⁶]
   * @return the flow, at Mach 1 or less
   * @throws IllegalArgumentException if {@code ratio} is out of range
   */
  public static IsentropicFlow subsonicAtAreaRatio(double ratio) {
    if (!(ratio >= 1.0 && ratio <= 1.0e6)) {
      throw new IllegalArgumentException("A/A* must be in [1, 1e6], was " + Digits.told(ratio));
    }
    return new IsentropicFlow(GasKernels.subsonicMachAtMassFlowFunction(GasKernels.CHOKED / ratio));
  }

  /**
   * Obtains the subsonic flow of a mass flow function, as where air at rest is drawn into a bore.
   *
   * @param psi ψ = ṁ √(R T0)/(A p0) [-], above 0 and at most 0.684731
   * @return the flow, at Mach 1 or less
   * @throws IllegalArgumentException if {@code psi} is out of range
   */
  public static IsentropicFlow subsonicAtMassFlowFunction(double psi) {
    if (!(psi > 0.0 && psi <= GasKernels.CHOKED)) {
      throw new IllegalArgumentException("mass flow function must be in (0, "
          + Digits.told(GasKernels.CHOKED) + "], was " + Digits.told(psi));
    }
    return new IsentropicFlow(GasKernels.subsonicMachAtMassFlowFunction(psi));
  }

  /** {@return M [-]} */
  public double mach() {
    return mach;
  }

  /** {@return T/T0 [-]} */
  public double temperatureRatio() {
    return GasKernels.temperatureRatio(mach);
  }

  /** {@return p/p0 [-]} */
  public double pressureRatio() {
    return GasKernels.pressureRatio(temperatureRatio());
  }

  /** {@return 1 − p/p0 [-], with all its digits where little is lost} */
  public double pressureLost() {
    return GasKernels.pressureLost(mach);
  }

  /** {@return ρ/ρ0 [-]} */
  public double densityRatio() {
    return Math.pow(temperatureRatio(), 1.0 / (GasKernels.G - 1.0));
  }

  /** {@return ψ = ṁ √(R T0) / (A p0) [-]; 0.684731 at Mach 1} */
  public double massFlowFunction() {
    return GasKernels.massFlowFunction(mach);
  }

  /**
   * Obtains the section over that of the throat.
   *
   * @return A/A* [-]
   * @throws IllegalStateException if nothing moves, or so slowly that the ratio leaves the range of a double
   */
  public double areaRatio() {
    if (mach == 0.0) {
      throw new IllegalStateException("A/A* has no value at Mach 0");
    }
    double ratio = GasKernels.CHOKED / massFlowFunction();
    if (ratio == Double.POSITIVE_INFINITY) {
      throw new IllegalStateException("A/A* has no value at Mach " + Digits.told(mach));
    }
    return ratio;
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Isentropic flow of air at Mach " + Digits.told(mach), units)
        .given(GAMMA, GasKernels.G, 3)
        .given(MACH, mach, 8)
        .step(TEMPERATURE, temperatureRatio(), 6)
        .step(PRESSURE, pressureRatio(), 6)
        .step(DENSITY, densityRatio(), 6)
        .step(MASS_FLOW_FUNCTION, massFlowFunction(), 6)
        .answer(TEMPERATURES, PRESSURES, DENSITIES, PSI)
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof IsentropicFlow that && mach == that.mach;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(mach);
  }

  /** {@return the flow, such as "isentropic flow at Mach 0.5"} */
  @Override
  public String toString() {
    return "isentropic flow at Mach " + Digits.told(mach);
  }
}
