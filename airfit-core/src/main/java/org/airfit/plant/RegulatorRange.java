package org.airfit.plant;

import java.util.Objects;
import java.util.Optional;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.VolumeFlowUnit;

/**
 * A regulator as well as it is known.
 *
 * @param capacity what it lets through when its valve stands wide open
 * @param droop between which losses its droop lies; of one with a curve that at the end of the curve
 * @param atFlow the flow at which it droops so, above 0; empty where it droops so whatever flows
 * @param curve what its maker draws; empty where that is not told
 */
public record RegulatorRange(
    CapacityRange capacity,
    Range<PressureDrop> droop,
    Optional<FreeAirFlow> atFlow,
    Optional<RegulatorCurve> curve) {

  /**
   * Checks the components.
   *
   * @param capacity what it lets through when its valve stands wide open
   * @param droop between which losses its droop lies
   * @param atFlow the flow at which it droops so, above 0; empty where it droops so whatever flows
   * @param curve what its maker draws; empty where that is not told
   * @throws IllegalArgumentException if {@code atFlow} is not above 0, or stands beside a curve
   */
  public RegulatorRange {
    Objects.requireNonNull(capacity, "capacity");
    Objects.requireNonNull(droop, "droop");
    Objects.requireNonNull(atFlow, "atFlow");
    Objects.requireNonNull(curve, "curve");
    if (atFlow.isPresent() && curve.isPresent()) {
      throw new IllegalArgumentException(
          "flow at which a regulator droops must not be told beside its" + " curve, was "
              + atFlow.get().shown() + "; the curve tells it at every flow");
    }
    if (atFlow.isPresent() && !(atFlow.get().cubicMetresPerSecond() > 0.0)) {
      throw new IllegalArgumentException("flow at which a regulator droops must be above 0, was "
          + atFlow.get().shown());
    }
  }

  /**
   * Obtains one that droops in a straight line, or whatever flows.
   *
   * @param capacity what it lets through when its valve stands wide open
   * @param droop between which losses its droop lies
   * @param atFlow the flow at which it droops so, above 0; empty where it droops so whatever flows
   * @throws IllegalArgumentException if {@code atFlow} is not above 0
   */
  public RegulatorRange(
      CapacityRange capacity, Range<PressureDrop> droop, Optional<FreeAirFlow> atFlow) {
    this(capacity, droop, atFlow, Optional.empty());
  }

  /**
   * Obtains one with its maker's curve.
   *
   * @param capacity what it lets through when its valve stands wide open
   * @param curve what its maker draws
   * @return the regulator; behind the end of the curve anything from the droop there to all of the setting may be
   */
  public static RegulatorRange ofCurve(CapacityRange capacity, RegulatorCurve curve) {
    return new RegulatorRange(
        capacity, Range.exactly(curve.most()), Optional.empty(), Optional.of(curve));
  }

  /**
   * Obtains one of which nobody told by how much it droops.
   *
   * @param capacity what it lets through when its valve stands wide open
   * @return the regulator, with all of {@link Regulator#UNTOLD_DROOP}
   */
  public static RegulatorRange ofUntoldDroop(CapacityRange capacity) {
    return new RegulatorRange(capacity, Regulator.UNTOLD_DROOP, Optional.empty());
  }

  /** {@return whether all of it is known exactly, whatever flows: behind the end of a curve nothing is} */
  public boolean isExact() {
    return capacity.isExact() && droop.isExact() && curve.isEmpty();
  }

  /**
   * Says whether all of it is known exactly at a flow and all that are less.
   *
   * @param flow the flow
   * @return the same as {@link #isExact()}, but that a curve tells all up to its end
   */
  public boolean isExactUpTo(MassFlow flow) {
    Objects.requireNonNull(flow, "flow");
    return capacity.isExact()
        && droop.isExact()
        && curve.map(drawn -> drawn.tells(flow)).orElse(true);
  }

  /**
   * Tells by how much it droops at most: of one with a curve, behind the end of that, by all that it is set to.
   *
   * @param set what it is set to
   * @return the most
   */
  public PressureDrop mostDroop(GaugePressure set) {
    Objects.requireNonNull(set, "set");
    return curve.isPresent() ? PressureDrop.ofPascals(Math.max(0.0, set.pascals())) : droop.most();
  }

  /**
   * Obtains what it does to the air at worst: its valve lets least through, and it droops most.
   *
   * @param set what it is set to
   * @param atmosphere the pressure around it
   * @return the element; one of which is not known at which flow it droops holds no less than the atmosphere
   * @throws IllegalArgumentException if {@code set} is not above its droop at a flow that is known
   */
  public RegulatorElement atWorst(GaugePressure set, AbsolutePressure atmosphere) {
    return element(capacity.least(), mostDroop(set), set, atmosphere);
  }

  /**
   * Obtains what it does to the air at best: its valve lets most through, and it droops least.
   *
   * @param set what it is set to
   * @param atmosphere the pressure around it
   * @return the element
   * @throws IllegalArgumentException if {@code set} is not above its droop at a flow that is known
   */
  public RegulatorElement atBest(GaugePressure set, AbsolutePressure atmosphere) {
    return element(capacity.most(), droop.least(), set, atmosphere);
  }

  /**
   * Obtains what it does to the air with one capacity and one droop of those that it may have.
   *
   * @param valve what it lets through when its valve stands wide open
   * @param drooping by how much it droops; of one with a curve behind the end of that
   * @param set what it is set to
   * @param atmosphere the pressure around it
   * @return the element; one of which is not known at which flow it droops holds no less than the atmosphere
   * @throws IllegalArgumentException if {@code set} is not above its droop at a flow that is known
   */
  public RegulatorElement element(
      FlowCapacity valve, PressureDrop drooping, GaugePressure set, AbsolutePressure atmosphere) {
    Objects.requireNonNull(drooping, "drooping");
    Objects.requireNonNull(set, "set");
    RegulatorElement element = RegulatorElement.of(
        Objects.requireNonNull(valve, "valve"),
        set.absolute(Objects.requireNonNull(atmosphere, "atmosphere")));
    PressureDrop held = PressureDrop.ofPascals(Math.min(drooping.pascals(), set.pascals()));
    return curve
        .map(drawn -> element.withCurve(drawn, held))
        .or(() -> atFlow.map(flow -> element.withDroop(drooping, flow)))
        .orElseGet(() -> element.withDroopAtAnyFlow(held));
  }

  /** {@return what it lets through and by how much it droops, in one line} */
  @Override
  public String toString() {
    return "regulator of " + capacity
        + curve
            .map(drawn -> ", with the curve " + drawn)
            .orElseGet(() -> ", drooping by "
                + droop.least().inFewestDigits()
                + (droop.isExact() ? "" : " to " + droop.most().inFewestDigits())
                + atFlow
                    .map(flow -> " at " + flow.format(VolumeFlowUnit.LITRE_PER_SECOND))
                    .orElse(" whatever flows"));
  }
}
