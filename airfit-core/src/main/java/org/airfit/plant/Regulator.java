package org.airfit.plant;

import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/**
 * A regulator whose outlet pressure droops in a straight line as the flow rises.
 *
 * <pre>
 *   p = p0 − (p0 − p1) ṁ/ṁ1
 * </pre>
 *
 * <p>p0 is what it holds while nothing flows, p1 what it still holds at the flow ṁ1. Two points of the maker's flow
 * curve, or two readings of a gauge, give the line; it is taken
 * on beyond ṁ1, where the real curve bends down. The line between stated points is an approximation of our own.
 *
 * <p>A regulator can fail open. What then stands behind it is what stands in front of it, which {@link SupplyRange}
 * asks for.
 *
 * @param still the air behind it while nothing flows
 * @param flow a flow, above 0
 * @param pressure the pressure it holds at that flow, at most that of {@code still}
 * @param inFront the highest pressure that can stand in front of it, at least that of {@code still}; empty where it
 *     was not told
 */
public record Regulator(
    AirState still, FreeAirFlow flow, AbsolutePressure pressure, Optional<AbsolutePressure> inFront)
    implements Supply {

  /**
   * What a regulator droops by at the flow of a job, where nobody told it: from nothing to 1 bar, the loss behind a
   * regulator at which catalogues often print its flow. Common practice, no source.
   */
  public static final Range<PressureDrop> UNTOLD_DROOP =
      new Range<>(PressureDrop.ofPascals(0.0), PressureDrop.ofPascals(1.0e5));

  private static final Source SOURCE =
      Source.derived("straight line through the two stated points of the regulator");

  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol STATED_FLOW = Symbol.of("ṁ1", ValueKind.MASS_FLOW);
  private static final Symbol SET = Symbol.of("p0", ValueKind.SAID_PRESSURE);
  private static final Symbol STATED = Symbol.of("p1", ValueKind.SAID_PRESSURE);
  private static final Symbol HELD = Symbol.of("p", ValueKind.SAID_PRESSURE);

  private static final Formula DROOP = Formula.of(
      "Droop",
      "⟨p⟩ = ⟨p0⟩ − (⟨p0⟩ − ⟨p1⟩) × ⟨ṁ⟩ / ⟨ṁ1⟩",
      SOURCE,
      HELD,
      SET,
      STATED,
      FLOW,
      STATED_FLOW);

  /**
   * Checks the components.
   *
   * @param still the air behind it while nothing flows
   * @param flow a flow, above 0 and not so small that the droop per flow cannot be held in a number
   * @param pressure the pressure it holds at that flow, at most that of {@code still}
   * @param inFront the highest pressure that can stand in front of it, at least that of {@code still}; empty where it
   *     was not told
   * @throws IllegalArgumentException if an argument breaks what is said above
   */
  public Regulator {
    Objects.requireNonNull(still, "still");
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(pressure, "pressure");
    if (Objects.requireNonNull(inFront, "inFront")
        .filter(highest -> highest.compareTo(still.pressure()) < 0)
        .isPresent()) {
      throw new IllegalArgumentException(
          "pressure in front of a regulator must be at least what it is set to, "
              + still.pressure().shown() + ", was " + inFront.get().shown());
    }
    if (!(flow.cubicMetresPerSecond() > 0.0)) {
      throw new IllegalArgumentException(
          "flow of the second point of a regulator must be above 0, was " + flow.shown());
    }
    if (pressure.compareTo(still.pressure()) > 0) {
      throw new IllegalArgumentException(
          "pressure of a regulator under flow must be at most that without flow, "
              + still.pressure().shown() + ", was " + pressure.shown());
    }
    double droop = still.pressure().pascals() - pressure.pascals();
    if (!(droop / flow.massFlow().kilogramsPerSecond() <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException("flow of the second point of a regulator must be so large"
          + " that its droop per flow can be held, was " + flow.shown());
    }
  }

  /**
   * Obtains a regulator of which the pressure in front was not told.
   *
   * @param still the air behind it while nothing flows
   * @param flow a flow, above 0
   * @param pressure the pressure it holds at that flow, at most that of {@code still}
   */
  public Regulator(AirState still, FreeAirFlow flow, AbsolutePressure pressure) {
    this(still, flow, pressure, Optional.empty());
  }

  /**
   * Obtains this set otherwise: it droops by as much at the same flow.
   *
   * @param otherStill the air behind it while nothing flows
   * @return this set so
   * @throws IllegalArgumentException if {@code otherStill} is above what stands in front of it, or nothing would be
   * left at the flow
   */
  public Regulator setTo(AirState otherStill) {
    double droop = still.pressure().pascals() - pressure.pascals();
    return new Regulator(
        otherStill,
        flow,
        AbsolutePressure.ofPascals(otherStill.pressure().pascals() - droop),
        inFront);
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
    double massFlow = Objects.requireNonNull(wanted, "wanted").kilogramsPerSecond();
    double p = pascals(massFlow);
    Working.Builder working = Working.titled("Pressure of the air behind the regulator", units);
    if (Double.isNaN(p)) {
      return working
          .answer("At " + wanted.format(units.massFlowUnit()) + " nothing would be left of the "
              + still.pressure().format(units.pressureUnit()) + " it is set to.")
          .build();
    }
    if (wanted.compareTo(flow.massFlow()) > 0) {
      working.note("The flow lies beyond the stated point of "
          + flow.massFlow().format(units.massFlowUnit())
          + ": the straight line promises too much there.");
    }
    return working
        .given(SET, still.pressure().pascals(), 6)
        .given(STATED, pressure.pascals(), 6)
        .given(FLOW, massFlow, 6)
        .given(STATED_FLOW, flow.massFlow().kilogramsPerSecond(), 6)
        .step(DROOP, p, 4)
        .answer(HELD)
        .build();
  }

  /** {@return the regulator in one line, such as "regulator: 7 bar(a) at rest, 6.5 bar(a) at 20 scfm"} */
  @Override
  public String toString() {
    return "regulator: " + still.pressure().shown() + " at rest, " + pressure.shown() + " at "
        + flow.shown()
        + inFront.map(highest -> ", at most " + highest.shown() + " in front").orElse("");
  }
}
