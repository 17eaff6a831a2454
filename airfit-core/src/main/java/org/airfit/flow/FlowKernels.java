package org.airfit.flow;

/** Numeric kernels of ISO 6358: plain doubles in SI, no checks, no allocation. Callers validate. */
final class FlowKernels {

  /** Reference temperature of ISO 8778 [K]. */
  static final double T0 = 293.15;

  /** 1 − y² of a flow that passes whatever the last digits of the choked flow are [-]: our choice. */
  private static final double NEXT_TO_CHOKING = 0.01;

  private FlowKernels() {}

  /**
   * Choked mass flow [kg/s]: C ρ0 p1 √(T0/T1).
   *
   * @param c sonic conductance [m³/(s Pa)]
   * @param rho0 density of the reference state [kg/m³]
   * @param p1 pressure in front [Pa]
   * @param t1 temperature in front [K]
   * @return the flow [kg/s]
   */
  static double choked(double c, double rho0, double p1, double t1) {
    return c * rho0 * p1 * Math.sqrt(T0 / t1);
  }

  /**
   * Mass flow over choked mass flow for p2/p1 above b: [1 − ((p2/p1 − b)/(1 − Δpc/p1 − b))²]^m.
   *
   * @param b critical pressure ratio [-]
   * @param m subsonic index [-]
   * @param crackingRatio Δpc/p1 [-]
   * @param ratio p2/p1 [-]
   * @return the share of the choked flow [-]
   */
  static double subsonicShare(double b, double m, double crackingRatio, double ratio) {
    double z = (ratio - b) / (1.0 - crackingRatio - b);
    return Math.pow(1.0 - z * z, m);
  }

  /**
   * Drop over inlet pressure for a share y of the choked flow: the inverse of {@link #subsonicShare}, written so that
   * no digits are lost where y is small.
   *
   * @param b critical pressure ratio [-]
   * @param m subsonic index [-]
   * @param crackingRatio Δpc/p1 [-]
   * @param share y [-], in [0, 1]
   * @return (p1 − p2)/p1 [-]
   */
  static double dropRatio(double b, double m, double crackingRatio, double share) {
    // the usual index in a tenth of the time of a power
    double z = m == 0.5 ? share * share : Math.pow(share, 1.0 / m);
    return crackingRatio + (1.0 - crackingRatio - b) * z / (1.0 + Math.sqrt(1.0 - z));
  }

  /**
   * Drop for a share of the choked flow.
   *
   * @param b critical pressure ratio [-]
   * @param m subsonic index [-]
   * @param cracking cracking pressure Δpc [Pa]
   * @param share the share [-]
   * @param p1 pressure in front [Pa]
   * @return the drop [Pa], or -1 where the part does not pass it
   */
  static double drop(double b, double m, double cracking, double share, double p1) {
    double crackingRatio = cracking / p1;
    if (share > 1.0 || crackingRatio >= 1.0) {
      return -1.0;
    }
    return chokesAsItOpens(b, crackingRatio)
        ? cracking
        : p1 * dropRatio(b, m, crackingRatio, share);
  }

  /**
   * Pressure behind for m = ½ and no cracking pressure, away from choking: p1 less the {@link #drop}, without the
   * divisions that keep the digits of a small drop, as beside p1 they are lost. With w = p1 (1−b) and u = w y, which
   * hangs on the flow alone, p2 = p1 − (w − √(w² − u²)).
   *
   * @param whole w [Pa]
   * @param squareOfPart u² [Pa²]
   * @param p1 pressure in front [Pa]
   * @return the pressure [Pa]; NaN where the flow chokes, or nearly does
   */
  static double outletFarFromChoking(double whole, double squareOfPart, double p1) {
    double square = whole * whole;
    double rest = square - squareOfPart;
    return rest > NEXT_TO_CHOKING * square ? p1 - (whole - Math.sqrt(rest)) : Double.NaN;
  }

  /**
   * Whether a part opens only beyond its critical ratio, and so is choked as soon as it is open.
   *
   * @param b critical pressure ratio [-]
   * @param crackingRatio Δpc/p1 [-]
   * @return whether it is
   */
  static boolean chokesAsItOpens(double b, double crackingRatio) {
    return crackingRatio >= 1.0 - b;
  }
}
