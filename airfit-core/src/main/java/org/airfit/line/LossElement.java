package org.airfit.line;

import java.util.function.BiFunction;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;

/**
 * A line by a model that has no element of its own: asked by way of its objects, which allocates.
 *
 * @param model the model, by which two of these are told apart
 * @param conduit the line
 * @param loss what the model says of a flow from an inlet
 */
record LossElement(Object model, Conduit conduit, BiFunction<MassFlow, AirState, LineLoss> loss)
    implements FlowElement {

  private static final int DOUBLINGS = 200;

  private LineLoss ask(double flow, double pascals, double kelvins, double viscosity) {
    return loss.apply(
        MassFlow.ofKilogramsPerSecond(flow),
        AirState.of(AbsolutePressure.ofPascals(pascals), Temperature.ofKelvins(kelvins))
            .withViscosity(DynamicViscosity.ofPascalSeconds(viscosity)));
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    return ask(flow, pascals, kelvins, viscosity)
        .fold(flowing -> flowing.outlet().pressure().pascals(), choked -> Double.NaN);
  }

  @Override
  public double outletKelvins(double flow, double pascals, double kelvins, double viscosity) {
    return ask(flow, pascals, kelvins, viscosity)
        .fold(flowing -> flowing.outlet().temperature().kelvins(), choked -> Double.NaN);
  }

  /** What the model itself says, asked from a flow that no pipe passes: as much mass as fills the bore at p1/√(R T). */
  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    double flow =
        conduit.area().squareMetres() * pascals / Math.sqrt(AirState.GAS_CONSTANT * kelvins);
    for (int i = 0; i < DOUBLINGS; i++) {
      double largest = ask(flow, pascals, kelvins, viscosity)
          .fold(flowing -> Double.NaN, choked -> choked.largest().kilogramsPerSecond());
      if (!Double.isNaN(largest)) {
        return largest;
      }
      flow *= 2.0; // a model that does not know choking
    }
    return Double.POSITIVE_INFINITY;
  }

  /** Not told by the model; taken where friction usually jumps. */
  @Override
  public double nextJump(double above, double viscosity) {
    return PipeElement.nextJump(FrictionLaw.COLEBROOK, above, conduit.bore().metres(), viscosity);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LossElement that
        && model.equals(that.model)
        && conduit.equals(that.conduit);
  }

  @Override
  public int hashCode() {
    return 31 * model.hashCode() + conduit.hashCode();
  }

  /** {@return the model and the line} */
  @Override
  public String toString() {
    return model + " along " + conduit;
  }
}
