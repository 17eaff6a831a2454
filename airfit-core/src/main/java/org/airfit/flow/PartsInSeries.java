package org.airfit.flow;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.working.Worked;

/**
 * Parts the air passes one after the other.
 *
 * <p>C and b of parts do not add. The exact way is to go from part to part, which {@link #flow} does; the order counts as soon as one of them chokes.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class PartsInSeries {

  private static final int MAX_ITERATIONS = 200;

  /** Where the pressure behind the last part is higher than asked for by more than this share, the flow no longer depends on it. */
  private static final double CHOKED_ABOVE = 1.0e-6;

  private final List<FlowCapacity> parts;

  private PartsInSeries(List<FlowCapacity> parts) {
    if (parts.isEmpty()) {
      throw new IllegalArgumentException("parts in series must be at least 1, was 0");
    }
    this.parts = List.copyOf(parts);
  }

  /**
   * Obtains parts in series.
   *
   * @param parts the parts in the order the air passes them, at least one
   * @return the series
   * @throws IllegalArgumentException if there is no part
   */
  public static PartsInSeries of(List<FlowCapacity> parts) {
    return new PartsInSeries(parts);
  }

  /** {@return the parts in the order the air passes them} */
  public List<FlowCapacity> parts() {
    return parts;
  }

  /**
   * Finds the flow between two pressures, exactly: the same flow at the same stagnation temperature through each part, by halving.
   *
   * @param inlet the air in front of the first part
   * @param outlet the pressure behind the last part, at most that in front
   * @return the flow
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public GroupFlow flow(AirState inlet, AbsolutePressure outlet) {
    double wanted = outlet.pascals();
    if (inlet.pressure().dropTo(outlet).pascals() == 0.0) {
      return result(inlet, outlet, FlowRegime.CLOSED, 0.0);
    }
    double low = 0.0;
    double high = parts.get(0).chokedFlow(inlet).kilogramsPerSecond();
    if (behind(high, inlet) >= wanted) {
      return result(inlet, outlet, FlowRegime.CHOKED, high);
    }
    for (int i = 0; i < MAX_ITERATIONS && high - low > 1.0e-16 * high; i++) {
      double middle = 0.5 * (low + high);
      if (behind(middle, inlet) >= wanted) {
        low = middle;
      } else {
        high = middle;
      }
    }
    if (low == 0.0) {
      return result(inlet, outlet, FlowRegime.CLOSED, 0.0);
    }
    boolean choked = behind(low, inlet) > wanted * (1.0 + CHOKED_ABOVE);
    return result(inlet, outlet, choked ? FlowRegime.CHOKED : FlowRegime.SUBSONIC, low);
  }

  /** The pressure [Pa] behind the last part, or -1 where one of them does not pass the flow. */
  private double behind(double flow, AirState inlet) {
    AirState air = inlet;
    for (FlowCapacity part : parts) {
      double pascals = part.outletPascals(flow, air);
      if (!(pascals > 0.0)) {
        return -1.0;
      }
      air = air.at(AbsolutePressure.ofPascals(pascals));
    }
    return air.pressure().pascals();
  }

  private GroupFlow result(
      AirState inlet, AbsolutePressure outlet, FlowRegime regime, double flow) {
    MassFlow massFlow = MassFlow.ofKilogramsPerSecond(flow);
    List<AbsolutePressure> between = new ArrayList<>();
    List<Worked> each = new ArrayList<>();
    AirState air = inlet;
    for (FlowCapacity part : parts.subList(0, parts.size() - 1)) {
      OutletAtFlow passage = part.passage(massFlow, air);
      each.add(passage);
      // a flow that was found passes every part; what does not even open lets nothing behind it
      // rise
      air = air.at(passage.fold(OutletAtFlow.Passes::outlet, chokes -> outlet));
      between.add(air.pressure());
    }
    each.add(parts.get(parts.size() - 1).passage(massFlow, air));
    return new GroupFlow(inlet, outlet, regime, massFlow, between, false, each);
  }

  /**
   * Estimates one capacity that stands for all.
   *
   * <pre>
   *   1/C³ = Σ 1/Ci³   (1 − b)/C² = Σ (1 − bi)/Ci²
   * </pre>
   *
   * <p>The rule is recalled from texts on ISO 6358, seen in no source. It ignores the order. Where the series chokes it overestimates the flow, by 5 % for two and 6 %
   * for three equal parts; at a drop of a seventh of the inlet pressure it is within 0.7 %.
   *
   * @return the capacity, with a subsonic index of 0.5 and no cracking pressure
   * @throws IllegalArgumentException if the rule gives a b below 0, as it does for many parts with a low b
   */
  public FlowCapacity approximation() {
    double cubes = 0.0;
    double squares = 0.0;
    for (FlowCapacity part : parts) {
      double c = part.conductance().cubicMetresPerSecondPascal();
      cubes += 1.0 / (c * c * c);
      squares += (1.0 - part.criticalPressureRatio()) / (c * c);
    }
    double c = 1.0 / Math.cbrt(cubes);
    return FlowCapacity.of(SonicConductance.ofCubicMetresPerSecondPascal(c), 1.0 - c * c * squares);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PartsInSeries that && parts.equals(that.parts);
  }

  @Override
  public int hashCode() {
    return parts.hashCode();
  }

  /** {@return the parts in order} */
  @Override
  public String toString() {
    return "in series: " + parts;
  }
}
