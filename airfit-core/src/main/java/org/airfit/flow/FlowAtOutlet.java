package org.airfit.flow;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The flow through a part between two pressures.
 *
 * @param capacity the part
 * @param inlet the air in front of it
 * @param outlet the pressure behind it
 * @param regime how the air passes
 * @param massFlow how much passes
 */
public record FlowAtOutlet(
    FlowCapacity capacity,
    AirState inlet,
    AbsolutePressure outlet,
    FlowRegime regime,
    MassFlow massFlow)
    implements Worked {

  /** {@return the flow as free air at ISO 8778 reference} */
  public FreeAirFlow freeAir() {
    return FreeAirFlow.from(massFlow, ReferenceState.ANR);
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = Working.titled("Flow through a part of " + capacity)
        .include(capacity.chokedWorking(inlet, units));
    double ratio = outlet.pascals() / inlet.pressure().pascals();
    double b = capacity.criticalPressureRatio();
    if (regime == FlowRegime.CHOKED) {
      return working
          .note("p2/p1 is not above b: the flow is choked, and this is all that passes.")
          .build();
    }
    if (regime == FlowRegime.CLOSED) {
      return working
          .note("The drop does not exceed the cracking pressure: nothing flows.")
          .build();
    }
    return working
        .step(
            "Subsonic flow",
            "⟨ṁ⟩ = ⟨ṁ*⟩ × (1 − ((⟨p2/p1⟩ − ⟨b⟩) / (1 − ⟨Δpc/p1⟩ − ⟨b⟩))²)^⟨m⟩",
            "⟨ṁ⟩ = ⟨ṁ*⟩ \\left(1 - \\left(\\frac{⟨p2/p1⟩ - ⟨b⟩}{1 - ⟨Δpc/p1⟩ - ⟨b⟩}\\right)^2\\right)^{⟨m⟩}",
            List.of(
                capacity.chokedTerm(inlet, units, 7),
                Term.of("p2/p1", "p_2/p_1", ratio, "", 12),
                Term.of("b", "b", b, "", 6),
                Term.of(
                    "Δpc/p1",
                    "\\Delta p_c/p_1",
                    capacity.crackingPressure().pascals() / inlet.pressure().pascals(),
                    "",
                    8),
                Term.of("m", "m", capacity.subsonicIndex(), "", 4)),
            units.massFlow("ṁ", "\\dot m", massFlow.kilogramsPerSecond(), 5),
            FlowCapacity.SOURCE)
        .build();
  }
}
