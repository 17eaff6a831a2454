package org.airfit.internal;

/** The error function and its complement, good to about 15 digits also far out in the tail. Callers validate. */
final class ErrorFunction {

  /** √π. */
  static final double SQRT_PI = Math.sqrt(Math.PI);

  private static final double MIDDLE = 0.46875;
  private static final double FAR = 4.0;
  private static final double[] MIDDLE_P = {
    3.1611237438705655,
    113.86415415105016,
    377.485237685302,
    3209.3775891384694,
    0.18577770618460315
  };
  private static final double[] MIDDLE_Q = {
    23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171
  };
  private static final double[] SIDE_P = {
    0.5641884969886701,
    8.883149794388377,
    66.11919063714163,
    298.6351381974001,
    881.952221241769,
    1712.0476126340707,
    2051.0783778260716,
    1230.3393547979972,
    2.1531153547440383e-08
  };
  private static final double[] SIDE_Q = {
    15.744926110709835,
    117.6939508913125,
    537.1811018620099,
    1621.3895745666903,
    3290.7992357334597,
    4362.619090143247,
    3439.3676741437216,
    1230.3393548037495
  };
  private static final double[] FAR_P = {
    0.30532663496123236,
    0.36034489994980445,
    0.12578172611122926,
    0.016083785148742275,
    0.0006587491615298378,
    0.016315387137302097
  };
  private static final double[] FAR_Q = {
    2.568520192289822,
    1.8729528499234673,
    0.5279051029514285,
    0.06051834131244132,
    0.0023352049762686918
  };

  /** From here on erf is 1 to the last bit. */
  private static final double ONE_FROM = 6.0;

  private ErrorFunction() {}

  /**
   * Error function near the middle.
   *
   * <pre>
   *   erf x = x p(x²)/q(x²),   |x| ≤ 0.46875
   * </pre>
   *
   * <p>Source: W. J. Cody, <cite>Rational Chebyshev approximations for the error function</cite>, Math. Comp. 23, 1969,
   * 631–637; the coefficients from memory, every one of them held against the series and the continued fraction of DLMF
   * 7.6.2 and 7.9.1 in the tests.
   */
  private static double erfMiddle(double x) {
    double square = x * x;
    double p = MIDDLE_P[4] * square;
    double q = square;
    for (int i = 0; i < 3; i++) {
      p = (p + MIDDLE_P[i]) * square;
      q = (q + MIDDLE_Q[i]) * square;
    }
    return x * (p + MIDDLE_P[3]) / (q + MIDDLE_Q[3]);
  }

  /**
   * Complementary error function times e^(x²), which does not underflow.
   *
   * <pre>
   *   e^(x²) erfc x = p(x)/q(x),                        0.46875 &lt; x ≤ 4
   *                 = (1/√π − p(1/x²)/(x² q(1/x²)))/x,  4 &lt; x
   * </pre>
   *
   * <p>Source: as for {@link #erfMiddle}.
   *
   * @param x the argument, not negative
   * @return e^(x²) erfc x
   */
  static double scaledErfc(double x) {
    if (x <= MIDDLE) {
      return Math.exp(x * x) * (1.0 - erfMiddle(x));
    }
    if (x <= FAR) {
      double p = SIDE_P[8] * x;
      double q = x;
      for (int i = 0; i < 7; i++) {
        p = (p + SIDE_P[i]) * x;
        q = (q + SIDE_Q[i]) * x;
      }
      return (p + SIDE_P[7]) / (q + SIDE_Q[7]);
    }
    double inverse = 1.0 / (x * x);
    double p = FAR_P[5] * inverse;
    double q = inverse;
    for (int i = 0; i < 4; i++) {
      p = (p + FAR_P[i]) * inverse;
      q = (q + FAR_Q[i]) * inverse;
    }
    return (1.0 / SQRT_PI - inverse * (p + FAR_P[4]) / (q + FAR_Q[4])) / x;
  }

  /**
   * Complementary error function.
   *
   * @param x the argument, not negative
   * @return erfc x, 0 where it underflows
   */
  static double erfc(double x) {
    return x <= MIDDLE ? 1.0 - erfMiddle(x) : Math.exp(-x * x) * scaledErfc(x);
  }

  /**
   * Error function.
   *
   * @param x the argument, not negative
   * @return erf x
   */
  static double erf(double x) {
    if (x > ONE_FROM) {
      return 1.0;
    }
    return x <= MIDDLE ? erfMiddle(x) : 1.0 - Math.exp(-x * x) * scaledErfc(x);
  }
}
