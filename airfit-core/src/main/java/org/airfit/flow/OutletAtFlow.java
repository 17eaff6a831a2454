package org.airfit.flow;

import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What becomes of a given flow at a part: it passes at a drop, or it is more than the part lets through. {@link
 * FlowCapacity#passage} makes it.
 */
public sealed interface OutletAtFlow extends Worked {

  /** {@return the figures of the part} */
  FlowCoefficients part();

  /** {@return the air in front of it} */
  AirState inlet();

  /** {@return the flow asked for} */
  MassFlow massFlow();

  /** {@return where the air in front lies outside what its model holds for; empty where it holds} */
  default List<String> warnings() {
    return inlet().warnings();
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return where the air in front lies outside what its model holds for; empty where it holds
   */
  default List<String> warnings(UnitSystem units) {
    return inlet().warnings(units);
  }

  /**
   * Handles both cases.
   *
   * @param <R> what is made of them
   * @param passes what to make of a flow that passes
   * @param chokes what to make of a flow that does not
   * @return what was made
   */
  <R> R fold(
      Function<? super Passes, ? extends R> passes, Function<? super Chokes, ? extends R> chokes);

  /** The flow passes. */
  final class Passes implements OutletAtFlow {

    private final FlowCoefficients part;
    private final AirState inlet;
    private final MassFlow massFlow;
    private final AbsolutePressure outlet;
    private final PressureDrop drop;

    Passes(
        FlowCoefficients part,
        AirState inlet,
        MassFlow massFlow,
        AbsolutePressure outlet,
        PressureDrop drop) {
      this.part = part;
      this.inlet = inlet;
      this.massFlow = massFlow;
      this.outlet = outlet;
      this.drop = drop;
    }

    @Override
    public FlowCoefficients part() {
      return part;
    }

    @Override
    public AirState inlet() {
      return inlet;
    }

    @Override
    public MassFlow massFlow() {
      return massFlow;
    }

    /** {@return the highest pressure behind the part at which it still passes} */
    public AbsolutePressure outlet() {
      return outlet;
    }

    /** {@return the drop across the part} */
    public PressureDrop drop() {
      return drop;
    }

    @Override
    public <R> R fold(
        Function<? super Passes, ? extends R> passes,
        Function<? super Chokes, ? extends R> chokes) {
      Objects.requireNonNull(chokes, "chokes");
      return Objects.requireNonNull(passes, "passes").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return PartWorking.passes(part, inlet, massFlow, drop, units);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Passes that
          && part.equals(that.part)
          && inlet.equals(that.inlet)
          && massFlow.equals(that.massFlow)
          && outlet.equals(that.outlet)
          && drop.equals(that.drop);
    }

    @Override
    public int hashCode() {
      return Objects.hash(part, inlet, massFlow, outlet, drop);
    }

    /** {@return the flow, the part and the drop} */
    @Override
    public String toString() {
      return massFlow.shown() + " through " + part + " loses " + drop.shown();
    }
  }

  /** The flow does not pass. */
  final class Chokes implements OutletAtFlow {

    private final FlowCoefficients part;
    private final AirState inlet;
    private final MassFlow massFlow;
    private final MassFlow largest;

    Chokes(FlowCoefficients part, AirState inlet, MassFlow massFlow, MassFlow largest) {
      this.part = part;
      this.inlet = inlet;
      this.massFlow = massFlow;
      this.largest = largest;
    }

    @Override
    public FlowCoefficients part() {
      return part;
    }

    @Override
    public AirState inlet() {
      return inlet;
    }

    @Override
    public MassFlow massFlow() {
      return massFlow;
    }

    /** {@return all that the part lets through from this inlet} */
    public MassFlow largest() {
      return largest;
    }

    @Override
    public <R> R fold(
        Function<? super Passes, ? extends R> passes,
        Function<? super Chokes, ? extends R> chokes) {
      Objects.requireNonNull(passes, "passes");
      return Objects.requireNonNull(chokes, "chokes").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return PartWorking.chokes(part, inlet, massFlow, units);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Chokes that
          && part.equals(that.part)
          && inlet.equals(that.inlet)
          && massFlow.equals(that.massFlow)
          && largest.equals(that.largest);
    }

    @Override
    public int hashCode() {
      return Objects.hash(part, inlet, massFlow, largest);
    }

    /** {@return the flow, the part and what passes} */
    @Override
    public String toString() {
      return massFlow.shown() + " through " + part + " chokes at " + largest.shown();
    }
  }
}
