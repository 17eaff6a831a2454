package org.airfit.plant;

import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * A regulator within a run: behind it stands what it holds, or what its open valve leaves of the pressure in front
 * where that is less.
 *
 * <pre>
 *   p2 = min(p0 − Δp ṁ/ṁ1, what the capacity leaves of p1)
 * </pre>
 *
 * <p>p0 is what it is set to, Δp what it droops by at the flow ṁ1, in a straight line as {@link Regulator} does; where
 * that flow is not known, Δp counts whatever flows. Of one with a {@link RegulatorCurve} the droop is that of the
 * curve, and behind its end, where it is not told, Δp. The capacity is that of its valve when it stands wide open. A
 * regulator can fail open: ratings behind it are judged by what can stand in front of it.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class RegulatorElement implements FlowElement {

  private final FlowCapacity capacity;
  private final AbsolutePressure set;
  private final PressureDrop droop;
  private final Optional<FreeAirFlow> atFlow;
  private final Optional<RegulatorCurve> curve;
  private final FlowElement valve;
  private final double perFlow;

  private RegulatorElement(
      FlowCapacity capacity,
      AbsolutePressure set,
      PressureDrop droop,
      Optional<FreeAirFlow> atFlow,
      Optional<RegulatorCurve> curve) {
    this.curve = curve;
    this.capacity = capacity;
    this.set = set;
    this.droop = droop;
    this.atFlow = atFlow;
    this.valve = capacity.element();
    this.perFlow = atFlow
        .map(flow -> droop.pascals() / flow.massFlow().kilogramsPerSecond())
        .orElse(0.0);
  }

  /**
   * Obtains a regulator that holds its pressure as long as its valve lets the air through.
   *
   * @param capacity what its valve lets through when it stands wide open
   * @param set what it is set to, above 0 and at most 10³⁰ Pa(a)
   * @return the element
   * @throws IllegalArgumentException if there is no air of the pressure {@code set}
   */
  public static RegulatorElement of(FlowCapacity capacity, AbsolutePressure set) {
    Objects.requireNonNull(capacity, "capacity");
    AirState.of(Objects.requireNonNull(set, "set"), Temperature.ofCelsius(20.0)); // refuses it
    return new RegulatorElement(
        capacity, set, PressureDrop.ofPascals(0.0), Optional.empty(), Optional.empty());
  }

  /**
   * Obtains this with a droop.
   *
   * @param drop by how much less than at rest it holds, from 0 to below what it is set to
   * @param flow at which flow, above 0
   * @return this with the droop
   * @throws IllegalArgumentException if {@code flow} is not above 0 or {@code drop} is out of range
   */
  public RegulatorElement withDroop(PressureDrop drop, FreeAirFlow flow) {
    Objects.requireNonNull(drop, "drop");
    Objects.requireNonNull(flow, "flow");
    if (!(flow.cubicMetresPerSecond() > 0.0)) {
      throw new IllegalArgumentException(
          "flow at which a regulator droops must be above 0, was " + flow.shown());
    }
    if (!(drop.pascals() / flow.massFlow().kilogramsPerSecond() <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException("flow at which a regulator droops must be so large that"
          + " its droop per flow can be held, was " + flow.shown());
    }
    requireDroop(drop);
    return new RegulatorElement(capacity, set, drop, Optional.of(flow), Optional.empty());
  }

  /**
   * Obtains this with a droop of which is not known at which flow: it counts whatever flows.
   *
   * @param drop by how much less than at rest it holds, from 0 to below what it is set to
   * @return this with the droop
   * @throws IllegalArgumentException if {@code drop} is out of range
   */
  public RegulatorElement withDroopAtAnyFlow(PressureDrop drop) {
    requireDroop(Objects.requireNonNull(drop, "drop"));
    return new RegulatorElement(capacity, set, drop, Optional.empty(), Optional.empty());
  }

  /**
   * Obtains this with its maker's curve in place of a droop.
   *
   * @param drawn by how much it droops at which flow, whatever it is set to
   * @param beyond by how much it is taken to droop behind the end of the curve, where that is not told, and at most on
   *     it; below what it is set to
   * @return this with the curve
   * @throws IllegalArgumentException if {@code beyond} is out of range
   */
  public RegulatorElement withCurve(RegulatorCurve drawn, PressureDrop beyond) {
    Objects.requireNonNull(drawn, "drawn");
    requireDroop(Objects.requireNonNull(beyond, "beyond"));
    return new RegulatorElement(capacity, set, beyond, Optional.empty(), Optional.of(drawn));
  }

  private void requireDroop(PressureDrop drop) {
    if (!(drop.pascals() >= 0.0 && drop.pascals() < set.pascals())) {
      throw new IllegalArgumentException("droop of a regulator must be in [0, "
          + set.inFewestDigits() + "), was " + drop.inFewestDigits());
    }
  }

  /**
   * Obtains this with another setting.
   *
   * @param pressure what it is set to, above its droop
   * @return this set to {@code pressure}
   * @throws IllegalArgumentException if {@code pressure} is not above the droop
   */
  public RegulatorElement withSet(AbsolutePressure pressure) {
    RegulatorElement other = of(capacity, pressure);
    if (curve.isPresent()) {
      return other.withCurve(curve.get(), droop);
    }
    return atFlow
        .map(flow -> other.withDroop(droop, flow))
        .orElseGet(() -> other.withDroopAtAnyFlow(droop));
  }

  /** {@return what its valve lets through when it stands wide open} */
  public FlowCapacity capacity() {
    return capacity;
  }

  /** {@return what it is set to} */
  public AbsolutePressure set() {
    return set;
  }

  /**
   * {@return by how much less it holds at {@link #atFlow()}, or whatever flows where that is empty; of one with a
   * {@link #curve()} behind the end of that}
   */
  public PressureDrop droop() {
    return droop;
  }

  /** {@return the flow at which it droops so; empty where it droops so whatever flows, or not at all} */
  public Optional<FreeAirFlow> atFlow() {
    return atFlow;
  }

  /** {@return what its maker draws; empty where that is not told} */
  public Optional<RegulatorCurve> curve() {
    return curve;
  }

  /**
   * Says whether it is told what it holds at a flow.
   *
   * @param massFlow the flow
   * @return false behind the end of its curve
   */
  public boolean tells(MassFlow massFlow) {
    Objects.requireNonNull(massFlow, "massFlow");
    return curve.map(drawn -> drawn.tells(massFlow)).orElse(true);
  }

  private double held(double flow) {
    if (curve.isPresent()) {
      double drawn = curve.get().droop(flow);
      return set.pascals()
          - (Double.isNaN(drawn) ? droop.pascals() : Math.min(drawn, droop.pascals()));
    }
    return set.pascals() - (atFlow.isEmpty() ? droop.pascals() : perFlow * flow);
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    double left = valve.outlet(flow, pascals, kelvins, viscosity);
    double held = held(flow);
    return held > 0.0 && left > 0.0 ? Math.min(left, held) : Double.NaN;
  }

  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    double most = valve.largest(pascals, kelvins, viscosity);
    return perFlow > 0.0 ? Math.min(most, set.pascals() / perFlow) : most;
  }

  /**
   * Says whether its valve stands wide open at a flow, so that it loses pressure as any part does and regulates
   * nothing.
   *
   * @param massFlow the flow
   * @param inlet the air in front
   * @return whether the open valve leaves less than what it would hold, or does not let the flow through at all
   */
  public boolean isWideOpen(MassFlow massFlow, AirState inlet) {
    double flow = Objects.requireNonNull(massFlow, "massFlow").kilogramsPerSecond();
    double left = valve.outlet(
        flow,
        Objects.requireNonNull(inlet, "inlet").pressure().pascals(),
        inlet.temperature().kelvins(),
        inlet.viscosity().pascalSeconds());
    return !(left >= held(flow));
  }

  /**
   * Tells how the pressure behind it follows from the flow.
   *
   * @param massFlow the flow
   * @param inlet the air in front
   * @param units the units to show numbers in
   * @return the working
   */
  public Working working(MassFlow massFlow, AirState inlet, UnitSystem units) {
    Objects.requireNonNull(massFlow, "massFlow");
    Objects.requireNonNull(inlet, "inlet");
    double flow = massFlow.kilogramsPerSecond();
    Working.Builder working =
        Working.titled("Pressure behind the regulator", Objects.requireNonNull(units, "units"));
    working.include(capacity.passage(massFlow, inlet).working(units));
    atFlow.ifPresent(at -> working.include(new Regulator(
            inlet.at(set), at, AbsolutePressure.ofPascals(set.pascals() - droop.pascals()))
        .working(massFlow, units)));
    if (curve.isPresent()) {
      working.note("Its maker's curve: " + curve.get().inWords(units) + ". "
          + (tells(massFlow)
              ? "At this flow it droops by "
                  + PressureDrop.ofPascals(set.pascals() - held(flow)).format(units.pressureUnit())
                  + "."
              : "What it holds at this flow, behind the end of the curve, is not told: it counts with "
                  + droop.format(units.pressureUnit()) + " less than it is set to."));
    } else if (atFlow.isEmpty() && droop.pascals() > 0.0) {
      working.note("By how much it droops at this flow is not known: it counts with "
          + droop.format(units.pressureUnit()) + " less than it is set to.");
    }
    double behind = outlet(
        flow,
        inlet.pressure().pascals(),
        inlet.temperature().kelvins(),
        inlet.viscosity().pascalSeconds());
    if (Double.isNaN(behind)) {
      return working
          .answer("It does not let " + massFlow.format(units.massFlowUnit()) + " through.")
          .build();
    }
    String left = AbsolutePressure.ofPascals(behind).format(units.pressureUnit());
    return working
        .answer(
            behind < held(flow)
                ? "Its valve stands wide open and leaves " + left
                    + ", less than what it would hold: it does not regulate."
                : tells(massFlow)
                    ? "It holds " + left + "."
                    : "What it holds is not told; with all that it may droop it holds " + left
                        + ".")
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RegulatorElement that
        && capacity.equals(that.capacity)
        && set.equals(that.set)
        && droop.equals(that.droop)
        && atFlow.equals(that.atFlow)
        && curve.equals(that.curve);
  }

  @Override
  public int hashCode() {
    return Objects.hash(capacity, set, droop, atFlow, curve);
  }

  /** {@return what it is set to and by how much it droops} */
  @Override
  public String toString() {
    if (curve.isPresent()) {
      return "regulator set to " + set.inFull(PressureUnit.BAR) + ", with the curve " + curve.get()
          + ", behind its end drooping by " + droop.inFull(PressureUnit.BAR);
    }
    return "regulator set to " + set.inFull(PressureUnit.BAR)
        + atFlow
            .map(flow -> ", drooping by " + droop.inFull(PressureUnit.BAR) + " at " + flow.shown())
            .orElse(
                droop.pascals() > 0.0
                    ? ", drooping by " + droop.inFull(PressureUnit.BAR) + " whatever flows"
                    : "");
  }
}
