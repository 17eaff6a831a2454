package org.airfit.run;

import java.util.List;
import java.util.stream.IntStream;
import org.airfit.plant.Compressor;
import org.jspecify.annotations.Nullable;

/**
 * What an explanation lets stand at the places of a run, for a grid of values of its unknowns, none to two.
 *
 * <p>For each value there is one row of numbers [Pa]: the pressures, at rest and while the tool runs, and by how much
 * they shift with one standard deviation of each thing that is known roughly: the pressure of the supply, how it holds,
 * the loss of each element, the air of the tool. The rows are computed once by the run itself; between them they are
 * interpolated. Readings are not asked for here.
 */
final class GaugeGrid {

  /** So many values of one unknown are computed, and so many of each of two. */
  private static final int OF_ONE = 33;

  private static final int OF_TWO = 17;

  /** A part of the way between two values that were computed. */
  private static final int FINE_OF_ONE = 6;

  private static final int FINE_OF_TWO = 8;

  /** About the best value so many cells of the fine grid to both sides are parted again, each in so many. */
  private static final int CELLS = 2;

  private static final int PARTS = 9;

  /** Less pressure than this at every place is no fault [Pa]: our choice. */
  static final double LEAST_EFFECT = 1.0e4;

  private static final ToolState[] STATES = {ToolState.AT_REST, ToolState.RUNNING};

  private final GaugeScene scene;
  private final List<GaugeUnknown> unknowns;
  private final GaugeTolerances tolerances;
  private final int[] counts;
  private final int[] fine;
  private final double[] @Nullable [] rows;

  private GaugeGrid(GaugeScene scene, List<GaugeUnknown> unknowns, GaugeTolerances tolerances) {
    this.scene = scene;
    this.unknowns = List.copyOf(unknowns);
    this.tolerances = tolerances;
    int size = unknowns.size();
    this.counts = IntStream.range(0, size).map(i -> size == 1 ? OF_ONE : OF_TWO).toArray();
    this.fine =
        IntStream.range(0, size).map(i -> size == 1 ? FINE_OF_ONE : FINE_OF_TWO).toArray();
    this.rows = new double[IntStream.of(counts).reduce(1, (a, b) -> a * b)][];
  }

  /**
   * Computes a grid.
   *
   * @param scene the run as it was told
   * @param unknowns none to two; the last is that of the explanation, one before it is that of what is unmarked
   * @param tolerances how well the rest is known
   * @param without the grid without the last unknown, against which its effect counts; null where any value counts
   */
  static GaugeGrid of(
      GaugeScene scene,
      List<GaugeUnknown> unknowns,
      GaugeTolerances tolerances,
      @Nullable GaugeGrid without) {
    GaugeGrid grid = new GaugeGrid(scene, unknowns, tolerances);
    for (int i = 0; i < grid.rows.length; i++) {
      double[] x = grid.valuesAt(i);
      GaugeScene changed = scene;
      for (int k = 0; k < x.length; k++) {
        changed = unknowns.get(k).in(changed, x[k]);
      }
      grid.rows[i] = grid.row(changed, without == null ? null : without.rowAt(x));
    }
    return grid;
  }

  private double[] valuesAt(int row) {
    double[] x = new double[counts.length];
    int rest = row;
    for (int k = counts.length - 1; k >= 0; k--) {
      x[k] = value(k, (double) (rest % counts[k]));
      rest /= counts[k];
    }
    return x;
  }

  private double value(int unknown, double at) {
    GaugeUnknown one = unknowns.get(unknown);
    return one.low() + (one.high() - one.low()) * (at / (counts[unknown] - 1));
  }

  /** How many things are known roughly. */
  int shifts() {
    return scene.path().elements().size() + 3;
  }

  private int places() {
    return scene.places();
  }

  /** Where in a row a number stands: of the pressures themselves, or of what shifts them, counted from 1. */
  int index(int shift, ToolState state, int place) {
    int running = state == ToolState.RUNNING ? 1 : 0;
    return (shift * STATES.length + running) * places() + place;
  }

  private int effectIndex() {
    return (shifts() + 1) * STATES.length * places();
  }

  /** One row; null where the air does not get through. */
  private double @Nullable [] row(GaugeScene changed, double @Nullable [] without) {
    double[] row = new double[effectIndex() + 1];
    double[][] now = both(changed);
    if (!isWhole(now)) {
      return null;
    }
    put(row, 0, now, 1.0, null);
    int shift = 1;
    if (!put(row, shift++, level(changed, tolerances.level()), 1.0, now)) {
      return null;
    }
    for (int place = 0; place < places(); place++) {
      int running = index(shift, ToolState.RUNNING, place);
      row[running] =
          row[index(1, ToolState.RUNNING, place)] * (tolerances.holding() / tolerances.level());
    }
    shift++;
    for (int i = 0; i < changed.path().elements().size(); i++, shift++) {
      Element element = changed.path().elements().get(i);
      double part = GaugeUnknown.concerns(unknowns, i) ? 0.0 : tolerances.ofElement(element.name());
      if (part > 0.0 && !putLoss(row, shift, changed, i, part, now)) {
        return null;
      }
    }
    if (tolerances.toolAir() > 0.0 && !putAir(row, shift, changed, now)) {
      return null;
    }
    row[effectIndex()] = without == null ? Double.POSITIVE_INFINITY : effect(row, without);
    return row;
  }

  private double[][] level(GaugeScene changed, double pascals) {
    if (changed.path().supply() instanceof Compressor) {
      double[][] now = both(changed);
      for (double[] each : now) {
        for (int i = 0; i < each.length; i++) {
          each[i] += pascals;
        }
      }
      return now;
    }
    return both(changed.on(GaugeUnknown.raised(changed.path(), pascals)));
  }

  private boolean putLoss(
      double[] row, int shift, GaugeScene changed, int element, double part, double[][] now) {
    return put(row, shift, lossy(changed, element, 1.0 + part), 1.0, now)
        || put(row, shift, lossy(changed, element, 1.0 / (1.0 + part)), -1.0, now);
  }

  private static double[][] lossy(GaugeScene changed, int element, double factor) {
    Element lossy = changed.path().elements().get(element).alone().withLossFactor(factor);
    return both(changed.on(changed.path().with(element, lossy)));
  }

  private boolean putAir(double[] row, int shift, GaugeScene changed, double[][] now) {
    double more = 1.0 + tolerances.toolAir();
    return put(row, shift, both(changed.with(GaugeUnknown.taking(changed.tool(), more))), 1.0, now)
        || put(
            row,
            shift,
            both(changed.with(GaugeUnknown.taking(changed.tool(), 1.0 / more))),
            -1.0,
            now);
  }

  private static double[][] both(GaugeScene scene) {
    return new double[][] {scene.pressures(STATES[0]), scene.pressures(STATES[1])};
  }

  private static boolean isWhole(double[][] pressures) {
    for (double[] each : pressures) {
      for (double pascals : each) {
        if (!(pascals >= 0.0)) {
          return false;
        }
      }
    }
    return true;
  }

  /** Puts pressures, or their differences, into a row; not where the air does not get through. */
  private boolean put(
      double[] row, int shift, double[][] pressures, double sign, double @Nullable [][] now) {
    if (!isWhole(pressures)) {
      return false;
    }
    for (int s = 0; s < STATES.length; s++) {
      for (int place = 0; place < places(); place++) {
        row[index(shift, STATES[s], place)] =
            sign * (pressures[s][place] - (now == null ? 0.0 : now[s][place]));
      }
    }
    return true;
  }

  private double effect(double[] row, double[] without) {
    double most = 0.0;
    for (ToolState state : STATES) {
      for (int place = 0; place < places(); place++) {
        int at = index(0, state, place);
        most = Math.max(most, Math.abs(row[at] - without[at]));
      }
    }
    return most;
  }

  /** The row at values of the unknowns, of which more may be given than there are here; null where there is none. */
  private double @Nullable [] rowAt(double[] x) {
    if (counts.length == 0) {
      return rows[0];
    }
    GaugeUnknown one = unknowns.get(0);
    double at = (x[0] - one.low()) / (one.high() - one.low()) * (counts[0] - 1);
    int below = Math.min(counts[0] - 2, (int) at);
    return between(rows[below], rows[below + 1], at - below);
  }

  private static double @Nullable [] between(
      double @Nullable [] one, double @Nullable [] other, double part) {
    if (one == null || other == null) {
      return null;
    }
    if (part <= 0.0 || part >= 1.0) {
      return part <= 0.0 ? one : other;
    }
    double[] row = new double[one.length];
    for (int i = 0; i < row.length; i++) {
      row[i] = (1.0 - part) * one[i] + part * other[i];
    }
    return row;
  }

  /** Takes the rows one after another. */
  interface Visitor {
    /**
     * Takes a row.
     *
     * @param x the value of the last unknown; NaN where there is none
     * @param row the numbers
     */
    void visit(double x, double[] row);
  }

  /** The width of a cell of the fine grid in the last unknown. */
  double cell() {
    int last = counts.length - 1;
    GaugeUnknown one = unknowns.get(last);
    return (one.high() - one.low()) / ((counts[last] - 1) * fine[last]);
  }

  /** Visits the fine grid, row by row, where the effect counts. */
  void visit(Visitor visitor) {
    if (counts.length == 0) {
      double[] only = rows[0];
      if (only != null) {
        visitor.visit(Double.NaN, only);
      }
      return;
    }
    int last = counts.length - 1;
    int steps = (counts[last] - 1) * fine[last];
    for (int i = 0; i <= steps; i++) {
      visitAt((double) i / fine[last], visitor);
    }
  }

  /** Whether a value lies in the cells that are parted about another. */
  boolean isNear(double x, double centre) {
    return Math.abs(x - centre) < (CELLS + 0.5) * cell();
  }

  /** The share of a cell that each row near a value counts for. */
  static double partOfCell() {
    return 1.0 / PARTS;
  }

  /** Visits the cells about a value of the last unknown, each in parts. */
  void visitNear(double centre, Visitor visitor) {
    int last = counts.length - 1;
    GaugeUnknown one = unknowns.get(last);
    int all = (2 * CELLS + 1) * PARTS;
    for (int i = 0; i < all; i++) {
      double x = centre + cell() * ((i + 0.5) / PARTS - (CELLS + 0.5));
      if (x >= one.low() && x <= one.high()) {
        visitAt((x - one.low()) / (one.high() - one.low()) * (counts[last] - 1), visitor);
      }
    }
  }

  private void visitAt(double at, Visitor visitor) {
    int last = counts.length - 1;
    int below = Math.min(counts[last] - 2, (int) at);
    int outer = last == 0 ? 1 : (counts[0] - 1) * fine[0] + 1;
    for (int o = 0; o < outer; o++) {
      double[] row = last == 0
          ? between(rows[below], rows[below + 1], at - below)
          : bilinear((double) o / fine[0], below, at - below);
      if (row != null && row[effectIndex()] >= LEAST_EFFECT) {
        visitor.visit(value(last, at), row);
      }
    }
  }

  private double @Nullable [] bilinear(double first, int below, double part) {
    int under = Math.min(counts[0] - 2, (int) first);
    int n = counts[1];
    double[] low = between(rows[under * n + below], rows[under * n + below + 1], part);
    double[] high = between(rows[(under + 1) * n + below], rows[(under + 1) * n + below + 1], part);
    return between(low, high, first - under);
  }
}
