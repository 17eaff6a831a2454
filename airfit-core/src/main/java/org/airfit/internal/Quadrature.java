package org.airfit.internal;

import java.util.function.DoubleUnaryOperator;

/**
 * Integrals of smooth functions by Gauss and Legendre's rule of five points on equal panels.
 *
 * <p>Points and weights in closed form: DLMF 3.5(v). Nothing is allocated.
 */
public final class Quadrature {

  /** So many points of a panel are asked for, always in the same order. */
  static final int POINTS = 5;

  private static final double INNER = Math.sqrt(5.0 - 2.0 * Math.sqrt(10.0 / 7.0)) / 3.0;
  private static final double OUTER = Math.sqrt(5.0 + 2.0 * Math.sqrt(10.0 / 7.0)) / 3.0;
  private static final double AT_MIDDLE = 128.0 / 225.0;
  private static final double AT_INNER = (322.0 + 13.0 * Math.sqrt(70.0)) / 900.0;
  private static final double AT_OUTER = (322.0 - 13.0 * Math.sqrt(70.0)) / 900.0;

  /** The points above 0 of the rule of ten points on −1 … 1; each counts on both sides. Source: DLMF 3.5(v). */
  static final double[] TEN_POINTS = {
    0.14887433898163122,
    0.4333953941292472,
    0.6794095682990244,
    0.8650633666889845,
    0.9739065285171717
  };

  /** Their weights. */
  static final double[] TEN_WEIGHTS = {
    0.2955242247147528,
    0.2692667193099965,
    0.219086362515982,
    0.1494513491505804,
    0.06667134430868814
  };

  private Quadrature() {}

  /**
   * Integrates a function.
   *
   * @param function the function, smooth between the bounds
   * @param low the lower bound
   * @param high the upper bound
   * @param panels how many equal panels, at least 1
   * @return the integral; 0 for equal bounds
   */
  public static double integral(DoubleUnaryOperator function, double low, double high, int panels) {
    double half = 0.5 * (high - low) / panels;
    double sum = 0.0;
    for (int i = 0; i < panels; i++) {
      double middle = low + (2 * i + 1) * half;
      sum += AT_MIDDLE * function.applyAsDouble(middle)
          + AT_INNER
              * (function.applyAsDouble(middle - INNER * half)
                  + function.applyAsDouble(middle + INNER * half))
          + AT_OUTER
              * (function.applyAsDouble(middle - OUTER * half)
                  + function.applyAsDouble(middle + OUTER * half));
    }
    return half * sum;
  }
}
