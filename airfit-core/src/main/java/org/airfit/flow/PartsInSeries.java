package org.airfit.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.airfit.air.AirState;
import org.airfit.internal.RootFinder;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;

/**
 * Parts the air passes one after the other.
 *
 * <p>C and b of parts do not add. The exact way is to go from part to part, which {@link #flow} does; the order
 * counts as soon as one of them chokes.
 *
 * <p>Two couplings in a row, part by part and as one:
 *
 * <pre>{@code
 * import java.util.List;
 * import org.airfit.flow.FlowCapacity;
 * import org.airfit.flow.PartsInSeries;
 * import org.airfit.quantity.SonicConductance;
 * import org.airfit.working.UnitSystem;
 *
 * class TwoInARow {
 *   public static void main(String[] args) {
 *     FlowCapacity coupling = FlowCapacity.of(SonicConductance.parse("6 dm³/(s·bar)"), 0.3);
 *     FlowCapacity one = PartsInSeries.of(List.of(coupling, coupling)).approximation();
 *     System.out.println(UnitSystem.SI.say(one.conductance())); // 4.762 dm³/(s·bar)
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class PartsInSeries {

  /** Of the flow, as a fraction of the largest: two of a double's last places. */
  private static final double TOLERANCE = 4.0e-16;

  /**
   * Where the pressure behind the last part is higher than asked for by more than this share, the flow no longer
   * depends on it.
   */
  private static final double CHOKED_ABOVE = 1.0e-6;

  /** Less than this is a vacuum, with no air in it to compute with [Pa]. */
  private static final double NOTHING_LEFT = 1.0e-30;

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
   * Finds the flow between two pressures, exactly: the same flow at the same stagnation temperature through each part.
   *
   * <p>Where a part does not open, nothing flows, and behind it the pressure is that of the outlet. Into a vacuum the
   * answer tells nothing of the parts behind it: there is no air at them.
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
    FlowElement all =
        FlowElements.inSeries(parts.stream().map(FlowCapacity::element).toList());
    double p1 = inlet.pressure().pascals();
    double t1 = inlet.temperature().kelvins();
    double viscosity = inlet.viscosity().pascalSeconds();
    double most = parts.get(0).chokedFlow(inlet).kilogramsPerSecond();
    DoubleUnaryOperator missing = flow -> wanted - all.outlet(flow, p1, t1, viscosity);
    double atMost = missing.applyAsDouble(most);
    if (atMost <= 0.0) {
      return result(inlet, outlet, FlowRegime.CHOKED, most);
    }
    double atNone = missing.applyAsDouble(0.0);
    if (!(atNone <= 0.0)) {
      return result(inlet, outlet, FlowRegime.CLOSED, 0.0);
    }
    double found = RootFinder.find(missing, 0.0, atNone, most, atMost, TOLERANCE * most);
    if (found == 0.0) {
      return result(inlet, outlet, FlowRegime.CLOSED, 0.0);
    }
    boolean choked = -missing.applyAsDouble(found) > wanted * CHOKED_ABOVE;
    return result(inlet, outlet, choked ? FlowRegime.CHOKED : FlowRegime.SUBSONIC, found);
  }

  private GroupFlow result(
      AirState inlet, AbsolutePressure outlet, FlowRegime regime, double flow) {
    MassFlow massFlow = MassFlow.ofKilogramsPerSecond(flow);
    List<OutletAtFlow> each = new ArrayList<>();
    List<AbsolutePressure> between = new ArrayList<>();
    AbsolutePressure pressure = inlet.pressure();
    for (int i = 0; i < parts.size(); i++) {
      if (i > 0) {
        between.add(pressure);
      }
      if (pressure.pascals() >= NOTHING_LEFT) {
        OutletAtFlow passage = parts.get(i).passage(massFlow, inlet.at(pressure));
        each.add(passage);
        // a flow that was found passes every part; behind one that does not even open the pressure
        // is that of the outlet
        pressure = passage.fold(OutletAtFlow.Passes::outlet, chokes -> outlet);
      }
    }
    return GroupFlow.inSeries(inlet, outlet, regime, massFlow, between, each);
  }

  /**
   * Estimates one capacity that stands for all.
   *
   * <pre>
   *   1/C³ = Σ 1/Ci³   (1 − b)/C² = Σ (1 − bi)/Ci²
   * </pre>
   *
   * <p>The rule is recalled from texts on ISO 6358, seen in no source. It ignores the order. Where the series chokes
   * it overestimates the flow, by 5 % for two and 6 % for three equal parts; at a drop of a seventh of the inlet
   * pressure it is within 0.7 %.
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
