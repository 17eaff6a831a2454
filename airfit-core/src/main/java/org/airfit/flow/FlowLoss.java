package org.airfit.flow;

import java.util.Objects;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;

/**
 * One point of a sheet that says what an element loses: a flow and the drop at that flow.
 *
 * @param flow the flow
 * @param drop the drop
 */
public record FlowLoss(FreeAirFlow flow, PressureDrop drop) {

  /**
   * Checks the components.
   *
   * @param flow the flow
   * @param drop the drop
   */
  public FlowLoss {
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(drop, "drop");
  }
}
