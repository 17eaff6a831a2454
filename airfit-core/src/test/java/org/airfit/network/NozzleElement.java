package org.airfit.network;

import org.airfit.flow.FlowElement;

/**
 * A hole without losses behind it, by the textbook's flow function, written anew: ṁ = Cd A p1 ψ/√(R T1), ψ from isentropic
 * flow. Only for tests.
 */
record NozzleElement(double effectiveArea) implements FlowElement {

  private static final double R = 287.05287;
  private static final double K = 1.4;
  private static final double CRITICAL = Math.pow(2.0 / (K + 1.0), K / (K - 1.0));

  private static double psi(double ratio) {
    double r = Math.max(ratio, CRITICAL);
    return Math.sqrt(2.0 * K / (K - 1.0) * (Math.pow(r, 2.0 / K) - Math.pow(r, (K + 1.0) / K)));
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    double wanted = flow * Math.sqrt(R * kelvins) / (effectiveArea * pascals);
    if (wanted > psi(CRITICAL)) {
      return Double.NaN;
    }
    double low = CRITICAL;
    double high = 1.0;
    for (int i = 0; i < 60; i++) {
      double middle = 0.5 * (low + high);
      if (psi(middle) > wanted) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high) * pascals;
  }

  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    return effectiveArea * pascals * psi(CRITICAL) / Math.sqrt(R * kelvins);
  }
}
