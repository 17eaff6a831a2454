package org.airfit.line;

/** Numeric kernels of friction: plain doubles, no checks, no allocation. Callers validate. */
final class FrictionKernels {

  private static final int MAX_ITERATIONS = 50;
  private static final double TWO_OVER_LN10 = 2.0 / Math.log(10.0);
  private static final double TWO_LOG10_OF_2 = 2.0 * Math.log10(2.0);
  private static final long MANTISSA = 0x000f_ffff_ffff_ffffL;
  private static final long EXPONENT_OF_1 = 0x3ff0_0000_0000_0000L;

  /** A guess so near that the step from it leaves nothing; see {@link #colebrook}. */
  private static final double NEAR = 0.008;

  private FrictionKernels() {}

  /** Darcy λ of laminar flow, after Hagen and Poiseuille: 64/Re. Roughness does not enter. */
  static double laminar(double re) {
    return 64.0 / re;
  }

  /**
   * Darcy λ from Colebrook (1939): 1/√λ = −2 log₁₀( (ε/D)/3.7 + 2.51/(Re √λ) ), with one true logarithm.
   *
   * <p>With x = 1/√λ, R = Re/2.51, A = R (ε/D)/3.7 and c = 2/ln 10 it says
   *
   * <pre>
   *   x = c ln( R/(A + x) )
   * </pre>
   *
   * <p>A guess of x: in smooth bores x ≈ 0.903 c ln R − 0.8, by at most 0.7 % wrong from Re 4·10³ to 10⁸ (fitted by
   * us); that on the right gives x within 0.5 %, as the right moves by at most c/(A + x) of what x does. Logarithms
   * from the bits of a double are near enough for that.
   *
   * <p>What is missing: let y = A + x, g = x − c ln(R/y), and let the root lie at y (1 − z). Then
   *
   * <pre>
   *   z + q (z²/2 + z³/3 + …) = v,   q = c/(y + c),   v = g/(y + c)
   * </pre>
   *
   * <p>and the series turned round gives z in powers of v up to v⁵. The next term is at most q v⁶/6: with v at most
   * 0.005 and q at most 0.15, as in the range above, 4·10⁻¹⁶.
   */
  static double colebrook(double re, double relativeRoughness) {
    double big = re * (1.0 / 2.51);
    // 1/R: to divide by y would have to wait for the guess
    double inverse = 2.51 / re;
    double a = relativeRoughness * (1.0 / 3.7) * big;
    double smooth = nearTwoLog10(big);
    double guess = smooth - nearTwoLog10(a + 0.903 * smooth - 0.8);
    double y = a + guess;
    double g = guess + TWO_OVER_LN10 * Math.log(y * inverse);
    double r = 1.0 / (y + TWO_OVER_LN10);
    double q = TWO_OVER_LN10 * r;
    double v = g * r;
    if (!(Math.abs(v) <= NEAR)) {
      return colebrookFromAfar(re, relativeRoughness);
    }
    double c5 = -1.0 / 5.0 + q * (13.0 / 12.0 + q * (-7.0 / 4.0 + q * (7.0 / 8.0)));
    double c4 = -1.0 / 4.0 + q * (5.0 / 6.0 - q * (5.0 / 8.0));
    double c3 = -1.0 / 3.0 + q * (1.0 / 2.0);
    double bend = (-1.0 / 2.0 + v * c3) + v * v * (c4 + v * c5);
    double x = guess - v * y * (1.0 + q * v * bend);
    return 1.0 / (x * x);
  }

  /**
   * dλ/d ln Re of Colebrook's λ: as A goes with R, the equation of {@link #colebrook} gives
   * dx/d ln R = c x/(A + x + c).
   */
  static double colebrookByLogRe(double re, double relativeRoughness, double darcy) {
    double a = relativeRoughness * re * (1.0 / (3.7 * 2.51));
    return -2.0 * darcy * TWO_OVER_LN10 / (a + 1.0 / Math.sqrt(darcy) + TWO_OVER_LN10);
  }

  /** 2 log₁₀ of a normal number above 0, within 0.0007: 2 log₁₀ 2 times its exponent and what its mantissa adds. */
  private static double nearTwoLog10(double number) {
    long bits = Double.doubleToRawLongBits(number);
    double m = Double.longBitsToDouble((bits & MANTISSA) | EXPONENT_OF_1) - 1.0;
    int exponent = (int) (bits >>> 52) - 1023;
    return TWO_LOG10_OF_2 * (exponent + m + m * (1.0 - m) * (0.42 - 0.152 * m));
  }

  /**
   * λ from Colebrook wherever {@link #colebrook} has no near guess, by Halley's method in x.
   *
   * <pre>
   *   f = x + c ln(a + b x)    f' = 1 + c t    f'' = −c t²    t = b/(a + b x) ≤ 1/x
   * </pre>
   *
   * <p>The error behind a step s is at most c t³ s³/3, so that after a step of 10⁻⁵ x none is left in a double.
   */
  static double colebrookFromAfar(double re, double relativeRoughness) {
    double a = relativeRoughness / 3.7;
    double b = 2.51 / re;
    double x = 7.0; // 1/√λ for λ ≈ 0.02
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      double argument = a + b * x;
      double t = b / argument;
      double slope = 1.0 + TWO_OVER_LN10 * t;
      double newton = (x + TWO_OVER_LN10 * Math.log(argument)) / slope;
      // from Re 1e65 on the first step is so long that its correction would turn it round
      double step = newton / Math.max(0.5, 1.0 + 0.5 * newton * TWO_OVER_LN10 * t * t / slope);
      x -= step;
      if (Math.abs(step) <= 1.0e-5 * x) {
        break;
      }
    }
    return 1.0 / (x * x);
  }

  /** Common tail of most formulas: 1/(−2 log₁₀ x)². */
  private static double inverseSquare(double x) {
    double root = -2.0 * Math.log10(x);
    return 1.0 / (root * root);
  }

  /** Haaland (1983): 1/√λ = −1.8 log₁₀( (ε/D/3.7)^1.11 + 6.9/Re ). */
  static double haaland(double re, double rough) {
    double root = -1.8 * Math.log10(Math.pow(rough / 3.7, 1.11) + 6.9 / re);
    return 1.0 / (root * root);
  }

  /** Swamee and Jain (1976), as textbooks print it: λ = 0.25 / log₁₀²( ε/D/3.7 + 5.74/Re^0.9 ). */
  static double swameeJain(double re, double rough) {
    return inverseSquare(rough / 3.7 + 5.74 / Math.pow(re, 0.9));
  }

  /** Churchill (1973): 1/√λ = −2 log₁₀( ε/D/3.7 + (7/Re)^0.9 ). */
  static double churchill1973(double re, double rough) {
    return inverseSquare(rough / 3.7 + Math.pow(7.0 / re, 0.9));
  }

  /** Churchill (1977), all Re: λ = 8 ( (8/Re)¹² + (A + B)^−1.5 )^(1/12). */
  static double churchill1977(double re, double rough) {
    double a = Math.pow(-2.457 * Math.log(Math.pow(7.0 / re, 0.9) + 0.27 * rough), 16.0);
    double b = Math.pow(37530.0 / re, 16.0);
    return 8.0 * Math.pow(Math.pow(8.0 / re, 12.0) + Math.pow(a + b, -1.5), 1.0 / 12.0);
  }

  /** Chen (1979). */
  static double chen(double re, double rough) {
    double inner = Math.pow(rough, 1.1098) / 2.8257 + Math.pow(7.149 / re, 0.8981);
    return inverseSquare(rough / 3.7065 - 5.0452 / re * Math.log10(inner));
  }

  /** Zigrang and Sylvester (1982), with one step inside. */
  static double zigrangSylvester1(double re, double rough) {
    double a = rough / 3.7;
    return inverseSquare(a - 5.02 / re * Math.log10(a + 13.0 / re));
  }

  /** Zigrang and Sylvester (1982), with two steps inside. */
  static double zigrangSylvester2(double re, double rough) {
    double a = rough / 3.7;
    return inverseSquare(a - 5.02 / re * Math.log10(a - 5.02 / re * Math.log10(a + 13.0 / re)));
  }

  /** Serghides (1984): Steffensen's step on Colebrook from three values of 1/√λ. */
  static double serghides1(double re, double rough) {
    double a = -2.0 * Math.log10(rough / 3.7 + 12.0 / re);
    double b = -2.0 * Math.log10(rough / 3.7 + 2.51 * a / re);
    double c = -2.0 * Math.log10(rough / 3.7 + 2.51 * b / re);
    double second = c - 2.0 * b + a;
    // in fully rough flow the three agree and there is no step to take
    double root = second == 0.0 ? c : a - (b - a) * (b - a) / second;
    return 1.0 / (root * root);
  }

  /** Serghides (1984), the shorter form. */
  static double serghides2(double re, double rough) {
    double a = -2.0 * Math.log10(rough / 3.7 + 12.0 / re);
    double b = -2.0 * Math.log10(rough / 3.7 + 2.51 * a / re);
    double root = 4.781 - (a - 4.781) * (a - 4.781) / (b - 2.0 * a + 4.781);
    return 1.0 / (root * root);
  }

  /** Altshul (1952): λ = 0.11 (68/Re + ε/D)^0.25. */
  static double altshul(double re, double rough) {
    return 0.11 * Math.sqrt(Math.sqrt(68.0 / re + rough));
  }

  /** Moody (1947): λ = 0.0055 (1 + (2·10⁴ ε/D + 10⁶/Re)^(1/3)). */
  static double moody(double re, double rough) {
    return 0.0055 * (1.0 + Math.cbrt(2.0e4 * rough + 1.0e6 / re));
  }

  /** Manadilli (1997). */
  static double manadilli(double re, double rough) {
    return inverseSquare(rough / 3.7 + 95.0 / Math.pow(re, 0.983) - 96.82 / re);
  }

  /** Blasius (1913), smooth bores: λ = 0.3164/Re^0.25. The roughness does not enter. */
  static double blasius(double re) {
    return 0.3164 / Math.sqrt(Math.sqrt(re));
  }
}
