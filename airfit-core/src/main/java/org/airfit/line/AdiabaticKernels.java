package org.airfit.line;

import org.airfit.air.AirState;

/**
 * Adiabatic flow of an ideal gas with friction from a static inlet state: plain doubles in SI, no checks, no allocation. Callers validate.
 *
 * <pre>
 *   k = λL/D + ΣK = (γ+1)/(2γ) ( g(y1) − g(y2) ),  g(y) = y − ln(1+y),  y = 2/(γ+1) (1/M² − 1)
 * </pre>
 *
 * <p>With a = G² R T1/p1² the inlet has 1/M1² = γ/a. The unknown is d = y1 − y2, so that a small loss keeps its digits. The flow chokes at
 * y2 = 0.
 */
final class AdiabaticKernels {

  private static final double G = AirState.HEAT_CAPACITY_RATIO;
  private static final int MAX_ITERATIONS = 400;

  private AdiabaticKernels() {}

  private static double y(double a) {
    return 2.0 / (G + 1.0) * (G / a - 1.0);
  }

  /** The largest k through which a flow of parameter {@code a} gets. Not above 0 where the inlet is at Mach 1 or more. */
  static double largestResistance(double a) {
    double y = y(a);
    return y <= 0.0 ? 0.0 : 0.5 * (G + 1.0) / G * (y - Math.log1p(y));
  }

  /**
   * d = y1 − y2 for k not above {@link #largestResistance}: d + ln(1 − d/(1+y1)) = 2γ/(γ+1) k. Concave and negative at 0, so Newton
   * from 0 climbs to the root and never passes it.
   */
  static double difference(double a, double k) {
    double y1 = y(a);
    double wanted = 2.0 * G / (G + 1.0) * k;
    double d = 0.0;
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      double value = d + Math.log1p(-d / (1.0 + y1)) - wanted;
      double slope = 1.0 - 1.0 / (1.0 + y1 - d);
      if (!(slope > 0.0)) {
        break;
      }
      double next = Math.min(y1, d - value / slope);
      if (!(next > d)) {
        break;
      }
      d = next;
    }
    return d;
  }

  /** M2², from 1/M2² = 1/M1² − (γ+1)/2 d. */
  private static double machSquared(double a, double d) {
    return 1.0 / (G / a - 0.5 * (G + 1.0) * d);
  }

  /** ln(T2/T1), from T (2 + (γ−1) M²) being the same at both ends. */
  private static double logTemperatureRatio(double a, double d) {
    double m1 = a / G;
    double m2 = machSquared(a, d);
    double gained = 0.5 * (G + 1.0) * d * m1 * m2; // M2² − M1²
    return -Math.log1p((G - 1.0) * gained / (2.0 + (G - 1.0) * m1));
  }

  /** T2/T1 from d. */
  static double temperatureRatio(double a, double d) {
    return Math.exp(logTemperatureRatio(a, d));
  }

  /** (p1 − p2)/p1 from d, by p2/p1 = M1/M2 √(T2/T1). */
  static double dropShare(double a, double d) {
    double lnMach = 0.5 * Math.log1p(-0.5 * (G + 1.0) * d * a / G);
    return -Math.expm1(lnMach + 0.5 * logTemperatureRatio(a, d));
  }
}
