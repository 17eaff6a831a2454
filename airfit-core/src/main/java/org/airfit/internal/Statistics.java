package org.airfit.internal;

/**
 * Tails and densities of the normal, chi-square and Student t distributions, good to about 13 digits also far out in
 * the tails.
 *
 * <p>Callers validate. Formula numbers are those of the NIST Digital Library of Mathematical Functions (DLMF).
 */
public final class Statistics {

  /** ln √(2π). */
  public static final double LN_SQRT_TWO_PI = 0.5 * Math.log(2.0 * Math.PI);

  private static final double SQRT_HALF = Math.sqrt(0.5);

  private static final double INV_SQRT_TWO_PI = Math.exp(-LN_SQRT_TWO_PI);

  /** From here on the series of {@link #oneAndTail} is right to 10⁻¹³, and the difference it replaces is not. */
  private static final double FAR = 100.0;

  /** From here on the nearest corner of a {@link #logSecondDifference} is all of it; the others are below e⁻¹⁰⁰⁰. */
  private static final double ALONE = 1.0e6;

  /** Where the first of the two points of Gauss's rule lies on its interval. */
  private static final double GAUSS = 0.5 - Math.sqrt(1.0 / 12.0);

  /** Far above what any argument needs (the slowest takes about 120); a loop that reaches it would be a fault. */
  private static final int MAX_TERMS = 2000;

  private static final double TINY = 1.0e-300;

  /** Beyond it e^x comes near the end of the range of a double. */
  private static final double LARGE_HALF = 500.0;

  /** From here on seven terms of Stirling's series suffice. */
  private static final double STIRLING = 12.0;

  /** From here on three terms give ln Γ(a + 1/2) − ln Γ(a). */
  private static final double HALF_MORE = 100.0;

  /** e to the minus this is no digit of 1. */
  private static final double SURE = 40.0;

  /** What no longer changes a sum. */
  private static final double NOTHING = 1.0e-18;

  private Statistics() {}

  /**
   * Upper tail of the standard normal distribution, Q(z) = erfc(z/√2)/2.
   *
   * @param z the argument
   * @return the chance of a value above {@code z}
   */
  public static double normalAbove(double z) {
    double x = Math.abs(z) * SQRT_HALF;
    double tail = 0.5 * Math.exp(-x * x) * ErrorFunction.scaledErfc(x);
    return z >= 0.0 ? tail : 1.0 - tail;
  }

  /**
   * Chance that a standard normal value lies between two bounds, on the side of the distribution where nothing cancels.
   *
   * @param low the lower bound
   * @param high the upper bound, at least {@code low}
   * @return Φ(high) − Φ(low)
   */
  public static double normalBetween(double low, double high) {
    return Math.exp(logNormalBetween(low, high));
  }

  /**
   * The same without a logarithm, for many that are multiplied; 0 where it underflows.
   *
   * @param low the lower bound
   * @param high the upper bound, at least {@code low}
   * @return Φ(high) − Φ(low)
   */
  static double normalShare(double low, double high) {
    double from = low;
    double to = high;
    if (to <= 0.0) {
      from = -high;
      to = -low;
    }
    if (to - from < 1.0e-5) {
      double middle = 0.5 * (from + to);
      return INV_SQRT_TWO_PI * Math.exp(-0.5 * middle * middle) * (to - from);
    }
    return from < 0.0
        ? 0.5 * (ErrorFunction.erf(to * SQRT_HALF) + ErrorFunction.erf(-from * SQRT_HALF))
        : 0.5 * (ErrorFunction.erfc(from * SQRT_HALF) - ErrorFunction.erfc(to * SQRT_HALF));
  }

  /**
   * Logarithm of the chance that a standard normal value lies between two bounds; finite also where the chance
   * underflows.
   *
   * @param low the lower bound
   * @param high the upper bound, at least {@code low}
   * @return ln(Φ(high) − Φ(low)), −∞ for equal bounds
   */
  public static double logNormalBetween(double low, double high) {
    if (high <= 0.0 && low < 0.0) { // two zeros would be mirrored for ever
      return logNormalBetween(-high, -low);
    }
    if (high - low < 1.0e-5) {
      double middle = 0.5 * (low + high);
      return -0.5 * middle * middle - LN_SQRT_TWO_PI + Math.log(high - low);
    }
    if (low < 0.0) {
      return Math.log(
          0.5 * (ErrorFunction.erf(high * SQRT_HALF) + ErrorFunction.erf(-low * SQRT_HALF)));
    }
    double scaled = ErrorFunction.scaledErfc(low * SQRT_HALF)
        - Math.exp(-0.5 * (high - low) * (high + low)) * ErrorFunction.scaledErfc(high * SQRT_HALF);
    return -0.5 * low * low + Math.log(0.5 * scaled);
  }

  /**
   * Logarithm of the chance that an evenly spread value plus a standard normal one falls into a window, times the width
   * of the even spread.
   *
   * <pre>
   *   ∫ₗʰ (Φ(x + w) − Φ(x)) dx = G(h + w) − G(l + w) − G(h) + G(l),   G(z) = z Φ(z) + φ(z)
   * </pre>
   *
   * <p>Because G(z) = z + G(−z), the sum is the same with all signs turned; it is taken on the side where the terms are
   * small.
   *
   * @param low l
   * @param high h, above {@code low}
   * @param width w, above 0
   * @return the logarithm of the integral
   */
  public static double logSecondDifference(double low, double high, double width) {
    if (low + high + width > 0.0) {
      return logSecondDifference(-high - width, -low - width, width);
    }
    if (width < 1.0e-3
        || high - low
            < 1.0e-3) { // by two points of Gauss's rule, as the difference loses its digits
      double narrow = Math.min(width, high - low);
      double wide = Math.max(width, high - low);
      double first = low + GAUSS * narrow;
      double second = low + (1.0 - GAUSS) * narrow;
      double one = logNormalBetween(first, first + wide);
      double other = logNormalBetween(second, second + wide);
      return Math.log(0.5 * narrow)
          + Math.max(one, other)
          + Math.log1p(Math.exp(-Math.abs(one - other)));
    }
    double nearest = Math.max(0.0, -high - width);
    if (nearest > ALONE) {
      return -0.5 * nearest * nearest + Math.log(scaledG(-nearest, nearest));
    }
    double sum = scaledG(high + width, nearest)
        - scaledG(low + width, nearest)
        - scaledG(high, nearest)
        + scaledG(low, nearest);
    return -0.5 * nearest * nearest + Math.log(sum);
  }

  /**
   * The same without a logarithm, for many that are multiplied; 0 where it underflows.
   *
   * @param low l
   * @param high h, above {@code low}
   * @param width w, above 0
   * @return the integral
   */
  static double secondDifference(double low, double high, double width) {
    if (low + high + width > 0.0) {
      return secondDifference(-high - width, -low - width, width);
    }
    if (width < 1.0e-3 || high - low < 1.0e-3) {
      double narrow = Math.min(width, high - low);
      double wide = Math.max(width, high - low);
      double first = low + GAUSS * narrow;
      double second = low + (1.0 - GAUSS) * narrow;
      return 0.5 * narrow * (normalShare(first, first + wide) + normalShare(second, second + wide));
    }
    return scaledG(high + width, 0.0)
        - scaledG(low + width, 0.0)
        - scaledG(high, 0.0)
        + scaledG(low, 0.0);
  }

  /** G(−x) e^(x²/2) = φ(0) − x Q(x) e^(x²/2), far out by its series, where the difference loses its digits. */
  private static double oneAndTail(double x) {
    double peak = INV_SQRT_TWO_PI;
    if (x < FAR) {
      return peak - 0.5 * x * ErrorFunction.scaledErfc(x * SQRT_HALF);
    }
    double v = 1.0 / (x * x);
    return peak * v * (1.0 - v * (3.0 - v * (15.0 - v * 105.0)));
  }

  /** G(z) e^(nearest²/2); nearest is 0 or not above |z|. */
  private static double scaledG(double z, double nearest) {
    double x = Math.abs(z);
    double tail = Math.exp(0.5 * (nearest - x) * (nearest + x)) * oneAndTail(x);
    return z > 0.0 ? z + tail : tail;
  }

  /**
   * The normal score that is exceeded with a given chance, Q(z) = p.
   *
   * @param tail the chance p, in (0, 0.5]
   * @return z ≥ 0
   */
  public static double normalScore(double tail) {
    double z = Math.sqrt(-2.0 * Math.log(2.0 * tail)); // Q(z) ≤ e^(−z²/2)/2 bounds it from above
    for (int i = 0; i < 60; i++) {
      // Newton on ln Q, which is concave: after one step it comes from one side
      double mills = 0.5 * ErrorFunction.scaledErfc(z * SQRT_HALF);
      double excess = -0.5 * z * z + Math.log(mills) - Math.log(tail);
      double step = excess * mills * Math.exp(LN_SQRT_TWO_PI);
      z = Math.max(0.0, z + step);
      if (Math.abs(step) < 1.0e-14 * (1.0 + z)) {
        break;
      }
    }
    return z;
  }

  /**
   * Upper tail of the chi-square distribution, in its closed form for whole degrees of freedom.
   *
   * <pre>
   *   even k:  Q = e^(−x/2) Σ (x/2)^j / j!,                       j = 0 … k/2 − 1
   *   odd k:   Q = erfc √(x/2) + e^(−x/2) Σ (x/2)^(j−1/2)/Γ(j+1/2),  j = 1 … (k−1)/2
   * </pre>
   *
   * <p>Source: DLMF 8.4.10 and 8.4.14 with Q(k/2, x/2). All terms are positive.
   *
   * @param chiSquare x, not negative
   * @param degreesOfFreedom k, at least 1
   * @return the chance of a value above {@code chiSquare}
   */
  public static double chiSquareAbove(double chiSquare, int degreesOfFreedom) {
    double half = 0.5 * chiSquare;
    if (isCertain(half, 0.5 * degreesOfFreedom)) {
      return 1.0;
    }
    if (half > LARGE_HALF) {
      return chiSquareAboveFarOut(half, degreesOfFreedom);
    }
    boolean even = degreesOfFreedom % 2 == 0;
    double root = Math.sqrt(half);
    double term = even ? 1.0 : 2.0 * root / ErrorFunction.SQRT_PI; // Γ(3/2) = √π/2
    double sum = even ? 1.0 : ErrorFunction.scaledErfc(root);
    for (int j = 1; j <= (even ? degreesOfFreedom / 2 - 1 : (degreesOfFreedom - 1) / 2); j++) {
      if (even) {
        term *= half / j;
        sum += term;
      } else {
        sum += term;
        term *= half / (j + 0.5);
      }
    }
    return Math.exp(-half) * sum;
  }

  /**
   * Whether the chance of a value below is no digit of 1.
   *
   * <pre>
   *   P(χ² ≤ x) ≤ e^(−(k/2) (u − 1 − ln u)),   u = x/k &lt; 1
   * </pre>
   *
   * <p>Source: the bound of H. Chernoff with the moments of the distribution, (1 − 2 t)^(−k/2).
   */
  private static boolean isCertain(double half, double halfFreedom) {
    double u = half / halfFreedom;
    return u < 1.0 && halfFreedom * (u - 1.0 - Math.log(u)) > SURE;
  }

  /**
   * The same sum where e^(−x/2) would underflow: from its largest term to both sides. With odd k the first term, erfc
   * √(x/2), is below 1e−200 there and left out.
   */
  private static double chiSquareAboveFarOut(double half, int degreesOfFreedom) {
    double last = 0.5 * degreesOfFreedom - 1.0; // exponents of x/2: 0, 1, … or 1/2, 3/2, …
    double first = degreesOfFreedom % 2 == 0 ? 0.0 : 0.5;
    if (last < first) {
      return 0.0;
    }
    double largest = Math.min(last, first + Math.floor(half - first));
    double log = logPoisson(largest, half);
    double sum = 1.0;
    double term = 1.0;
    for (double s = largest; s > first && term > NOTHING * sum; s--) {
      term *= s / half;
      sum += term;
    }
    term = 1.0;
    for (double s = largest + 1.0; s <= last && term > NOTHING * sum; s++) {
      term *= half / s;
      sum += term;
    }
    return Math.min(1.0, Math.exp(log) * sum);
  }

  /**
   * ln (λ^s e^(−λ)/Γ(s + 1)). The large logarithms of which it is the difference are taken out, so that with s near λ
   * no digit is lost.
   *
   * <pre>
   *   s (ln(1 + e) − e) − ln √(2π s) − r(s),   e = (λ − s)/s,   r the rest of Stirling's series
   * </pre>
   */
  private static double logPoisson(double s, double lambda) {
    if (s < STIRLING) {
      return s * Math.log(lambda) - lambda - logGamma(s + 1.0);
    }
    double e = (lambda - s) / s;
    return s * (Math.log1p(e) - e) - 0.5 * Math.log(s) - LN_SQRT_TWO_PI - stirlingRest(s);
  }

  /** What Stirling's formula lacks of ln Γ(y). */
  private static double stirlingRest(double y) {
    double s = 1.0 / (y * y);
    return (1.0 / 12
            - s
                * (1.0 / 360
                    - s * (1.0 / 1260 - s * (1.0 / 1680 - s * (1.0 / 1188 - s * 691.0 / 360360)))))
        / y;
  }

  /**
   * Logarithm of the gamma function by Stirling's series, after lifting the argument to where seven terms suffice.
   *
   * <p>Source: DLMF 5.11.1 with the Bernoulli numbers of 24.2.1.
   */
  public static double logGamma(double x) {
    double lift = 1.0;
    double y = x;
    while (y < STIRLING) {
      lift *= y;
      y += 1.0;
    }
    return (y - 0.5) * Math.log(y) - y + LN_SQRT_TWO_PI + stirlingRest(y) - Math.log(lift);
  }

  /**
   * Logarithm of the density of Student's t.
   *
   * @param t the argument
   * @param degreesOfFreedom ν, above 0, not necessarily whole
   * @return ln f(t)
   */
  public static double logStudentDensity(double t, double degreesOfFreedom) {
    double nu = degreesOfFreedom;
    return logGammaOfHalfMore(0.5 * nu)
        - 0.5 * Math.log(nu * Math.PI)
        - 0.5 * (nu + 1.0) * Math.log1p(t * t / nu);
  }

  /** ln Γ(a + 1/2) − ln Γ(a), for large a by its series (DLMF 5.11.13), where the difference would lose its digits. */
  private static double logGammaOfHalfMore(double a) {
    double v = 1.0 / (a * a);
    return a < HALF_MORE
        ? logGamma(a + 0.5) - logGamma(a)
        : 0.5 * Math.log(a) - (1.0 / 8.0 - v * (1.0 / 192.0 - v * (1.0 / 640.0))) / a;
  }

  /**
   * Upper tail of Student's t.
   *
   * <pre>
   *   P(T &gt; t) = I_x(ν/2, 1/2)/2,  x = ν/(ν + t²),  t ≥ 0
   * </pre>
   *
   * <p>Source: the incomplete beta function by the continued fraction of DLMF 8.17.22, mirrored by 8.17.4 where that
   * converges sooner.
   *
   * @param t the argument
   * @param degreesOfFreedom ν, above 0, not necessarily whole
   * @return the chance of a value above {@code t}
   */
  public static double studentAbove(double t, double degreesOfFreedom) {
    double nu = degreesOfFreedom;
    double square = t * t;
    double tail = 0.5 * regularBeta(nu / (nu + square), square / (nu + square), 0.5 * nu, 0.5);
    return t >= 0.0 ? tail : 1.0 - tail;
  }

  private static double regularBeta(double x, double oneMinusX, double a, double b) {
    if (x <= 0.0) {
      return 0.0;
    }
    if (oneMinusX <= 0.0) {
      return 1.0;
    }
    double front = Math.exp(
        logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(oneMinusX));
    return x < (a + 1.0) / (a + b + 2.0)
        ? front * betaFraction(x, a, b) / a
        : 1.0 - front * betaFraction(oneMinusX, b, a) / b;
  }

  private static double betaFraction(double x, double a, double b) {
    double c = 1.0;
    double d = 1.0 / nonZero(1.0 - (a + b) * x / (a + 1.0));
    double f = d;
    for (int m = 1; m < MAX_TERMS; m++) {
      double even = m * (b - m) * x / ((a + 2 * m - 1.0) * (a + 2 * m));
      d = 1.0 / nonZero(1.0 + even * d);
      c = nonZero(1.0 + even / c);
      f *= c * d;
      double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1.0));
      d = 1.0 / nonZero(1.0 + odd * d);
      c = nonZero(1.0 + odd / c);
      double change = c * d;
      f *= change;
      if (change == 1.0) { // no digit of a double changes any more
        break;
      }
    }
    return f;
  }

  private static double nonZero(double value) {
    return Math.abs(value) < TINY ? TINY : value;
  }

  /**
   * Logarithm of the chance that Student's t lies between two bounds, on the side where nothing cancels.
   *
   * @param low the lower bound
   * @param high the upper bound, above {@code low}
   * @param degreesOfFreedom ν, above 0
   * @return ln of the chance
   */
  public static double logStudentBetween(double low, double high, double degreesOfFreedom) {
    if (high <= 0.0 && low < 0.0) { // two zeros would be mirrored for ever
      return logStudentBetween(-high, -low, degreesOfFreedom);
    }
    double middle = 0.5 * (low + high);
    if (high - low < 1.0e-4) { // the difference of two tails would lose its digits
      return logStudentDensity(middle, degreesOfFreedom) + Math.log(high - low);
    }
    double chance = low >= 0.0
        ? studentAbove(low, degreesOfFreedom) - studentAbove(high, degreesOfFreedom)
        : 1.0 - studentAbove(-low, degreesOfFreedom) - studentAbove(high, degreesOfFreedom);
    return chance > 1.0e-250 // below that it would underflow, and matters to nobody
        ? Math.log(chance)
        : logStudentDensity(low, degreesOfFreedom) + Math.log(high - low);
  }

  /**
   * The value of Student's t that is exceeded with a given chance.
   *
   * @param tail the chance, in (0, 0.5]
   * @param degreesOfFreedom ν, above 0
   * @return t ≥ 0
   */
  public static double studentScore(double tail, double degreesOfFreedom) {
    double low = 0.0;
    double high = 1.0;
    while (studentAbove(high, degreesOfFreedom) > tail) {
      low = high;
      high *= 2.0;
    }
    return RootFinder.find(
        t -> tail - studentAbove(t, degreesOfFreedom), low, high, 0.5e-15 * high);
  }

  /**
   * Logarithm of a sum of exponentials, without overflow.
   *
   * @param logs the logarithms; −∞ stands for a term of zero
   * @return ln Σ e^log, −∞ where every term is zero
   */
  public static double logSumExp(double[] logs) {
    double largest = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      largest = Math.max(largest, log);
    }
    if (largest == Double.NEGATIVE_INFINITY) {
      return largest;
    }
    double sum = 0.0;
    for (double log : logs) {
      sum += Math.exp(log - largest);
    }
    return largest + Math.log(sum);
  }
}
