package org.airfit.line;

import org.airfit.air.AirState;

/**
 * The empirical formulas whose constants hide American units: plain doubles in SI, no checks, no allocation. Callers
 * validate.
 */
final class FormulaKernels {

  private static final double FOOT = 0.3048;
  private static final double INCH = 0.0254;
  private static final double POUND = 0.453_592_37;
  private static final double PSI = POUND * 9.806_65 / (INCH * INCH);

  private FormulaKernels() {}

  static double square(double x) {
    return x * x;
  }

  /** Harris: Δp [Pa] from q [m³/s] of free air; the constant wants psi, ft, ft³/s, in and p1 over 14.7 psia. */
  static double harris(double length, double bore, double q, double p1) {
    double r = p1 / (14.7 * PSI);
    return PSI
        * 0.1025
        * (length / FOOT)
        * square(q / (FOOT * FOOT * FOOT))
        / (r * Math.pow(bore / INCH, 5.31));
  }

  /** R T of air as psi per lb/ft³: pressure over density. */
  static double psiPerDensity(double t) {
    return AirState.GAS_CONSTANT * t * POUND / (FOOT * FOOT * FOOT) / PSI;
  }

  /**
   * Unwin: p1² − p2² [Pa²] = 2 R T Δp ρ, from Δp = 0.04839 K (1 + 3.6/d) w² L/(ρ d⁵) at mean density ρ = (p1 + p2)/(2
   * R T); the constant wants psi, in, lb/min, ft, lb/ft³.
   */
  static double unwin(double k, double length, double bore, double flow, double t) {
    double d = bore / INCH;
    double dropTimesDensity = 0.04839
        * k
        * (1.0 + 3.6 / d)
        * square(flow / POUND * 60.0)
        * (length / FOOT)
        / Math.pow(d, 5.0);
    return 2.0 * psiPerDensity(t) * dropTimesDensity * PSI * PSI;
  }

  /** Spitzglass, low pressure: Δp [Pa] from q [m³/s]; the constant wants inches of water, ft³/h, ft, in. */
  static double spitzglassLow(double length, double bore, double q) {
    double d = bore / INCH;
    double inchesOfWater = length
        / FOOT
        * (1.0 + 3.6 / d + 0.03 * d)
        * square(3600.0 * q / (FOOT * FOOT * FOOT) / 3550.0)
        / Math.pow(d, 5.0);
    return inchesOfWater * 1000.0 * 9.806_65 * INCH;
  }
}
