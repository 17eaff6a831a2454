package org.airfit.line;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Velocity;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/** What becomes of a flow along a conduit: it arrives with a loss, or it is more than the conduit lets through. */
public sealed interface LineLoss {

  /**
   * Handles both cases.
   *
   * @param <R> what is made of them
   * @param flowing what to make of a flow that arrives
   * @param choked what to make of a flow that does not
   * @return what was made
   */
  <R> R fold(
      Function<? super Flowing, ? extends R> flowing, Function<? super Choked, ? extends R> choked);

  /** {@return how the answer was reached} */
  Working working();

  /**
   * The flow arrives.
   *
   * @param model the model that says so
   * @param conduit what the air ran through
   * @param massFlow the flow
   * @param inlet the air as it entered
   * @param outlet the air as it leaves
   * @param drop the pressure lost
   * @param reynolds the Reynolds number on the bore [-], 0 without flow
   * @param friction the friction factor; empty without flow
   * @param inletVelocity the mean velocity at the inlet
   * @param outletVelocity the mean velocity at the outlet
   * @param warnings where the model is near or outside what it holds for
   */
  record Flowing(
      LossModel model,
      Conduit conduit,
      MassFlow massFlow,
      AirState inlet,
      AirState outlet,
      PressureDrop drop,
      double reynolds,
      Optional<FrictionFactor> friction,
      Velocity inletVelocity,
      Velocity outletVelocity,
      List<String> warnings)
      implements LineLoss {

    /** {@return velocity over speed of sound at the inlet [-]} */
    public double inletMach() {
      return inletVelocity.metresPerSecond() / inlet.speedOfSound().metresPerSecond();
    }

    /** {@return velocity over speed of sound at the outlet [-]} */
    public double outletMach() {
      return outletVelocity.metresPerSecond() / outlet.speedOfSound().metresPerSecond();
    }

    @Override
    public <R> R fold(
        Function<? super Flowing, ? extends R> flowing,
        Function<? super Choked, ? extends R> choked) {
      return flowing.apply(this);
    }

    @Override
    public Working working() {
      String title = "Pressure lost along " + conduit + " (" + model.title() + ")";
      if (friction.isEmpty()) {
        return Working.titled(title).note("Nothing flows, so nothing is lost.").build();
      }
      double darcy = friction.get().darcy();
      double k =
          darcy * conduit.length().metres() / conduit.bore().metres() + conduit.fittingLoss();
      Term lambda = Term.of("λ", "\\lambda", darcy, "", 7);
      Term re = Term.of("Re", "\\mathrm{Re}", reynolds, "", 7);
      Term bore = Term.of("D", "D", conduit.bore().metres(), "m", 7);
      Term flow = Term.of("ṁ", "\\dot m", massFlow.kilogramsPerSecond(), "kg/s", 7);
      // as many digits of the pressures as leave four of their difference, and some more of what
      // they follow from
      int digits = Math.min(
          13,
          Math.max(
              6,
              4 - (int) Math.floor(Math.log10(drop.pascals() / inlet.pressure().pascals()))));
      Working.Builder working = Working.titled(title)
          .step(
              "Reynolds number",
              "⟨Re⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩ × ⟨μ⟩)",
              "⟨Re⟩ = \\frac{4 \\cdot ⟨ṁ⟩}{\\pi \\cdot ⟨D⟩ \\cdot ⟨μ⟩}",
              List.of(
                  flow, bore, Term.of("μ", "\\mu", inlet.viscosity().pascalSeconds(), "Pa·s", 7)),
              Term.of("Re", "\\mathrm{Re}", reynolds, "", 6),
              Source.handbook("definition"));
      if (reynolds < FrictionLaw.LAMINAR_BELOW) {
        working.step(
            "Friction factor (Darcy), laminar",
            "⟨λ⟩ = 64 / ⟨Re⟩",
            "⟨λ⟩ = \\frac{64}{⟨Re⟩}",
            List.of(re),
            Term.of("λ", "\\lambda", darcy, "", 6),
            Source.handbook("Hagen and Poiseuille"));
      } else {
        working.solved(
            "Friction factor (Darcy), turbulent",
            "1/√⟨λ⟩ = −2 × log10(⟨ε/D⟩ / 3.7 + 2.51 / (⟨Re⟩ × √⟨λ⟩))",
            "\\frac{1}{\\sqrt{⟨λ⟩}} = -2 \\log_{10}\\left(\\frac{⟨ε/D⟩}{3.7} + \\frac{2.51}{⟨Re⟩ \\sqrt{⟨λ⟩}}\\right)",
            List.of(Term.of("ε/D", "\\varepsilon/D", conduit.relativeRoughness(), "", 6), re),
            Term.of("λ", "\\lambda", darcy, "", 6),
            FrictionLaw.COLEBROOK.source());
      }
      return working
          .step(
              "Resistance",
              "⟨k⟩ = ⟨λ⟩ × ⟨L⟩ / ⟨D⟩ + ⟨ΣK⟩",
              "⟨k⟩ = ⟨λ⟩ \\frac{⟨L⟩}{⟨D⟩} + ⟨ΣK⟩",
              List.of(
                  lambda,
                  Term.of("L", "L", conduit.length().metres(), "m", 7),
                  bore,
                  Term.of("ΣK", "\\Sigma K", conduit.fittingLoss(), "", 6)),
              Term.of("k", "k", k, "", 6),
              Source.handbook("sum of wall friction and fittings"))
          .step(
              "Mass flow per area",
              "⟨G⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩²)",
              "⟨G⟩ = \\frac{4 \\cdot ⟨ṁ⟩}{\\pi \\cdot ⟨D⟩^2}",
              List.of(flow, bore),
              Term.of(
                  "G",
                  "G",
                  massFlow.kilogramsPerSecond() / conduit.area().squareMetres(),
                  "kg/(s m²)",
                  6),
              Source.handbook("definition"))
          .solved(
              "Pressure at the outlet",
              "⟨p1⟩² − ⟨p2⟩² = ⟨G⟩² × ⟨R⟩ × ⟨T⟩ × (⟨k⟩ + 2 × ln(⟨p1⟩ / ⟨p2⟩))",
              "⟨p1⟩^2 - ⟨p2⟩^2 = ⟨G⟩^2 \\cdot ⟨R⟩ \\cdot ⟨T⟩ \\left(⟨k⟩ + 2 \\ln\\frac{⟨p1⟩}{⟨p2⟩}\\right)",
              List.of(
                  Term.of("p1", "p_1", inlet.pressure().pascals(), "Pa", digits + 3),
                  Term.of(
                      "G",
                      "G",
                      massFlow.kilogramsPerSecond() / conduit.area().squareMetres(),
                      "kg/(s m²)",
                      digits + 3),
                  Term.of("R", "R", AirState.GAS_CONSTANT, "J/(kg K)", 8),
                  Term.of("T", "T", inlet.temperature().kelvins(), "K", 6),
                  Term.of("k", "k", k, "", digits + 3)),
              Term.of("p2", "p_2", outlet.pressure().pascals(), "Pa", digits),
              model.source())
          .step(
              "Pressure lost",
              "⟨Δp⟩ = ⟨p1⟩ − ⟨p2⟩",
              "⟨Δp⟩ = ⟨p1⟩ - ⟨p2⟩",
              List.of(
                  Term.of("p1", "p_1", inlet.pressure().bar(), "bar", digits),
                  Term.of("p2", "p_2", outlet.pressure().bar(), "bar", digits)),
              Term.of("Δp", "\\Delta p", drop.bar(), "bar", 3),
              model.source())
          .build();
    }
  }

  /**
   * The conduit chokes: the flow would have to pass the speed of sound.
   *
   * @param model the model that says so
   * @param conduit what the air runs through
   * @param massFlow the flow asked for
   * @param inlet the air as it enters
   * @param largest all that the conduit lets through from this inlet
   * @param chokingPressure the pressure at the outlet at that flow
   */
  record Choked(
      LossModel model,
      Conduit conduit,
      MassFlow massFlow,
      AirState inlet,
      MassFlow largest,
      AbsolutePressure chokingPressure)
      implements LineLoss {

    @Override
    public <R> R fold(
        Function<? super Flowing, ? extends R> flowing,
        Function<? super Choked, ? extends R> choked) {
      return choked.apply(this);
    }

    @Override
    public Working working() {
      double area = conduit.area().squareMetres();
      return Working.titled(conduit + " chokes (" + model.title() + ")")
          .step(
              "Pressure at the outlet where it chokes",
              "⟨p2⟩ = ⟨ṁ⟩ / ⟨A⟩ × √(⟨R⟩ × ⟨T⟩)",
              "⟨p2⟩ = \\frac{⟨ṁ⟩}{⟨A⟩} \\sqrt{⟨R⟩ \\cdot ⟨T⟩}",
              List.of(
                  Term.of("ṁ", "\\dot m_{max}", largest.kilogramsPerSecond(), "kg/s", 7),
                  Term.of("A", "A", area, "m²", 7),
                  Term.of("R", "R", AirState.GAS_CONSTANT, "J/(kg K)", 8),
                  Term.of("T", "T", inlet.temperature().kelvins(), "K", 6)),
              Term.of("p2", "p_2", chokingPressure.pascals(), "Pa", 5),
              model.source())
          .note(
              "The flow asked for is more than the largest, which was found by trial. Isothermal flow chokes at Mach 0.845.")
          .build();
    }
  }
}
