package org.airfit.flow;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.airfit.internal.Digits;
import org.airfit.source.Source;

/**
 * C and b of the curve that comes nearest to the points of a rating, and what points and curve leave open.
 *
 * <p>With one b each point tells a C. Two points tell the same C where the curve of that b goes through both. For a
 * point of the smaller share s of its inlet over one of the larger share t
 *
 * <pre>
 *   (C/C′)² ∝ (2w − t)/(2w − s),   w = 1 − b
 * </pre>
 *
 * falls steadily as b rises. So the largest ratio of two C in this order falls with b, the largest in the other order
 * rises, the spread is the larger of both, and it stays below any bound on one interval of b, whose ends a bisection
 * finds.
 */
final class PointsFit {

  /**
   * How much wider than at the best b the spread may be for a b to count as one that fits [-]; our own choice, for
   * sheets print two or three digits.
   */
  static final double FITS_WITHIN = 1.02;

  private static final int HALVINGS = 60;

  private final List<RatedPoint> points;
  private final double leastB;
  private final double mostB;
  private final double residual;

  /** Fits a curve with a b between two. */
  PointsFit(List<RatedPoint> points, double low, double high) {
    this.points =
        points.stream().sorted(Comparator.comparingDouble(RatedPoint::share)).toList();
    double best = firstNotAbove(b -> falling(b) - rising(b), low, high);
    double spread = Math.max(falling(best), rising(best));
    double allowed = FITS_WITHIN * spread;
    this.residual = Math.sqrt(spread) - 1.0;
    this.leastB = firstNotAbove(b -> falling(b) - allowed, low, best);
    this.mostB = lastNotAbove(b -> rising(b) - allowed, best, high);
  }

  /** The largest C of a point over that of one of a larger share [-]: it falls or stays as b rises. */
  private double falling(double b) {
    double most = 1.0;
    double highest = 0.0;
    for (RatedPoint point : points) {
      double c = point.conductance(b);
      most = Math.max(most, highest / c);
      highest = Math.max(highest, c);
    }
    return most;
  }

  /** The largest C of a point over that of one of a smaller share [-]: it rises or stays as b rises. */
  private double rising(double b) {
    double most = 1.0;
    double lowest = Double.POSITIVE_INFINITY;
    for (RatedPoint point : points) {
      double c = point.conductance(b);
      most = Math.max(most, c / lowest);
      lowest = Math.min(lowest, c);
    }
    return most;
  }

  /** The least b at which a falling function is not above 0, and {@code high} if it is above 0 everywhere. */
  private static double firstNotAbove(DoubleUnaryOperator falling, double low, double high) {
    if (falling.applyAsDouble(low) <= 0.0) {
      return low;
    }
    double above = low;
    double below = high;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (above + below);
      if (falling.applyAsDouble(middle) <= 0.0) {
        below = middle;
      } else {
        above = middle;
      }
    }
    return below;
  }

  /** The highest b at which a rising function is not above 0, which it is not at {@code low}. */
  private static double lastNotAbove(DoubleUnaryOperator rising, double low, double high) {
    return high - firstNotAbove(x -> rising.applyAsDouble(high - x), 0.0, high - low);
  }

  /** The capacities of all points at the ends of b, which span all that lie between them. */
  List<FlowCapacity> corners() {
    List<FlowCapacity> corners = new ArrayList<>();
    for (RatedPoint point : points) {
      corners.add(point.capacity(leastB));
      corners.add(point.capacity(mostB));
    }
    return corners;
  }

  /** How far the points lie to either side of the nearest curve [-]. */
  double residual() {
    return residual;
  }

  Source source() {
    return Source.derived("fitted to " + points.size() + " points, which lie within "
        + Digits.significant(100.0 * residual, 2) + " % of one curve; b from "
        + Digits.significant(leastB, 2) + " to " + Digits.significant(mostB, 2));
  }
}
