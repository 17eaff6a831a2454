package org.airfit.internal;

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
  private static final double RELATIVE = 1.0e-13;

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
    double high = 2.0 * score + 1.0;
    while (oneSidedChance(pieces, score, high) <= confidence) {
      high *= 2.0;
    }
    return RootFinder.find(
        k -> oneSidedChance(pieces, score, k) - confidence, 0.0, high, RELATIVE * high);
  }

  /** g of k; at k 0 the chance that the mean of the sample lies above the quantile. */
  static double oneSidedChance(int pieces, double score, double k) {
    double root = Math.sqrt(pieces);
    double sure = score * root; // a mean above the quantile suffices whatever s is
    double above = Statistics.normalAbove(sure);
    if (k <= 0.0) {
      return above;
    }
    return above
        + Quadrature.integral(
            z -> {
              double reach = (score - z / root) / k;
              return normalDensity(z)
                  * Statistics.chiSquareAbove((pieces - 1) * reach * reach, pieces - 1);
            },
            -FAR,
            Math.min(FAR, sure),
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
    double high = 2.0 * Statistics.normalScore(0.5 * (1.0 - coverage)) + 1.0;
    while (twoSidedChance(pieces, coverage, high) <= confidence) {
      high *= 2.0;
    }
    return RootFinder.find(
        k -> twoSidedChance(pieces, coverage, k) - confidence, 0.0, high, RELATIVE * high);
  }

  /** g of k. */
  static double twoSidedChance(int pieces, double coverage, double k) {
    if (k <= 0.0) {
      return 0.0;
    }
    double root = Math.sqrt(pieces);
    return 2.0
        * Quadrature.integral(
            z -> {
              double reach = reach(z / root, coverage) / k;
              return normalDensity(z)
                  * Statistics.chiSquareAbove((pieces - 1) * reach * reach, pieces - 1);
            },
            0.0,
            FAR,
            PANELS);
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
