package org.airfit.flow;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * A valve rated by a flow coefficient and its pressure ratio factor, on the curve of IEC 60534 itself.
 *
 * <pre>
 *   ṁ = N Kv Y √(x p1 ρ1),  x = min( (p1 − p2)/p1, xT ),  Y = 1 − x/(3 xT)
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>N</td><td>√(1000 kg/m³ × 10⁵ Pa)/3600 per Pa, exact where the standard prints 3.16 for kPa and kg/h</td><td>-</td></tr>
 * <tr><td>Kv</td><td>flow coefficient</td><td>m³/h</td></tr>
 * <tr><td>Y</td><td>expansion factor, 2/3 where it chokes</td><td>-</td></tr>
 * <tr><td>xT</td><td>pressure ratio factor: the drop over p1 at which it chokes</td><td>-</td></tr>
 * <tr><td>p1, p2, ρ1</td><td>pressure in front and behind, density in front</td><td>Pa, kg/m³</td></tr>
 * </tbody>
 * </table>
 *
 * <p>For a part in a run take {@link #capacity()}, which agrees where the valve chokes and lies up to 6 % lower before. <b>Source:</b> IEC
 * 60534-2-1 with γ = 1.4 and no pipe reducers beside the valve.
 *
 * @param coefficient Kv or Cv
 * @param pressureRatioFactor xT [-], in (0, 1]
 */
public record ControlValve(ValveCoefficient coefficient, double pressureRatioFactor) {

  /** 1000 kg/m³ in lb/ft³: Cv counts gallons of 231 in³ a minute, of water at a psi. */
  private static final String WATER_US = "62.4279606";

  private static final Source SOURCE = Source.standard("IEC 60534-2-1");

  /**
   * Checks the components.
   *
   * @param coefficient Kv or Cv
   * @param pressureRatioFactor xT [-], in (0, 1]
   * @throws IllegalArgumentException if {@code pressureRatioFactor} is out of range
   */
  public ControlValve {
    if (!(pressureRatioFactor > 0.0 && pressureRatioFactor <= 1.0)) {
      throw new IllegalArgumentException(
          "pressure ratio factor xT must be in (0, 1], was " + pressureRatioFactor);
    }
  }

  /** N Kv in kg/s per root of Pa · kg/m³. */
  double perRoot() {
    return coefficient.kv() / 3600.0 * Math.sqrt(1000.0 / 1.0e5);
  }

  private double x(AirState inlet, AbsolutePressure outlet) {
    return inlet.pressure().dropTo(outlet).pascals() / inlet.pressure().pascals();
  }

  /**
   * Says whether less pressure behind would bring no more air.
   *
   * @param inlet the air in front
   * @param outlet the pressure behind, at most that in front
   * @return whether it chokes
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public boolean isChoked(AirState inlet, AbsolutePressure outlet) {
    return x(inlet, outlet) >= pressureRatioFactor;
  }

  /**
   * Finds the expansion factor.
   *
   * @param inlet the air in front
   * @param outlet the pressure behind, at most that in front
   * @return Y [-], from 1 without flow to 2/3 where it chokes
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public double expansionFactor(AirState inlet, AbsolutePressure outlet) {
    return 1.0 - Math.min(x(inlet, outlet), pressureRatioFactor) / (3.0 * pressureRatioFactor);
  }

  /**
   * Finds the flow between two pressures.
   *
   * @param inlet the air in front
   * @param outlet the pressure behind, at most that in front
   * @return the flow
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public MassFlow flow(AirState inlet, AbsolutePressure outlet) {
    double x = Math.min(x(inlet, outlet), pressureRatioFactor);
    return MassFlow.ofKilogramsPerSecond(perRoot()
        * expansionFactor(inlet, outlet)
        * Math.sqrt(x * inlet.pressure().pascals() * inlet.density().kilogramsPerCubicMetre()));
  }

  /** {@return the capacity after ISO 6358 that chokes at the same flow and the same ratio of pressures} */
  public FlowCapacity capacity() {
    return FlowCapacity.ofValveCoefficient(coefficient, pressureRatioFactor);
  }

  /**
   * Tells how the flow is reached.
   *
   * @param inlet the air in front
   * @param outlet the pressure behind, at most that in front
   * @param units the units to show numbers in
   * @return the working, with Kv in SI and Cv in US units
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public Working working(AirState inlet, AbsolutePressure outlet, UnitSystem units) {
    double x = Math.min(x(inlet, outlet), pressureRatioFactor);
    Term p1 = units.pressure("p1", "p_1", inlet.pressure().pascals(), 9);
    Working.Builder working = Working.titled("Flow through a valve of "
        + units.either(coefficient.kv() + " Kv", Digits.significant(coefficient.cv(), 6) + " Cv"));
    if (isChoked(inlet, outlet)) {
      working.note("The drop is at least xT of the pressure in front: it chokes, and x is xT.");
    } else {
      working.step(
          "Drop over the pressure in front",
          "⟨x⟩ = (⟨p1⟩ − ⟨p2⟩) / ⟨p1⟩",
          "⟨x⟩ = \\frac{⟨p1⟩ - ⟨p2⟩}{⟨p1⟩}",
          List.of(p1, units.pressure("p2", "p_2", outlet.pascals(), 9)),
          Term.of("x", "x", x, "", 5),
          SOURCE);
    }
    return working
        .step(
            "Expansion factor",
            "⟨Y⟩ = 1 − ⟨x⟩ / (3 × ⟨xT⟩)",
            "⟨Y⟩ = 1 - \\frac{⟨x⟩}{3 ⟨xT⟩}",
            List.of(Term.of("x", "x", x, "", 8), Term.of("xT", "x_T", pressureRatioFactor, "", 6)),
            Term.of("Y", "Y", expansionFactor(inlet, outlet), "", 5),
            SOURCE)
        .step(
            "Mass flow",
            units.either(
                "⟨ṁ⟩ = √(1000 / 10^5) / 3600 × ⟨Kv⟩ × ⟨Y⟩ × √(⟨x⟩ × ⟨p1⟩ × ⟨ρ1⟩)",
                "⟨ṁ⟩ = √" + WATER_US + " / 60 × 231 / 1728 × ⟨Cv⟩ × ⟨Y⟩ × √(⟨x⟩ × ⟨p1⟩ × ⟨ρ1⟩)"),
            units.either(
                    "⟨ṁ⟩ = \\frac{\\sqrt{1000 / 10^5}}{3600} ⟨Kv⟩",
                    "⟨ṁ⟩ = \\frac{\\sqrt{" + WATER_US + "}}{60} \\cdot \\frac{231}{1728} ⟨Cv⟩")
                + " \\cdot ⟨Y⟩ \\sqrt{⟨x⟩ \\cdot ⟨p1⟩ \\cdot ⟨ρ1⟩}",
            List.of(
                units.either(
                    Term.of("Kv", "K_v", coefficient.kv(), "", 8),
                    Term.of("Cv", "C_v", coefficient.cv(), "", 8)),
                Term.of("Y", "Y", expansionFactor(inlet, outlet), "", 8),
                Term.of("x", "x", x, "", 8),
                p1,
                units.density("ρ1", "\\rho_1", inlet.density().kilogramsPerCubicMetre(), 8)),
            units.massFlow("ṁ", "\\dot m", flow(inlet, outlet).kilogramsPerSecond(), 5),
            SOURCE)
        .build();
  }
}
