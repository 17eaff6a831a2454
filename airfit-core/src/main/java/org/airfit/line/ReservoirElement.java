package org.airfit.line;

import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.flow.FlowElements;
import org.airfit.flow.IsentropicFlow;
import org.airfit.internal.RootFinder;

/**
 * A bore that draws air at rest: an entrance without loss, and adiabatic flow behind it. {@link ReservoirModel} wraps
 * it.
 */
final class ReservoirElement implements FlowElement {

  /** The least Mach number looked at where a line chokes. */
  private static final double SLOW = 1.0e-45;

  /** Of the Mach number, in its logarithm. */
  private static final double TOLERANCE = 1.0e-15;

  private final FrictionLaw law;
  private final Conduit conduit;
  private final FlowElement entrance;
  private final PipeElement inBore;
  private final double area;

  ReservoirElement(FrictionLaw law, Conduit conduit) {
    this.law = law;
    this.conduit = conduit;
    this.entrance = FlowElements.entrance(conduit.area());
    this.inBore = new PipeElement(PipeEquation.ADIABATIC, law, conduit);
    this.area = conduit.area().squareMetres();
  }

  /** ṁ/ψ = A p0/√(R T0) [kg/s]. */
  double flowAtOne(double pascals, double kelvins) {
    return area * pascals / Math.sqrt(AirState.GAS_CONSTANT * kelvins);
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    if (PipeElement.countsAsNone(flow)) {
      return pascals;
    }
    double entered = entrance.outlet(flow, pascals, kelvins, viscosity);
    return Double.isNaN(entered)
        ? Double.NaN
        : inBore.outlet(
            flow, entered, entrance.outletKelvins(flow, pascals, kelvins, viscosity), viscosity);
  }

  @Override
  public double outletKelvins(double flow, double pascals, double kelvins, double viscosity) {
    if (PipeElement.countsAsNone(flow)) {
      return kelvins;
    }
    return inBore.outletKelvins(
        flow,
        entrance.outlet(flow, pascals, kelvins, viscosity),
        entrance.outletKelvins(flow, pascals, kelvins, viscosity),
        viscosity);
  }

  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    return flowAtOne(pascals, kelvins)
        * IsentropicFlow.atMach(machAtLargest(pascals, kelvins, viscosity)).massFlowFunction();
  }

  /** The Mach number where the air has entered from which friction brings it to Mach 1 at the outlet. */
  double machAtLargest(double pascals, double kelvins, double viscosity) {
    double flowAtOne = flowAtOne(pascals, kelvins);
    double atOne = tooMuch(0.0, flowAtOne, viscosity);
    if (!(atOne > 0.0)) {
      return 1.0;
    }
    double slow = Math.log(SLOW);
    double atSlow = tooMuch(slow, flowAtOne, viscosity);
    if (atSlow > 0.0) {
      return SLOW;
    }
    return Math.exp(RootFinder.find(
        x -> tooMuch(x, flowAtOne, viscosity), slow, atSlow, 0.0, atOne, TOLERANCE));
  }

  private double tooMuch(double logOfMach, double flowAtOne, double viscosity) {
    IsentropicFlow entering = IsentropicFlow.atMach(Math.exp(logOfMach));
    double k = inBore.resistance(inBore.darcy(flowAtOne * entering.massFlowFunction(), viscosity));
    double a = AirState.HEAT_CAPACITY_RATIO * entering.mach() * entering.mach();
    return Math.log(k / PipeEquation.ADIABATIC.largestResistance(a));
  }

  @Override
  public double slope(double flow, double pascals, double kelvins, double viscosity) {
    return PipeElement.countsAsNone(flow)
        ? inBore.slope(flow, pascals, kelvins, viscosity)
        : FlowElement.super.slope(flow, pascals, kelvins, viscosity);
  }

  @Override
  public double nextJump(double above, double viscosity) {
    return inBore.nextJump(above, viscosity);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ReservoirElement that
        && law == that.law
        && conduit.equals(that.conduit);
  }

  @Override
  public int hashCode() {
    return 31 * law.hashCode() + conduit.hashCode();
  }

  /** {@return the line} */
  @Override
  public String toString() {
    return "from air at rest: " + conduit;
  }
}
