package org.airfit.line;

import org.airfit.air.AirState;
import org.airfit.quantity.MassFlow;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/** A model that counts how often it is asked, and notes whether Re 2300 or choking came near. */
final class CountingModel implements LossModel {
  private final LossModel model;
  int count;
  boolean nearJump;

  CountingModel(LossModel model) {
    this.model = model;
  }

  @Override
  public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
    count++;
    LineLoss loss = model.loss(conduit, massFlow, inlet);
    double reynolds = PipeElement.reynolds(
        massFlow.kilogramsPerSecond(),
        conduit.bore().metres(),
        inlet.viscosity().pascalSeconds());
    // a search that starts from a usual friction factor comes within a factor of three of its jump
    boolean nearTransition = reynolds > 2300.0 / 3.0 && reynolds < 3.0 * 2300.0;
    nearJump |= nearTransition;
    nearJump |= loss instanceof LineLoss.Choked;
    if (loss instanceof LineLoss.Flowing flowing) {
      nearJump |= flowing.outletMach() > 0.5
          || flowing.outlet().pressure().pascals()
              < 0.3 * flowing.inlet().pressure().pascals();
    }
    return loss;
  }

  @Override
  public Working working(LineLoss loss, UnitSystem units) {
    return model.working(loss, units);
  }

  @Override
  public String title() {
    return model.title();
  }

  @Override
  public String validity() {
    return model.validity();
  }

  @Override
  public String fitBasis() {
    return model.fitBasis();
  }

  @Override
  public String bias() {
    return model.bias();
  }

  @Override
  public Source source() {
    return model.source();
  }
}
