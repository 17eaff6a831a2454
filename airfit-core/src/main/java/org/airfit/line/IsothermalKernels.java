package org.airfit.line;

/**
 * Isothermal flow of an ideal gas with friction: plain doubles in SI, no checks, no allocation. Callers validate.
 *
 * <pre>
 *   p1² − p2² = G² R T (k + 2 ln(p1/p2)),  k = λ L/D + ΣK,  G = ṁ/A
 * </pre>
 *
 * <p>With a = G² R T/p1² and v = 1 − (p2/p1)² this is v = a (k − ln(1−v)); with u = 2 ln(p1/p2), which keeps the
 * digits where little is left of the pressure, 1 − e⁻ᵘ = a (k + u). The physical root is the smaller one, v ≤ 1 − a;
 * at v = 1 − a the flow chokes.
 */
final class IsothermalKernels {

  private static final int MAX_ITERATIONS = 400;

  /** A step so short that the terms of {@link #squaresLost} leave nothing. */
  private static final double NEAR = 1.0e-4;

  private IsothermalKernels() {}

  /** a = G² R T/p1² [-]. */
  static double parameter(double massFlow, double area, double rt, double p1) {
    double flux = massFlow / area; // G; what hangs on it need not wait for p1
    return flux * flux * rt / (p1 * p1);
  }

  /** The largest k through which a flow of parameter {@code a} gets: 1/a − 1 + ln a. Not above 0 where a ≥ 1. */
  static double largestResistance(double a) {
    return a >= 1.0 ? 0.0 : 1.0 / a - 1.0 + Math.log(a);
  }

  /** Whether a flow of parameter {@code a} does not get through k. */
  static boolean chokes(double a, double k) {
    // ln y ≤ 2 (√y − 1) spares the logarithm of y = 1/a wherever choking is far away, and
    // (1 + √k)² ≤ 2 (1 + k) the root wherever it is further
    if (2.0 * a * (1.0 + k) < 1.0) {
      return false;
    }
    double root = 1.0 + Math.sqrt(k);
    return !(a * root * root < 1.0) && (a >= 1.0 || k > largestResistance(a));
  }

  /** (p1 − p2)/p1, for k not above {@link #largestResistance}. */
  static double dropShare(double a, double k) {
    double feedback = a / (1.0 - a);
    double least = feedback * k;
    if (least < 0.5) {
      double v = squaresLost(a, k, feedback, least);
      return v / (1.0 + Math.sqrt(1.0 - v));
    }
    return -Math.expm1(-0.5 * logSquaredRatio(a, k));
  }

  /** p2/p1, for k not above {@link #largestResistance}: without the division that keeps the digits of a small drop. */
  static double leftShare(double a, double k) {
    double feedback = a / (1.0 - a);
    double least = feedback * k;
    return least < 0.5
        ? Math.sqrt(1.0 - squaresLost(a, k, feedback, least))
        : 1.0 + Math.expm1(-0.5 * logSquaredRatio(a, k));
  }

  /**
   * v = 1 − (p2/p1)² by one logarithm, wherever choking is not near.
   *
   * <p>As −ln(1−v) = v + v²/2 + v³/3 + …, the root lies above a k/(1−a), and above what three more terms there make of
   * it, which is the guess. What is missing: with rest = 1 − v and s = rest − a, let the root lie at v + rest e. Then
   *
   * <pre>
   *   e − q (e²/2 + e³/3 + …) = w,   q = a/s,   w = (a (k − ln rest) − v)/s
   * </pre>
   *
   * <p>and the series turned round gives e in powers of w up to w³; the next term over e is below (w rest/s)³, which is
   * 10⁻¹² where it is largest, and e is 10⁻⁴ there.
   */
  private static double squaresLost(double a, double k, double feedback, double least) {
    double square = least * least;
    double v =
        least + feedback * square * ((1.0 / 2.0 + least * (1.0 / 3.0)) + square * (1.0 / 4.0));
    double rest = 1.0 - v;
    double r = 1.0 / (rest - a);
    // from k = 1 on, what 1 − v rounds off is at most half of the last digit of k
    double log = k >= 1.0 ? Math.log(rest) : logOfRest(v);
    double w = (a * (k - log) - v) * r;
    if (!(rest > a && Math.abs(w * rest * r) <= NEAR)) {
      return squaresLostByNewton(a, k, v);
    }
    double q = a * r;
    double c3 = 1.0 / 3.0 + q * (1.0 / 2.0);
    return v + rest * w * (1.0 + q * w * (1.0 / 2.0 + w * c3));
  }

  /**
   * v = 1 − (p2/p1)². The function v − a (k − ln(1−v)) is concave and not above zero at the guess: Newton from there
   * climbs to the smaller root and never passes it.
   */
  private static double squaresLostByNewton(double a, double k, double guess) {
    double v = guess;
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      double rest = 1.0 - v;
      double slope = 1.0 - a / rest;
      double step = (a * (k - logOfRest(v)) - v) / slope;
      if (!(slope > 0.0 && step > 0.0)) {
        break;
      }
      v += step;
      // what Newton leaves is half of this; below the last digit there is nothing left to do
      if (step * step * a <= 1.0e-17 * v * rest * rest * slope) {
        break;
      }
    }
    return Math.min(v, 1.0 - a);
  }

  /**
   * ln(1 − z) for z in [0, 1), with all digits where z is small: a series below 0.01, whose next term is 10⁻¹⁷ of it.
   */
  static double logOfRest(double z) {
    if (z >= 0.01) {
      return Math.log(1.0 - z);
    }
    double tail = 1.0 / 7.0 + z / 8.0;
    tail = 1.0 / 6.0 + z * tail;
    tail = 1.0 / 5.0 + z * tail;
    tail = 1.0 / 4.0 + z * tail;
    tail = 1.0 / 3.0 + z * tail;
    tail = 1.0 / 2.0 + z * tail;
    return -z * (1.0 + z * tail);
  }

  /**
   * u = 2 ln(p1/p2), for k not above {@link #largestResistance}. The function 1 − e⁻ᵘ − a (k + u) is concave and
   * starts below zero, so Newton from 0 climbs to the smaller root and never passes it.
   */
  private static double logSquaredRatio(double a, double k) {
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
