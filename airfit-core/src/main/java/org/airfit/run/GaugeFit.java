package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.airfit.internal.Statistics;

/** One explanation held against readings: how probable it lets them be, at which value of its unknown, how they fit. */
final class GaugeFit {

  private static final double TAIL = 0.025;

  private final Suspect suspect;
  private final GaugeGrid grid;
  private final double prior;
  private final String wrong;
  private final int unknowns;

  private final List<Double> values = new ArrayList<>();
  private final List<Double> logs = new ArrayList<>();
  private double best = Double.NEGATIVE_INFINITY;
  private double leastChiSquare = Double.POSITIVE_INFINITY;
  private double[] bestRow = {};
  private double evidence = Double.NEGATIVE_INFINITY;
  private double offset;
  private double offsetDeviation;

  GaugeFit(Suspect suspect, GaugeGrid grid, double prior, int unknowns) {
    this.suspect = suspect;
    this.grid = grid;
    this.prior = prior;
    this.wrong = suspect.kind() == SuspectKind.GAUGE ? suspect.place() : "";
    this.unknowns = unknowns;
  }

  Suspect suspect() {
    return suspect;
  }

  GaugeGrid grid() {
    return grid;
  }

  String wrong() {
    return wrong;
  }

  /** Holds it against readings; the same readings once. */
  GaugeFit against(GaugePlaces places) {
    int n = places.size();
    grid.visit((x, row) -> {
      double[] root = places.covariance(grid, row, wrong);
      double logRoot = GaugeKernels.root(root, n);
      double[] scaled = places.residuals(grid, row);
      GaugeKernels.solveForward(root, n, scaled);
      double chiSquare = GaugeKernels.product(scaled, scaled);
      double log = -0.5 * chiSquare - logRoot - n * Statistics.LN_SQRT_TWO_PI;
      values.add(x);
      logs.add(log);
      if (log > best) {
        best = log;
        bestRow = row;
        leastChiSquare = chiSquare;
        if (!wrong.isEmpty()) {
          findOffset(places, root, scaled);
        }
      }
    });
    double sum = 0.0;
    for (double log : logs) {
      sum += Math.exp(log - best);
    }
    evidence = best + Math.log(sum / logs.size());
    return this;
  }

  /** The error of the gauge that is wrong: the mean and deviation of it where the readings are known. */
  private void findOffset(GaugePlaces places, double[] root, double[] scaled) {
    int n = places.size();
    double[] with = new double[n];
    double variance = 0.0;
    for (int i = 0; i < n; i++) {
      variance = Math.max(variance, places.ofWrong(i, i, wrong));
    }
    for (int i = 0; i < n; i++) {
      with[i] = places.ofWrong(i, i, wrong);
    }
    GaugeKernels.solveForward(root, n, with);
    offset = GaugeKernels.product(with, scaled);
    offsetDeviation =
        Math.sqrt(Math.max(0.0, variance - GaugeKernels.product(with, with)));
  }

  /** Whether any value of its unknown matters in this run. */
  boolean isPossible() {
    return !logs.isEmpty();
  }

  /** The logarithm of its probability, but for what all explanations share. */
  double logWeight() {
    return Math.log(prior) + evidence;
  }

  double prior() {
    return prior;
  }

  /** The chance of readings that fit worse, at the value that fits best; empty where no reading is left to test by. */
  OptionalDouble fit(int readings) {
    int left = readings - unknowns;
    return left < 1
        ? OptionalDouble.empty()
        : OptionalDouble.of(Statistics.chiSquareAbove(leastChiSquare, left));
  }

  double[] bestRow() {
    return bestRow;
  }

  /** The weight of each row that was visited, of all of them 1. */
  double[] weights() {
    double[] weights = new double[logs.size()];
    double sum = 0.0;
    for (int i = 0; i < weights.length; i++) {
      weights[i] = Math.exp(logs.get(i) - best);
      sum += weights[i];
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= sum;
    }
    return weights;
  }

  /** The least, middle and most of its unknown, as likely below as above; of a gauge that is wrong of its error [Pa]. */
  double[] range() {
    if (!wrong.isEmpty()) {
      double reach = Statistics.normalScore(TAIL) * offsetDeviation;
      return new double[] {offset - reach, offset, offset + reach};
    }
    double[] weights = weights();
    // rows of one value may be many: of an unmarked element as well
    TreeMap<Double, Double> byValue = new TreeMap<>();
    for (int i = 0; i < weights.length; i++) {
      byValue.merge(values.get(i), weights[i], Double::sum);
    }
    return new double[] {
      quantile(byValue, TAIL), quantile(byValue, 0.5), quantile(byValue, 1.0 - TAIL)
    };
  }

  /** Where the sum of the weights up to it is a share; each weight spread evenly to half the way to its neighbours. */
  private static double quantile(TreeMap<Double, Double> weights, double share) {
    double below = 0.0;
    double last = weights.firstKey();
    double edge = last;
    for (Map.Entry<Double, Double> each : weights.entrySet()) {
      double value = each.getKey();
      Double next = weights.higherKey(value);
      double end = next == null ? value : 0.5 * (value + next);
      if (below + each.getValue() >= share) {
        return each.getValue() > 0.0
            ? edge + (end - edge) * ((share - below) / each.getValue())
            : value;
      }
      below += each.getValue();
      edge = end;
      last = value;
    }
    return last;
  }
}
