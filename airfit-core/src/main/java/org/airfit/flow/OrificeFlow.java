package org.airfit.flow;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The flow through a hole between two pressures.
 *
 * @param orifice the hole
 * @param inlet the air in front of it
 * @param outlet the pressure behind it
 * @param regime how the air passes
 * @param massFlow how much passes
 */
public record OrificeFlow(
    Orifice orifice, AirState inlet, AbsolutePressure outlet, FlowRegime regime, MassFlow massFlow)
    implements Worked {

  /** p2/p1 at and below which a loss-free nozzle chokes [-]: (2/(γ+1))^(γ/(γ−1)) = 0.528. */
  static final double CRITICAL_PRESSURE_RATIO =
      Math.pow(2.0 / (GasKernels.G + 1.0), GasKernels.G / (GasKernels.G - 1.0));

  private static final Source SOURCE =
      Source.handbook("loss-free nozzle with a discharge coefficient; NACA Report 1135 (1953)");

  /** {@return the flow as free air at ISO 8778 reference} */
  public FreeAirFlow freeAir() {
    return FreeAirFlow.from(massFlow, ReferenceState.ANR);
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = Working.titled("Flow through an " + orifice.in(units));
    if (regime == FlowRegime.CLOSED) {
      return working.note("There is no drop: nothing flows.").build();
    }
    double psi = GasKernels.CHOKED;
    Term g = Term.of("γ", "\\gamma", GasKernels.G, "", 3);
    if (regime == FlowRegime.CHOKED) {
      working
          .note("p2/p1 is not above 0.528: the flow is choked.")
          .step(
              "Mass flow function at Mach 1",
              "⟨ψ⟩ = √⟨γ⟩ × (2 / (⟨γ⟩ + 1))^((⟨γ⟩ + 1) / (2 × (⟨γ⟩ − 1)))",
              "⟨ψ⟩ = \\sqrt{⟨γ⟩} \\left(\\frac{2}{⟨γ⟩ + 1}\\right)^{\\frac{⟨γ⟩ + 1}{2 (⟨γ⟩ - 1)}}",
              List.of(g),
              Term.of("ψ", "\\psi", psi, "", 6),
              SOURCE);
    } else {
      double ratio = outlet.pascals() / inlet.pressure().pascals();
      psi = GasKernels.massFlowFunction(GasKernels.machAtPressureRatio(ratio));
      working.step(
          "Mass flow function",
          "⟨ψ⟩ = √(2 × ⟨γ⟩ / (⟨γ⟩ − 1) × (⟨x⟩^(2 / ⟨γ⟩) − ⟨x⟩^((⟨γ⟩ + 1) / ⟨γ⟩)))",
          "⟨ψ⟩ = \\sqrt{\\frac{2 ⟨γ⟩}{⟨γ⟩ - 1} \\left(⟨x⟩^{2/⟨γ⟩} - ⟨x⟩^{(⟨γ⟩ + 1)/⟨γ⟩}\\right)}",
          List.of(g, Term.of("x", "p_2/p_1", ratio, "", 13)),
          Term.of("ψ", "\\psi", psi, "", 6),
          SOURCE);
    }
    return working
        .step(
            "Flow",
            "⟨ṁ⟩ = ⟨Cd⟩ × π / 4 × ⟨d⟩² × ⟨p1⟩ × ⟨ψ⟩"
                + units.either("", " × √" + UnitSystem.G_C)
                + " / √(⟨R⟩ × ⟨T1⟩)",
            "⟨ṁ⟩ = ⟨Cd⟩ \\frac{\\pi}{4} ⟨d⟩^2 \\frac{⟨p1⟩ \\cdot ⟨ψ⟩"
                + units.either("", " \\sqrt{" + UnitSystem.G_C + "}")
                + "}{\\sqrt{⟨R⟩ \\cdot ⟨T1⟩}}",
            List.of(
                Term.of("Cd", "C_d", orifice.dischargeCoefficient(), "", 7),
                units.either(
                    units.length("d", "d", orifice.diameter().metres(), 8),
                    units.smallLength("d", "d", orifice.diameter().metres(), 8)),
                units.pressure("p1", "p_1", inlet.pressure().pascals(), 8),
                Term.of("ψ", "\\psi", psi, "", 8),
                units.heatCapacity("R", "R", AirState.GAS_CONSTANT, 8),
                units.temperature("T1", "T_1", inlet.temperature().kelvins(), 8)),
            units.massFlow("ṁ", "\\dot m", massFlow.kilogramsPerSecond(), 5),
            SOURCE)
        .build();
  }
}
