package org.airfit.run;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.internal.Later;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What one element loses of the pressure on the way to the tool.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ElementLoss implements Worked {

  private record Values(
      String name,
      AbsolutePressure inlet,
      AbsolutePressure outlet,
      PressureDrop regulated,
      double fraction,
      Later<PressureDrop> gain,
      boolean chokes,
      boolean unsettled,
      Later<Element.Explanation> explanation) {}

  private final Values values;

  ElementLoss(
      String name,
      AbsolutePressure inlet,
      AbsolutePressure outlet,
      PressureDrop regulated,
      double fraction,
      Later<PressureDrop> gain,
      boolean chokes,
      boolean unsettled,
      Later<Element.Explanation> explanation) {
    this.values =
        new Values(name, inlet, outlet, regulated, fraction, gain, chokes, unsettled, explanation);
  }

  /** {@return the element} */
  public String name() {
    return values.name;
  }

  /** {@return the pressure in front of it} */
  public AbsolutePressure inlet() {
    return values.inlet;
  }

  /** {@return the pressure behind it} */
  public AbsolutePressure outlet() {
    return values.outlet;
  }

  /** {@return by how much the pressure behind it is lower than in front: what it loses, and what it regulates} */
  public PressureDrop drop() {
    return values.inlet.dropTo(values.outlet);
  }

  /**
   * {@return by how much a regulator takes the pressure down to what it is set to, which is wanted and no loss; 0 of
   * all else, and of a regulator that has less in front than it is set to}
   *
   * <p>That a set pressure is no loss is this project's choice.
   */
  public PressureDrop regulated() {
    return values.regulated;
  }

  /** {@return the pressure it loses, be it a regulator by its droop or by its valve} */
  public PressureDrop lost() {
    return PressureDrop.ofPascals(Math.max(0.0, drop().pascals() - values.regulated.pascals()));
  }

  /** {@return its part of all that is lost on the way [-]; 0 where nothing is lost} */
  public double fraction() {
    return values.fraction;
  }

  /**
   * {@return how much more pressure the tool would have if this element lost nothing; 0 where the flow does not get to
   * the tool}
   *
   * <p>A regulator that loses nothing still holds what it is set to.
   *
   * <p>At the same flow; where an element chokes or friction jumps, and a tool follows the pressure, at the flow that
   * the tool then takes.
   */
  public PressureDrop gain() {
    return values.gain.get();
  }

  /** {@return whether it lets no more through however low the pressure behind it} */
  public boolean chokes() {
    return values.chokes;
  }

  /**
   * {@return whether its flow is at Re 2300, where friction jumps, so that it may lose anything between the laminar and
   * the turbulent loss}
   */
  public boolean unsettled() {
    return values.unsettled;
  }

  /** {@return velocity over speed of sound at the inlet of a line [-]; 0 for what is no line} */
  public double inletMach() {
    return values.explanation.get().inletMach();
  }

  /**
   * {@return velocity over speed of sound at the outlet of a line, before the pressure falls further where it chokes
   * [-]; 0 for what is no line}
   */
  public double outletMach() {
    return values.explanation.get().outletMach();
  }

  /** {@return where the model is near or outside what it holds for} */
  public List<String> warnings() {
    return warnings(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return where the model is near or outside what it holds for
   */
  public List<String> warnings(UnitSystem units) {
    return values.explanation.get().warnings(Objects.requireNonNull(units, "units"));
  }

  @Override
  public Working working(UnitSystem units) {
    return values.explanation.get().working().working(units);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ElementLoss that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the loss in one line, such as "hose: 0.42 bar of 6.8 bar(a)"} */
  @Override
  public String toString() {
    return name() + ": " + Digits.significant(lost().bar(), 3) + " bar of "
        + inlet().format(PressureUnit.BAR);
  }
}
