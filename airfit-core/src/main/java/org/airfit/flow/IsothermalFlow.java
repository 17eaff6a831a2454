package org.airfit.flow;

import java.util.List;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * Air in a straight bore with friction that keeps its temperature, at one Mach number.
 *
 * <pre>
 *   λ Lmax/D = (1 − γM²)/(γM²) + ln(γM²)   p/p* = 1/(√γ M)
 * </pre>
 *
 * <p>Such flow chokes at M = 1/√γ = 0.845, not at 1; Lmax is the length left to there, * the state there, λ the friction factor after Darcy.
 * Valid for an ideal gas with γ = 1.4; M in [10⁻⁶, 1/√γ]. <b>Source:</b> Shapiro (1953), chapter 6.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class IsothermalFlow {

  /** The Mach number at which isothermal flow chokes, 1/√γ [-]. */
  public static final double CHOKING_MACH = 1.0 / Math.sqrt(GasKernels.G);

  private static final Source SOURCE =
      Source.handbook("Shapiro, Compressible Fluid Flow (1953), chapter 6");

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
      throw new IllegalArgumentException(
          "Mach number must be in [1e-6, " + CHOKING_MACH + "], was " + mach);
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
      throw new IllegalArgumentException("λLmax/D must be in [0, 7.2e11], was " + resistance);
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

  /** {@return how the functions follow from the Mach number} */
  public Working working() {
    Term g = Term.of("γ", "\\gamma", GasKernels.G, "", 3);
    Term m = Term.of("M", "M", mach, "", 14);
    return Working.titled("Isothermal flow with friction at Mach " + mach)
        .step(
            "Friction left before it chokes",
            "⟨λL/D⟩ = (1 − ⟨γ⟩ × ⟨M⟩²) / (⟨γ⟩ × ⟨M⟩²) + ln(⟨γ⟩ × ⟨M⟩²)",
            "⟨λL/D⟩ = \\frac{1 - ⟨γ⟩ ⟨M⟩^2}{⟨γ⟩ ⟨M⟩^2} + \\ln(⟨γ⟩ ⟨M⟩^2)",
            List.of(m, g),
            Term.of("λL/D", "\\lambda L/D", resistanceLeft(), "", 5),
            SOURCE)
        .step(
            "Pressure over that where it chokes",
            "⟨p/p*⟩ = 1 / (√⟨γ⟩ × ⟨M⟩)",
            "⟨p/p*⟩ = \\frac{1}{\\sqrt{⟨γ⟩} ⟨M⟩}",
            List.of(g, m),
            Term.of("p/p*", "p/p^*", pressureRatio(), "", 6),
            SOURCE)
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
    return "isothermal flow with friction at Mach " + mach;
  }
}
