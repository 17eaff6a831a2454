package org.airfit.flow;

import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/**
 * The two rules by which handbooks turn a Cv that comes without its pressure ratio factor into a flow of air.
 *
 * <pre>
 *   DOWNSTREAM  q = 22.7  Cv √( (p1 − p2) p2 / T1 )
 *   MEAN        q = 22.67 Cv √( (p1 − p2) (p1 + p2)/2 / T1 )
 * </pre>
 *
 * <p>q in ft³/min of free air (14.7 psia, 60 °F), pressures in psi absolute, T1 in °R. p2 is not taken below 0.53 p1.
 * The two differ by the root of mean over downstream pressure: 3 % for a drop of a tenth of p1. Where xT is known
 * take {@link ControlValve}.
 */
public enum CoefficientRule {
  /** With the density behind the valve: the smaller flow. */
  DOWNSTREAM(22.7, Source.handbook("Esposito, Fluid Power with Applications, example 13-10")),
  /** With the mean of the densities. */
  MEAN(
      22.67,
      Source.handbook("Sullivan, Fluid Power Theory and Applications, 4th ed., example 16.5"));

  private static final double CHOKED = 0.53;

  private static final Symbol FACTOR = Symbol.of("N", ValueKind.NUMBER);
  private static final Symbol KV = Symbol.of("Kv", "K_v", ValueKind.NUMBER);
  private static final Symbol CV = Symbol.of("Cv", "C_v", ValueKind.NUMBER);
  private static final Symbol INLET = Symbol.of("p1", ValueKind.SAID_PRESSURE);
  private static final Symbol OUTLET = Symbol.of("p2", ValueKind.SAID_PRESSURE);
  private static final Symbol KELVINS = Symbol.of("T1", ValueKind.TEMPERATURE);
  private static final Symbol FLOW = Symbol.of("q", ValueKind.FREE_AIR);

  private final double factor;
  private final Source source;

  CoefficientRule(double factor, Source source) {
    this.factor = factor;
    this.source = source;
  }

  /** {@return where the rule stands} */
  public Source source() {
    return source;
  }

  /** q/Cv [ft³/min]. */
  private double perCoefficient(AirState inlet, AbsolutePressure outlet) {
    double p1 = inlet.pressure().psi();
    inlet.pressure().dropTo(outlet);
    double p2 = Math.max(outlet.psi(), CHOKED * p1);
    double density = this == DOWNSTREAM ? p2 : 0.5 * (p1 + p2);
    return factor * Math.sqrt((p1 - p2) * density / (1.8 * inlet.temperature().kelvins()));
  }

  /**
   * Finds the flow between two pressures.
   *
   * @param coefficient Cv or Kv
   * @param inlet the air in front
   * @param outlet the pressure behind, at most that in front
   * @return the flow
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public FreeAirFlow flow(ValveCoefficient coefficient, AirState inlet, AbsolutePressure outlet) {
    return FreeAirFlow.ofScfm60F(coefficient.cv() * perCoefficient(inlet, outlet));
  }

  /**
   * Finds the coefficient a flow needs.
   *
   * @param flow the flow
   * @param inlet the air in front
   * @param outlet the pressure behind, below that in front
   * @return the coefficient
   * @throws IllegalArgumentException if {@code outlet} is not below the inlet pressure
   */
  public ValveCoefficient coefficientFor(
      FreeAirFlow flow, AirState inlet, AbsolutePressure outlet) {
    double per = perCoefficient(inlet, outlet);
    if (per == 0.0) {
      throw new IllegalArgumentException("pressure behind must be below that in front, "
          + inlet.pressure().shown() + ", to find a coefficient, was " + outlet.shown());
    }
    return ValveCoefficient.ofCv(flow.at(ReferenceState.SCFM_60F).cubicFeetPerMinute() / per);
  }

  /**
   * Tells how a flow is reached.
   *
   * @param coefficient Cv or Kv
   * @param inlet the air in front
   * @param outlet the pressure behind, at most that in front
   * @param units the units to show numbers in; the rule was published in US units, its factor is turned into SI
   * @return the working
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public Working working(
      ValveCoefficient coefficient, AirState inlet, AbsolutePressure outlet, UnitSystem units) {
    FreeAirFlow flow = flow(coefficient, inlet, outlet);
    double p1 = inlet.pressure().pascals();
    double p2 = Math.max(outlet.pascals(), CHOKED * p1);
    Working.Builder working =
        Working.titled("Flow of air by a Cv without its pressure ratio factor", units);
    if (outlet.pascals() < p2) {
      working.note(
          "Less than 0.53 of the pressure in front stands behind: it chokes, and p2 is 0.53 p1.");
    }
    if (units == UnitSystem.SI) {
      working.step(siFactorFormula(), siFactor(), 4);
    }
    return working
        .given(units.either(KV, CV), units.either(coefficient.kv(), coefficient.cv()), 8)
        .given(INLET, p1, 9)
        .given(OUTLET, p2, 9)
        .given(KELVINS, inlet.temperature().kelvins(), 8)
        .step(flowFormula(), flow.cubicMetresPerSecond(), 4)
        .answer(FLOW)
        .build();
  }

  private Formula siFactorFormula() {
    return Formula.of(
        "Factor for Kv, bar and K, and free air in m³/h",
        "⟨N⟩ = " + factor + " × 0.3048³ × 60 / 0.8649776 × 14.50377377 / √1.8",
        source,
        FACTOR);
  }

  private Formula flowFormula() {
    String density = this == DOWNSTREAM ? "⟨p2⟩" : "(⟨p1⟩ + ⟨p2⟩) / 2";
    return Formula.of(
        "Free air, at 14.7 psi and 60 °F",
        "⟨q⟩ = [⟨N⟩|" + factor + "] × [⟨Kv⟩|⟨Cv⟩] × √((⟨p1⟩ − ⟨p2⟩) × " + density + " / ⟨T1⟩)",
        source,
        FLOW,
        FACTOR,
        KV,
        CV,
        INLET,
        OUTLET,
        KELVINS);
  }

  /** The factor for q in m³/h, Kv, pressures in bar and T1 in K. */
  private double siFactor() {
    double feet = 0.3048 * 0.3048 * 0.3048;
    double psiPerBar = PressureUnit.BAR.toSi(1.0) / PressureUnit.PSI.toSi(1.0);
    return factor * feet * 60.0 / ValveCoefficient.ofCv(1.0).kv() * psiPerBar / Math.sqrt(1.8);
  }
}
