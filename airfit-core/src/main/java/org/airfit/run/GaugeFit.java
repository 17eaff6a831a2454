package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.airfit.internal.Statistics;
import org.jspecify.annotations.Nullable;

/** One explanation held against readings: how probable it lets them be, at which value of its unknown, how they fit. */
final class GaugeFit {

  private static final double TAIL = 0.025;

  private final Suspect suspect;
  private final GaugeGrid grid;
  private final double prior;
  private final String wrong;
  private final int unknowns;

  /** A row less probable by this factor is not kept, the value of its unknown is. */
  private static final double KEPT = 8.0;

  /** One row that was visited. */
  static final class Node {
    private final double x;
    private final double log;
    private final double width;
    private final double @Nullable [] row;

    /**
     * Notes a row.
     *
     * @param x the value of the last unknown
     * @param log how probable the readings are, as a logarithm
     * @param width the share of a cell that it counts for
     * @param row the row, where it is worth keeping
     */
    Node(double x, double log, double width, double @Nullable [] row) {
      this.x = x;
      this.log = log;
      this.width = width;
      this.row = row;
    }

    double width() {
      return width;
    }

    double @Nullable [] row() {
      return row;
    }
  }

  private final List<Node> nodes = new ArrayList<>();
  private double best = Double.NEGATIVE_INFINITY;
  private double leastChiSquare = Double.POSITIVE_INFINITY;
  private double[] bestRow = {};
  private double evidence = Double.NEGATIVE_INFINITY;
  private double bestX = Double.NaN;
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
    grid.visit((x, row) -> hold(places, x, row, 1.0));
    if (!nodes.isEmpty() && !Double.isNaN(nodes.get(0).x)) {
      double centre = bestX;
      nodes.removeIf(node -> grid.isNear(node.x, centre));
      grid.visitNear(centre, (x, row) -> hold(places, x, row, GaugeGrid.partOfCell()));
    }
    double sum = 0.0;
    double width = 0.0;
    for (Node node : nodes) {
      sum += node.width * Math.exp(node.log - best);
      width += node.width;
    }
    evidence = best + Math.log(sum / width);
    return this;
  }

  private void hold(GaugePlaces places, double x, double[] row, double width) {
    int n = places.size();
    double[] root = places.covariance(grid, row, wrong);
    double logRoot = GaugeKernels.root(root, n);
    double[] scaled = places.residuals(grid, row);
    GaugeKernels.solveForward(root, n, scaled);
    double chiSquare = GaugeKernels.product(scaled, scaled);
    double log = -0.5 * chiSquare - logRoot - n * Statistics.LN_SQRT_TWO_PI;
    if (log > best) {
      best = log;
      bestX = x;
      bestRow = row;
      leastChiSquare = chiSquare;
      if (!wrong.isEmpty()) {
        findOffset(places, root, scaled);
      }
    }
    nodes.add(new Node(x, log, width, log > best - KEPT ? row : null));
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
    offsetDeviation = Math.sqrt(Math.max(0.0, variance - GaugeKernels.product(with, with)));
  }

  /** Whether any value of its unknown matters in this run. */
  boolean isPossible() {
    return !nodes.isEmpty();
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

  /** The rows that were visited. */
  List<Node> nodes() {
    return nodes;
  }

  /** The weight of a row beside that of the most probable [-]. */
  double weight(Node node) {
    return node.width * Math.exp(node.log - best);
  }

  /** The least, middle and most of its unknown, as likely below as above; of a gauge that is wrong of its error [Pa]. */
  double[] range() {
    if (!wrong.isEmpty()) {
      double reach = Statistics.normalScore(TAIL) * offsetDeviation;
      return new double[] {offset - reach, offset, offset + reach};
    }
    // rows of one value may be many: of an unmarked element as well
    SortedMap<Double, double[]> byValue = new TreeMap<>();
    double sum = 0.0;
    for (Node node : nodes) {
      double weight = weight(node);
      sum += weight;
      double[] one = byValue.computeIfAbsent(node.x, any -> new double[] {0.0, node.width});
      one[0] += weight;
    }
    return new double[] {
      quantile(byValue, TAIL * sum),
      quantile(byValue, 0.5 * sum),
      quantile(byValue, (1.0 - TAIL) * sum)
    };
  }

  /** Where the sum of the weights up to it is a part of them; each weight spread evenly over its own cell. */
  private double quantile(SortedMap<Double, double[]> weights, double part) {
    double below = 0.0;
    for (Map.Entry<Double, double[]> each : weights.entrySet()) {
      double weight = each.getValue()[0];
      if (below + weight >= part && weight > 0.0) {
        double cell = grid.cell() * each.getValue()[1];
        return each.getKey() + cell * ((part - below) / weight - 0.5);
      }
      below += weight;
    }
    return weights.lastKey();
  }
}
