package org.airfit.plug;

import java.util.Arrays;
import org.airfit.internal.ReadingDensity;

/**
 * What one more reading is expected to bring: a deterministic sum over all readings it could give.
 *
 * <pre>
 *   E[H] = ∫ Σ_k w_k(y) log₂(Σw(y) / w_k(y)) dy,    w_k(y) = P(k) f_k(y)
 * </pre>
 *
 * <p>with the profiles, their near copies and the unknown as k. The range is cut at the middles and shoulders of every density and each
 * piece is taken by Gauss and Legendre. Where no profile reaches, only broad densities remain, and their share is known
 * without an integral.
 *
 * <p>Kernel: millimetres; no checks.
 */
final class Information {

  /** A profile less likely than this adds less to the doubt than is printed. */
  static final double NEGLIGIBLE = 1.0e-7;

  private static final double LN_TWO = Math.log(2.0);
  private static final double[] SHOULDERS = {0.0, 1.0, 2.0, 3.5};
  private static final int NODES = 8;
  private static final double[] NODE = new double[NODES];
  private static final double[] WEIGHT = new double[NODES];

  static {
    // roots of the Legendre polynomial by Newton from Tricomi's estimate; weights 2/((1−x²) P′²),
    // DLMF 3.5.19
    for (int i = 0; i < NODES; i++) {
      double x = Math.cos(Math.PI * (i + 0.75) / (NODES + 0.5));
      double slope = 0.0;
      for (int step = 0; step < 20; step++) {
        double before = 1.0;
        double value = x;
        for (int n = 2; n <= NODES; n++) {
          double next = ((2 * n - 1) * x * value - (n - 1) * before) / n;
          before = value;
          value = next;
        }
        slope = NODES * (x * value - before) / (x * x - 1.0);
        x -= value / slope;
      }
      NODE[i] = x;
      WEIGHT[i] = 2.0 / ((1.0 - x * x) * slope * slope);
    }
  }

  private final double[] logChance;
  private final ReadingDensity[] expected;
  private final double[] from;
  private final double[] to;
  private final double broadChance;
  private final double broadDoubt;
  private final double confidence;

  /** How many of the densities are of profiles, which stand first; those of near copies settle nothing. */
  private final int profiles;

  /** Which profiles reach the piece at hand, and how many do. */
  private final int[] active;

  private int reaching;

  private double broadDensity;
  private double entropy;
  private double settled;

  private Information(
      double[] logChance,
      ReadingDensity[] expected,
      int profiles,
      double broadChance,
      double broadDoubt,
      double confidence) {
    this.logChance = logChance;
    this.expected = expected;
    this.profiles = profiles;
    this.broadChance = broadChance;
    this.broadDoubt = broadDoubt;
    this.confidence = confidence;
    this.from = new double[expected.length];
    this.to = new double[expected.length];
    this.active = new int[expected.length];
    for (int k = 0; k < expected.length; k++) {
      double reach = expected[k].reach();
      from[k] = expected[k].low() - reach;
      to[k] = expected[k].high() + reach;
    }
  }

  /** Expected doubt after the reading [bit], and the chance that one profile then reaches the confidence. */
  record Outlook(double expectedBits, double chanceOfSettling) {}

  /**
   * @param probabilities of the profiles, then of near copies
   * @param models what each of them expects of the reading; null where it does not know the dimension
   * @param profiles how many are profiles
   * @param unknown probability of a plug from elsewhere
   * @param confidence what counts as settled
   */
  static Outlook of(
      double[] probabilities,
      @org.jspecify.annotations.Nullable ReadingDensity[] models,
      int profiles,
      double unknown,
      double confidence) {
    int n = 0;
    for (int k = 0; k < models.length; k++) {
      n += models[k] != null && probabilities[k] > NEGLIGIBLE ? 1 : 0;
    }
    double[] logChance = new double[n];
    ReadingDensity[] expected = new ReadingDensity[n];
    double broad = unknown;
    double broadDoubt = plogp(unknown);
    int i = 0;
    int ofProfiles = 0;
    for (int k = 0; k < models.length; k++) {
      ReadingDensity model = models[k];
      if (model == null) {
        broad += probabilities[k];
        broadDoubt += plogp(probabilities[k]);
      } else if (probabilities[k] > NEGLIGIBLE) {
        ofProfiles += k < profiles ? 1 : 0;
        logChance[i] = Math.log(probabilities[k]);
        expected[i++] = model;
      }
    }
    Information information = new Information(
        logChance, expected, ofProfiles, broad, broadDoubt - plogp(broad), confidence);
    information.integrate();
    // the quadrature is good to a few parts in a million, and a chance is no more than 1
    return new Outlook(information.entropy, Math.min(1.0, information.settled));
  }

  /** Doubt of a set of chances [bit]. */
  static double bits(double[] probabilities, double unknown) {
    double bits = plogp(unknown);
    for (double probability : probabilities) {
      bits += plogp(probability);
    }
    return bits;
  }

  private static double plogp(double p) {
    return p > 0.0 ? -p * Math.log(p) / LN_TWO : 0.0;
  }

  /** The middles and shoulders of every density, in order. */
  private double[] cuts() {
    double[] cuts = new double[expected.length * (2 * SHOULDERS.length + 2)];
    int n = 0;
    for (int k = 0; k < expected.length; k++) {
      for (double shoulder : SHOULDERS) {
        cuts[n++] = expected[k].low() - shoulder * expected[k].sigma();
        cuts[n++] = expected[k].high() + shoulder * expected[k].sigma();
      }
      cuts[n++] = from[k];
      cuts[n++] = to[k];
    }
    Arrays.sort(cuts);
    return cuts;
  }

  private void integrate() {
    double[] cuts = cuts();
    double covered = 0.0;
    for (int i = 1; i < cuts.length; i++) {
      covered += findReaching(cuts[i - 1], cuts[i]) > 0 ? cuts[i] - cuts[i - 1] : 0.0;
    }
    broadDensity = 1.0 / Math.max(Assumptions.UNKNOWN_WIDTH_MM, covered);
    // everywhere: what is broad has the same doubt among itself
    entropy = broadDoubt;
    for (int i = 1; i < cuts.length; i++) {
      if (findReaching(cuts[i - 1], cuts[i]) > 0) {
        double half = 0.5 * (cuts[i] - cuts[i - 1]);
        double middle = 0.5 * (cuts[i] + cuts[i - 1]);
        for (int node = 0; node < NODES; node++) {
          add(middle + half * NODE[node], half * WEIGHT[node]);
        }
      }
    }
  }

  private int findReaching(double low, double high) {
    reaching = 0;
    double middle = 0.5 * (low + high);
    for (int k = 0; k < expected.length && high > low; k++) {
      if (middle > from[k] && middle < to[k]) {
        active[reaching++] = k;
      }
    }
    return reaching;
  }

  /** Σ w ln(Σw/w) = Σw ln Σw − Σ w ln w, where ln w is at hand and the logarithm of the sum is the only one to take. */
  private void add(double y, double weight) {
    double broad = broadChance * broadDensity;
    double total = broad;
    double sum = broad > 0.0 ? broad * Math.log(broad) : 0.0;
    double largest = 0.0;
    for (int i = 0; i < reaching; i++) {
      int k = active[i];
      double log = logChance[k] + expected[k].logDensity(y);
      double w = Math.exp(log);
      total += w;
      sum += w > 0.0 ? w * log : 0.0;
      largest = k < profiles ? Math.max(largest, w) : largest;
    }
    if (total > 0.0) {
      entropy += weight * (total * Math.log(total) - sum) / LN_TWO;
    }
    if (largest >= confidence * total) {
      settled += weight * total;
    }
  }
}
