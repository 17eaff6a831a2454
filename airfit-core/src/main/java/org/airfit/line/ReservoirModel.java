package org.airfit.line;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FannoFlow;
import org.airfit.flow.IsentropicFlow;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/** Adiabatic flow from air at rest; see {@link LossModel#fromReservoir}. */
record ReservoirModel(FrictionLaw law) implements LossModel {

  private static final double G = AirState.HEAT_CAPACITY_RATIO;

  /** The least Mach number looked at: below it speeding the air up takes less than 10⁻¹¹ of its pressure. */
  private static final double SLOW = 1.0e-6;

  private static final int HALVINGS = 200;

  private PipeModel inBore() {
    return new PipeModel(PipeEquation.ADIABATIC, law);
  }

  @Override
  public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
    double flow = massFlow.kilogramsPerSecond();
    if (flow == 0.0) {
      return PipeModel.still(this, conduit, massFlow, inlet);
    }
    double perPsi = flowAtOne(conduit, inlet);
    IsentropicFlow sonic = IsentropicFlow.atMach(1.0);
    if (flow > perPsi * sonic.massFlowFunction()) {
      return choked(conduit, massFlow, inlet);
    }
    double psi = flow / perPsi;
    AirState entry = psi < IsentropicFlow.atMach(SLOW).massFlowFunction()
        ? inlet
        : entered(inlet, IsentropicFlow.subsonicAtMassFlowFunction(psi));
    return inBore()
        .loss(conduit, massFlow, entry)
        .fold(
            flowing -> new LineLoss.Flowing(
                this,
                conduit,
                massFlow,
                entry,
                flowing.outlet(),
                PressureDrop.ofPascals(inlet.pressure().pascals()
                    - entry.pressure().pascals()
                    + flowing.drop().pascals()),
                flowing.reynolds(),
                flowing.friction(),
                flowing.inletVelocity(),
                flowing.outletVelocity(),
                flowing.warnings()),
            more -> choked(conduit, massFlow, inlet));
  }

  /** ṁ/ψ = A p0/√(R T0) [kg/s]. */
  private static double flowAtOne(Conduit conduit, AirState rest) {
    return conduit.area().squareMetres()
        * rest.pressure().pascals()
        / Math.sqrt(AirState.GAS_CONSTANT * rest.temperature().kelvins());
  }

  private static AirState entered(AirState rest, IsentropicFlow flow) {
    return AirState.of(
            AbsolutePressure.ofPascals(flow.pressureRatio() * rest.pressure().pascals()),
            Temperature.ofKelvins(flow.temperatureRatio() * rest.temperature().kelvins()))
        .withViscosity(rest.viscosity());
  }

  /** The largest flow: the inlet Mach number from which friction brings it to Mach 1 at the outlet. By halving in ln M1. */
  private LineLoss choked(Conduit conduit, MassFlow asked, AirState rest) {
    double low = Math.log(SLOW);
    double high = 0.0;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      IsentropicFlow entering = IsentropicFlow.atMach(Math.exp(middle));
      double flow = flowAtOne(conduit, rest) * entering.massFlowFunction();
      double k = PipeModel.resistance(conduit, inBore().friction(conduit, flow, rest));
      if (FannoFlow.atMach(Math.exp(middle)).resistanceLeft() < k) {
        high = middle;
      } else {
        low = middle;
      }
    }
    IsentropicFlow entering = IsentropicFlow.atMach(Math.exp(low));
    return new LineLoss.Choked(
        this,
        conduit,
        asked,
        rest,
        MassFlow.ofKilogramsPerSecond(flowAtOne(conduit, rest) * entering.massFlowFunction()),
        AbsolutePressure.ofPascals(entering.pressureRatio()
            * rest.pressure().pascals()
            / FannoFlow.atMach(entering.mach()).pressureRatio()));
  }

  @Override
  public Working working(LineLoss loss, UnitSystem units) {
    return loss.fold(flowing -> working(flowing, units), choked -> working(choked, units));
  }

  private Working working(LineLoss.Flowing loss, UnitSystem units) {
    String title = PipeWorking.title(loss, units);
    if (loss.reynolds() == 0.0) {
      return PipeWorking.still(title);
    }
    int digits = PipeWorking.digits(loss) + 3;
    double m1 = loss.inletMach();
    double p1 = loss.inlet().pressure().pascals();
    double p0 = loss.outlet().pressure().pascals() + loss.drop().pascals();
    return Working.titled(title)
        .note("The air at rest has been sped up into the bore, where it has the state 1.")
        .step(
            "Mach number where it has entered",
            units.either(
                "⟨M1⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩² × ⟨p1⟩) × √(⟨R⟩ × ⟨T1⟩ / ⟨γ⟩)",
                "⟨M1⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩² × ⟨p1⟩ × 144) × √(⟨R⟩ × ⟨T1⟩ / (⟨γ⟩ × " + UnitSystem.G_C
                    + "))"),
            units.either(
                "⟨M1⟩ = \\frac{4 ⟨ṁ⟩}{\\pi ⟨D⟩^2 \\cdot ⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T1⟩}{⟨γ⟩}}",
                "⟨M1⟩ = \\frac{4 ⟨ṁ⟩}{144 \\pi ⟨D⟩^2 \\cdot ⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T1⟩}{⟨γ⟩ \\cdot "
                    + UnitSystem.G_C + "}}"),
            List.of(
                units.massFlow("ṁ", "\\dot m", loss.massFlow().kilogramsPerSecond(), digits),
                units.length("D", "D", loss.conduit().bore().metres(), digits),
                units.pressure("p1", "p_1", p1, digits),
                PipeWorking.gasConstant(units),
                units.temperature("T1", "T_1", loss.inlet().temperature().kelvins(), digits),
                Term.of("γ", "\\gamma", G, "", 3)),
            Term.of("M1", "M_1", m1, "", 5),
            source())
        .step(
            "Pressure at rest",
            "⟨p0⟩ = ⟨p1⟩ × (1 + (⟨γ⟩ − 1) / 2 × ⟨M1⟩²)^(⟨γ⟩ / (⟨γ⟩ − 1))",
            "⟨p0⟩ = ⟨p1⟩ \\left(1 + \\frac{⟨γ⟩ - 1}{2} ⟨M1⟩^2\\right)^{⟨γ⟩ / (⟨γ⟩ - 1)}",
            List.of(
                units.pressure("p1", "p_1", p1, digits),
                Term.of("γ", "\\gamma", G, "", 3),
                Term.of("M1", "M_1", m1, "", digits)),
            units.pressure("p0", "p_0", p0, 6),
            source())
        .include(inBore().loss(loss.conduit(), loss.massFlow(), loss.inlet()).working(units))
        .step(
            "Pressure lost from rest",
            "⟨Δp⟩ = ⟨p0⟩ − ⟨p2⟩",
            "⟨Δp⟩ = ⟨p0⟩ - ⟨p2⟩",
            List.of(
                units.saidPressure("p0", "p_0", p0, digits),
                units.saidPressure("p2", "p_2", loss.outlet().pressure().pascals(), digits)),
            units.saidPressure("Δp", "\\Delta p", loss.drop().pascals(), 3),
            source())
        .build();
  }

  private Working working(LineLoss.Choked loss, UnitSystem units) {
    double psi = loss.largest().kilogramsPerSecond() / flowAtOne(loss.conduit(), loss.inlet());
    double m1 = IsentropicFlow.subsonicAtMassFlowFunction(psi).mach();
    return Working.titled(loss.conduit().in(units) + " chokes (" + title() + ")")
        .step(
            "Largest flow, at the Mach number of the inlet found by trial",
            "⟨ṁ⟩ = π / 4 × ⟨D⟩² × ⟨p0⟩ × "
                + units.either("√(⟨γ⟩", "144 × √(⟨γ⟩ × " + UnitSystem.G_C)
                + " / (⟨R⟩ × ⟨T0⟩)) × ⟨M1⟩ × (1 + (⟨γ⟩ − 1) / 2 × ⟨M1⟩²)^(−3)",
            "⟨ṁ⟩ = \\frac{\\pi}{4} ⟨D⟩^2 \\cdot ⟨p0⟩"
                + units.either(
                    " \\sqrt{\\frac{⟨γ⟩}",
                    " \\cdot 144 \\sqrt{\\frac{⟨γ⟩ \\cdot " + UnitSystem.G_C + "}")
                + "{⟨R⟩ \\cdot ⟨T0⟩}} ⟨M1⟩ \\left(1 + \\frac{⟨γ⟩ - 1}{2} ⟨M1⟩^2\\right)^{-3}",
            List.of(
                units.length("D", "D", loss.conduit().bore().metres(), 8),
                units.pressure("p0", "p_0", loss.inlet().pressure().pascals(), 8),
                Term.of("γ", "\\gamma", G, "", 3),
                PipeWorking.gasConstant(units),
                units.temperature("T0", "T_0", loss.inlet().temperature().kelvins(), 8),
                Term.of("M1", "M_1", m1, "", 8)),
            units.massFlow("ṁ", "\\dot m_{max}", loss.largest().kilogramsPerSecond(), 5),
            source())
        .note("Friction brings it to Mach 1 at the outlet. The flow asked for is more.")
        .build();
  }

  @Override
  public String title() {
    return "adiabatic flow from a reservoir, "
        + (law == FrictionLaw.COLEBROOK
            ? "Colebrook friction"
            : "friction after " + law.source().citation());
  }

  @Override
  public String validity() {
    return "ideal gas without heat through the wall, any length, up to choking at Mach 1; the inlet is air at rest, a rounded entrance";
  }

  @Override
  public String fitBasis() {
    return inBore().fitBasis();
  }

  @Override
  public String bias() {
    return "higher by the pressure that speeds the air up, 0.7 M1² of p0: nothing in shop lines, most of the drop in a stub that blows off";
  }

  @Override
  public Source source() {
    return Source.handbook("Shapiro, Compressible Fluid Flow (1953), chapters 4 and 6");
  }
}
