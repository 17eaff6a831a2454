package org.airfit.plant;

import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * A regulator whose outlet pressure droops in a straight line as the flow rises.
 *
 * <pre>
 *   p = p0 − (p0 − p1) ṁ/ṁ1
 * </pre>
 *
 * <p>p0 is what it holds while nothing flows, p1 what it still holds at the flow ṁ1. Two points of the maker's flow curve, or two readings of a gauge, give the line; it is taken
 * on beyond ṁ1, where the real curve bends down. The line between stated points is an approximation of our own.
 *
 * @param still the air behind it while nothing flows
 * @param flow a flow, above 0
 * @param pressure the pressure it holds at that flow, at most that of {@code still}
 */
public record Regulator(AirState still, FreeAirFlow flow, AbsolutePressure pressure)
    implements Supply {

  private static final Source SOURCE =
      Source.derived("straight line through the two stated points of the regulator");

  /**
   * Checks the components.
   *
   * @param still the air behind it while nothing flows
   * @param flow a flow, above 0
   * @param pressure the pressure it holds at that flow, at most that of {@code still}
   */
  public Regulator {
    Objects.requireNonNull(still, "still");
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(pressure, "pressure");
    if (!(flow.cubicMetresPerSecond() > 0.0)) {
      throw new IllegalArgumentException(
          "flow of the second point of a regulator must be above 0, was " + flow);
    }
    if (pressure.compareTo(still.pressure()) > 0) {
      throw new IllegalArgumentException(
          "pressure of a regulator under flow must be at most that without flow, "
              + still.pressure() + ", was " + pressure);
    }
  }

  @Override
  public double pascals(double massFlow) {
    double p0 = still.pressure().pascals();
    double left =
        p0 - (p0 - pressure.pascals()) * (massFlow / flow.massFlow().kilogramsPerSecond());
    return left > 0.0 ? left : Double.NaN;
  }

  @Override
  public double largest() {
    double p0 = still.pressure().pascals();
    double droop = p0 - pressure.pascals();
    return droop > 0.0
        ? flow.massFlow().kilogramsPerSecond() * (p0 / droop)
        : Double.POSITIVE_INFINITY;
  }

  @Override
  public double slope(double massFlow) {
    return -((still.pressure().pascals() - pressure.pascals())
        / flow.massFlow().kilogramsPerSecond());
  }

  @Override
  public Working working(MassFlow wanted, UnitSystem units) {
    double p = pascals(wanted.kilogramsPerSecond());
    Working.Builder working = Working.titled("Pressure behind the regulator");
    if (!(p > 0.0)) {
      return working
          .note("At "
              + units.massFlow("ṁ", "\\dot m", wanted.kilogramsPerSecond(), 4).quantity()
              + " nothing would be left of the "
              + still.pressure().format(units.pressureUnit())
              + " it is set to.")
          .build();
    }
    if (wanted.compareTo(flow.massFlow()) > 0) {
      working.note("The flow lies beyond the stated point of "
          + units
              .massFlow("ṁ1", "\\dot m_1", flow.massFlow().kilogramsPerSecond(), 4)
              .quantity()
          + ": the straight line is too kind there.");
    }
    return working
        .step(
            "Droop",
            "⟨p⟩ = ⟨p0⟩ − (⟨p0⟩ − ⟨p1⟩) × ⟨ṁ⟩ / ⟨ṁ1⟩",
            "⟨p⟩ = ⟨p0⟩ - (⟨p0⟩ - ⟨p1⟩) \\frac{⟨ṁ⟩}{⟨ṁ1⟩}",
            List.of(
                units.saidPressure("p0", "p_0", still.pressure().pascals(), 9),
                units.saidPressure("p1", "p_1", pressure.pascals(), 9),
                units.massFlow("ṁ", "\\dot m", wanted.kilogramsPerSecond(), 8),
                units.massFlow("ṁ1", "\\dot m_1", flow.massFlow().kilogramsPerSecond(), 8)),
            units.saidPressure("p", "p", p, 6),
            SOURCE)
        .build();
  }
}
