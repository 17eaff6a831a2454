package org.airfit.line;

import static org.airfit.line.LineSymbols.FITTINGS;
import static org.airfit.line.LineSymbols.FLUX;
import static org.airfit.line.LineSymbols.INLET_PRESSURE;
import static org.airfit.line.LineSymbols.OUTLET_PRESSURE;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/**
 * The workings of the handbooks' formulas: each keeps the units it was made for, the fittings and the loss come in
 * those asked for.
 */
final class FormulaWorking {

  private static final double FOOT = 0.3048;
  private static final double POUND = 0.453_592_37;
  private static final double PASCALS_PER_PSI = POUND * 9.806_65 / (0.0254 * 0.0254);

  /** 1 inch of water in psi: 1000 kg/m³ × 9.80665 m/s² × 0.0254 m. */
  private static final double PSI_PER_INCH_OF_WATER = 1000.0 * 9.806_65 * 0.0254 / PASCALS_PER_PSI;

  private static final String WALL = "Drop along the wall";
  private static final String SQUARES = "Difference of the squared pressures";

  private static final Symbol METRES = Symbol.of("L", ValueKind.METRES);
  private static final Symbol FEET = Symbol.of("L", ValueKind.FEET);
  private static final Symbol BORE_METRES = Symbol.of("D", ValueKind.METRES);
  private static final Symbol BORE_INCHES = Symbol.of("d", ValueKind.INCHES);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.KELVINS);
  private static final Symbol STANDARD_KELVINS = Symbol.of("Ts", ValueKind.KELVINS);
  private static final Symbol STANDARD_PRESSURE = Symbol.of("Ps", ValueKind.PASCALS);
  private static final Symbol CUBIC_METRES = Symbol.of("Q", ValueKind.only("m³/s", "m³/s", 1.0));
  private static final Symbol CUBIC_FEET =
      Symbol.of("q", ValueKind.only("m³/s", "ft³/s", FOOT * FOOT * FOOT));
  private static final Symbol POUNDS =
      Symbol.of("w", ValueKind.only("kg/s", "lb/min", POUND / 60.0));
  private static final Symbol PRESSURE_PER_DENSITY = Symbol.of(
      "RT",
      "R T",
      ValueKind.only("J/kg", "psi/(lb/ft³)", PASCALS_PER_PSI * FOOT * FOOT * FOOT / POUND));
  private static final Symbol PSI_PER_INCH =
      Symbol.of("psi/inH2O", "\\mathrm{psi/inH_2O}", ValueKind.NUMBER);
  private static final Symbol WALL_DROP = Symbol.of("Δpw", ValueKind.PASCALS);
  private static final Symbol SQUARED = Symbol.of("S", ValueKind.only("Pa²", "Pa²", 1.0));
  private static final Symbol SPECIFIC_ENERGY = Symbol.of("RT", "R T", ValueKind.ENERGY_PER_MASS);

  private final LineLoss.Flowing loss;
  private final Formula formula;
  private final UnitSystem units;
  private final Working.Builder working;

  private FormulaWorking(String title, LineLoss.Flowing loss, Formula formula, UnitSystem units) {
    this.loss = loss;
    this.formula = formula;
    this.units = units;
    this.working = Working.titled(title, units);
  }

  /** Reads a definition in SI, or in inches, feet and psi if it has the bore d. */
  static Formula formula(String definition, Source source) {
    boolean metric = !definition.contains("⟨d⟩");
    boolean squares = definition.startsWith("⟨S⟩");
    List<Symbol> symbols = new ArrayList<>(List.of(
        metric ? METRES : FEET,
        BORE_METRES,
        BORE_INCHES,
        KELVINS,
        STANDARD_KELVINS,
        STANDARD_PRESSURE,
        CUBIC_METRES,
        CUBIC_FEET,
        POUNDS,
        PRESSURE_PER_DENSITY,
        PSI_PER_INCH,
        INLET_PRESSURE.as(metric ? ValueKind.PASCALS : ValueKind.PSI),
        metric ? WALL_DROP : WALL_DROP.as(ValueKind.PSI),
        metric
            ? SQUARED
            : SQUARED.as(ValueKind.only("Pa²", "psi²", PASCALS_PER_PSI * PASCALS_PER_PSI))));
    symbols.removeIf(symbol -> !definition.contains("⟨" + symbol.text() + "⟩"));
    return Formula.of(squares ? SQUARES : WALL, definition, source, symbols.toArray(new Symbol[0]));
  }

  /** The working, from the free air and the loss of the wall that the formula counts with. */
  static Working of(
      String title,
      LineLoss.Flowing loss,
      Formula formula,
      double freeAir,
      double wall,
      UnitSystem units) {
    return new FormulaWorking(title, loss, formula, units).build(freeAir, wall);
  }

  private Working build(double freeAir, double wall) {
    if (formula.result().text().equals(SQUARED.text())) {
      working.note("S stands for p1² − p2².");
    }
    for (Symbol symbol : formula.inputs(units)) {
      working.given(symbol, value(symbol, freeAir), 8);
    }
    working.step(formula, wall, 4);
    fittingsIncluded();
    PipeWorking.pressureLost(working, loss);
    loss.warnings(units).forEach(working::note);
    return working.build();
  }

  private double value(Symbol symbol, double freeAir) {
    Conduit conduit = loss.conduit();
    return switch (symbol.text()) {
      case "L" -> conduit.length().metres();
      case "D", "d" -> conduit.bore().metres();
      case "T" -> loss.inlet().temperature().kelvins();
      case "Ts" -> FormulaLaw.TS;
      case "Ps" -> FormulaLaw.PS;
      case "Q", "q" -> freeAir;
      case "w" -> loss.massFlow().kilogramsPerSecond();
      case "RT" -> specificEnergy();
      case "psi/inH2O" -> PSI_PER_INCH_OF_WATER;
      case "p1" -> loss.inlet().pressure().pascals();
      default -> throw new IllegalStateException("no value for " + symbol);
    };
  }

  private double specificEnergy() {
    return AirState.GAS_CONSTANT * loss.inlet().temperature().kelvins();
  }

  /** What the formula says and what the fittings take, in the units asked for; the formula's own may be others. */
  private void fittingsIncluded() {
    int digits = PipeWorking.digits(loss);
    Symbol wall = formula.result();
    boolean squares = wall.text().equals(SQUARED.text());
    String own = wall.kind().unit(units);
    String asked = ValueKind.PRESSURE.unit(units) + (squares ? "²" : "");
    Symbol ratio = Symbol.of("c", ValueKind.only(asked + "/" + own, asked + "/" + own, 1.0));
    boolean same = own.equals(asked);
    String factor = same ? "" : "⟨c⟩ × ";
    List<Symbol> symbols = new ArrayList<>(
        List.of(OUTLET_PRESSURE, INLET_PRESSURE, wall, FITTINGS, FLUX, SPECIFIC_ENERGY));
    if (!same) {
      symbols.add(ratio);
      working.given(ratio, ratio(wall.kind(), squares), 8);
    }
    // given by the formula already where it stands in it
    givenUnlessPut(INLET_PRESSURE, loss.inlet().pressure().pascals(), digits);
    givenUnlessPut(SPECIFIC_ENERGY, specificEnergy(), 8);
    working
        .given(FITTINGS, loss.conduit().fittingLoss(), 8)
        .given(
            FLUX, loss.massFlow().kilogramsPerSecond() / loss.conduit().area().squareMetres(), 8)
        .step(
            Formula.of(
                "Pressure at the outlet, fittings included",
                squares
                    ? "⟨p2⟩ = √(⟨p1⟩² − " + factor + "⟨S⟩ − ⟨ΣK⟩ × ⟨G⟩² × ⟨RT⟩ / ([g_c] × [144]²))"
                    : "⟨p2⟩ = ⟨p1⟩ − " + factor
                        + "⟨Δpw⟩ − ⟨ΣK⟩ × ⟨G⟩² × ⟨RT⟩ / ([g_c] × [144]²) / (2 × ⟨p1⟩)",
                formula.source(),
                symbols.toArray(new Symbol[0])),
            loss.outlet().pressure().pascals(),
            digits);
  }

  private void givenUnlessPut(Symbol symbol, double value, int digits) {
    if (formula.inputs(units).stream().noneMatch(put -> put.text().equals(symbol.text()))) {
      working.given(symbol, value, digits);
    }
  }

  /** What one of the formula's own units is in those asked for. */
  private double ratio(ValueKind own, boolean squares) {
    ValueKind asked = squares ? ValueKind.PRESSURE_SQUARED : ValueKind.PRESSURE;
    return asked.shown(own.value(1.0, units), units);
  }
}
