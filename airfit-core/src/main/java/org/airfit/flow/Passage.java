package org.airfit.flow;

import java.util.List;
import java.util.function.Function;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.Term;
import org.airfit.working.Working;

/** What becomes of a given flow at a part: it passes at a drop, or it is more than the part lets through. */
public sealed interface Passage {

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

  /** {@return how the answer was reached} */
  Working working();

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
      implements Passage {

    @Override
    public <R> R fold(
        Function<? super Passes, ? extends R> passes,
        Function<? super Chokes, ? extends R> chokes) {
      return passes.apply(this);
    }

    @Override
    public Working working() {
      double p1 = inlet.pressure().pascals();
      return Working.titled("Pressure behind a part of " + capacity)
          .include(capacity.chokedWorking(inlet))
          .step(
              "Drop",
              "⟨Δp⟩ = ⟨Δpc⟩ + (⟨p1⟩ × (1 − ⟨b⟩) − ⟨Δpc⟩) × (1 − √(1 − (⟨ṁ⟩ / ⟨ṁ*⟩)^(1/⟨m⟩)))",
              "⟨Δp⟩ = ⟨Δpc⟩ + \\left(⟨p1⟩ (1 - ⟨b⟩) - ⟨Δpc⟩\\right)"
                  + " \\left(1 - \\sqrt{1 - \\left(\\frac{⟨ṁ⟩}{⟨ṁ*⟩}\\right)^{1/⟨m⟩}}\\right)",
              List.of(
                  Term.of("Δpc", "\\Delta p_c", capacity.crackingPressure().bar(), "bar", 6),
                  Term.of("p1", "p_1", p1 / 1.0e5, "bar", 7),
                  Term.of("b", "b", capacity.criticalPressureRatio(), "", 6),
                  Term.of("ṁ", "\\dot m", massFlow.kilogramsPerSecond(), "kg/s", 7),
                  Term.of(
                      "ṁ*",
                      "\\dot m^*",
                      capacity.chokedFlow(inlet).kilogramsPerSecond(),
                      "kg/s",
                      7),
                  Term.of("m", "m", capacity.subsonicIndex(), "", 4)),
              Term.of("Δp", "\\Delta p", drop.bar(), "bar", 4),
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
      implements Passage {

    @Override
    public <R> R fold(
        Function<? super Passes, ? extends R> passes,
        Function<? super Chokes, ? extends R> chokes) {
      return chokes.apply(this);
    }

    @Override
    public Working working() {
      return Working.titled("A part of " + capacity + " chokes")
          .include(capacity.chokedWorking(inlet))
          .note("The flow asked for, " + massFlow.format(MassFlowUnit.KILOGRAM_PER_SECOND)
              + ", is more than that.")
          .build();
    }
  }
}
