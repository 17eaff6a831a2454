package org.airfit.flow;

import org.airfit.air.AirState;

/**
 * Numeric kernels of one-dimensional gas flow at γ = 1.4: plain doubles, no checks, no allocation. Callers validate.
 */
final class GasKernels {

  static final double G = AirState.HEAT_CAPACITY_RATIO;

  /** ψ of a choked nozzle [-], 0.684731: ṁ = ψ A p0 / √(R T0). */
  static final double CHOKED = massFlowFunction(1.0);

  private static final int MAX_ITERATIONS = 200;

  private GasKernels() {}

  /** T/T0 = 1 / (1 + (γ−1)/2 M²). */
  static double temperatureRatio(double m) {
    return 1.0 / (1.0 + 0.5 * (G - 1.0) * m * m);
  }

  /** ψ = ṁ √(R T0) / (A p0) = √γ M (T/T0)^((γ+1)/(2(γ−1))). */
  static double massFlowFunction(double m) {
    return Math.sqrt(G) * m * Math.pow(temperatureRatio(m), 0.5 * (G + 1.0) / (G - 1.0));
  }

  /** M from p/p0 = x: M² = 2/(γ−1) (x^((1−γ)/γ) − 1), written so that no digits are lost where x is near 1. */
  static double machAtPressureRatio(double x) {
    return Math.sqrt(2.0 / (G - 1.0) * Math.expm1((1.0 - G) / G * Math.log(x)));
  }

  /** p/p0 from T/T0. */
  static double pressureRatio(double temperatureRatio) {
    return Math.pow(temperatureRatio, G / (G - 1.0));
  }

  /** 1 − p/p0, with all its digits where little is lost. */
  static double pressureLost(double m) {
    return -Math.expm1(G / (1.0 - G) * Math.log1p(0.5 * (G - 1.0) * m * m));
  }

  /**
   * The subsonic M at which ψ has a value. With d ln ψ/d ln M = (1 − M²) T/T0, the logarithm of ψ is concave in that
   * of M, and M = ψ/√γ lies below the root: Newton climbs from there and never passes it.
   */
  static double subsonicMachAtMassFlowFunction(double psi) {
    double m = psi / Math.sqrt(G);
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      double slope = (1.0 - m) * (1.0 + m) * temperatureRatio(m);
      double step = Math.log(psi / massFlowFunction(m)) / slope;
      if (!(slope > 0.0 && step > 1.0e-17)) {
        break;
      }
      m = Math.min(1.0, m * Math.exp(step));
    }
    return m;
  }

  /**
   * y − ln(1 + y). Both friction functions are this one: λL/D = (γ+1)/(2γ) g(2/(γ+1) (1/M² − 1)) of adiabatic,
   * g(1/(γM²) − 1) of isothermal flow. A series where y is small and the difference would lose its digits.
   */
  static double excess(double y) {
    if (Math.abs(y) > 0.05) {
      return y - Math.log1p(y);
    }
    double sum = 0.0;
    double power = -y;
    for (int n = 2; n <= 14; n++) {
      power *= -y;
      sum += power / n;
    }
    return sum;
  }

  /**
   * The y ≥ 0 with {@link #excess} = k ≥ 0. The function is convex and the start lies above the root: Newton walks
   * down to it.
   */
  static double inverseExcess(double k) {
    double y = k + Math.sqrt(k * k + 2.0 * k);
    for (int i = 0; i < MAX_ITERATIONS && y > 0.0; i++) {
      double next = y - (excess(y) - k) * (1.0 + y) / y;
      if (!(next < y)) {
        break;
      }
      y = next;
    }
    return y;
  }
}
