package org.airfit.flow;

import java.util.List;
import java.util.function.Function;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/** What becomes of a given flow at a part: it passes at a drop, or it is more than the part lets through. */
public sealed interface OutletAtFlow extends Worked {

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

  /**
   * The flow passes.
   *
   * @param capacity the part
   * @param inlet the air in front of it
   * @param massFlow the flow
   * @param outlet the highest pressure behind the part at which it still passes
   * @param drop the drop across the part
   */
  record Passes(
      FlowCapacity capacity,
      AirState inlet,
      MassFlow massFlow,
      AbsolutePressure outlet,
      PressureDrop drop)
      implements OutletAtFlow {

    @Override
    public <R> R fold(
        Function<? super Passes, ? extends R> passes,
        Function<? super Chokes, ? extends R> chokes) {
      return passes.apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("Pressure behind a part of " + capacity)
          .include(capacity.chokedWorking(inlet, units))
          .step(
              "Drop",
              "⟨Δp⟩ = ⟨Δpc⟩ + (⟨p1⟩ × (1 − ⟨b⟩) − ⟨Δpc⟩) × (1 − √(1 − (⟨ṁ⟩ / ⟨ṁ*⟩)^(1/⟨m⟩)))",
              "⟨Δp⟩ = ⟨Δpc⟩ + \\left(⟨p1⟩ (1 - ⟨b⟩) - ⟨Δpc⟩\\right)"
                  + " \\left(1 - \\sqrt{1 - \\left(\\frac{⟨ṁ⟩}{⟨ṁ*⟩}\\right)^{1/⟨m⟩}}\\right)",
              List.of(
                  units.saidPressure(
                      "Δpc", "\\Delta p_c", capacity.crackingPressure().pascals(), 6),
                  units.saidPressure("p1", "p_1", inlet.pressure().pascals(), 7),
                  Term.of("b", "b", capacity.criticalPressureRatio(), "", 6),
                  units.massFlow("ṁ", "\\dot m", massFlow.kilogramsPerSecond(), 7),
                  capacity.chokedTerm(inlet, units, 7),
                  Term.of("m", "m", capacity.subsonicIndex(), "", 4)),
              units.saidPressure("Δp", "\\Delta p", drop.pascals(), 4),
              FlowCapacity.SOURCE)
          .build();
    }
  }

  /**
   * The flow does not pass.
   *
   * @param capacity the part
   * @param inlet the air in front of it
   * @param massFlow the flow asked for
   * @param largest all that the part lets through from this inlet
   */
  record Chokes(FlowCapacity capacity, AirState inlet, MassFlow massFlow, MassFlow largest)
      implements OutletAtFlow {

    @Override
    public <R> R fold(
        Function<? super Passes, ? extends R> passes,
        Function<? super Chokes, ? extends R> chokes) {
      return chokes.apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("A part of " + capacity + " chokes")
          .include(capacity.chokedWorking(inlet, units))
          .note("The flow asked for, "
              + massFlow.format(units.massFlowUnit())
              + ", is more than that.")
          .build();
    }
  }
}
