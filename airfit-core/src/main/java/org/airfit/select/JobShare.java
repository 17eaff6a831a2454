package org.airfit.select;

import org.airfit.internal.Digits;
import org.airfit.internal.Statistics;

/**
 * A share of jobs that were drawn at random, and between which shares that of all such jobs lies.
 *
 * <pre>
 *   (p + z²/2n ± z √(p(1 − p)/n + z²/4n²)) / (1 + z²/n),   p = k/n
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>k, n</td><td>jobs that count, and jobs drawn</td><td>-</td></tr>
 * <tr><td>z</td><td>normal score of 0.975, for 95 % confidence</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>On average over p the interval holds the true share about 95 times in 100. <b>Source:</b> E. B. Wilson,
 * <cite>Probable inference, the law of succession, and statistical inference</cite>, J. Am. Stat. Assoc. 22, 1927,
 * 209–212 (citation from memory; the numbers are held against a library of statistics).
 *
 * @param count the jobs that count
 * @param of the jobs that were drawn, above 0
 */
public record JobShare(int count, int of) {

  private static final double TAIL = 0.025;

  /**
   * Checks the counts.
   *
   * @param count the jobs that count, from 0 to {@code of}
   * @param of the jobs that were drawn, above 0
   * @throws IllegalArgumentException if one is out of range
   */
  public JobShare {
    if (of < 1 || count < 0 || count > of) {
      throw new IllegalArgumentException(
          "jobs that count must be in [0, jobs drawn], and these above 0, were " + count + " of "
              + of);
    }
  }

  /** {@return the share in the sample [-]} */
  public double share() {
    return count / (double) of;
  }

  /** {@return the lower end of the interval of 95 % confidence [-]} */
  public double least() {
    return count == 0 ? 0.0 : end(-1.0);
  }

  /** {@return the upper end of the interval of 95 % confidence [-]} */
  public double most() {
    return count == of ? 1.0 : end(1.0);
  }

  private double end(double side) {
    double z = Statistics.normalScore(TAIL);
    double p = share();
    double n = of;
    return (p + z * z / (2.0 * n) + side * z * Math.sqrt(p * (1.0 - p) / n + z * z / (4.0 * n * n)))
        / (1.0 + z * z / n);
  }

  /** {@return such as "12 of 60 jobs, 20.0 % (11.8 % to 31.8 % with 95 % confidence)"} */
  @Override
  public String toString() {
    return count + " of " + of + (of == 1 ? " job, " : " jobs, ") + inWords();
  }

  /** {@return the share and its interval, such as "20.0 % (11.8 % to 31.8 % with 95 % confidence)"} */
  public String inWords() {
    return whole(share()) + " (" + whole(least()) + " to " + whole(most())
        + " with 95 % confidence)";
  }

  private static String whole(double share) {
    return Digits.fixed(100.0 * share, 1) + " %";
  }
}
