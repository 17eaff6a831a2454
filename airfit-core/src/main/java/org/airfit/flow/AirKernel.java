package org.airfit.flow;

/**
 * What a line or a part makes of a flow of air, on plain doubles in SI.
 *
 * <p>The door through which a floor above reaches the kernels of those below: a run is solved far oftener than it is looked at, and an object for every number would
 * cost more than the numbers. The public types of those floors use the same kernels. Callers validate.
 */
public interface AirKernel {

  /** Where the absolute pressure [Pa] of the air stands. */
  int PASCALS = 0;

  /** Where its temperature [K] stands. */
  int KELVINS = 1;

  /** Where its viscosity [Pa·s] stands. */
  int VISCOSITY = 2;

  /** How many numbers tell the air. */
  int SIZE = 3;

  /**
   * Leads a flow through.
   *
   * @param massFlow the flow [kg/s], at least 0
   * @param air the air in front, and the air behind when this returns true; untouched otherwise
   * @return whether the flow passes and leaves a pressure above 0
   */
  boolean pass(double massFlow, double[] air);

  /**
   * Until runs and networks ask elements themselves.
   *
   * @param element the element
   * @return the same as a kernel
   */
  static AirKernel of(FlowElement element) {
    return (flow, air) -> {
      double outlet = element.outlet(flow, air[PASCALS], air[KELVINS], air[VISCOSITY]);
      if (Double.isNaN(outlet)) {
        return false;
      }
      air[KELVINS] = element.outletKelvins(flow, air[PASCALS], air[KELVINS], air[VISCOSITY]);
      air[PASCALS] = outlet;
      return true;
    };
  }
}
