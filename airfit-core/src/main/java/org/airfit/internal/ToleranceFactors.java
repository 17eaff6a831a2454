package org.airfit.internal;

import java.util.function.DoubleUnaryOperator;

/**
 * Factors k of tolerance limits from a sample of a normal distribution: with the chance g, the limits x̄ ± k s, or the
 * one limit x̄ + k s, hold the share p of all that is to come.
 *
 * <pre>
 *   one-sided:  g = ∫ φ(z) P( χ²(n−1) &gt; (n−1) max(0, z_p − z/√n)²/k² ) dz       all z
 *   two-sided:  g = 2 ∫ φ(z) P( χ²(n−1) &gt; (n−1) r(z)²/k² ) dz                    z &gt; 0
 *               Φ(z/√n + r) − Φ(z/√n − r) = p
 * </pre>
 *
 * <p>z is the mean of the sample in units of its own standard deviation. The one-sided integral is the distribution of
 * noncentral t, k √n = t′(g; n − 1, z_p √n), taken over the mean. Both are exact; approximations in use are up to a
 * third off for two or three pieces.
 *
 * <p>Callers validate: n in [2, 100 000], p and g in [0.5, 0.9999].
 */
public final class ToleranceFactors {

  /** φ beyond it is below 1e−17. */
  private static final double FAR = 9.0;

  private static final int PANELS = 24;

  /** A sample's deviation lies no further from the true one, in its own standard deviations. */
  private static final double SPREADS = 12.0;

  private static final double RELATIVE = 1.0e-13;

  /** From so many pieces on the closed formulas are good enough to start from. */
  private static final int MANY = 100;

  /** How far, times 1/n, the search looks to both sides of them at first. */
  private static final double AROUND = 10.0;

  private ToleranceFactors() {}

  /**
   * The one-sided factor.
   *
   * @param pieces n
   * @param coverage the share p
   * @param confidence the chance g
   * @return k
   */
  public static double oneSided(int pieces, double coverage, double confidence) {
    double score = Statistics.normalScore(1.0 - coverage);
    return factor(
        k -> oneSidedChance(pieces, score, k) - confidence,
        pieces,
        oneSidedOfMany(pieces, score, Statistics.normalScore(1.0 - confidence)),
        2.0 * score + 1.0);
  }

  /** k of large samples, NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3, from the scores of p and g. */
  static double oneSidedOfMany(int pieces, double score, double sure) {
    double a = 1.0 - sure * sure / (2.0 * (pieces - 1));
    double b = score * score - sure * sure / pieces;
    return (score + Math.sqrt(score * score - a * b)) / a;
  }

  /**
   * The factor at which the chance is the one asked for.
   *
   * @param excess g of k less the chance asked for, rising with k
   * @param about where it passes 0 if there are many pieces, to about 1/n of itself; of no use for few
   * @param most where to look first for the upper end if there are few
   */
  static double factor(DoubleUnaryOperator excess, int pieces, double about, double most) {
    if (pieces >= MANY) {
      double low = about * (1.0 - AROUND / pieces) - AROUND / pieces;
      double high = about * (1.0 + AROUND / pieces) + AROUND / pieces;
      double atLow = low > 0.0 ? excess.applyAsDouble(low) : Double.NaN;
      double atHigh = excess.applyAsDouble(high);
      if (atLow <= 0.0 && atHigh > 0.0) {
        return RootFinder.find(excess, low, atLow, high, atHigh, RELATIVE * high);
      }
    }
    double high = most;
    while (excess.applyAsDouble(high) <= 0.0) {
      high *= 2.0;
    }
    return RootFinder.find(excess, 0.0, high, RELATIVE * high);
  }

  /** g of k; at k 0 the chance that the mean of the sample lies above the quantile. */
  static double oneSidedChance(int pieces, double score, double k) {
    double root = Math.sqrt(pieces);
    double sure = score * root; // a mean above the quantile suffices whatever s is
    if (k <= 0.0) {
      return Statistics.normalAbove(sure);
    }
    // with a small k the mean decides within so narrow a range that an integral over all of it
    // would step across
    double scatter = SPREADS / Math.sqrt(2.0 * (pieces - 1));
    double from = Math.max(-FAR, sure - root * k * (1.0 + scatter));
    double to = Math.min(FAR, sure - root * k * Math.max(0.0, 1.0 - scatter));
    double above = Statistics.normalAbove(to);
    return from >= to
        ? above
        : above
            + Quadrature.integral(
                z -> {
                  double reach = (score - z / root) / k;
                  return normalDensity(z)
                      * Statistics.chiSquareAbove((pieces - 1) * reach * reach, pieces - 1);
                },
                from,
                to,
                2 * PANELS);
  }

  /**
   * The two-sided factor.
   *
   * @param pieces n
   * @param coverage the share p
   * @param confidence the chance g
   * @return k
   */
  public static double twoSided(int pieces, double coverage, double confidence) {
    double score = Statistics.normalScore(0.5 * (1.0 - coverage));
    double root = Math.sqrt(pieces);
    // what does not change with k is worked out once, point by point of the integral
    int points = Quadrature.POINTS * PANELS;
    double[] density = new double[points];
    double[] reach = new double[points];
    int[] at = new int[1];
    Quadrature.integral(
        z -> {
          density[at[0]] = normalDensity(z);
          reach[at[0]] = reach(z / root, coverage);
          at[0]++;
          return 0.0;
        },
        0.0,
        FAR,
        PANELS);
    return factor(
        k -> {
          if (k <= 0.0) {
            return -confidence;
          }
          at[0] = 0;
          return 2.0
                  * Quadrature.integral(
                      z -> {
                        int i = at[0]++;
                        double far = reach[i] / k;
                        return density[i]
                            * Statistics.chiSquareAbove((pieces - 1) * far * far, pieces - 1);
                      },
                      0.0,
                      FAR,
                      PANELS)
              - confidence;
        },
        pieces,
        twoSidedOfMany(pieces, score, Statistics.normalScore(1.0 - confidence)),
        2.0 * score + 1.0);
  }

  /**
   * k of large samples from the scores of p and g: W. G. Howe's approximation, NIST/SEMATECH e-Handbook of Statistical
   * Methods, 7.2.6.3, with the chi-square score of E. B. Wilson and M. M. Hilferty.
   */
  static double twoSidedOfMany(int pieces, double score, double sure) {
    double ninth = 2.0 / (9.0 * (pieces - 1));
    double cube = 1.0 - ninth - sure * Math.sqrt(ninth);
    return score * Math.sqrt((1.0 + 1.0 / pieces) / (cube * cube * cube));
  }

  /** r, the half width around a middle that is off by so much that holds the share p, in standard deviations. */
  static double reach(double off, double coverage) {
    double most = off + Statistics.normalScore(0.5 * (1.0 - coverage)) + 1.0;
    return RootFinder.find(
        r -> 1.0 - coverage - Statistics.normalAbove(off + r) - Statistics.normalAbove(r - off),
        0.0,
        most,
        RELATIVE * most);
  }

  private static double normalDensity(double z) {
    return Math.exp(-0.5 * z * z - Statistics.LN_SQRT_TWO_PI);
  }
}
