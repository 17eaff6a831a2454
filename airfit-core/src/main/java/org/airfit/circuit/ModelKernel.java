package org.airfit.circuit;

import org.airfit.air.AirState;
import org.airfit.internal.AirKernel;
import org.airfit.line.Conduit;
import org.airfit.line.LineLoss;
import org.airfit.line.LossModel;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;

/** A line by a model that has no kernel of its own, such as a handbook's formula: asked by way of its objects. */
record ModelKernel(Conduit conduit, LossModel model) implements AirKernel {

  @Override
  public boolean pass(double massFlow, double[] air) {
    AirState inlet = AirState.of(
            AbsolutePressure.ofPascals(air[PASCALS]), Temperature.ofKelvins(air[KELVINS]))
        .withViscosity(DynamicViscosity.ofPascalSeconds(air[VISCOSITY]));
    if (model.loss(conduit, MassFlow.ofKilogramsPerSecond(massFlow), inlet)
        instanceof LineLoss.Flowing flowing) {
      RunKernel.put(flowing.outlet(), air);
      return true;
    }
    return false;
  }
}
