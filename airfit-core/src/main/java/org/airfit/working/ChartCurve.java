package org.airfit.working;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** A curve with its name, and where it jumps: between jumps it rises or falls throughout. */
record ChartCurve(String name, DoubleUnaryOperator function, List<Double> jumps) {

  /** All that the curve has over an interval. */
  Interval over(Interval values) {
    Interval found = ends(values.lo(), values.hi());
    for (double jump : jumps) {
      if (jump > values.lo() && jump <= values.hi()) {
        found = found.with(ends(jump * (1.0 - ChartAxis.KNOWN_TO), jump));
      }
    }
    return found.widened(ChartAxis.KNOWN_TO * Math.max(Math.abs(found.lo()), Math.abs(found.hi())));
  }

  private Interval ends(double from, double to) {
    double one = function.applyAsDouble(from);
    double other = function.applyAsDouble(to);
    return new Interval(Math.min(one, other), Math.max(one, other));
  }
}
