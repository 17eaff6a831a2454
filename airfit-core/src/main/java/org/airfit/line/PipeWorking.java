package org.airfit.line;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/** The workings of the equations of pipe flow. */
final class PipeWorking {

  private static final Source DEFINITION = Source.handbook("definition");

  private final UnitSystem units;
  private final PipeModel model;
  private final LineLoss.Flowing loss;
  private final double flux;
  private final double darcy;
  private final double k;

  /** As many digits of the pressures as leave three of their difference; what they follow from gets some more. */
  private final int digits;

  private PipeWorking(PipeModel model, LineLoss.Flowing loss, double darcy, UnitSystem units) {
    this.units = units;
    Conduit conduit = loss.conduit();
    this.model = model;
    this.loss = loss;
    this.darcy = darcy;
    this.flux = loss.massFlow().kilogramsPerSecond() / conduit.area().squareMetres();
    this.k = PipeModel.resistance(conduit, darcy);
    this.digits = digits(loss);
  }

  static int digits(LineLoss.Flowing loss) {
    double share = loss.drop().pascals() / loss.inlet().pressure().pascals();
    return Math.min(13, Math.max(6, 4 - (int) Math.floor(Math.log10(share))));
  }

  static Working of(PipeModel model, LineLoss.Flowing loss, UnitSystem units) {
    String title = title(loss, units);
    return loss.friction()
        .map(friction -> new PipeWorking(model, loss, friction.darcy(), units).build(title))
        .orElseGet(() -> still(title));
  }

  static String title(LineLoss.Flowing loss, UnitSystem units) {
    return "Pressure lost along " + loss.conduit().in(units) + " ("
        + loss.model().title() + ")";
  }

  static Working still(String title) {
    return Working.titled(title).note("Nothing flows, so nothing is lost.").build();
  }

  static Working of(PipeModel model, LineLoss.Choked loss, UnitSystem units) {
    Working.Builder working =
        Working.titled(loss.conduit().in(units) + " chokes (" + model.title() + ")");
    Term flow = units.massFlow("ṁ", "\\dot m_{max}", loss.largest().kilogramsPerSecond(), 7);
    Term area = units.area("A", "A", loss.conduit().area().squareMetres(), 7);
    Term r = gasConstant(units);
    Term t = units.temperature("T", "T", loss.inlet().temperature().kelvins(), 7);
    Term p2 = units.pressure("p2", "p_2", loss.chokingPressure().pascals(), 5);
    return switch (model.equation()) {
      case ISOTHERMAL ->
        working
            .step(
                "Pressure at the outlet where it chokes",
                units.either(
                    "⟨p2⟩ = ⟨ṁ⟩ / ⟨A⟩ × √(⟨R⟩ × ⟨T⟩)",
                    "⟨p2⟩ = ⟨ṁ⟩ / ⟨A⟩ / 144 × √(⟨R⟩ × ⟨T⟩ / " + UnitSystem.G_C + ")"),
                units.either(
                    "⟨p2⟩ = \\frac{⟨ṁ⟩}{⟨A⟩} \\sqrt{⟨R⟩ \\cdot ⟨T⟩}",
                    "⟨p2⟩ = \\frac{⟨ṁ⟩}{144 ⟨A⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T⟩}{" + UnitSystem.G_C
                        + "}}"),
                List.of(flow, area, r, t),
                p2,
                model.source())
            .note(
                "The flow asked for is more than the largest, which was found by trial. Isothermal flow chokes at Mach 0.845.")
            .build();
      case ADIABATIC ->
        working
            .step(
                "Mach number at the inlet at the largest flow",
                units.either(
                    "⟨M1⟩ = ⟨ṁ⟩ / (⟨A⟩ × ⟨p1⟩) × √(⟨R⟩ × ⟨T⟩ / ⟨γ⟩)",
                    "⟨M1⟩ = ⟨ṁ⟩ / (⟨A⟩ × ⟨p1⟩ × 144) × √(⟨R⟩ × ⟨T⟩ / (⟨γ⟩ × " + UnitSystem.G_C
                        + "))"),
                units.either(
                    "⟨M1⟩ = \\frac{⟨ṁ⟩}{⟨A⟩ \\cdot ⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T⟩}{⟨γ⟩}}",
                    "⟨M1⟩ = \\frac{⟨ṁ⟩}{144 ⟨A⟩ \\cdot ⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T⟩}{⟨γ⟩ \\cdot "
                        + UnitSystem.G_C + "}}"),
                List.of(
                    flow,
                    area,
                    units.pressure("p1", "p_1", loss.inlet().pressure().pascals(), 8),
                    r,
                    t,
                    gamma()),
                Term.of("M1", "M_1", chokedInletMach(loss), "", 5),
                model.source())
            .step(
                "Pressure at the outlet where it chokes",
                "⟨p2⟩ = ⟨p1⟩ × ⟨M1⟩ × √((2 + (⟨γ⟩ − 1) × ⟨M1⟩²) / (⟨γ⟩ + 1))",
                "⟨p2⟩ = ⟨p1⟩ \\cdot ⟨M1⟩ \\sqrt{\\frac{2 + (⟨γ⟩ - 1) ⟨M1⟩^2}{⟨γ⟩ + 1}}",
                List.of(
                    units.pressure("p1", "p_1", loss.inlet().pressure().pascals(), 8),
                    Term.of("M1", "M_1", chokedInletMach(loss), "", 8),
                    gamma()),
                p2,
                model.source())
            .note(
                "The flow asked for is more than the largest, which was found by trial. Adiabatic flow chokes at Mach 1.")
            .build();
      case DARCY_INLET_DENSITY, DARCY_MEAN_DENSITY ->
        working
            .note(
                "The flow asked for would lose more than all the pressure there is. At the largest flow, "
                    + flow.quantity()
                    + ", nothing is left at the outlet. This model does not know choking, which comes before.")
            .build();
    };
  }

  private static double chokedInletMach(LineLoss.Choked loss) {
    return loss.largest().kilogramsPerSecond()
        / (loss.conduit().area().squareMetres() * loss.inlet().pressure().pascals())
        * Math.sqrt(AirState.GAS_CONSTANT
            * loss.inlet().temperature().kelvins()
            / AirState.HEAT_CAPACITY_RATIO);
  }

  private static Term gamma() {
    return Term.of("γ", "\\gamma", AirState.HEAT_CAPACITY_RATIO, "", 3);
  }

  private Term inletPressure() {
    return units.pressure("p1", "p_1", loss.inlet().pressure().pascals(), digits + 3);
  }

  private Working build(String title) {
    Working.Builder working = Working.titled(title);
    reynolds(working);
    friction(working);
    resistance(working);
    switch (model.equation()) {
      case ISOTHERMAL -> isothermal(working);
      case ADIABATIC -> adiabatic(working);
      case DARCY_INLET_DENSITY -> inletDensity(working);
      case DARCY_MEAN_DENSITY -> meanDensity(working);
    }
    pressureLost(working, loss, digits, units);
    loss.warnings().forEach(working::note);
    return working.build();
  }

  private Term bore() {
    return units.length("D", "D", loss.conduit().bore().metres(), 8);
  }

  private Term flow() {
    return units.massFlow("ṁ", "\\dot m", loss.massFlow().kilogramsPerSecond(), 8);
  }

  private Term kTerm(int shown) {
    return Term.of("k", "k", k, "", shown);
  }

  private Term fluxTerm() {
    return units.massFlux("G", "G", flux, digits + 3);
  }

  private Term gasConstant() {
    return gasConstant(units);
  }

  private Term temperature() {
    return units.temperature("T", "T", loss.inlet().temperature().kelvins(), digits + 3);
  }

  private void reynolds(Working.Builder working) {
    working.step(
        "Reynolds number",
        "⟨Re⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩ × ⟨μ⟩)",
        "⟨Re⟩ = \\frac{4 \\cdot ⟨ṁ⟩}{\\pi \\cdot ⟨D⟩ \\cdot ⟨μ⟩}",
        List.of(
            flow(),
            bore(),
            units.viscosity("μ", "\\mu", loss.inlet().viscosity().pascalSeconds(), 8)),
        Term.of("Re", "\\mathrm{Re}", loss.reynolds(), "", 6),
        DEFINITION);
  }

  private void friction(Working.Builder working) {
    Term re = Term.of("Re", "\\mathrm{Re}", loss.reynolds(), "", 8);
    Term found = Term.of("λ", "\\lambda", darcy, "", 6);
    if (loss.reynolds() < FrictionLaw.LAMINAR_BELOW && model.law() != FrictionLaw.CHURCHILL_1977) {
      working.step(
          "Friction factor (Darcy), laminar",
          "⟨λ⟩ = 64 / ⟨Re⟩",
          "⟨λ⟩ = \\frac{64}{⟨Re⟩}",
          List.of(re),
          found,
          Source.handbook("Hagen and Poiseuille"));
    } else if (model.law() == FrictionLaw.COLEBROOK) {
      working.solved(
          "Friction factor (Darcy), turbulent",
          "1/√⟨λ⟩ = −2 × log10(⟨ε/D⟩ / 3.7 + 2.51 / (⟨Re⟩ × √⟨λ⟩))",
          "\\frac{1}{\\sqrt{⟨λ⟩}} = -2 \\log_{10}\\left(\\frac{⟨ε/D⟩}{3.7} + \\frac{2.51}{⟨Re⟩ \\sqrt{⟨λ⟩}}\\right)",
          List.of(Term.of("ε/D", "\\varepsilon/D", loss.conduit().relativeRoughness(), "", 8), re),
          found,
          model.law().source());
    } else {
      working.note(
          "Friction factor (Darcy) after " + model.law().source() + ": λ = " + found.value() + ".");
    }
  }

  private void resistance(Working.Builder working) {
    working
        .step(
            "Resistance",
            "⟨k⟩ = ⟨λ⟩ × ⟨L⟩ / ⟨D⟩ + ⟨ΣK⟩",
            "⟨k⟩ = ⟨λ⟩ \\frac{⟨L⟩}{⟨D⟩} + ⟨ΣK⟩",
            List.of(
                Term.of("λ", "\\lambda", darcy, "", 8),
                units.length("L", "L", loss.conduit().length().metres(), 8),
                units.length("D", "D", loss.conduit().bore().metres(), 8),
                Term.of("ΣK", "\\Sigma K", loss.conduit().fittingLoss(), "", 8)),
            kTerm(6),
            Source.handbook("sum of wall friction and fittings"))
        .step(
            "Mass flow per area",
            "⟨G⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩²)",
            "⟨G⟩ = \\frac{4 \\cdot ⟨ṁ⟩}{\\pi \\cdot ⟨D⟩^2}",
            List.of(flow(), bore()),
            units.massFlux("G", "G", flux, 6),
            DEFINITION);
  }

  private Term outletPressure() {
    return units.pressure("p2", "p_2", loss.outlet().pressure().pascals(), digits);
  }

  private void isothermal(Working.Builder working) {
    working.solved(
        "Pressure at the outlet",
        "⟨p1⟩² − ⟨p2⟩² = ⟨G⟩² × ⟨R⟩ × ⟨T⟩" + perForce() + " × (⟨k⟩ + 2 × ln(⟨p1⟩ / ⟨p2⟩))",
        "⟨p1⟩^2 - ⟨p2⟩^2 = " + squaredFlow() + " \\left(⟨k⟩ + 2 \\ln\\frac{⟨p1⟩}{⟨p2⟩}\\right)",
        List.of(inletPressure(), fluxTerm(), gasConstant(), temperature(), kTerm(digits + 3)),
        outletPressure(),
        model.source());
  }

  private void meanDensity(Working.Builder working) {
    working.step(
        "Pressure at the outlet",
        "⟨p2⟩ = √(⟨p1⟩² − ⟨G⟩² × ⟨R⟩ × ⟨T⟩" + perForce() + " × ⟨k⟩)",
        "⟨p2⟩ = \\sqrt{⟨p1⟩^2 - " + squaredFlow() + " \\cdot ⟨k⟩}",
        List.of(inletPressure(), fluxTerm(), gasConstant(), temperature(), kTerm(digits + 3)),
        outletPressure(),
        model.source());
  }

  private void inletDensity(Working.Builder working) {
    working.step(
        "Pressure at the outlet",
        "⟨p2⟩ = ⟨p1⟩ − ⟨k⟩ × ⟨G⟩² / (2 × ⟨ρ1⟩" + units.either("", " × 144 × " + UnitSystem.G_C)
            + ")",
        "⟨p2⟩ = ⟨p1⟩ - ⟨k⟩ \\frac{⟨G⟩^2}{2 ⟨ρ1⟩"
            + units.either("", " \\cdot 144 \\cdot " + UnitSystem.G_C) + "}",
        List.of(
            inletPressure(),
            kTerm(digits + 3),
            fluxTerm(),
            units.density(
                "ρ1", "\\rho_1", loss.inlet().density().kilogramsPerCubicMetre(), digits + 3)),
        outletPressure(),
        model.source());
  }

  private void adiabatic(Working.Builder working) {
    Term first = Term.of("M1", "M_1", loss.inletMach(), "", digits + 4);
    Term t1 = units.temperature("T1", "T_1", loss.inlet().temperature().kelvins(), digits + 3);
    Term t2 = units.temperature("T2", "T_2", loss.outlet().temperature().kelvins(), digits + 3);
    working
        .step(
            "Mach number at the inlet",
            units.either(
                "⟨M1⟩ = ⟨G⟩ / ⟨p1⟩ × √(⟨R⟩ × ⟨T1⟩ / ⟨γ⟩)",
                "⟨M1⟩ = ⟨G⟩ / (144 × ⟨p1⟩) × √(⟨R⟩ × ⟨T1⟩ / (⟨γ⟩ × " + UnitSystem.G_C + "))"),
            units.either(
                "⟨M1⟩ = \\frac{⟨G⟩}{⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T1⟩}{⟨γ⟩}}",
                "⟨M1⟩ = \\frac{⟨G⟩}{144 ⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T1⟩}{⟨γ⟩ \\cdot "
                    + UnitSystem.G_C + "}}"),
            List.of(fluxTerm(), inletPressure(), gasConstant(), t1, gamma()),
            Term.of("M1", "M_1", loss.inletMach(), "", 6),
            model.source())
        .solved(
            "Mach number at the outlet",
            "⟨k⟩ = (1 / ⟨M1⟩² − 1 / ⟨M2⟩²) / ⟨γ⟩ + (⟨γ⟩ + 1) / (2 × ⟨γ⟩) × ln(⟨M1⟩² × (2 + (⟨γ⟩ − 1)"
                + " × ⟨M2⟩²) / (⟨M2⟩² × (2 + (⟨γ⟩ − 1) × ⟨M1⟩²)))",
            "⟨k⟩ = \\frac{1}{⟨γ⟩} \\left(\\frac{1}{⟨M1⟩^2} - \\frac{1}{⟨M2⟩^2}\\right) + \\frac{⟨γ⟩ + 1}{2 ⟨γ⟩}"
                + " \\ln\\frac{⟨M1⟩^2 (2 + (⟨γ⟩ - 1) ⟨M2⟩^2)}{⟨M2⟩^2 (2 + (⟨γ⟩ - 1) ⟨M1⟩^2)}",
            List.of(kTerm(digits + 4), first, gamma()),
            Term.of("M2", "M_2", loss.outletMach(), "", digits),
            model.source())
        .step(
            "Temperature at the outlet",
            "⟨T2⟩ = ⟨T1⟩ × (2 + (⟨γ⟩ − 1) × ⟨M1⟩²) / (2 + (⟨γ⟩ − 1) × ⟨M2⟩²)",
            "⟨T2⟩ = ⟨T1⟩ \\frac{2 + (⟨γ⟩ - 1) ⟨M1⟩^2}{2 + (⟨γ⟩ - 1) ⟨M2⟩^2}",
            List.of(t1, first, secondMach(), gamma()),
            units.temperature("T2", "T_2", loss.outlet().temperature().kelvins(), 6),
            model.source())
        .step(
            "Pressure at the outlet",
            "⟨p2⟩ = ⟨p1⟩ × ⟨M1⟩ / ⟨M2⟩ × √(⟨T2⟩ / ⟨T1⟩)",
            "⟨p2⟩ = ⟨p1⟩ \\frac{⟨M1⟩}{⟨M2⟩} \\sqrt{\\frac{⟨T2⟩}{⟨T1⟩}}",
            List.of(inletPressure(), first, secondMach(), t2, t1),
            outletPressure(),
            model.source());
  }

  private Term secondMach() {
    return Term.of("M2", "M_2", loss.outletMach(), "", digits + 4);
  }

  private String perForce() {
    return units.either("", " / (" + UnitSystem.G_C + " × 144²)");
  }

  private String squaredFlow() {
    return units.either(
        "⟨G⟩^2 \\cdot ⟨R⟩ \\cdot ⟨T⟩",
        "\\frac{⟨G⟩^2 \\cdot ⟨R⟩ \\cdot ⟨T⟩}{" + UnitSystem.G_C + " \\cdot 144^2}");
  }

  static Term gasConstant(UnitSystem units) {
    return units.heatCapacity("R", "R", AirState.GAS_CONSTANT, 9);
  }

  static void pressureLost(
      Working.Builder working, LineLoss.Flowing loss, int digits, UnitSystem units) {
    working.step(
        "Pressure lost",
        "⟨Δp⟩ = ⟨p1⟩ − ⟨p2⟩",
        "⟨Δp⟩ = ⟨p1⟩ - ⟨p2⟩",
        List.of(
            units.saidPressure("p1", "p_1", loss.inlet().pressure().pascals(), digits + 1),
            units.saidPressure("p2", "p_2", loss.outlet().pressure().pascals(), digits + 1)),
        units.saidPressure("Δp", "\\Delta p", loss.drop().pascals(), 3),
        loss.model().source());
  }
}
