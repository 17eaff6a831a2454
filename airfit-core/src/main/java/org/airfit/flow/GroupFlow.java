package org.airfit.flow;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.working.Working;

/**
 * The flow through several parts together.
 *
 * @param inlet the air in front of them
 * @param outlet the pressure behind them
 * @param regime {@link FlowRegime#CHOKED} where a lower pressure behind them changes nothing
 * @param massFlow how much passes
 * @param between the pressures between parts in series, in order; empty for parts side by side
 * @param working how that was found
 */
public record GroupFlow(
    AirState inlet,
    AbsolutePressure outlet,
    FlowRegime regime,
    MassFlow massFlow,
    List<AbsolutePressure> between,
    Working working) {

  /**
   * Copies the list.
   *
   * @param inlet the air in front of them
   * @param outlet the pressure behind them
   * @param regime {@link FlowRegime#CHOKED} where a lower pressure behind them changes nothing
   * @param massFlow how much passes
   * @param between the pressures between parts in series, in order; empty for parts side by side
   * @param working how that was found
   */
  public GroupFlow {
    between = List.copyOf(between);
  }

  /** {@return the flow as free air at ISO 8778 reference} */
  public FreeAirFlow freeAir() {
    return FreeAirFlow.from(massFlow, ReferenceState.ANR);
  }
}
