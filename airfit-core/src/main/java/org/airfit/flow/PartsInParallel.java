package org.airfit.flow;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;

/**
 * Parts side by side, between the same two pressures.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class PartsInParallel {

  private final List<FlowCapacity> parts;

  private PartsInParallel(List<FlowCapacity> parts) {
    if (parts.isEmpty()) {
      throw new IllegalArgumentException("parts in parallel must be at least 1, was 0");
    }
    this.parts = List.copyOf(parts);
  }

  /**
   * Obtains parts in parallel.
   *
   * @param parts the parts, at least one
   * @return the group
   * @throws IllegalArgumentException if there is no part
   */
  public static PartsInParallel of(List<FlowCapacity> parts) {
    return new PartsInParallel(parts);
  }

  /** {@return the parts} */
  public List<FlowCapacity> parts() {
    return parts;
  }

  /**
   * Finds the flow between two pressures: the sum of what each part passes.
   *
   * @param inlet the air in front of the parts
   * @param outlet the pressure behind them, at most that in front
   * @return the flow; choked only where every part is
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public GroupFlow flow(AirState inlet, AbsolutePressure outlet) {
    MassFlow sum = MassFlow.ofKilogramsPerSecond(0.0);
    boolean choked = true;
    List<FlowAtOutlet> each = new ArrayList<>();
    for (FlowCapacity part : parts) {
      FlowAtOutlet one = part.flow(inlet, outlet);
      sum = sum.plus(one.massFlow());
      choked &= one.regime() == FlowRegime.CHOKED;
      each.add(one);
    }
    FlowRegime regime = choked
        ? FlowRegime.CHOKED
        : sum.kilogramsPerSecond() > 0.0 ? FlowRegime.SUBSONIC : FlowRegime.CLOSED;
    return GroupFlow.sideBySide(inlet, outlet, regime, sum, each);
  }

  /**
   * Estimates one capacity that stands for all.
   *
   * <pre>
   *   C = Σ Ci   C/√(1 − b) = Σ Ci/√(1 − bi)
   * </pre>
   *
   * <p>The rule is recalled from texts on ISO 6358, seen in no source. It is exact where all are choked and for equal
   * parts, and within 0.3 % for parts of b 0.25 and 0.4.
   *
   * @return the capacity, with a subsonic index of 0.5 and no cracking pressure
   */
  public FlowCapacity approximation() {
    double c = 0.0;
    double sum = 0.0;
    for (FlowCapacity part : parts) {
      double one = part.conductance().cubicMetresPerSecondPascal();
      c += one;
      sum += one / Math.sqrt(1.0 - part.criticalPressureRatio());
    }
    double share = c / sum;
    return FlowCapacity.of(
        SonicConductance.ofCubicMetresPerSecondPascal(c), Math.max(0.0, 1.0 - share * share));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PartsInParallel that && parts.equals(that.parts);
  }

  @Override
  public int hashCode() {
    return parts.hashCode();
  }

  /** {@return the parts} */
  @Override
  public String toString() {
    return "in parallel: " + parts;
  }
}
