package org.airfit.line;

import static org.airfit.line.LineSymbols.AREA;
import static org.airfit.line.LineSymbols.BORE;
import static org.airfit.line.LineSymbols.DROP;
import static org.airfit.line.LineSymbols.FITTINGS;
import static org.airfit.line.LineSymbols.FLOW;
import static org.airfit.line.LineSymbols.FLUX;
import static org.airfit.line.LineSymbols.FRICTION;
import static org.airfit.line.LineSymbols.GAS_CONSTANT;
import static org.airfit.line.LineSymbols.INLET_DENSITY;
import static org.airfit.line.LineSymbols.INLET_KELVINS;
import static org.airfit.line.LineSymbols.INLET_MACH;
import static org.airfit.line.LineSymbols.INLET_PRESSURE;
import static org.airfit.line.LineSymbols.KELVINS;
import static org.airfit.line.LineSymbols.LARGEST_FLOW;
import static org.airfit.line.LineSymbols.LENGTH;
import static org.airfit.line.LineSymbols.OUTLET_KELVINS;
import static org.airfit.line.LineSymbols.OUTLET_MACH;
import static org.airfit.line.LineSymbols.OUTLET_PRESSURE;
import static org.airfit.line.LineSymbols.RATIO;
import static org.airfit.line.LineSymbols.RESISTANCE;
import static org.airfit.line.LineSymbols.REYNOLDS;
import static org.airfit.line.LineSymbols.VISCOSITY;

import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/** The workings of the equations of pipe flow. */
final class PipeWorking {

  /**
   * What is left of the pressure must be more than this to be followed by hand [-]; our choice. It is found as the root
   * of a difference of squares, which magnifies what is left open by as much as the square of the share is small. In US
   * units g_c is printed with ten digits only.
   */
  private static final double LEAST_SHARE = 1.0e-4;

  /**
   * Ten thousand bar, at which air is no gas any more [Pa]: no working is shown beyond it, a choice of this project.
   */
  private static final double MOST_SHOWN = 1.0e9;

  private static final double LEAST_SHARE_US = 1.0e-2;

  /** Nearer to choking than this part the pressure behind is that of choking, to five digits [-]. */
  private static final double AT_CHOKING = 1.0e-5;

  private static final Source DEFINITION = Source.handbook("definition");

  private static final Formula REYNOLDS_NUMBER = Formula.of(
      "Reynolds number",
      "⟨Re⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩ × ⟨μ⟩)",
      DEFINITION,
      REYNOLDS,
      FLOW,
      BORE,
      VISCOSITY);

  private static final Formula TOTAL_RESISTANCE = Formula.of(
      "Resistance",
      "⟨k⟩ = ⟨λ⟩ × ⟨L⟩ / ⟨D⟩ + ⟨ΣK⟩",
      Source.handbook("sum of wall friction and fittings"),
      RESISTANCE,
      FRICTION,
      LENGTH,
      BORE,
      FITTINGS);

  private static final Formula MASS_FLUX =
      Formula.of("Mass flow per area", "⟨G⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩²)", DEFINITION, FLUX, FLOW, BORE);

  private static final Formula ISOTHERMAL = Formula.solvedFor(
      OUTLET_PRESSURE,
      "Pressure at the outlet",
      "⟨p1⟩² − ⟨p2⟩² = ⟨G⟩² × ⟨R⟩ × ⟨T⟩ / ([g_c] × [144]²) × (⟨k⟩ + 2 × ln(⟨p1⟩ / ⟨p2⟩))",
      DEFINITION,
      INLET_PRESSURE,
      FLUX,
      GAS_CONSTANT,
      KELVINS,
      RESISTANCE);

  private static final Formula MEAN_DENSITY = Formula.of(
      "Pressure at the outlet",
      "⟨p2⟩ = √(⟨p1⟩² − ⟨G⟩² × ⟨R⟩ × ⟨T⟩ / ([g_c] × [144]²) × ⟨k⟩)",
      DEFINITION,
      OUTLET_PRESSURE,
      INLET_PRESSURE,
      FLUX,
      GAS_CONSTANT,
      KELVINS,
      RESISTANCE);

  private static final Formula INLET_DENSITY_ONLY = Formula.of(
      "Pressure at the outlet",
      "⟨p2⟩ = ⟨p1⟩ − ⟨k⟩ × ⟨G⟩² / (2 × ⟨ρ1⟩ × [144] × [g_c])",
      DEFINITION,
      OUTLET_PRESSURE,
      INLET_PRESSURE,
      RESISTANCE,
      FLUX,
      INLET_DENSITY);

  private static final Formula MACH_AT_INLET = Formula.of(
      "Mach number at the inlet",
      "⟨M1⟩ = ⟨G⟩ / ([144] × ⟨p1⟩) × √(⟨R⟩ × ⟨T1⟩ / (⟨γ⟩ × [g_c]))",
      DEFINITION,
      INLET_MACH,
      FLUX,
      INLET_PRESSURE,
      GAS_CONSTANT,
      INLET_KELVINS,
      RATIO);

  private static final Formula MACH_AT_OUTLET = Formula.solvedFor(
      OUTLET_MACH,
      "Mach number at the outlet",
      "⟨k⟩ = (1 / ⟨M1⟩² − 1 / ⟨M2⟩²) / ⟨γ⟩ + (⟨γ⟩ + 1) / (2 × ⟨γ⟩) × ln(⟨M1⟩² × (2 + (⟨γ⟩ − 1)"
          + " × ⟨M2⟩²) / (⟨M2⟩² × (2 + (⟨γ⟩ − 1) × ⟨M1⟩²)))",
      DEFINITION,
      RESISTANCE,
      INLET_MACH,
      RATIO);

  private static final Formula TEMPERATURE_AT_OUTLET = Formula.of(
      "Temperature at the outlet",
      "⟨T2⟩ = ⟨T1⟩ × (2 + (⟨γ⟩ − 1) × ⟨M1⟩²) / (2 + (⟨γ⟩ − 1) × ⟨M2⟩²)",
      DEFINITION,
      OUTLET_KELVINS,
      INLET_KELVINS,
      INLET_MACH,
      OUTLET_MACH,
      RATIO);

  private static final Formula ADIABATIC = Formula.of(
      "Pressure at the outlet",
      "⟨p2⟩ = ⟨p1⟩ × ⟨M1⟩ / ⟨M2⟩ × √(⟨T2⟩ / ⟨T1⟩)",
      DEFINITION,
      OUTLET_PRESSURE,
      INLET_PRESSURE,
      INLET_MACH,
      OUTLET_MACH,
      OUTLET_KELVINS,
      INLET_KELVINS);

  /** With p2 = G √(R T): there the two roots of the equation fall together, and G would not tell p2. */
  private static final Formula ISOTHERMAL_NEAR_CHOKING = Formula.solvedFor(
      OUTLET_PRESSURE,
      "Pressure at the outlet, where it chokes",
      "(⟨p1⟩ / ⟨p2⟩)² − 1 = ⟨k⟩ + 2 × ln(⟨p1⟩ / ⟨p2⟩)",
      DEFINITION,
      INLET_PRESSURE,
      RESISTANCE);

  private static final Formula ISOTHERMAL_FLUX = Formula.of(
      "Mass flow per area at which it chokes",
      "⟨G⟩ = [144] × ⟨p2⟩ / √(⟨R⟩ × ⟨T⟩ / [g_c])",
      DEFINITION,
      FLUX,
      OUTLET_PRESSURE,
      GAS_CONSTANT,
      KELVINS);

  /** With M2 = 1, for the same reason. */
  private static final Formula MACH_NEAR_CHOKING = Formula.solvedFor(
      INLET_MACH,
      "Mach number at the inlet, where it chokes",
      "⟨k⟩ = (1 / ⟨M1⟩² − 1) / ⟨γ⟩ + (⟨γ⟩ + 1) / (2 × ⟨γ⟩)"
          + " × ln((⟨γ⟩ + 1) × ⟨M1⟩² / (2 + (⟨γ⟩ − 1) × ⟨M1⟩²))",
      DEFINITION,
      RESISTANCE,
      RATIO);

  private static final Formula ADIABATIC_FLUX = Formula.of(
      "Mass flow per area at which it chokes",
      "⟨G⟩ = [144] × ⟨p1⟩ × ⟨M1⟩ × √(⟨γ⟩ × [g_c] / (⟨R⟩ × ⟨T1⟩))",
      DEFINITION,
      FLUX,
      INLET_PRESSURE,
      INLET_MACH,
      GAS_CONSTANT,
      INLET_KELVINS,
      RATIO);

  private static final Formula PRESSURE_LOST = Formula.of(
      "Pressure lost",
      "⟨Δp⟩ = ⟨p1⟩ − ⟨p2⟩",
      DEFINITION,
      DROP,
      INLET_PRESSURE.as(ValueKind.SAID_PRESSURE),
      OUTLET_PRESSURE.as(ValueKind.SAID_PRESSURE));

  private static final Formula ISOTHERMAL_CHOKING = Formula.of(
      "Pressure at the outlet where it chokes",
      "⟨p2⟩ = ⟨ṁ⟩ / ⟨A⟩ / [144] × √(⟨R⟩ × ⟨T⟩ / [g_c])",
      DEFINITION,
      OUTLET_PRESSURE,
      LARGEST_FLOW,
      AREA,
      GAS_CONSTANT,
      KELVINS);

  private static final Formula MACH_AT_LARGEST_FLOW = Formula.of(
      "Mach number at the inlet at the largest flow",
      "⟨M1⟩ = ⟨ṁ⟩ / (⟨A⟩ × ⟨p1⟩ × [144]) × √(⟨R⟩ × ⟨T⟩ / (⟨γ⟩ × [g_c]))",
      DEFINITION,
      INLET_MACH,
      LARGEST_FLOW,
      AREA,
      INLET_PRESSURE,
      GAS_CONSTANT,
      KELVINS,
      RATIO);

  private static final Formula ADIABATIC_CHOKING = Formula.of(
      "Pressure at the outlet where it chokes",
      "⟨p2⟩ = ⟨p1⟩ × ⟨M1⟩ × √((2 + (⟨γ⟩ − 1) × ⟨M1⟩²) / (⟨γ⟩ + 1))",
      DEFINITION,
      OUTLET_PRESSURE,
      INLET_PRESSURE,
      INLET_MACH,
      RATIO);

  private final PipeEquation equation;
  private final FrictionLaw law;
  private final Source source;
  private final LineLoss.Flowing loss;
  private final double darcy;
  private final int digits;

  private PipeWorking(
      PipeEquation equation, FrictionLaw law, Source source, LineLoss.Flowing loss, double darcy) {
    this.equation = equation;
    this.law = law;
    this.source = source;
    this.loss = loss;
    this.darcy = darcy;
    this.digits = digits(loss);
  }

  /** As many digits of the pressures as leave three of their difference. */
  static int digits(LineLoss.Flowing loss) {
    double share = loss.drop().pascals() / loss.inlet().pressure().pascals();
    return Math.min(13, Math.max(4, 3 - (int) Math.floor(Math.log10(share))));
  }

  static Working of(
      PipeEquation equation,
      FrictionLaw law,
      Source source,
      LineLoss.Flowing loss,
      UnitSystem units) {
    String title = title(loss, units);
    if (isNoGas(loss)) {
      return noGas(title, loss, units);
    }
    if (hardlyAnythingLeft(loss, units)) {
      return hardlyAnythingLeft(title, loss, units);
    }
    return loss.friction()
        .map(friction ->
            new PipeWorking(equation, law, source, loss, friction.darcy()).build(title, units))
        .orElseGet(() -> nothingLost(title, loss.massFlow().kilogramsPerSecond(), units));
  }

  static String title(LineLoss.Flowing loss, UnitSystem units) {
    return "Pressure that air loses along " + loss.conduit().in(units) + " ("
        + loss.model().title() + ")";
  }

  /** Whether the air begins at a pressure at which it is no gas. */
  static boolean isNoGas(LineLoss.Flowing loss) {
    return loss.outlet().pressure().pascals() + loss.drop().pascals() > MOST_SHOWN;
  }

  static Working noGas(String title, LineLoss.Flowing loss, UnitSystem units) {
    AbsolutePressure begins = AbsolutePressure.ofPascals(
        loss.outlet().pressure().pascals() + loss.drop().pascals());
    return Working.titled(title, units)
        .answer("At " + begins.format(units.pressureUnit()) + " air is no gas any more: above "
            + AbsolutePressure.ofPascals(MOST_SHOWN).format(units.pressureUnit())
            + " the calculation is not shown.")
        .build();
  }

  /** Whether so little of the pressure is left that the difference which gives it has lost its digits. */
  static boolean hardlyAnythingLeft(LineLoss.Flowing loss, UnitSystem units) {
    return loss.outlet().pressure().pascals()
        < units.either(LEAST_SHARE, LEAST_SHARE_US) * loss.inlet().pressure().pascals();
  }

  static Working hardlyAnythingLeft(String title, LineLoss.Flowing loss, UnitSystem units) {
    return Working.titled(title, units)
        .answer(
            "Of " + loss.inlet().pressure().format(units.pressureUnit()) + " only "
                + loss.outlet().pressure().format(units.pressureUnit())
                + " is left at the outlet: too little to be found again as a difference of printed numbers.")
        .build();
  }

  static Working nothingLost(String title, double flow, UnitSystem units) {
    return Working.titled(title, units)
        .answer(
            flow == 0.0
                ? "Nothing flows, so nothing is lost."
                : "A flow below 1e-100 kg/s counts as none: nothing is lost.")
        .build();
  }

  static Working of(PipeEquation equation, Source source, LineLoss.Choked loss, UnitSystem units) {
    Working.Builder working = Working.titled(
        "Air in " + loss.conduit().in(units) + " chokes (" + loss.model().title() + ")", units);
    return switch (equation) {
      case ISOTHERMAL ->
        choking(working, loss)
            .step(ISOTHERMAL_CHOKING.from(source), loss.chokingPressure().pascals(), 4)
            .answer(OUTLET_PRESSURE)
            .note(
                "The flow asked for is more than the largest, which was found by trial. Isothermal flow chokes at "
                    + "Mach 0.845.")
            .build();
      case ADIABATIC ->
        choking(working, loss)
            .given(INLET_PRESSURE, loss.inlet().pressure().pascals(), 8)
            .given(RATIO, AirState.HEAT_CAPACITY_RATIO, 3)
            .step(MACH_AT_LARGEST_FLOW.from(source), 4)
            .step(ADIABATIC_CHOKING.from(source), loss.chokingPressure().pascals(), 4)
            .answer(OUTLET_PRESSURE)
            .note(
                "The flow asked for is more than the largest, which was found by trial. Adiabatic flow chokes at "
                    + "Mach 1.")
            .build();
      case DARCY_INLET_DENSITY, DARCY_MEAN_DENSITY ->
        working.answer(nothingLeft(loss, "This model", units)).build();
    };
  }

  /** Why a model that does not know choking has no answer. */
  static String nothingLeft(LineLoss.Choked loss, String model, UnitSystem units) {
    double largest = loss.largest().kilogramsPerSecond();
    String flow = ValueKind.MASS_FLOW.format(largest, 7, units);
    if (largest == PipeElement.MOST_FLOW) {
      return "A flow above " + flow + " passes nowhere. " + model
          + " does not know choking, which comes long before.";
    }
    return "The flow asked for would lose more than all the pressure there is. At the largest flow, "
        + flow + ", nothing is left at the outlet. " + model
        + " does not know choking, which comes before.";
  }

  private static Working.Builder choking(Working.Builder working, LineLoss.Choked loss) {
    return working
        .given(LARGEST_FLOW, loss.largest().kilogramsPerSecond(), 7)
        .given(AREA, loss.conduit().area().squareMetres(), 7)
        .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 9)
        .given(KELVINS, loss.inlet().temperature().kelvins(), 7);
  }

  /**
   * Digits that are left of p2 so near to choking; 0 where it is not near. A value known to a part e gives it to e over
   * its distance from choking: 10⁻¹² in SI, 2·10⁻¹⁰ in US units for the ten digits of g_c. At choking itself p2 follows
   * from k alone, to that distance.
   */
  private int digitsNearChoking(UnitSystem units) {
    if (isAtChoking()) {
      return 5;
    }
    return fromChoking() < units.either(AT_CHOKING, 1.0e-3) ? 3 : 0;
  }

  /** How far the flow at the outlet is from choking, in parts of the speed at which it does [-]. */
  private double fromChoking() {
    return switch (equation) {
      case ISOTHERMAL -> 1.0 - loss.outletMach() * Math.sqrt(AirState.HEAT_CAPACITY_RATIO);
      case ADIABATIC -> 1.0 - loss.outletMach();
      case DARCY_INLET_DENSITY, DARCY_MEAN_DENSITY -> 1.0;
    };
  }

  private boolean isAtChoking() {
    return fromChoking() < AT_CHOKING;
  }

  private Working.Builder nearChoking(Working.Builder working, int left) {
    working
        .note(
            "So near to choking the flow hardly tells the pressure: it is that of the largest flow.")
        .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 9)
        .given(INLET_PRESSURE, loss.inlet().pressure().pascals(), digits);
    if (equation == PipeEquation.ISOTHERMAL) {
      return working
          .step(ISOTHERMAL_NEAR_CHOKING.from(source), outletNearChoking(), left)
          .given(KELVINS, loss.inlet().temperature().kelvins(), 7)
          .step(ISOTHERMAL_FLUX.from(source), flux(), left);
    }
    return working
        .given(INLET_KELVINS, loss.inlet().temperature().kelvins(), 7)
        .given(RATIO, AirState.HEAT_CAPACITY_RATIO, 3)
        .step(MACH_NEAR_CHOKING.from(source), loss.inletMach(), left)
        .step(ADIABATIC_FLUX.from(source), flux(), left)
        .given(OUTLET_MACH, 1.0, 1)
        .step(TEMPERATURE_AT_OUTLET.from(source), loss.outlet().temperature().kelvins(), left)
        .step(ADIABATIC.from(source), outletNearChoking(), left);
  }

  /**
   * The pressure [Pa] behind a flow at which it just chokes: G √(R T2), and over √γ in adiabatic flow. It differs from
   * that of the loss by a smaller part than is printed; but whole pascals are printed, and above a bar these are more
   * than five digits. Farther from choking, in US units, it is that of the loss.
   */
  private double outletNearChoking() {
    if (!isAtChoking()) {
      return loss.outlet().pressure().pascals();
    }
    double ratio = equation == PipeEquation.ADIABATIC ? AirState.HEAT_CAPACITY_RATIO : 1.0;
    double kelvins = loss.outlet().temperature().kelvins();
    return flux() * Math.sqrt(AirState.GAS_CONSTANT * kelvins / ratio);
  }

  /** G = ṁ/A. */
  private double flux() {
    return loss.massFlow().kilogramsPerSecond() / loss.conduit().area().squareMetres();
  }

  private Working build(String title, UnitSystem units) {
    Conduit conduit = loss.conduit();
    double flow = loss.massFlow().kilogramsPerSecond();
    Working.Builder working = Working.titled(title, units)
        .given(FLOW, flow, 8)
        .given(BORE, conduit.bore().metres(), 8)
        .given(VISCOSITY, loss.inlet().viscosity().pascalSeconds(), 8)
        .step(REYNOLDS_NUMBER, loss.reynolds(), 4);
    FrictionWorking.add(working, law, loss.reynolds(), conduit.relativeRoughness(), darcy);
    working
        .given(LENGTH, conduit.length().metres(), 8)
        .given(FITTINGS, conduit.fittingLoss(), 8)
        .step(TOTAL_RESISTANCE, resistance(conduit, darcy), 4);
    int left = digitsNearChoking(units);
    if (left > 0) {
      pressureLost(
          nearChoking(working, left),
          loss,
          loss.inlet().pressure().pascals() - outletNearChoking());
      working.answer(FLUX);
      loss.warnings(units).forEach(working::note);
      return working.build();
    }
    working
        .step(MASS_FLUX, flux(), 4)
        .given(INLET_PRESSURE, loss.inlet().pressure().pascals(), digits);
    switch (equation) {
      case ISOTHERMAL -> oneTemperature(working, ISOTHERMAL);
      case ADIABATIC -> adiabatic(working);
      case DARCY_INLET_DENSITY -> {
        working.given(INLET_DENSITY, loss.inlet().density().kilogramsPerCubicMetre(), digits);
        outletPressure(working, INLET_DENSITY_ONLY);
      }
      case DARCY_MEAN_DENSITY -> oneTemperature(working, MEAN_DENSITY);
    }
    pressureLost(working, loss);
    loss.warnings(units).forEach(working::note);
    return working.build();
  }

  private static double resistance(Conduit conduit, double darcy) {
    return PipeElement.resistance(
        darcy, conduit.length().metres(), conduit.bore().metres(), conduit.fittingLoss());
  }

  private void outletPressure(Working.Builder working, Formula formula) {
    working.step(formula.from(source), loss.outlet().pressure().pascals(), digits);
  }

  private void oneTemperature(Working.Builder working, Formula formula) {
    working
        .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 9)
        .given(KELVINS, loss.inlet().temperature().kelvins(), 7);
    outletPressure(working, formula);
  }

  private void adiabatic(Working.Builder working) {
    working
        .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 9)
        .given(INLET_KELVINS, loss.inlet().temperature().kelvins(), 7)
        .given(RATIO, AirState.HEAT_CAPACITY_RATIO, 3)
        .step(MACH_AT_INLET.from(source), loss.inletMach(), 4)
        .step(MACH_AT_OUTLET.from(source), loss.outletMach(), digits)
        .step(TEMPERATURE_AT_OUTLET.from(source), loss.outlet().temperature().kelvins(), 4);
    outletPressure(working, ADIABATIC);
  }

  /** The last step: p1 and p2 are known, Δp is the answer, and p2 for whoever goes on from there. */
  static void pressureLost(Working.Builder working, LineLoss.Flowing loss) {
    pressureLost(working, loss, loss.drop().pascals());
  }

  private static void pressureLost(Working.Builder working, LineLoss.Flowing loss, double pascals) {
    working
        .step(PRESSURE_LOST.from(loss.model().source()), pascals, 3)
        .answer(DROP, OUTLET_PRESSURE);
  }
}
