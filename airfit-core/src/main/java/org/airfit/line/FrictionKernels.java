package org.airfit.line;

/** Numeric kernels of friction: plain doubles, no checks, no allocation. Callers validate. */
final class FrictionKernels {

  private static final int MAX_ITERATIONS = 50;
  private static final double TWO_OVER_LN10 = 2.0 / Math.log(10.0);

  private FrictionKernels() {}

  /** Darcy λ of laminar flow, after Hagen and Poiseuille: 64/Re. Roughness does not enter. */
  static double laminar(double re) {
    return 64.0 / re;
  }

  /**
   * Darcy λ from Colebrook (1939): 1/√λ = −2 log₁₀( (ε/D)/3.7 + 2.51/(Re √λ) ), by Newton in x = 1/√λ until x stands still.
   */
  static double colebrook(double re, double relativeRoughness) {
    double a = relativeRoughness / 3.7;
    double b = 2.51 / re;
    double x = 7.0; // 1/√λ for λ ≈ 0.02; the function is concave, Newton converges from here
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      double argument = a + b * x;
      double next =
          x - (x + TWO_OVER_LN10 * Math.log(argument)) / (1.0 + TWO_OVER_LN10 * b / argument);
      if (Math.abs(next - x) <= 1.0e-15 * x) {
        x = next;
        break;
      }
      x = next;
    }
    return 1.0 / (x * x);
  }
}
