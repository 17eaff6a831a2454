package org.airfit.run;

import org.airfit.flow.FlowElement;

/**
 * An element that behaves at a flow as another does at a larger one: worn or dirty.
 *
 * @param element the element when new
 * @param factor the factor on the flow [-], at least 1
 */
record WornElement(FlowElement element, double factor) implements FlowElement {

  /** The element at a flow larger by a factor; as it is where the factor is 1, worn once where it is worn already. */
  static FlowElement of(FlowElement element, double factor) {
    if (factor == 1.0) {
      return element;
    }
    return element instanceof WornElement worn
        ? new WornElement(worn.element, worn.factor * factor)
        : new WornElement(element, factor);
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    return element.outlet(factor * flow, pascals, kelvins, viscosity);
  }

  @Override
  public double outletKelvins(double flow, double pascals, double kelvins, double viscosity) {
    return element.outletKelvins(factor * flow, pascals, kelvins, viscosity);
  }

  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    return element.largest(pascals, kelvins, viscosity) / factor;
  }

  @Override
  public double nextJump(double above, double viscosity) {
    return element.nextJump(factor * above, viscosity) / factor;
  }

  @Override
  public double slope(double flow, double pascals, double kelvins, double viscosity) {
    return factor * element.slope(factor * flow, pascals, kelvins, viscosity);
  }
}
