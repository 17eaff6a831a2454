package org.airfit.run;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.AirKernel;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.OutletAtFlow;
import org.airfit.line.Conduit;
import org.airfit.line.LineLoss;
import org.airfit.line.LossModel;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.working.Worked;

/** One thing on the way from supply to tool. */
public sealed interface Element {

  /** {@return its name in the run} */
  String name();

  /**
   * What one element makes of a flow: either an outlet, or the largest flow it lets through.
   *
   * @param passes whether the flow passes
   * @param outlet the air behind
   * @param largest the flow, or the largest that passes
   * @param inletMach the Mach number at the inlet [-]
   * @param mach the Mach number at the outlet [-]
   * @param warnings what lies outside a model's validity
   * @param working how that was found
   */
  record Outcome(
      boolean passes,
      AirState outlet,
      MassFlow largest,
      double inletMach,
      double mach,
      List<String> warnings,
      Worked working) {}

  /** {@return what it does to the air, on plain doubles; {@link #solve} says the same with all that belongs to it} */
  AirKernel kernel();

  /**
   * Solves it for one flow.
   *
   * @param massFlow the flow
   * @param inlet the air in front
   * @return what it makes of the flow
   */
  Outcome solve(MassFlow massFlow, AirState inlet);

  /**
   * Multiplies its loss, for wear and dirt.
   *
   * @param factor the factor [-], above 0
   * @return this with its loss multiplied
   */
  Element withLossFactor(double factor);

  /**
   * A pipe, tube or hose.
   *
   * @param name its name in the run
   * @param conduit its bore, length, wall and fittings
   * @param model the equation of its loss
   */
  record Line(String name, Conduit conduit, LossModel model) implements Element {

    @Override
    public AirKernel kernel() {
      return AirKernel.of(model.element(conduit));
    }

    @Override
    public Outcome solve(MassFlow massFlow, AirState inlet) {
      LineLoss loss = model.loss(conduit, massFlow, inlet);
      return loss.fold(
          flowing -> new Outcome(
              true,
              flowing.outlet(),
              massFlow,
              flowing.inletMach(),
              flowing.outletMach(),
              flowing.warnings(),
              loss),
          choked -> new Outcome(false, inlet, choked.largest(), 0.0, 0.0, List.of(), loss));
    }

    /** λL/D + ΣK grows by the factor. */
    @Override
    public Element withLossFactor(double factor) {
      return new Line(
          name,
          conduit
              .withLength(Length.ofMetres(factor * conduit.length().metres()))
              .withFittings(factor * conduit.fittingLoss()),
          model);
    }
  }

  /**
   * A coupler, valve, filter or the like.
   *
   * @param name its name in the run
   * @param capacity what it lets through
   */
  record Part(String name, FlowCapacity capacity) implements Element {

    @Override
    public AirKernel kernel() {
      return AirKernel.of(capacity.element());
    }

    @Override
    public Outcome solve(MassFlow massFlow, AirState inlet) {
      OutletAtFlow passage = capacity.passage(massFlow, inlet);
      return passage.fold(
          passes -> passes.outlet().pascals() > 0.0
              ? new Outcome(true, inlet.at(passes.outlet()), massFlow, 0.0, 0.0, List.of(), passage)
              // with b = 0 the whole choked flow passes into a vacuum only
              : new Outcome(false, inlet, massFlow, 0.0, 0.0, List.of(), passage),
          chokes -> new Outcome(false, inlet, chokes.largest(), 0.0, 0.0, List.of(), passage));
    }

    /** Far from choking the drop goes with 1/C². */
    @Override
    public Element withLossFactor(double factor) {
      return new Part(
          name,
          FlowCapacity.of(
                  SonicConductance.ofCubicMetresPerSecondPascal(
                      capacity.conductance().cubicMetresPerSecondPascal() / Math.sqrt(factor)),
                  capacity.criticalPressureRatio())
              .withSubsonicIndex(capacity.subsonicIndex())
              .withCrackingPressure(capacity.crackingPressure()));
    }
  }
}
