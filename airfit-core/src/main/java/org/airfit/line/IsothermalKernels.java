package org.airfit.line;

/**
 * Isothermal flow of an ideal gas with friction: plain doubles in SI, no checks, no allocation. Callers validate.
 *
 * <pre>
 *   p1² − p2² = G² R T (k + 2 ln(p1/p2)),  k = λ L/D + ΣK,  G = ṁ/A
 * </pre>
 *
 * <p>With a = G² R T/p1² and u = 2 ln(p1/p2) this is 1 − e⁻ᵘ = a (k + u). The physical root is the smaller one, u ≤ −ln a; at
 * u = −ln a the flow chokes.
 */
final class IsothermalKernels {

  private static final int MAX_ITERATIONS = 400;

  private IsothermalKernels() {}

  /** a = G² R T/p1² [-]. */
  static double parameter(double massFlow, double area, double rt, double p1) {
    double g = massFlow / area;
    return g * g * rt / (p1 * p1);
  }

  /** The largest k through which a flow of parameter {@code a} gets: 1/a − 1 + ln a. Not above 0 where a ≥ 1. */
  static double largestResistance(double a) {
    return a >= 1.0 ? 0.0 : 1.0 / a - 1.0 + Math.log(a);
  }

  /**
   * u = 2 ln(p1/p2), for k not above {@link #largestResistance}. The function 1 − e⁻ᵘ − a (k + u) is concave and starts below zero, so
   * Newton from 0 climbs to the smaller root and never passes it.
   */
  static double logSquaredRatio(double a, double k) {
    double u = 0.0;
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      double value = -Math.expm1(-u) - a * (k + u);
      double slope = Math.exp(-u) - a;
      if (!(slope > 0.0)) {
        break;
      }
      double next = u - value / slope;
      if (!(next > u)) {
        break;
      }
      u = next;
    }
    return Math.min(u, -Math.log(a));
  }
}
