package org.airfit.line;

import org.airfit.air.AirState;
import org.airfit.flow.AirKernel;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;

/**
 * A line by a model that has no kernel of its own, such as a handbook's formula: asked by way of its objects.
 *
 * @param conduit the line
 * @param model the equation of its loss
 */
public record ModelElement(Conduit conduit, LossModel model) implements AirKernel {

  @Override
  public boolean pass(double massFlow, double[] air) {
    AirState inlet = AirState.of(
            AbsolutePressure.ofPascals(air[PASCALS]), Temperature.ofKelvins(air[KELVINS]))
        .withViscosity(DynamicViscosity.ofPascalSeconds(air[VISCOSITY]));
    if (model.loss(conduit, MassFlow.ofKilogramsPerSecond(massFlow), inlet)
        instanceof LineLoss.Flowing flowing) {
      air[PASCALS] = flowing.outlet().pressure().pascals();
      air[KELVINS] = flowing.outlet().temperature().kelvins();
      air[VISCOSITY] = flowing.outlet().viscosity().pascalSeconds();
      return true;
    }
    return false;
  }
}
