package org.airfit.flow;

import org.airfit.air.AirState;
import org.airfit.internal.Digits;

/**
 * A well rounded entrance from a tank or header into a bore: air at rest in front, moving air behind, no loss.
 *
 * <p>The pressure and temperature behind are those of the moving air. See {@link IsentropicFlow}.
 */
final class EntranceElement implements FlowElement {

  private final double area;

  EntranceElement(double area) {
    this.area = area;
  }

  private double massFlowFunction(double flow, double pascals, double kelvins) {
    return flow * Math.sqrt(AirState.GAS_CONSTANT * kelvins) / (area * pascals);
  }

  /** T/T0 behind; NaN where the flow does not pass. */
  private double temperatureRatio(double flow, double pascals, double kelvins) {
    double psi = massFlowFunction(flow, pascals, kelvins);
    if (psi == 0.0) {
      return 1.0;
    }
    return psi > GasKernels.CHOKED
        ? Double.NaN
        : GasKernels.temperatureRatio(GasKernels.subsonicMachAtMassFlowFunction(psi));
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    return pascals * GasKernels.pressureRatio(temperatureRatio(flow, pascals, kelvins));
  }

  @Override
  public double outletKelvins(double flow, double pascals, double kelvins, double viscosity) {
    return kelvins * temperatureRatio(flow, pascals, kelvins);
  }

  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    return GasKernels.CHOKED * area * pascals / Math.sqrt(AirState.GAS_CONSTANT * kelvins);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof EntranceElement that && area == that.area;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(area);
  }

  /** {@return the entrance in SI} */
  @Override
  public String toString() {
    return "entrance of " + Digits.told(area) + " m²";
  }
}
