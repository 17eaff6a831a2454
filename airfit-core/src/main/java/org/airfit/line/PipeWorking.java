package org.airfit.line;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.PressureUnit;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/** The workings of the equations of pipe flow. */
final class PipeWorking {

  private static final Source DEFINITION = Source.handbook("definition");

  private final Scale scale;
  private final PipeModel model;
  private final LineLoss.Flowing loss;
  private final double flux;
  private final double darcy;
  private final double k;

  /** As many digits of the pressures as leave three of their difference; what they follow from gets some more. */
  private final int digits;

  /** The numbers in the units asked for: what one kg, m, K and Pa are worth in them, and their names. */
  private record Scale(
      UnitSystem system,
      double mass,
      double length,
      double temperature,
      double pressure,
      String massUnit,
      String lengthUnit,
      String temperatureUnit,
      String pressureUnit,
      String gasUnit,
      String viscosityUnit,
      String densityUnit) {

    static final Scale SI = new Scale(
        UnitSystem.SI, 1.0, 1.0, 1.0, 1.0, "kg", "m", "K", "Pa", "J/(kg K)", "Pa·s", "kg/m³");

    static final Scale US = new Scale(
        UnitSystem.US,
        1.0 / POUND,
        1.0 / FOOT,
        1.8,
        0.0254 * 0.0254 / (POUND * 9.80665),
        "lb",
        "ft",
        "°R",
        "psi",
        "ft lbf/(lb °R)",
        "lb/(ft s)",
        "lb/ft³");

    static Scale of(UnitSystem system) {
      return system == UnitSystem.SI ? SI : US;
    }

    /** What stands where force meets mass: nothing in SI. */
    String of(String si, String us) {
      return system == UnitSystem.SI ? si : us;
    }

    Term massFlow(String latex, double kilogramsPerSecond) {
      return Term.of("ṁ", latex, mass * kilogramsPerSecond, massUnit + "/s", 7);
    }

    Term metres(String symbol, double metres, int digits) {
      return Term.of(symbol, symbol, length * metres, lengthUnit, digits);
    }

    Term kelvins(String symbol, String latex, double kelvins, int digits) {
      return Term.of(symbol, latex, temperature * kelvins, temperatureUnit, digits);
    }

    Term pascals(String symbol, String latex, double pascals, int digits) {
      return Term.of(symbol, latex, pressure * pascals, pressureUnit, digits);
    }

    Term flux(double kilograms, int digits) {
      return Term.of(
          "G",
          "G",
          mass / (length * length) * kilograms,
          massUnit + "/(s " + lengthUnit + "²)",
          digits);
    }

    Term gasConstant() {
      // ft lbf/(lb °R): a J/(kg K) is ft² /s² per °R, over the 32.174 of a lbf
      double per = system == UnitSystem.SI ? 1.0 : length * length / (temperature * G_US);
      return Term.of("R", "R", per * AirState.GAS_CONSTANT, gasUnit, 9);
    }

    Term viscosity(double pascalSeconds) {
      return Term.of("μ", "\\mu", mass / length * pascalSeconds, viscosityUnit, 7);
    }

    Term density(double kilograms, int digits) {
      return Term.of(
          "ρ1", "\\rho_1", mass / (length * length * length) * kilograms, densityUnit, digits);
    }
  }

  private static final double POUND = 0.453_592_37;
  private static final double FOOT = 0.3048;

  /** Standard acceleration of fall in ft/s². */
  private static final double G_US = 9.80665 / FOOT;

  /** The same as it stands in the equations, to as many digits as the pressures have. */
  private static final String GC = "32.17404856";

  private PipeWorking(PipeModel model, LineLoss.Flowing loss, double darcy, Scale scale) {
    this.scale = scale;
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
    String title = title(loss);
    return loss.friction()
        .map(friction ->
            new PipeWorking(model, loss, friction.darcy(), Scale.of(units)).build(title))
        .orElseGet(() -> still(title));
  }

  static String title(LineLoss.Flowing loss) {
    return "Pressure lost along " + loss.conduit() + " (" + loss.model().title() + ")";
  }

  static Working still(String title) {
    return Working.titled(title).note("Nothing flows, so nothing is lost.").build();
  }

  static Working of(PipeModel model, LineLoss.Choked loss, UnitSystem units) {
    Scale scale = Scale.of(units);
    Working.Builder working = Working.titled(loss.conduit() + " chokes (" + model.title() + ")");
    Term flow = scale.massFlow("\\dot m_{max}", loss.largest().kilogramsPerSecond());
    Term area = Term.of(
        "A",
        "A",
        scale.length() * scale.length() * loss.conduit().area().squareMetres(),
        scale.lengthUnit() + "²",
        7);
    Term r = scale.gasConstant();
    Term t = scale.kelvins("T", "T", loss.inlet().temperature().kelvins(), 7);
    Term p2 = scale.pascals("p2", "p_2", loss.chokingPressure().pascals(), 5);
    return switch (model.equation()) {
      case ISOTHERMAL ->
        working
            .step(
                "Pressure at the outlet where it chokes",
                scale.of(
                    "⟨p2⟩ = ⟨ṁ⟩ / ⟨A⟩ × √(⟨R⟩ × ⟨T⟩)",
                    "⟨p2⟩ = ⟨ṁ⟩ / ⟨A⟩ / 144 × √(⟨R⟩ × ⟨T⟩ / " + GC + ")"),
                scale.of(
                    "⟨p2⟩ = \\frac{⟨ṁ⟩}{⟨A⟩} \\sqrt{⟨R⟩ \\cdot ⟨T⟩}",
                    "⟨p2⟩ = \\frac{⟨ṁ⟩}{144 ⟨A⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T⟩}{" + GC + "}}"),
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
                scale.of(
                    "⟨M1⟩ = ⟨ṁ⟩ / (⟨A⟩ × ⟨p1⟩) × √(⟨R⟩ × ⟨T⟩ / ⟨γ⟩)",
                    "⟨M1⟩ = ⟨ṁ⟩ / (⟨A⟩ × ⟨p1⟩ × 144) × √(⟨R⟩ × ⟨T⟩ / (⟨γ⟩ × " + GC + "))"),
                scale.of(
                    "⟨M1⟩ = \\frac{⟨ṁ⟩}{⟨A⟩ \\cdot ⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T⟩}{⟨γ⟩}}",
                    "⟨M1⟩ = \\frac{⟨ṁ⟩}{144 ⟨A⟩ \\cdot ⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T⟩}{⟨γ⟩ \\cdot "
                        + GC + "}}"),
                List.of(
                    flow,
                    area,
                    scale.pascals("p1", "p_1", loss.inlet().pressure().pascals(), 8),
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
                    scale.pascals("p1", "p_1", loss.inlet().pressure().pascals(), 8),
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
    return scale.pascals("p1", "p_1", loss.inlet().pressure().pascals(), digits + 3);
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
    pressureLost(working, loss, digits, scale.system());
    loss.warnings().forEach(working::note);
    return working.build();
  }

  private Term bore() {
    return scale.metres("D", loss.conduit().bore().metres(), 7);
  }

  private Term flow() {
    return scale.massFlow("\\dot m", loss.massFlow().kilogramsPerSecond());
  }

  private Term kTerm(int shown) {
    return Term.of("k", "k", k, "", shown);
  }

  private Term fluxTerm() {
    return scale.flux(flux, digits + 3);
  }

  private Term gasConstant() {
    return scale.gasConstant();
  }

  private Term temperature() {
    return scale.kelvins("T", "T", loss.inlet().temperature().kelvins(), digits + 3);
  }

  private void reynolds(Working.Builder working) {
    working.step(
        "Reynolds number",
        "⟨Re⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩ × ⟨μ⟩)",
        "⟨Re⟩ = \\frac{4 \\cdot ⟨ṁ⟩}{\\pi \\cdot ⟨D⟩ \\cdot ⟨μ⟩}",
        List.of(flow(), bore(), scale.viscosity(loss.inlet().viscosity().pascalSeconds())),
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
                scale.metres("L", loss.conduit().length().metres(), 8),
                scale.metres("D", loss.conduit().bore().metres(), 8),
                Term.of("ΣK", "\\Sigma K", loss.conduit().fittingLoss(), "", 8)),
            kTerm(6),
            Source.handbook("sum of wall friction and fittings"))
        .step(
            "Mass flow per area",
            "⟨G⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩²)",
            "⟨G⟩ = \\frac{4 \\cdot ⟨ṁ⟩}{\\pi \\cdot ⟨D⟩^2}",
            List.of(flow(), bore()),
            scale.flux(flux, 6),
            DEFINITION);
  }

  private Term outletPressure() {
    return scale.pascals("p2", "p_2", loss.outlet().pressure().pascals(), digits);
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
        "⟨p2⟩ = ⟨p1⟩ − ⟨k⟩ × ⟨G⟩² / (2 × ⟨ρ1⟩" + scale.of("", " × 144 × " + GC) + ")",
        "⟨p2⟩ = ⟨p1⟩ - ⟨k⟩ \\frac{⟨G⟩^2}{2 ⟨ρ1⟩" + scale.of("", " \\cdot 144 \\cdot " + GC) + "}",
        List.of(
            inletPressure(),
            kTerm(digits + 3),
            fluxTerm(),
            scale.density(loss.inlet().density().kilogramsPerCubicMetre(), digits + 3)),
        outletPressure(),
        model.source());
  }

  private void adiabatic(Working.Builder working) {
    Term first = Term.of("M1", "M_1", loss.inletMach(), "", digits + 4);
    Term t1 = scale.kelvins("T1", "T_1", loss.inlet().temperature().kelvins(), digits + 3);
    Term t2 = scale.kelvins("T2", "T_2", loss.outlet().temperature().kelvins(), digits + 3);
    working
        .step(
            "Mach number at the inlet",
            scale.of(
                "⟨M1⟩ = ⟨G⟩ / ⟨p1⟩ × √(⟨R⟩ × ⟨T1⟩ / ⟨γ⟩)",
                "⟨M1⟩ = ⟨G⟩ / (144 × ⟨p1⟩) × √(⟨R⟩ × ⟨T1⟩ / (⟨γ⟩ × " + GC + "))"),
            scale.of(
                "⟨M1⟩ = \\frac{⟨G⟩}{⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T1⟩}{⟨γ⟩}}",
                "⟨M1⟩ = \\frac{⟨G⟩}{144 ⟨p1⟩} \\sqrt{\\frac{⟨R⟩ \\cdot ⟨T1⟩}{⟨γ⟩ \\cdot " + GC
                    + "}}"),
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
            scale.kelvins("T2", "T_2", loss.outlet().temperature().kelvins(), 6),
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
    return scale.of("", " / (" + GC + " × 144²)");
  }

  private String squaredFlow() {
    return scale.of(
        "⟨G⟩^2 \\cdot ⟨R⟩ \\cdot ⟨T⟩",
        "\\frac{⟨G⟩^2 \\cdot ⟨R⟩ \\cdot ⟨T⟩}{" + GC + " \\cdot 144^2}");
  }

  static void pressureLost(Working.Builder working, LineLoss.Flowing loss, int digits) {
    pressureLost(working, loss, digits, UnitSystem.SI);
  }

  private static void pressureLost(
      Working.Builder working, LineLoss.Flowing loss, int digits, UnitSystem units) {
    PressureUnit unit = units == UnitSystem.SI ? PressureUnit.BAR : PressureUnit.PSI;
    double pascals = AbsolutePressure.of(1.0, unit).pascals();
    working.step(
        "Pressure lost",
        "⟨Δp⟩ = ⟨p1⟩ − ⟨p2⟩",
        "⟨Δp⟩ = ⟨p1⟩ - ⟨p2⟩",
        List.of(
            Term.of(
                "p1",
                "p_1",
                loss.inlet().pressure().pascals() / pascals,
                unit.symbol(),
                digits + 1),
            Term.of(
                "p2",
                "p_2",
                loss.outlet().pressure().pascals() / pascals,
                unit.symbol(),
                digits + 1)),
        Term.of("Δp", "\\Delta p", loss.drop().pascals() / pascals, unit.symbol(), 3),
        loss.model().source());
  }
}
