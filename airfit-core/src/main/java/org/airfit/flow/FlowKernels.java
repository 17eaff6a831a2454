package org.airfit.flow;

/** Numeric kernels of ISO 6358: plain doubles in SI, no checks, no allocation. Callers validate. */
final class FlowKernels {

  /** Reference temperature of ISO 8778 [K]. */
  static final double T0 = 293.15;

  private FlowKernels() {}

  /** Choked mass flow [kg/s]: C ρ0 p1 √(T0/T1). */
  static double choked(double c, double rho0, double p1, double t1) {
    return c * rho0 * p1 * Math.sqrt(T0 / t1);
  }

  /** Mass flow over choked mass flow for p2/p1 above b: [1 − ((p2/p1 − b)/(1 − Δpc/p1 − b))²]^m. */
  static double subsonicShare(double b, double m, double crackingRatio, double ratio) {
    double z = (ratio - b) / (1.0 - crackingRatio - b);
    return Math.pow(1.0 - z * z, m);
  }

  /**
   * Drop over inlet pressure for a share y of the choked flow: the inverse of {@link #subsonicShare}, written so that no digits are
   * lost where y is small.
   */
  static double dropRatio(double b, double m, double crackingRatio, double share) {
    double z = Math.pow(share, 1.0 / m);
    return crackingRatio + (1.0 - crackingRatio - b) * z / (1.0 + Math.sqrt(1.0 - z));
  }
}
