package org.airfit.flow;

import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
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
 * <tr><td>N</td><td>√(1000 kg/m³ × 10⁵ Pa)/3600 per Pa, exact where the standard prints 3.16 for kPa and
 * kg/h</td><td>-</td></tr>
 * <tr><td>Kv</td><td>flow coefficient</td><td>m³/h</td></tr>
 * <tr><td>Y</td><td>expansion factor, 2/3 where it chokes</td><td>-</td></tr>
 * <tr><td>xT</td><td>pressure ratio factor: the drop over p1 at which it chokes</td><td>-</td></tr>
 * <tr><td>p1, p2, ρ1</td><td>pressure in front and behind, density in front</td><td>Pa, kg/m³</td></tr>
 * </tbody>
 * </table>
 *
 * <p>For a part in a run take the capacity of ISO 6358 from the same two figures ({@code
 * FlowCapacity.ofValveCoefficient}), which agrees where the valve chokes and lies up to 6 % lower before.
 * <b>Source:</b> IEC 60534-2-1 with γ = 1.4 and no pipe reducers beside the valve.
 *
 * @param coefficient Kv or Cv
 * @param pressureRatioFactor xT [-], in (0, 1]
 */
public record ControlValve(ValveCoefficient coefficient, double pressureRatioFactor) {

  /** A smaller flow is not told in a working: its numbers leave the range of a double [kg/s]. */
  private static final double LEAST_TOLD = 1.0e-100;

  private static final Source SOURCE = Source.standard("IEC 60534-2-1");

  private static final Symbol INLET = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol OUTLET = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol DENSITY = Symbol.of("ρ1", ValueKind.DENSITY);
  private static final Symbol X = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol XT = Symbol.of("xT", ValueKind.NUMBER);
  private static final Symbol Y = Symbol.of("Y", ValueKind.NUMBER);
  private static final Symbol KV = Symbol.of("Kv", "K_v", ValueKind.NUMBER);
  private static final Symbol CV = Symbol.of("Cv", "C_v", ValueKind.NUMBER);
  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);

  private static final Formula DROP_SHARE = Formula.of(
      "Drop over the pressure in front", "⟨x⟩ = (⟨p1⟩ − ⟨p2⟩) / ⟨p1⟩", SOURCE, X, INLET, OUTLET);

  private static final Formula CHOKED_SHARE =
      Formula.of("Drop over the pressure in front, choked", "⟨x⟩ = ⟨xT⟩", SOURCE, X, XT);

  private static final Formula EXPANSION =
      Formula.of("Expansion factor", "⟨Y⟩ = 1 − ⟨x⟩ / (3 × ⟨xT⟩)", SOURCE, Y, X, XT);

  /** 62.4279606 is 1000 kg/m³ in lb/ft³: Cv counts gallons of 231 in³ a minute, of water at a psi. */
  private static final Formula MASS_FLOW = Formula.of(
      "Mass flow",
      "⟨ṁ⟩ = [√(1000 / 10^5)|√62.4279606] / [3600|60] × [1|231 / 1728] × [⟨Kv⟩|⟨Cv⟩] × ⟨Y⟩"
          + " × √(⟨x⟩ × ⟨p1⟩ × ⟨ρ1⟩)",
      SOURCE,
      FLOW,
      KV,
      CV,
      Y,
      X,
      INLET,
      DENSITY);

  /**
   * Checks the components.
   *
   * @param coefficient Kv or Cv
   * @param pressureRatioFactor xT [-], in (0, 1]
   * @throws IllegalArgumentException if {@code pressureRatioFactor} is out of range
   */
  public ControlValve {
    Objects.requireNonNull(coefficient, "coefficient");
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
    String title = "Flow of air through a valve of "
        + units.either(coefficient.kv() + " Kv", Digits.significant(coefficient.cv(), 6) + " Cv");
    if (flow(inlet, outlet).kilogramsPerSecond() < LEAST_TOLD) {
      return Working.titled(title, units)
          .answer("Nothing flows, or less than 1e-100 kg/s.")
          .build();
    }
    Working.Builder working = Working.titled(title, units)
        .given(XT, pressureRatioFactor, 6)
        .given(INLET, inlet.pressure().pascals(), 9);
    if (isChoked(inlet, outlet)) {
      working
          .note("The drop is at least xT of the pressure in front: it chokes, and x is xT.")
          .step(CHOKED_SHARE, x, 4);
    } else {
      working.given(OUTLET, outlet.pascals(), 9).step(DROP_SHARE, x, 4);
    }
    return working
        .step(EXPANSION, expansionFactor(inlet, outlet), 4)
        .given(units.either(KV, CV), units.either(coefficient.kv(), coefficient.cv()), 8)
        .given(DENSITY, inlet.density().kilogramsPerCubicMetre(), 8)
        .step(MASS_FLOW, flow(inlet, outlet).kilogramsPerSecond(), 4)
        .answer(FLOW)
        .build();
  }
}
