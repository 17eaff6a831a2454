package org.airfit.line;

import org.airfit.air.AirState;
import org.airfit.quantity.MassFlow;
import org.airfit.source.Source;

/** A way to say what pressure a flow loses along a conduit. */
public interface LossModel {

  /**
   * Obtains the isothermal model with exact Colebrook friction: the one to use where nothing else is asked for.
   *
   * @return the model
   */
  static LossModel isothermal() {
    return IsothermalModel.MODEL;
  }

  /**
   * Finds the loss along a conduit.
   *
   * @param conduit what the air runs through
   * @param massFlow the flow; 0 is allowed and loses nothing
   * @param inlet the air as it enters
   * @return the loss, or that the conduit chokes
   */
  LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet);

  /** {@return what the model is called} */
  String title();

  /** {@return what the model holds for, in plain words} */
  String validity();

  /** {@return where the model stands} */
  Source source();
}
