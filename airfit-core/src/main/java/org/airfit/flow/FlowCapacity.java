package org.airfit.flow;

import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;

/**
 * How much air a part lets through, after ISO 6358.
 *
 * <pre>
 *   p2/p1 ≤ b:  ṁ = ṁ* = C ρ0 p1 √(T0/T1)
 *   p2/p1 &gt; b:  ṁ = ṁ* [1 − ((p2/p1 − b) / (1 − Δpc/p1 − b))²]^m
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>C</td><td>sonic conductance</td><td>m³/(s Pa)</td></tr>
 * <tr><td>b</td><td>critical pressure ratio: below it the flow is choked</td><td>-</td></tr>
 * <tr><td>m</td><td>subsonic index, 0.5 where nothing else is told</td><td>-</td></tr>
 * <tr><td>Δpc</td><td>cracking pressure, 0 for a part without a check valve</td><td>Pa</td></tr>
 * <tr><td>p1, T1</td><td>absolute pressure and temperature in front of the part</td><td>Pa, K</td></tr>
 * <tr><td>p2</td><td>absolute pressure behind the part</td><td>Pa</td></tr>
 * <tr><td>ρ0, T0</td><td>density and temperature at ISO 8778 reference, 1.185 and 293.15</td><td>kg/m³, K</td></tr>
 * </tbody>
 * </table>
 *
 * <p>From what a sheet tells: a flow, its inlet pressure and its loss, and b:
 *
 * <pre>{@code
 * import org.airfit.flow.FlowCapacity;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.PressureDrop;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.working.UnitSystem;
 *
 * class FromARating {
 *   public static void main(String[] args) {
 *     FlowCapacity coupling = FlowCapacity.ofRatedFlow(
 *         FreeAirFlow.parse("40 scfm"),
 *         AbsolutePressure.parse("114.7 psia"),
 *         PressureDrop.parse("5 psi"),
 *         Temperature.parse("68 °F"),
 *         0.3);
 *     System.out.println(UnitSystem.SI.say(coupling.conductance())); // 7.092 dm³/(s·bar)
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class FlowCapacity {

  private final FlowCoefficients figures;
  private final PartElement element;

  private FlowCapacity(FlowCoefficients figures) {
    this.figures = figures;
    this.element = new PartElement(
        figures.conductance().cubicMetresPerSecondPascal(),
        ReferenceState.ANR.density().kilogramsPerCubicMetre(),
        figures.criticalPressureRatio(),
        figures.subsonicIndex(),
        figures.crackingPressure().pascals());
  }

  /**
   * Obtains a capacity from all figures of ISO 6358.
   *
   * @param figures the figures
   * @return the capacity
   */
  public static FlowCapacity of(FlowCoefficients figures) {
    return new FlowCapacity(Objects.requireNonNull(figures, "figures"));
  }

  /**
   * Obtains a capacity from the two figures of ISO 6358.
   *
   * @param conductance the sonic conductance C, above 0
   * @param criticalPressureRatio the critical pressure ratio b [-], in [0, 1)
   * @return the capacity, with a subsonic index of 0.5 and no cracking pressure
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static FlowCapacity of(SonicConductance conductance, double criticalPressureRatio) {
    return of(
        new FlowCoefficients(conductance, criticalPressureRatio, 0.5, PressureDrop.ofPascals(0.0)));
  }

  /**
   * Obtains a capacity from a flow rated at an inlet pressure and a drop, as couplers are often rated.
   *
   * <p>The rating alone does not tell b. A wrong b moves C: at 100 psig and a drop of 5 psi, b between 0.2 and 0.5
   * moves it by about a quarter. {@link CapacityRange} keeps that doubt.
   *
   * @param rated the flow
   * @param inlet the pressure in front of the part in the rating
   * @param drop the drop across the part in the rating, above 0 and less than {@code inlet}
   * @param temperature the temperature of the air in the rating
   * @param criticalPressureRatio the critical pressure ratio b [-] to take, in [0, 1)
   * @return the capacity that gives {@code rated} at those conditions
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static FlowCapacity ofRatedFlow(
      FreeAirFlow rated,
      AbsolutePressure inlet,
      PressureDrop drop,
      Temperature temperature,
      double criticalPressureRatio) {
    if (!(drop.pascals() > 0.0 && drop.pascals() < inlet.pascals())) {
      throw new IllegalArgumentException("rated drop must be above 0 and below the inlet pressure "
          + inlet.shown() + ", was " + drop.shown());
    }
    if (!(rated.cubicMetresPerSecond() > 0.0)) {
      throw new IllegalArgumentException("rated flow must be above 0, was " + rated.shown()
          + "; a part that passes nothing has no capacity");
    }
    SonicConductance unit = SonicConductance.ofCubicMetresPerSecondPascal(1.0);
    FlowAtOutlet perUnit =
        of(unit, criticalPressureRatio).flow(AirState.of(inlet, temperature), inlet.minus(drop));
    double c = rated.massFlow().kilogramsPerSecond() / perUnit.massFlow().kilogramsPerSecond();
    return of(SonicConductance.ofCubicMetresPerSecondPascal(c), criticalPressureRatio);
  }

  /**
   * Obtains the capacity of a part that passes as much air, when choked, as a loss-free nozzle of a section.
   *
   * <pre>
   *   C = ψ A / (ρ0 √(R T0)),  ψ = 0.684731
   * </pre>
   *
   * @param area the effective section A, discharge coefficient and all; above 0
   * @param criticalPressureRatio the critical pressure ratio b [-], in [0, 1)
   * @return the capacity
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static FlowCapacity ofEffectiveArea(Area area, double criticalPressureRatio) {
    double c = GasKernels.CHOKED
        * area.squareMetres()
        / (ReferenceState.ANR.density().kilogramsPerCubicMetre()
            * Math.sqrt(AirState.GAS_CONSTANT * FlowKernels.T0));
    return of(SonicConductance.ofCubicMetresPerSecondPascal(c), criticalPressureRatio);
  }

  /**
   * Obtains a capacity from the flow coefficient of a valve and its pressure ratio factor xT, after IEC 60534.
   *
   * <pre>
   *   C p1 ρ0 = (2/3) N Kv √(xT p1 ρ1),  b = 1 − xT
   * </pre>
   *
   * <p>N turns Kv [m³/h] into SI: √(1000 kg/m³ × 10⁵ Pa)/3600 per Pa. The choked flow is that of IEC 60534 exactly,
   * and begins at the same p2/p1. In between the curve of IEC 60534 lies higher: by 2 % halfway down, by 6 % where p2
   * comes near p1. The coefficient alone does not tell the capacity: xT is about 0.7 for globe valves and 0.2 to 0.5
   * for ball valves and the like (from memory).
   *
   * @param coefficient Kv or Cv
   * @param pressureRatioFactor xT [-], in (0, 1]
   * @return the capacity
   * @throws IllegalArgumentException if {@code pressureRatioFactor} is out of range
   */
  public static FlowCapacity ofValveCoefficient(
      ValveCoefficient coefficient, double pressureRatioFactor) {
    ControlValve valve = new ControlValve(coefficient, pressureRatioFactor);
    double c = 2.0
        / 3.0
        * valve.perRoot()
        * Math.sqrt(pressureRatioFactor / (AirState.GAS_CONSTANT * FlowKernels.T0))
        / ReferenceState.ANR.density().kilogramsPerCubicMetre();
    return of(SonicConductance.ofCubicMetresPerSecondPascal(c), 1.0 - pressureRatioFactor);
  }

  /**
   * Estimates the capacity of a plain tube.
   *
   * <pre>
   *   C = 0.029 d² / √(L/d^1.25 + 510),  b = 474 C/d²   (m, m³/(s Pa))
   * </pre>
   *
   * <p>The formula is recalled, seen in no source. It lies up to 6 % below adiabatic flow with friction in smooth
   * tubes of 2 to 13 mm; its b is rough. Where a run is computed, use a conduit of the line package instead.
   *
   * @param bore the inside diameter d, in [1, 25] mm
   * @param length the length L, at most 50 m
   * @return the capacity
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static FlowCapacity ofTube(Length bore, Length length) {
    if (!(bore.millimetres() >= 1.0 && bore.millimetres() <= 25.0)) {
      throw new IllegalArgumentException(
          "bore of a tube must be in [1, 25] mm, was " + Digits.inFull(bore.millimetres()) + " mm");
    }
    if (!(length.metres() <= 50.0)) {
      throw new IllegalArgumentException(
          "length of a tube must be in [0, 50] m, was " + Digits.inFull(length.metres()) + " m");
    }
    double d = bore.metres();
    double c = 0.029 * d * d / Math.sqrt(length.metres() / Math.pow(d, 1.25) + 510.0);
    return of(SonicConductance.ofCubicMetresPerSecondPascal(c), 474.0 * c / (d * d));
  }

  /**
   * Obtains this capacity with another subsonic index.
   *
   * @param index the subsonic index m [-], in (0, 1]
   * @return this with {@code index}
   * @throws IllegalArgumentException if {@code index} is out of range
   */
  public FlowCapacity withSubsonicIndex(double index) {
    return of(
        new FlowCoefficients(conductance(), criticalPressureRatio(), index, crackingPressure()));
  }

  /**
   * Obtains this capacity behind a check valve that opens at a drop.
   *
   * @param drop the drop below which nothing flows
   * @return this with {@code drop}
   */
  public FlowCapacity withCrackingPressure(PressureDrop drop) {
    return of(new FlowCoefficients(conductance(), criticalPressureRatio(), subsonicIndex(), drop));
  }

  /** {@return all figures of ISO 6358} */
  public FlowCoefficients figures() {
    return figures;
  }

  /** {@return the sonic conductance C} */
  public SonicConductance conductance() {
    return figures.conductance();
  }

  /** {@return the critical pressure ratio b [-]} */
  public double criticalPressureRatio() {
    return figures.criticalPressureRatio();
  }

  /** {@return the subsonic index m [-]} */
  public double subsonicIndex() {
    return figures.subsonicIndex();
  }

  /** {@return the drop below which nothing flows} */
  public PressureDrop crackingPressure() {
    return figures.crackingPressure();
  }

  /** {@return this part on plain doubles, for runs and networks} */
  public FlowElement element() {
    return element;
  }

  /**
   * Finds the largest flow this part lets through.
   *
   * @param inlet the air in front of it
   * @return the choked flow
   */
  public MassFlow chokedFlow(AirState inlet) {
    return MassFlow.ofKilogramsPerSecond(choked(inlet));
  }

  private double choked(AirState inlet) {
    return element.choked(inlet.pressure().pascals(), inlet.temperature().kelvins());
  }

  /**
   * Finds the flow between two pressures.
   *
   * @param inlet the air in front of the part
   * @param outlet the pressure behind the part, at most that in front
   * @return the flow and its regime
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public FlowAtOutlet flow(AirState inlet, AbsolutePressure outlet) {
    double p1 = inlet.pressure().pascals();
    double drop = inlet.pressure().dropTo(outlet).pascals();
    double ratio = outlet.pascals() / p1;
    FlowRegime regime;
    double flow;
    if (drop <= crackingPressure().pascals()) {
      regime = FlowRegime.CLOSED;
      flow = 0.0;
    } else if (ratio <= criticalPressureRatio()) {
      regime = FlowRegime.CHOKED;
      flow = choked(inlet);
    } else {
      regime = FlowRegime.SUBSONIC;
      flow = choked(inlet)
          * FlowKernels.subsonicShare(
              criticalPressureRatio(), subsonicIndex(), crackingPressure().pascals() / p1, ratio);
    }
    return new FlowAtOutlet(figures, inlet, outlet, regime, MassFlow.ofKilogramsPerSecond(flow));
  }

  /**
   * Finds the pressure behind the part for a flow.
   *
   * @param massFlow the flow; 0 is allowed and costs nothing but the cracking pressure
   * @param inlet the air in front of the part
   * @return the pressure behind, or that the part chokes
   */
  public OutletAtFlow passage(MassFlow massFlow, AirState inlet) {
    double p1 = inlet.pressure().pascals();
    double drop =
        element.drop(massFlow.kilogramsPerSecond(), p1, inlet.temperature().kelvins());
    if (drop < 0.0) {
      MassFlow largest = crackingPressure().pascals() < p1
          ? chokedFlow(inlet)
          : MassFlow.ofKilogramsPerSecond(0.0);
      return new OutletAtFlow.Chokes(figures, inlet, massFlow, largest);
    }
    return new OutletAtFlow.Passes(
        figures,
        inlet,
        massFlow,
        AbsolutePressure.ofPascals(p1 - drop),
        PressureDrop.ofPascals(drop));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FlowCapacity that && figures.equals(that.figures);
  }

  @Override
  public int hashCode() {
    return figures.hashCode();
  }

  /** {@return the figures, such as "C 3.5 dm³/(s·bar), b 0.25"; m and Δpc where they are not the usual} */
  @Override
  public String toString() {
    return figures.toString();
  }
}
