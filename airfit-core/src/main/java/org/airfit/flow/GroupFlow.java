package org.airfit.flow;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The flow through several parts together.
 *
 * @param inlet the air in front of them
 * @param outlet the pressure behind them
 * @param regime {@link FlowRegime#CHOKED} where a lower pressure behind them changes nothing
 * @param massFlow how much passes
 * @param between the pressures between parts in series, in order; empty for parts side by side
 * @param sideBySide whether the parts stand side by side, not in series
 * @param parts what becomes of the air at each part, in order
 */
public record GroupFlow(
    AirState inlet,
    AbsolutePressure outlet,
    FlowRegime regime,
    MassFlow massFlow,
    List<AbsolutePressure> between,
    boolean sideBySide,
    List<Worked> parts)
    implements Worked {

  /**
   * Copies the lists.
   *
   * @param inlet the air in front of them
   * @param outlet the pressure behind them
   * @param regime {@link FlowRegime#CHOKED} where a lower pressure behind them changes nothing
   * @param massFlow how much passes
   * @param between the pressures between parts in series, in order; empty for parts side by side
   * @param sideBySide whether the parts stand side by side, not in series
   * @param parts what becomes of the air at each part, in order
   */
  public GroupFlow {
    between = List.copyOf(between);
    parts = List.copyOf(parts);
  }

  /** {@return the flow as free air at ISO 8778 reference} */
  public FreeAirFlow freeAir() {
    return FreeAirFlow.from(massFlow, ReferenceState.ANR);
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = sideBySide
        ? Working.titled("Flow through parts side by side")
            .note("Each part passes its own flow between the two pressures; the flows add up.")
        : Working.titled("Flow through parts in series, found by trial")
            .note(
                "The flow was halved in until the pressure behind the last part is that asked for; it is checked part by part.");
    parts.forEach(part -> working.include(part.working(units)));
    return working.build();
  }
}
