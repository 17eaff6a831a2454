package org.airfit.flow;

import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The flow through a hole between two pressures, as {@link Orifice#flow} finds it.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class OrificeFlow implements Worked {

  /** p2/p1 at and below which a loss-free nozzle chokes [-]: (2/(γ+1))^(γ/(γ−1)) = 0.528. */
  static final double CRITICAL_PRESSURE_RATIO =
      Math.pow(2.0 / (GasKernels.G + 1.0), GasKernels.G / (GasKernels.G - 1.0));

  private static final Source SOURCE =
      Source.handbook("loss-free nozzle with a discharge coefficient; NACA Report 1135 (1953)");

  private static final Symbol GAMMA = Symbol.of("γ", ValueKind.NUMBER);
  private static final Symbol PSI = Symbol.of("ψ", ValueKind.NUMBER);
  private static final Symbol INLET = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol OUTLET = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol DIAMETER = Symbol.of("d", ValueKind.BORE);
  private static final Symbol COEFFICIENT = Symbol.of("Cd", "C_d", ValueKind.NUMBER);
  private static final Symbol CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T1", ValueKind.TEMPERATURE);
  private static final Symbol RATIO = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);

  private static final Formula CHOKED = Formula.of(
      "Mass flow function at Mach 1",
      "⟨ψ⟩ = √⟨γ⟩ × (2 / (⟨γ⟩ + 1))^((⟨γ⟩ + 1) / (2 × (⟨γ⟩ − 1)))",
      SOURCE,
      PSI,
      GAMMA);

  private static final Formula PRESSURE_RATIO =
      Formula.of("Ratio of the pressures", "⟨x⟩ = ⟨p2⟩ / ⟨p1⟩", SOURCE, RATIO, OUTLET, INLET);

  private static final Formula SUBSONIC = Formula.of(
      "Mass flow function",
      "⟨ψ⟩ = √(2 × ⟨γ⟩ / (⟨γ⟩ − 1) × (⟨x⟩^(2 / ⟨γ⟩) − ⟨x⟩^((⟨γ⟩ + 1) / ⟨γ⟩)))",
      SOURCE,
      PSI,
      GAMMA,
      RATIO);

  private static final Formula THROUGH = Formula.of(
      "Flow",
      "⟨ṁ⟩ = ⟨Cd⟩ × π / 4 × ⟨d⟩² × ⟨p1⟩ × ⟨ψ⟩ × √[g_c] / √(⟨R⟩ × ⟨T1⟩)",
      SOURCE,
      FLOW,
      COEFFICIENT,
      DIAMETER,
      INLET,
      PSI,
      CONSTANT,
      KELVINS);

  private final Length diameter;
  private final double dischargeCoefficient;
  private final AirState inlet;
  private final AbsolutePressure outlet;
  private final FlowRegime regime;
  private final MassFlow massFlow;

  OrificeFlow(
      Length diameter,
      double dischargeCoefficient,
      AirState inlet,
      AbsolutePressure outlet,
      FlowRegime regime,
      MassFlow massFlow) {
    this.diameter = diameter;
    this.dischargeCoefficient = dischargeCoefficient;
    this.inlet = inlet;
    this.outlet = outlet;
    this.regime = regime;
    this.massFlow = massFlow;
  }

  /** A hole in words, such as "orifice of 3 mm, Cd 0.65". */
  static String hole(Length diameter, double dischargeCoefficient, UnitSystem units) {
    return "orifice of " + diameter.format(units.smallLengthUnit()) + ", Cd "
        + Digits.told(dischargeCoefficient);
  }

  /** {@return the diameter of the hole} */
  public Length diameter() {
    return diameter;
  }

  /** {@return the discharge coefficient of the hole, Cd [-]} */
  public double dischargeCoefficient() {
    return dischargeCoefficient;
  }

  /** {@return the air in front of it} */
  public AirState inlet() {
    return inlet;
  }

  /** {@return the pressure behind it} */
  public AbsolutePressure outlet() {
    return outlet;
  }

  /** {@return how the air passes} */
  public FlowRegime regime() {
    return regime;
  }

  /** {@return how much passes} */
  public MassFlow massFlow() {
    return massFlow;
  }

  /** {@return the flow as free air at ISO 8778 reference} */
  public FreeAirFlow freeAir() {
    return FreeAirFlow.from(massFlow, ReferenceState.ANR);
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = Working.titled(
        "Flow of air through an " + hole(diameter, dischargeCoefficient, units), units);
    if (regime == FlowRegime.CLOSED) {
      return working.answer("There is no drop: nothing flows.").build();
    }
    working.given(GAMMA, GasKernels.G, 3).given(INLET, inlet.pressure().pascals(), 8);
    if (regime == FlowRegime.CHOKED) {
      working
          .note("p2/p1 is not above 0.528: the flow is choked.")
          .step(CHOKED, GasKernels.CHOKED, 4);
    } else {
      double ratio = outlet.pascals() / inlet.pressure().pascals();
      working
          .given(OUTLET, outlet.pascals(), 8)
          .step(PRESSURE_RATIO, ratio, 4)
          .step(SUBSONIC, GasKernels.massFlowFunction(GasKernels.machAtPressureRatio(ratio)), 4);
    }
    return working
        .given(COEFFICIENT, dischargeCoefficient, 7)
        .given(DIAMETER, diameter.metres(), 8)
        .given(CONSTANT, AirState.GAS_CONSTANT, 8)
        .given(KELVINS, inlet.temperature().kelvins(), 8)
        .step(THROUGH, massFlow.kilogramsPerSecond(), 4)
        .answer(FLOW)
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof OrificeFlow that
        && diameter.equals(that.diameter)
        && dischargeCoefficient == that.dischargeCoefficient
        && inlet.equals(that.inlet)
        && outlet.equals(that.outlet)
        && regime == that.regime
        && massFlow.equals(that.massFlow);
  }

  @Override
  public int hashCode() {
    return Objects.hash(diameter, dischargeCoefficient, inlet, outlet, regime, massFlow);
  }

  /** {@return the flow and the hole} */
  @Override
  public String toString() {
    return massFlow.shown() + " through an " + hole(diameter, dischargeCoefficient, UnitSystem.SI);
  }
}
