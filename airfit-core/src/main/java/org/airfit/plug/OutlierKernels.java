package org.airfit.plug;

import java.util.Arrays;
import org.airfit.internal.Quadrature;
import org.airfit.internal.Statistics;

/** Kernels of the search for pieces that stand out of a record: sizes in metres, no checks; see {@link KnownPlugs}. */
final class OutlierKernels {

  /**
   * How often a record of bell-shaped scatter without an outlier may be said to have one: our choice. It is half of the
   * one in twenty that is promised, because other shapes of scatter show up to that much more.
   */
  static final double RISK = 0.025;

  /** More that stand out together are a second kind of plug, not outliers: our choice. */
  private static final int MOST_TOGETHER = 10;

  private static final double FAR = 7.0;
  private static final int PANELS_OF_MEAN = 6;
  private static final int PANELS_OF_DEVIATION = 16;

  private OutlierKernels() {}

  /** What stands out of a sorted row: the pieces outside {@code first} to {@code last}; k is 0 if nothing does. */
  record Found(int k, int first, int last) {
    static final Found NOTHING = new Found(0, 0, 0);
  }

  /**
   * Searches the largest group that stands out.
   *
   * <p>Of n pieces k are taken away, k below half of n; what remains is a block of the sorted row. The statistic is
   * that of the nearest of those taken away:
   *
   * <pre>
   *   T = ( min |x − x̄ₒ| − d/2 ) / max( sₒ, d/√12 )
   *   chance = m · 2ᵏ · C(n, k) · q(T),     an outlier where chance ≤ 0.025
   * </pre>
   *
   * @param sorted the sizes [m], ascending
   * @param step d, the step of the instrument [m]
   * @param dimensions m, how many dimensions are searched
   */
  static Found search(double[] sorted, double step, int dimensions) {
    int n = sorted.length;
    double[] sums = new double[n + 1];
    double[] squares = new double[n + 1];
    double middle =
        sorted.length == 0 ? 0.0 : sorted[n / 2]; // differences from it keep their digits
    for (int i = 0; i < n; i++) {
      double x = sorted[i] - middle;
      sums[i + 1] = sums[i] + x;
      squares[i + 1] = squares[i] + x * x;
    }
    for (int k = Math.min(MOST_TOGETHER, (n - 1) / 2); k >= 1; k--) {
      int others = n - k;
      double best = 0.0;
      int first = 0;
      for (int low = 0; low <= k; low++) {
        double sum = sums[low + others] - sums[low];
        double mean = sum / others;
        double deviation = Math.sqrt(
            Math.max(0.0, (squares[low + others] - squares[low] - sum * mean) / (others - 1)));
        double nearest = Double.POSITIVE_INFINITY;
        if (low > 0) {
          nearest = mean - (sorted[low - 1] - middle);
        }
        if (low < k) {
          nearest = Math.min(nearest, sorted[low + others] - middle - mean);
        }
        double t = standing(nearest, deviation, step);
        if (t > best) {
          best = t;
          first = low;
        }
      }
      if (chance(best, n, k, dimensions) <= RISK) {
        return new Found(k, first, first + others - 1);
      }
    }
    return Found.NOTHING;
  }

  /** T, from the distance of a piece from the mean of the others and their standard deviation. */
  static double standing(double distance, double deviation, double step) {
    return (distance - 0.5 * step) / Math.max(deviation, step / Math.sqrt(12.0));
  }

  /** How often a record without outliers shows T or more in one of m dimensions for one group of k, at most. */
  static double chance(double t, int n, int k, int dimensions) {
    double ways = dimensions * Math.scalb(1.0, k) * groups(n, k);
    // sₒ² is 1 in the mean and q is convex in it, so q is never below its value there (Jensen)
    double least = Math.pow(2.0 * Statistics.normalAbove(t), k);
    if (!(t > 0.0) || ways * least > RISK) {
      return 1.0;
    }
    return ways * tail(t, n - k, k);
  }

  /** C(n, k). */
  static double groups(int n, int k) {
    double groups = 1.0;
    for (int i = 1; i <= k; i++) {
      groups = groups * (n - k + i) / i;
    }
    return groups;
  }

  /**
   * q: the chance that k pieces all lie more than T standard deviations of the others from their mean, all of one
   * normal distribution. For one piece it is Student's t, otherwise the integral over mean and deviation of the others.
   *
   * <pre>
   *   k = 1:  q = 2 P( t(nₒ − 1) &gt; T / √(1 + 1/nₒ) )
   *   q = ∫ φ(z) ∫ f(s) [ Φ(z/√nₒ − T s) + Φ(−z/√nₒ − T s) ]ᵏ ds dz,   (nₒ − 1) s² ~ χ²(nₒ − 1)
   * </pre>
   */
  static double tail(double t, int others, int k) {
    return k == 1
        ? 2.0 * Statistics.studentAbove(t / Math.sqrt(1.0 + 1.0 / others), others - 1.0)
        : integral(t, others, k);
  }

  /** The integral of {@link #tail} for any k. */
  static double integral(double t, int others, int k) {
    double nu = others - 1.0;
    // ln of the density of s: 2 (ν/2)^(ν/2) / Γ(ν/2) s^(ν−1) e^(−ν s²/2)
    double front = Math.log(2.0) + 0.5 * nu * Math.log(0.5 * nu) - Statistics.logGamma(0.5 * nu);
    double most = 1.0 + FAR / Math.sqrt(nu);
    return 2.0
        * Quadrature.integral(
            z -> {
              double off = z / Math.sqrt(others);
              double end = Math.min(most, (FAR + off) / t);
              return Math.exp(-0.5 * z * z - Statistics.LN_SQRT_TWO_PI)
                  * Quadrature.integral(
                      s -> Math.exp(front + (nu - 1.0) * Math.log(s) - 0.5 * nu * s * s)
                          * Math.pow(
                              Statistics.normalAbove(t * s - off)
                                  + Statistics.normalAbove(t * s + off),
                              k),
                      0.0,
                      end,
                      PANELS_OF_DEVIATION);
            },
            0.0,
            FAR,
            PANELS_OF_MEAN);
  }

  /** The distance from the mean from which one further piece would be found, or infinity for fewer than two others. */
  static double noticed(double deviation, double step, int others, int dimensions) {
    if (others < 2) {
      return Double.POSITIVE_INFINITY;
    }
    double tail = RISK / (2.0 * dimensions * (others + 1.0)) / 2.0;
    double t = Statistics.studentScore(tail, others - 1.0) * Math.sqrt(1.0 + 1.0 / others);
    return t * Math.max(deviation, step / Math.sqrt(12.0)) + 0.5 * step;
  }

  /** The places of the sizes in ascending order. */
  static Integer[] order(double[] sizes) {
    Integer[] order = new Integer[sizes.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, (a, b) -> Double.compare(sizes[a], sizes[b]));
    return order;
  }
}
