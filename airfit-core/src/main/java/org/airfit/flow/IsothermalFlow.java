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
 * Air in a straight bore with friction that keeps its temperature, at one Mach number.
 *
 * <pre>
 *   λ Lmax/D = (1 − γM²)/(γM²) + ln(γM²)   p/p* = 1/(√γ M)
 * </pre>
 *
 * <p>Such flow chokes at M = 1/√γ = 0.845, not at 1; Lmax is the length left to there, * the state there, λ the
 * friction factor after Darcy. Valid for an ideal gas with γ = 1.4; M in [10⁻⁶, 1/√γ]. <b>Source:</b> Shapiro (1953),
 * chapter 6.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class IsothermalFlow implements Worked {

  /** The Mach number at which isothermal flow chokes, 1/√γ [-]. */
  public static final double CHOKING_MACH = 1.0 / Math.sqrt(GasKernels.G);

  private static final Source SOURCE =
      Source.handbook("Shapiro, Compressible Fluid Flow (1953), chapter 6");

  private static final Symbol GAMMA = Symbol.of("γ", ValueKind.NUMBER);
  private static final Symbol MACH = Symbol.of("M", ValueKind.NUMBER);
  private static final Symbol FRICTION = Symbol.of("λL/D", "\\lambda L/D", ValueKind.NUMBER);
  private static final Symbol PRESSURES = Symbol.of("p/p*", "p/p^*", ValueKind.NUMBER);

  private static final Formula FRICTION_LEFT = Formula.of(
      "Friction left before it chokes",
      "⟨λL/D⟩ = (1 − ⟨γ⟩ × ⟨M⟩²) / (⟨γ⟩ × ⟨M⟩²) + ln(⟨γ⟩ × ⟨M⟩²)",
      SOURCE,
      FRICTION,
      MACH,
      GAMMA);

  private static final Formula PRESSURE = Formula.of(
      "Pressure over that where it chokes",
      "⟨p/p*⟩ = 1 / (√⟨γ⟩ × ⟨M⟩)",
      SOURCE,
      PRESSURES,
      GAMMA,
      MACH);

  private final double mach;

  private IsothermalFlow(double mach) {
    this.mach = mach;
  }

  /**
   * Obtains the flow at a Mach number.
   *
   * @param mach M [-], in [10⁻⁶, 1/√1.4]
   * @return the flow
   * @throws IllegalArgumentException if {@code mach} is out of range
   */
  public static IsothermalFlow atMach(double mach) {
    if (!(mach >= 1.0e-6 && mach <= CHOKING_MACH)) {
      throw new IllegalArgumentException("Mach number must be in [1e-6, "
          + Digits.told(CHOKING_MACH) + "], was " + Digits.told(mach));
    }
    return new IsothermalFlow(mach);
  }

  /**
   * Obtains the flow that has some friction left before it chokes.
   *
   * @param resistance λ Lmax/D [-], in [0, 7.2·10¹¹]
   * @return the flow
   * @throws IllegalArgumentException if {@code resistance} is out of range
   */
  public static IsothermalFlow atResistance(double resistance) {
    if (!(resistance >= 0.0 && resistance <= 7.2e11)) {
      throw new IllegalArgumentException(
          "λLmax/D must be in [0, 7.2e11], was " + Digits.told(resistance));
    }
    return new IsothermalFlow(CHOKING_MACH / Math.sqrt(1.0 + GasKernels.inverseExcess(resistance)));
  }

  /** {@return M [-]} */
  public double mach() {
    return mach;
  }

  /** {@return λ Lmax/D [-], the friction left before the flow chokes} */
  public double resistanceLeft() {
    double over = CHOKING_MACH / mach;
    return GasKernels.excess((over - 1.0) * (over + 1.0));
  }

  /** {@return p/p* [-], which is ρ/ρ* too} */
  public double pressureRatio() {
    return CHOKING_MACH / mach;
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled(
            "Isothermal flow of air with friction at Mach " + Digits.told(mach), units)
        .given(GAMMA, GasKernels.G, 3)
        .given(MACH, mach, 8)
        .step(FRICTION_LEFT, resistanceLeft(), 5)
        .step(PRESSURE, pressureRatio(), 6)
        .answer(FRICTION, PRESSURES)
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof IsothermalFlow that && mach == that.mach;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(mach);
  }

  /** {@return the flow, such as "isothermal flow with friction at Mach 0.5"} */
  @Override
  public String toString() {
    return "isothermal flow with friction at Mach " + Digits.told(mach);
  }
}
