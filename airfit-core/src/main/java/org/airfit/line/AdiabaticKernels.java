package org.airfit.line;

import org.airfit.air.AirState;

/**
 * Adiabatic flow of an ideal gas with friction from a static inlet state: plain doubles in SI, no checks, no
 * allocation. Callers validate.
 *
 * <pre>
 *   k = λL/D + ΣK = (γ+1)/(2γ) ( g(y1) − g(y2) ),  g(y) = y − ln(1+y),  y = 2/(γ+1) (1/M² − 1)
 * </pre>
 *
 * <p>With a = G² R T1/p1² the inlet has 1/M1² = γ/a. The unknown is d = y1 − y2, so that a small loss keeps its
 * digits. The flow chokes at y2 = 0.
 */
final class AdiabaticKernels {

  private static final double G = AirState.HEAT_CAPACITY_RATIO;
  private static final int MAX_ITERATIONS = 400;

  private AdiabaticKernels() {}

  private static double y(double a) {
    return 2.0 / (G + 1.0) * (G / a - 1.0);
  }

  /** z = 1/(1 + y1), 1 where the inlet is at Mach 1. */
  static double inverseOfOneAndY(double a) {
    return 1.0 / (1.0 + y(a));
  }

  /** w = 2γ/(γ+1) k, the excess g(y1) − g(y2) that a resistance takes. */
  static double wanted(double k) {
    return 2.0 * G / (G + 1.0) * k;
  }

  /**
   * The largest k through which a flow of parameter {@code a} gets. Not above 0 where the inlet is at Mach 1 or more.
   */
  static double largestResistance(double a) {
    double y = y(a);
    return y <= 0.0 ? 0.0 : 0.5 * (G + 1.0) / G * (y - Math.log1p(y));
  }

  /** Whether a flow of parameter {@code a} does not get through k. */
  static boolean chokes(double a, double k) {
    return a >= G || k > largestResistance(a);
  }

  /**
   * d = y1 − y2 for k not above {@link #largestResistance}: d + ln(1 − d/(1+y1)) = 2γ/(γ+1) k. Concave and, as
   * ln(1−z) ≤ −z, not above zero at d = 2γ/(γ+1) k (1+y1)/y1, so Newton from there climbs to the root and never
   * passes it.
   */
  static double difference(double a, double k) {
    double y1 = y(a);
    double wanted = wanted(k);
    double d = Math.min(y1, wanted * (1.0 + 1.0 / y1)); // neither product leaves the range
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      double left = 1.0 + y1 - d;
      double slope = 1.0 - 1.0 / left;
      double step = (wanted - d - IsothermalKernels.logOfRest(d / (1.0 + y1))) / slope;
      if (!(slope > 0.0 && step > 0.0)) {
        break;
      }
      d = Math.min(y1, d + step);
      // what Newton leaves is half of this; below the last digit there is nothing left to do
      if (step * step <= 1.0e-17 * d * left * left * slope) {
        break;
      }
    }
    return d;
  }

  /** M1²/M2² = 1 − A with A = (γ+1)/2 d M1². */
  private static double squaresLost(double a, double d) {
    return 0.5 * (G + 1.0) * d * a / G;
  }

  /** T1/T2 = 1 + B, from T (2 + (γ−1) M²) being the same at both ends. */
  private static double cooling(double a, double d) {
    double m1 = a / G;
    double m2 = 1.0 / (G / a - 0.5 * (G + 1.0) * d);
    double gained = 0.5 * (G + 1.0) * d * m1 * m2; // M2² − M1²
    return (G - 1.0) * gained / (2.0 + (G - 1.0) * m1);
  }

  /** T2/T1 from d. */
  static double temperatureRatio(double a, double d) {
    return 1.0 / (1.0 + cooling(a, d));
  }

  /** (p1 − p2)/p1 from d: (p2/p1)² = M1²/M2² T2/T1 = (1−A)/(1+B) = 1 − (A+B)/(1+B). */
  static double dropShare(double a, double d) {
    double lost = squaresLost(a, d);
    double cooling = cooling(a, d);
    return (lost + cooling) / (1.0 + cooling) / (1.0 + Math.sqrt((1.0 - lost) / (1.0 + cooling)));
  }
}
