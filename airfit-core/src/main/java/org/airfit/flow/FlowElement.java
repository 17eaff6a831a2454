package org.airfit.flow;

import java.util.function.DoubleUnaryOperator;

/**
 * Whatever air goes through, on plain doubles in SI: pipe, hose, coupling, filter, valve, or several of them in a row.
 *
 * <p>A run, a network and a selection ask only these questions. Absolute pressure [Pa], temperature [K], viscosity
 * [Pa·s], mass flow [kg/s]. The caller passes a flow of at least 0 and a pressure, temperature and viscosity above 0.
 *
 * <p>Two rules hold for every implementation, and all searches rest on them: the outlet pressure falls or stays as the
 * flow rises, and it rises or stays as the inlet pressure rises; NaN counts as below every pressure. Implementations
 * are immutable, allocate nothing in these methods where they can, and compare by value.
 */
public interface FlowElement {

  /**
   * Finds the pressure behind.
   *
   * @param flow the flow [kg/s], at least 0
   * @param pascals the pressure in front [Pa]
   * @param kelvins the temperature in front [K]
   * @param viscosity the viscosity in front [Pa·s]
   * @return the pressure behind [Pa], above 0; NaN where the flow does not pass. Without flow it is the pressure in
   *     front, less a cracking pressure
   */
  double outlet(double flow, double pascals, double kelvins, double viscosity);

  /**
   * Fixes the flow, for whoever asks for many pressures in front: what hangs on the flow alone is computed once.
   *
   * @param flow the flow [kg/s], at least 0
   * @param kelvins the temperature in front [K]
   * @param viscosity the viscosity in front [Pa·s]
   * @return the pressure behind [Pa] by that in front [Pa], to the last digit that of {@link #outlet}
   */
  default DoubleUnaryOperator outletByInlet(double flow, double kelvins, double viscosity) {
    return pascals -> outlet(flow, pascals, kelvins, viscosity);
  }

  /**
   * Finds the temperature behind of a flow that passes. Most elements keep it; an adiabatic line cools the air.
   *
   * @param flow the flow [kg/s], at most the largest
   * @param pascals the pressure in front [Pa]
   * @param kelvins the temperature in front [K]
   * @param viscosity the viscosity in front [Pa·s]
   * @return the temperature behind [K]; without meaning, and possibly NaN, where the flow does not pass
   */
  default double outletKelvins(double flow, double pascals, double kelvins, double viscosity) {
    return kelvins;
  }

  /**
   * Finds the largest flow that passes, whatever lies behind.
   *
   * <p>A flow below it by more than the tolerance of a search (1e-12 of it) passes, a flow above it by more does not.
   *
   * @param pascals the pressure in front [Pa]
   * @param kelvins the temperature in front [K]
   * @param viscosity the viscosity in front [Pa·s]
   * @return the flow [kg/s]; 0 where nothing passes, infinite where nothing limits it (a line without length and
   *     fittings in a model that does not know choking)
   */
  double largest(double pascals, double kelvins, double viscosity);

  /**
   * Finds the least flow above a flow at which the outlet pressure jumps, as it does at Re 2300.
   *
   * @param above the flow above which to look [kg/s]
   * @param viscosity the viscosity in front [Pa·s]
   * @return the flow [kg/s], itself already behind the jump; infinite where there is none
   */
  default double nextJump(double above, double viscosity) {
    return Double.POSITIVE_INFINITY;
  }

  /**
   * Finds how fast the outlet pressure falls with the flow: d outlet / d flow, at most 0.
   *
   * <p>At a jump and at the largest flow it is one-sided. Found from a difference, unless an implementation knows
   * better.
   *
   * @param flow the flow [kg/s], one that passes
   * @param pascals the pressure in front [Pa]
   * @param kelvins the temperature in front [K]
   * @param viscosity the viscosity in front [Pa·s]
   * @return the slope [Pa/(kg/s)]; NaN where the flow does not pass
   */
  default double slope(double flow, double pascals, double kelvins, double viscosity) {
    // the error of a central difference goes with the square of the step, what rounding adds with
    // its inverse
    double step = flow > 0.0 ? 1.0e-4 * flow : 1.0e-6 * largest(pascals, kelvins, viscosity);
    if (!(step < Double.POSITIVE_INFINITY)) {
      return 0.0;
    }
    double low = Math.max(0.0, flow - step);
    double high = flow + step;
    double jump = nextJump(low, viscosity);
    if (jump <= flow) {
      low = flow;
    } else if (jump <= high) {
      high = flow;
    }
    double atHigh = outlet(high, pascals, kelvins, viscosity);
    if (Double.isNaN(atHigh)) {
      high = flow;
      atHigh = outlet(high, pascals, kelvins, viscosity);
    }
    return high > low
        ? Math.min(0.0, (atHigh - outlet(low, pascals, kelvins, viscosity)) / (high - low))
        : Double.NaN;
  }
}
