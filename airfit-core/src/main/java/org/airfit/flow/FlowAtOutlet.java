package org.airfit.flow;

import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The flow through a part between two pressures, as {@link FlowCapacity#flow} finds it.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class FlowAtOutlet implements Worked {

  private final FlowCoefficients part;
  private final AirState inlet;
  private final AbsolutePressure outlet;
  private final FlowRegime regime;
  private final MassFlow massFlow;

  FlowAtOutlet(
      FlowCoefficients part,
      AirState inlet,
      AbsolutePressure outlet,
      FlowRegime regime,
      MassFlow massFlow) {
    this.part = part;
    this.inlet = inlet;
    this.outlet = outlet;
    this.regime = regime;
    this.massFlow = massFlow;
  }

  /** {@return the figures of the part} */
  public FlowCoefficients part() {
    return part;
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

  /** {@return where the air in front lies outside what its model holds for; empty where it holds} */
  public List<String> warnings() {
    return inlet.warnings();
  }

  /** {@return the flow as free air at ISO 8778 reference} */
  public FreeAirFlow freeAir() {
    return FreeAirFlow.from(massFlow, ReferenceState.ANR);
  }

  @Override
  public Working working(UnitSystem units) {
    return PartWorking.flow(part, inlet, outlet, regime, massFlow, units);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FlowAtOutlet that
        && part.equals(that.part)
        && inlet.equals(that.inlet)
        && outlet.equals(that.outlet)
        && regime == that.regime
        && massFlow.equals(that.massFlow);
  }

  @Override
  public int hashCode() {
    return Objects.hash(part, inlet, outlet, regime, massFlow);
  }

  /** {@return the flow and what it goes through} */
  @Override
  public String toString() {
    return massFlow.shown() + " through " + part;
  }
}
