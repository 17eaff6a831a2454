package org.airfit.flow;

import java.util.Objects;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;

/**
 * One point of a rating: so much air at an inlet pressure and a drop.
 *
 * @param flow the flow, above 0
 * @param inlet the pressure in front of the part
 * @param drop the drop across the part, above 0 and less than {@code inlet}
 * @param temperature the temperature of the air
 */
public record RatedPoint(
    FreeAirFlow flow, AbsolutePressure inlet, PressureDrop drop, Temperature temperature) {

  /**
   * Checks the components.
   *
   * @param flow the flow, above 0
   * @param inlet the pressure in front of the part
   * @param drop the drop across the part, above 0 and less than {@code inlet}
   * @param temperature the temperature of the air
   * @throws IllegalArgumentException if one is out of range
   */
  public RatedPoint {
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(inlet, "inlet");
    Objects.requireNonNull(drop, "drop");
    Objects.requireNonNull(temperature, "temperature");
    if (!(drop.pascals() > 0.0 && drop.pascals() < inlet.pascals())) {
      throw new IllegalArgumentException("rated drop must be above 0 and below the inlet pressure "
          + inlet.shown() + ", was " + drop.shown());
    }
    if (!(flow.cubicMetresPerSecond() > 0.0)) {
      throw new IllegalArgumentException("rated flow must be above 0, was " + flow.shown()
          + "; a part that passes nothing has no capacity");
    }
  }

  /** Drop over inlet pressure [-]. */
  double share() {
    return drop.pascals() / inlet.pascals();
  }

  /** The capacity that gives this point with one b. */
  FlowCapacity capacity(double b) {
    return FlowCapacity.ofRatedFlow(flow, inlet, drop, temperature, b);
  }

  /** The C that gives this point with one b [m³/(s Pa)]. */
  double conductance(double b) {
    double choked = FlowKernels.choked(
        1.0,
        ReferenceState.ANR.density().kilogramsPerCubicMetre(),
        inlet.pascals(),
        temperature.kelvins());
    double ratio = 1.0 - share();
    double passed = ratio <= b ? 1.0 : FlowKernels.subsonicShare(b, 0.5, 0.0, ratio);
    return flow.massFlow().kilogramsPerSecond() / (choked * passed);
  }
}
