package org.airfit.line;

import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;

/**
 * A way to say what pressure a flow loses along a conduit.
 *
 * <p>{@link LossModels} holds those there are. {@link LossComparison} shows several side by side. A model of one's own
 * implements {@link #loss} and what an answer says about it; it answers with {@link LineLoss#flowing}, {@link
 * LineLoss#still} and {@link LineLoss#choked}. Its loss must rise with the flow and with the length, and fall as the
 * bore or the inlet pressure rises. Models compare by value.
 *
 * <p>The bore that a loss allows, instead of the loss of a bore:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.LineLoss;
 * import org.airfit.line.LossModels;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.MassFlow;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.working.UnitSystem;
 *
 * class BoreForALoss {
 *   public static void main(String[] args) {
 *     Conduit pipe = Conduit.of(Length.parse("1 in"), Length.parse("100 m"), Wall.COMMERCIAL_STEEL);
 *     AirState inlet = AirState.of(AbsolutePressure.parse("8 bar(a)"), Temperature.parse("20 °C"));
 *     MassFlow flow = FreeAirFlow.parse("100 L/s ANR").massFlow();
 *     LineLoss loss = LossModels.isothermal().loss(pipe, flow, inlet);
 *     System.out.println(loss.<String>fold(
 *         flowing -> UnitSystem.SI.say(flowing.drop()) + ", Re " + Math.round(flowing.reynolds()),
 *         choked -> "the pipe chokes")); // 3.38 bar, Re 327567
 *   }
 * }
 * }</pre>
 */
public interface LossModel extends LineLoss.Explainer {

  /**
   * Finds the loss along a conduit.
   *
   * @param conduit what the air runs through
   * @param massFlow the flow; 0 is allowed and loses nothing, a flow below 10⁻¹⁰⁰ kg/s counts as none, and one above 10⁹⁰
   *     kg/s passes nowhere
   * @param inlet the air as it enters
   * @return the loss, or that the conduit chokes
   */
  LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet);

  /**
   * Obtains a conduit by this model on plain doubles, for runs and networks.
   *
   * <p>By way of {@link #loss}, unless a model has kernels of its own.
   *
   * @param conduit what the air runs through
   * @return the conduit as an element
   */
  default FlowElement element(Conduit conduit) {
    return new LossElement(
        this,
        Objects.requireNonNull(conduit, "conduit"),
        (massFlow, inlet) -> loss(conduit, massFlow, inlet));
  }

  /**
   * Finds the flow that arrives at a pressure.
   *
   * <p>Asks for the loss 8 times on average and at most 15 times where neither Re 2300 nor choking is near, at most 60
   * times anywhere.
   *
   * @param conduit what the air runs through
   * @param inlet the air as it enters
   * @param outlet the pressure wanted at the outlet, at most that at the inlet
   * @return the largest flow that still has {@code outlet} behind it, to 10⁻¹² of it; where the conduit chokes first,
   *     the
   *     choking flow; no flow where no pressure may be lost
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  default LineSolution flowFor(Conduit conduit, AirState inlet, AbsolutePressure outlet) {
    return LineSearch.flow(this::loss, conduit, inlet, outlet);
  }

  /**
   * Finds the smallest bore through which a flow arrives at a pressure.
   *
   * <p>Asks for the loss 8 times on average and at most 15 times where neither Re 2300 nor choking is near, at most 60
   * times anywhere.
   *
   * @param conduit the conduit with any bore; its length, roughness and fittings are kept
   * @param massFlow the flow
   * @param inlet the air as it enters
   * @param outlet the pressure wanted at the outlet, at most that at the inlet
   * @return the conduit with that bore, to 10⁻¹² of it, or empty where even 10 m is too narrow
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  default Optional<LineSolution> boreFor(
      Conduit conduit, MassFlow massFlow, AirState inlet, AbsolutePressure outlet) {
    return LineSearch.bore(this::loss, conduit, massFlow, inlet, outlet);
  }

  /**
   * Finds the longest conduit through which a flow arrives at a pressure.
   *
   * <p>Asks for the loss 8 times on average and at most 15 times where choking is not near, at most 60 times anywhere.
   *
   * @param conduit the conduit with any length; its bore, roughness and fittings are kept
   * @param massFlow the flow, above 0
   * @param inlet the air as it enters
   * @param outlet the pressure wanted at the outlet, at most that at the inlet
   * @return the conduit with that length, to 10⁻¹² of it and at most 10¹² m, or empty where the fittings alone take
   *     more
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure, or nothing flows and any length
   *     would
   *     do
   */
  default Optional<LineSolution> lengthFor(
      Conduit conduit, MassFlow massFlow, AirState inlet, AbsolutePressure outlet) {
    return LineSearch.length(this::loss, conduit, massFlow, inlet, outlet);
  }
}
