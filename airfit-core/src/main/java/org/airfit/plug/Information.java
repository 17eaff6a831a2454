package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;

/**
 * What one more reading is expected to bring: a deterministic sum over all readings it could give.
 *
 * <pre>
 *   E[H] = ∫ Σ_k w_k(y) log₂(Σw(y) / w_k(y)) dy,    w_k(y) = P(k) f_k(y)
 * </pre>
 *
 * <p>with the profiles and the unknown as k. The range is cut at the middles and shoulders of every density and each piece is taken by
 * Gauss and Legendre. Where no profile reaches, only broad densities remain, and their share is known without an integral.
 *
 * <p>Kernel: millimetres; no checks.
 */
final class Information {

  /** A profile less likely than this adds less to the doubt than is printed. */
  static final double NEGLIGIBLE = 1.0e-7;

  private static final double[] SHOULDERS = {0.0, 1.0, 2.0, 3.5, 5.0};
  private static final int NODES = 10;
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

  private final double[] chance;
  private final Expected[] expected;
  private final double broadChance;
  private final double broadDoubt;
  private final double broadDensity;
  private final double confidence;
  private final List<double[]> pieces;

  private double entropy;
  private double settled;

  private Information(
      double[] chance,
      Expected[] expected,
      double broadChance,
      double broadDoubt,
      double confidence) {
    this.chance = chance;
    this.expected = expected;
    this.broadChance = broadChance;
    this.broadDoubt = broadDoubt;
    this.confidence = confidence;
    this.pieces = pieces(expected);
    double covered = 0.0;
    for (double[] piece : pieces) {
      covered += piece[1] - piece[0];
    }
    this.broadDensity = 1.0 / Math.max(Identifier.UNKNOWN_WIDTH_MM, covered);
    // outside the reach of every profile
    this.entropy = Math.max(0.0, 1.0 - covered * broadDensity) * broadDoubt;
  }

  /** Expected doubt after the reading [bit], and the chance that one profile then reaches the confidence. */
  record Outlook(double expectedBits, double chanceOfSettling) {}

  /**
   * @param probabilities of the profiles
   * @param models what each profile expects of the reading; null where it does not know the dimension
   * @param unknown probability of the unknown
   * @param confidence what counts as settled
   */
  static Outlook of(
      double[] probabilities,
      @org.jspecify.annotations.Nullable Expected[] models,
      double unknown,
      double confidence) {
    int n = 0;
    for (int k = 0; k < models.length; k++) {
      n += models[k] != null && probabilities[k] > NEGLIGIBLE ? 1 : 0;
    }
    double[] chance = new double[n];
    Expected[] expected = new Expected[n];
    double broad = unknown;
    double broadDoubt = plogp(unknown);
    int i = 0;
    for (int k = 0; k < models.length; k++) {
      Expected model = models[k];
      if (model == null) {
        broad += probabilities[k];
        broadDoubt += plogp(probabilities[k]);
      } else if (probabilities[k] > NEGLIGIBLE) {
        chance[i] = probabilities[k];
        expected[i++] = model;
      }
    }
    Information information =
        new Information(chance, expected, broad, broadDoubt - plogp(broad), confidence);
    information.integrate();
    return new Outlook(information.entropy, information.settled);
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
    return p > 0.0 ? -p * Math.log(p) / Math.log(2.0) : 0.0;
  }

  private static List<double[]> pieces(Expected[] expected) {
    double[] cuts = new double[expected.length * (2 * SHOULDERS.length + 2)];
    int n = 0;
    for (Expected model : expected) {
      for (double shoulder : SHOULDERS) {
        cuts[n++] = model.low - shoulder * model.sigma;
        cuts[n++] = model.high + shoulder * model.sigma;
      }
      cuts[n++] = model.low - model.reach();
      cuts[n++] = model.high + model.reach();
    }
    java.util.Arrays.sort(cuts);
    List<double[]> pieces = new ArrayList<>();
    for (int i = 1; i < n; i++) {
      double middle = 0.5 * (cuts[i - 1] + cuts[i]);
      for (Expected model : expected) {
        if (cuts[i] > cuts[i - 1] && reaches(model, middle)) {
          pieces.add(new double[] {cuts[i - 1], cuts[i]});
          break;
        }
      }
    }
    return pieces;
  }

  private static boolean reaches(Expected model, double y) {
    return y > model.low - model.reach() && y < model.high + model.reach();
  }

  private void integrate() {
    double[] w = new double[expected.length];
    for (double[] piece : pieces) {
      double half = 0.5 * (piece[1] - piece[0]);
      double middle = 0.5 * (piece[1] + piece[0]);
      for (int i = 0; i < NODES; i++) {
        add(middle + half * NODE[i], half * WEIGHT[i], w);
      }
    }
  }

  private void add(double y, double weight, double[] w) {
    double broad = broadChance * broadDensity;
    double total = broad;
    double largest = 0.0;
    for (int k = 0; k < w.length; k++) {
      w[k] = reaches(expected[k], y) ? chance[k] * Math.exp(expected[k].logDensity(y)) : 0.0;
      total += w[k];
      largest = Math.max(largest, w[k]);
    }
    double doubt = plogp(broad / total);
    for (double share : w) {
      doubt += plogp(share / total);
    }
    entropy += weight * (total * doubt + broadDensity * broadDoubt);
    if (largest >= confidence * total) {
      settled += weight * total;
    }
  }
}
