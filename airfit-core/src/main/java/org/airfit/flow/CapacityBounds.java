package org.airfit.flow;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;

/** The ends of a {@link CapacityRange}, whose {@link CapacityRange#spanning} tells why they bound. */
final class CapacityBounds {

  /** What rounding may add to the width of a range [-]. */
  private static final double ROUNDING = 1.0e-12;

  private CapacityBounds() {}

  private static double c(FlowCoefficients figures) {
    return figures.conductance().cubicMetresPerSecondPascal();
  }

  /** Whether the curve is the ellipse of the usual index through no flow without a drop. */
  private static boolean isPlain(FlowCoefficients figures) {
    return figures.subsonicIndex() == 0.5 && figures.crackingPressure().pascals() == 0.0;
  }

  /** w of an end of conductance c that has the κ of another: (1 − b)(c/C)². */
  private static double width(FlowCoefficients figures, double c) {
    double ratio = c / c(figures);
    return (1.0 - figures.criticalPressureRatio()) * ratio * ratio;
  }

  static FlowCoefficients least(List<FlowCoefficients> all) {
    double c = least(all, CapacityBounds::c);
    return isPlain(all)
        ? plain(c, greatest(all, figures -> width(figures, c)), all)
        : of(
            c,
            least(all, FlowCoefficients::criticalPressureRatio),
            greatest(all, FlowCoefficients::subsonicIndex),
            greatest(all, figures -> figures.crackingPressure().pascals()));
  }

  static FlowCoefficients most(List<FlowCoefficients> all) {
    double c = greatest(all, CapacityBounds::c);
    return isPlain(all)
        ? plain(c, least(all, figures -> width(figures, c)), all)
        : of(
            c,
            greatest(all, FlowCoefficients::criticalPressureRatio),
            least(all, FlowCoefficients::subsonicIndex),
            least(all, figures -> figures.crackingPressure().pascals()));
  }

  private static boolean isPlain(List<FlowCoefficients> all) {
    return all.stream().allMatch(CapacityBounds::isPlain);
  }

  /** An end that is one of the capacities is that one to its last digit. */
  private static FlowCoefficients plain(double c, double width, List<FlowCoefficients> all) {
    return all.stream()
        .filter(figures -> c(figures) == c && 1.0 - figures.criticalPressureRatio() == width)
        .findFirst()
        .orElseGet(() -> of(c, 1.0 - width, 0.5, 0.0));
  }

  private static FlowCoefficients of(double c, double b, double m, double cracking) {
    return new FlowCoefficients(
        SonicConductance.ofCubicMetresPerSecondPascal(c), b, m, PressureDrop.ofPascals(cracking));
  }

  private static double least(
      List<FlowCoefficients> all, ToDoubleFunction<FlowCoefficients> figure) {
    return all.stream().mapToDouble(figure).min().orElseThrow();
  }

  private static double greatest(
      List<FlowCoefficients> all, ToDoubleFunction<FlowCoefficients> figure) {
    return all.stream().mapToDouble(figure).max().orElseThrow();
  }

  /** Whether one passes at most what the other passes between any two pressures, as far as the figures prove it. */
  static boolean isAtMost(FlowCoefficients one, FlowCoefficients other) {
    if (isPlain(one) && isPlain(other)) {
      // κ of the one is at most that of the other: (1 − b)(C/C′)² against 1 − b′
      return c(one) <= c(other)
          && width(one, c(other)) >= (1.0 - other.criticalPressureRatio()) * (1.0 - ROUNDING);
    }
    return c(one) <= c(other)
        && one.criticalPressureRatio() <= other.criticalPressureRatio()
        && one.subsonicIndex() >= other.subsonicIndex()
        && one.crackingPressure().compareTo(other.crackingPressure()) >= 0;
  }
}
